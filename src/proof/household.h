#pragma once
// What a household draws, use by use: an invented family of five, drawn from statistics. How often each fixture is
// used, how long and how much it takes follow one metered house of five people over two weeks (uses classified by
// fixture) and the end-use surveys it agrees with; when in the day, a morning and an evening peak with little between
// one and six. Nothing here is a measured series.
#include <cstdint>
#include <vector>

namespace wellproof {

enum class Fixture { toilet, faucet, shower, washer, hose };

struct WaterUse {
  Fixture fixture = Fixture::faucet;
  double start_s = 0;  // from the midnight before the first day
  double duration_s = 0;
  double flow_m3_s = 0;
};

/// The uses of some days, by start. Times, durations and flows are log-normal or even about their medians; each number
/// is a hash of seed and counter, so that a day is the same whatever days were asked for before it.
/// @param first_day, days  counted from 0
/// Rates, durations and flows follow the open CIWS data (BSD 3-Clause; classified uses of 2020).
/// Checked: tests/unit/proof/household_test.cc
std::vector<WaterUse> household_uses(std::uint64_t seed, std::uint32_t first_day, std::uint32_t days);

/// All that is drawn at once, as it changes: sorted by time, the flow from there on.
struct DrawnFlow {
  double time_s = 0;
  double flow_m3_s = 0;
};
std::vector<DrawnFlow> drawn_together(std::vector<WaterUse> const& uses);

}  // namespace wellproof
