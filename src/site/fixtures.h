#pragma once
// From the fixtures of a house to the most it draws at once: each fixture has a weight in water supply fixture units,
// and a table gives the demand of their sum, since never all run together. After the International Plumbing Code,
// appendix E.
#include <string_view>
#include <vector>

namespace wellproof {

/// A kind of fixture in a private house.
struct FixtureKind {
  std::string_view key;  // as in [demand.fixtures]
  std::string_view meaning;
  double units;  // hot and cold together
};

/// IPC table E103.3(2), column "private, total"; water closets with flush tanks.
std::vector<FixtureKind> const& fixture_kinds();

/// The demand of so many fixture units, straight between the rows of the table.
/// @param fixture_units  [1] ≥ 0; below the first row in proportion
/// @return               [m³/s]
/// Range: to 500 units    Outside: the last row
/// Source: icc_2018, table E103.3(3), systems with predominantly flush tanks
/// Checked: tests/unit/site/fixtures_test.cc
/// Example: peak_draw_m3_s(10) == 9.21117e-4 within 1e-5
double peak_draw_m3_s(double fixture_units);

}  // namespace wellproof
