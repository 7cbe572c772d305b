#pragma once
// What instruments on a plant show while nothing changes.
#include <vector>

#include "fit/readings.h"
#include "plant/plant.h"

namespace wellproof {

/// Where a plant stands as far as the site does not tell it: that depends on who turned which tap how far.
/// tee_pressure_pa of any condition but rest, where it is what is left in the tank
/// flow_m3_s       of the conditions with a draw
struct Standing {
  double tee_pressure_pa = 0;
  double flow_m3_s = 0;
};

/// What the reading's instruments would show, in its order, SI. The gauge is taken to be right; the drive shows its
/// sensor's pressure with gain, zero and trim. The well is pumped evenly for as long as the reading says; a level below
/// the pump is taken as at the pump.
/// @param trim_pa set in the drive when the reading was taken
/// Checked: tests/unit/fit/steady_reading_test.cc
std::vector<double> shown(Plant const& plant, SiteReading const& reading, Standing const& standing, double trim_pa);

/// Pressure at the tee after a wait with the pump off and all taps shut, from the tank and the leak.
double fallen_pressure_pa(Plant const& plant, double tee_pressure_pa, double wait_s);

}  // namespace wellproof
