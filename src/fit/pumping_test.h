#pragma once
// A pumping test as it was made: what was pumped when, and how far the water fell in the pumped well or beside it. Its
// times count from the beginning of pumping.
#include <optional>
#include <string>
#include <vector>

#include "quantity/dimension.h"

#include "plant/radial_flow.h"

namespace wellproof {

/// One reading of a level.
struct LevelReading {
  double time_s = 0;  // > 0
  double drawdown_m = 0;
};

/// The readings of one place, in the order of time.
/// distance_m 0: the pumped well itself
/// recovered  the readings say how far the water has come up again since pumping stopped, not how far it is down
struct LevelRecord {
  std::string file;
  double distance_m = 0;
  bool recovered = false;
  std::vector<LevelReading> readings;
};

/// The whole test, all that one fit takes together.
/// rates         in the order of time, none negative, at least one above 0
/// rates_from_their_rows  the same where a table's column of rates leaves open whether a rate began with its own line
/// or
///               after the line before; empty: it does not
/// well_radius_m of the pumped bore; needed for readings from the pumped well
/// casing_radius_m inside; not known: what the casing stores is fitted
/// storativity   where it is known from elsewhere
/// units         in which what the test cannot tell is said
struct PumpingTest {
  std::vector<RateStep> rates;
  std::vector<RateStep> rates_from_their_rows;
  std::vector<LevelRecord> records;
  bool well_radius_assumed = false;
  std::optional<double> well_radius_m;
  std::optional<double> casing_radius_m;
  std::optional<double> storativity;
  UnitSystem units = UnitSystem::us;
};

/// When pumping stopped for good; nothing if it goes on.
std::optional<double> stop_s(std::vector<RateStep> const& rates);

}  // namespace wellproof
