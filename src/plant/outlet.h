#pragma once
// Where water leaves: taps, fixtures that regulate their own flow, zones, leaks, breaks, the relief valve.
#include "plant/slope.h"

namespace wellproof {

/// Where on the line an outlet sits.
enum class OutletPlace {
  tee,    // at the tank: the relief valve, a break in the yard
  house,  // at the end of the house path
};

/// An outlet, fully open. Flow ∝ √p; a regulated one never passes more than its nominal flow.
struct Outlet {
  double nominal_flow_m3_s = 0;
  double nominal_pressure_pa = 1;  // > 0
  bool regulated = false;
  OutletPlace place = OutletPlace::house;
};

/// Flow through an outlet opened by a fraction, with its slope [m³/s/Pa]. Below 2 kPa the root is replaced by the odd
/// cubic that meets it in value and slope, so that the slope stays finite; no flow inwards below zero. A regulated
/// outlet has a corner at its nominal pressure.
/// @param opening     [-] 0 to 1
/// @param pressure_pa [Pa] gauge, any sign
/// Checked: tests/unit/plant/outlet_test.cc
Sloped outlet_flow_m3_s(Outlet const& outlet, double opening, double pressure_pa);

/// Flow of a sharp-edged hole, C_d·A·√(2p/ρ).
/// @param pressure_pa [Pa] gauge; none below zero
/// @param discharge_coefficient [-] about 0.61
/// @return [m³/s]
/// Checked: tests/reference/outlet_reference_test.cc
/// Example: hole_flow_m3_s(0.003175, 413685, 998.2, 0.61) == 1.39e-4 within 1e-3
double hole_flow_m3_s(double diameter_m, double pressure_pa, double density_kg_m3, double discharge_coefficient);

/// Flow of a spring relief valve, with its slope [m³/s/Pa]: nothing below its opening pressure, then rising straight to
/// its rated flow at 110 %, where it stands open; above that as √p.
/// @param opening_pa [Pa] gauge; 0: there is no valve
/// Checked: tests/unit/plant/outlet_test.cc
Sloped relief_flow_m3_s(double opening_pa, double rated_flow_m3_s, double pressure_pa);

}  // namespace wellproof
