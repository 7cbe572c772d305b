#pragma once
// The American wire gauge: solid round conductors by number, the thicker the smaller; 1/0 to 4/0 go on below zero.

namespace wellproof {

/// Diameter of a solid conductor of an AWG size.
/// @param gauge  -3 for 4/0, -2 for 3/0, -1 for 2/0, 0 for 1/0, then the number itself, up to 40
/// @return [m]
/// Range:   -3 … 40   Outside: the same progression
/// Source:  astm_b258, d = 0.005 in · 92^((36 − n)/39)
/// Checked: tests/reference/units_udunits_test.cc
/// Example: wire_gauge_diameter_m(36) == 0.000127 within 1e-12
double wire_gauge_diameter_m(int gauge);

/// Cross-section of the same conductor.
/// @return [m²]
/// Range:   -3 … 40   Outside: the same progression
/// Source:  astm_b258
/// Checked: tests/reference/units_udunits_test.cc
/// Example: wire_gauge_area_m2(12) == 3.3088e-6 within 1e-4
double wire_gauge_area_m2(int gauge);

}  // namespace wellproof
