#pragma once
// Water between 0 and 40 °C at ordinary pressure, the standard atmosphere, and gravity.

namespace wellproof {

inline constexpr double gravity_m_s2 = 9.80665;
inline constexpr double water_heat_j_kg_k = 4186.0;

/// Density of air-free water at one atmosphere.
/// @param temperature_c [°C] 0 to 40; beyond, the end's
/// @return              [kg/m³]
/// Source:  tanaka_2001
/// Checked: tests/reference/water_reference_test.cc
/// Example: water_density_kg_m3(20) == 998.206 within 0.002
double water_density_kg_m3(double temperature_c);

/// Kinematic viscosity of water at one atmosphere.
/// @param temperature_c [°C] 0 to 40; beyond, the end's
/// @return              [m²/s]
/// Source:  patek_2009
/// Checked: tests/reference/water_reference_test.cc
/// Example: water_viscosity_m2_s(20) == 1.0034e-6 within 1e-3
double water_viscosity_m2_s(double temperature_c);

/// Pressure of the air in the standard atmosphere.
/// @param altitude_m [m] above the sea, −400 to 11,000; beyond, the end's
/// @return           [Pa] absolute
/// Source:  us_standard_atmosphere_1976
/// Checked: tests/reference/water_reference_test.cc
/// Example: atmosphere_pa_abs(2000) == 79501 within 20
double atmosphere_pa_abs(double altitude_m);

}  // namespace wellproof
