#pragma once
// Warmth: winding and shell of the motor, the drive's heat sink, the life of insulation.

namespace wellproof {

/// Two nodes: winding and shell. Heat goes from winding to shell to the water that flows past.
struct MotorHeat {
  double winding_j_k = 0;
  double shell_j_k = 0;
  double winding_to_shell_w_k = 0;
  double shell_to_water_w_k = 0;      // at the reference velocity
  double reference_velocity_m_s = 0;  // 0.25 ft/s, common practice
};

/// From rated loss, such that rated loss in water flowing at the reference velocity gives the rise that is usual: shell
/// 15 K over the water, winding 45 K over the shell, with two thirds of the loss in winding and core and the rest
/// (rotor, friction) in the shell. Heat capacities go with rated power, about 1.2 and 4 J/K a watt, as the copper and
/// the rest of a small motor weigh; both nodes then follow within minutes. Common practice, no source.
/// @param rated_power_w [W] > 0
/// @param rated_loss_w  [W] at rated power, > 0
/// Checked: tests/unit/plant/heat_test.cc
MotorHeat motor_heat(double rated_power_w, double rated_loss_w);

/// Conductance from shell to water at a velocity past the shell. Forced cooling goes with velocity to the 0.6th
/// (between a laminar and a turbulent annulus), still water keeps 0.35 of what the reference velocity gives (common
/// practice, no source); the two join as cubes (churchill_1977b).
/// @param velocity_m_s [m/s] either direction
/// @return [W/K]
/// Checked: tests/unit/plant/heat_test.cc
double shell_to_water_w_k(MotorHeat const& heat, double velocity_m_s);

/// How fast the two temperatures change.
struct HeatRates {
  double winding_k_s = 0;
  double shell_k_s = 0;
};

/// Rates of the two temperatures. Into the winding goes the loss of winding and core, into the shell that of rotor and
/// friction.
/// @param to_water_w_k [W/K] conductance at the velocity there is, shell_to_water_w_k(heat, velocity)
/// @return [K/s]
/// Checked: tests/unit/plant/heat_test.cc
HeatRates heat_rates(MotorHeat const& heat, double winding_c, double shell_c, double water_c, double to_water_w_k,
                     double winding_loss_w, double shell_loss_w);

/// Life against life at the limit: twice for each 10 K below it, half for each 10 K above (ten-degree rule).
/// Source:  montsinger_1930
/// Checked: tests/unit/plant/heat_test.cc
/// Example: insulation_life_ratio(110, 130) == 4 within 1e-12
double insulation_life_ratio(double winding_c, double limit_c);

}  // namespace wellproof
