#pragma once
// The cable between drive and motor: resistance of one conductor.

namespace wellproof {

/// Resistance of annealed copper wire by diameter, length and temperature, stranding included (+2 %).
/// @param conductor_diameter_m [m]  of the solid wire of that gauge, > 0
/// @param length_m             [m]  of one conductor, ≥ 0
/// @param temperature_c        [°C] mean of the conductor
/// @return [Ω] one conductor
/// Source:  iec_60028 (1/58 Ω·mm²/m at 20 °C, 0.00393 a kelvin); astm_b8 (2 % for the lay of the strands)
/// Checked: tests/reference/cable_reference_test.cc (nec_2020, chapter 9, table 8)
/// Example: cable_resistance_ohm(2.588e-3, 304.8, 75) == 1.24 within 0.01
double cable_resistance_ohm(double conductor_diameter_m, double length_m, double temperature_c);

/// Diameter of the solid wire of an American gauge.
/// @param gauge 0 to 40
/// @return [m]
/// Outside: require (the site was checked before)
/// Source:  astm_b258: 0.005 in at 36, 0.46 in at 0000, a geometric row of 39 steps between
/// Checked: tests/reference/cable_reference_test.cc
/// Example: awg_diameter_m(10) == 2.588e-3 within 2e-4
double awg_diameter_m(int gauge);

}  // namespace wellproof
