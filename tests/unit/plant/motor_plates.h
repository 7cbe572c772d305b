#pragma once
// Nameplates for tests: three-phase motors for well pumps as the trade at large knows them. Common practice, no source;
// figures rounded, and made to agree with each other.
#include <array>
#include <cmath>
#include <numbers>

#include "plant/motor.h"

namespace wellproof::plates {

/// A size of motor with its usual figures.
struct Size {
  double power_hp = 0;
  double service_factor = 1;
  double efficiency = 0;
  double power_factor = 0;
  double service_current_ratio = 1;  // service-factor amperes over full-load amperes
};

inline constexpr std::array<Size, 9> sizes = {{{0.5, 1.6, 0.62, 0.68, 1.33},
                                               {0.75, 1.5, 0.65, 0.70, 1.28},
                                               {1, 1.4, 0.68, 0.72, 1.25},
                                               {1.5, 1.3, 0.72, 0.785, 1.20},
                                               {2, 1.25, 0.72, 0.76, 1.20},
                                               {3, 1.15, 0.75, 0.76, 1.12},
                                               {5, 1.15, 0.78, 0.78, 1.12},
                                               {7.5, 1.15, 0.79, 0.79, 1.12},
                                               {10, 1.15, 0.80, 0.80, 1.12}}};

/// A plate by size, supply and number of pole pairs: slip 4.2 %, no-load current half and locked-rotor current five
/// times the service-factor amperes.
inline MotorOf<double> plate(Size const& size, double voltage_v = 230, double frequency_hz = 60, int pole_pairs = 1) {
  double const power_w = size.power_hp * 745.7;
  double const current_a = power_w / (size.efficiency * size.power_factor * std::numbers::sqrt3 * voltage_v);
  double const service_current_a = current_a * size.service_current_ratio;
  MotorOf<double> motor;
  motor.power_w = power_w;
  motor.service_factor = size.service_factor;
  motor.voltage_v = voltage_v;
  motor.frequency_hz = frequency_hz;
  motor.full_load_current_a = current_a;
  motor.service_factor_current_a = service_current_a;
  motor.efficiency = size.efficiency;
  motor.power_factor = size.power_factor;
  motor.speed_rad_s = 2 * std::numbers::pi * frequency_hz / pole_pairs * (1 - 0.042);
  motor.no_load_current_a = 0.5 * service_current_a;
  motor.locked_rotor_current_a = 5 * service_current_a;
  motor.winding_limit_c = 130;
  return motor;
}

/// A load that takes the same power at any speed, as a plate states it.
struct SteadyPower {
  double power_w = 0;
  Sloped operator()(double rotor_speed_rad_s) const {
    return {power_w / rotor_speed_rad_s, -power_w / (rotor_speed_rad_s * rotor_speed_rad_s)};
  }
};

/// A load as a pump's: power with the cube of speed.
struct PumpLike {
  double power_w = 0;
  double at_speed_rad_s = 0;
  Sloped operator()(double rotor_speed_rad_s) const {
    double const factor = power_w / (at_speed_rad_s * at_speed_rad_s * at_speed_rad_s);
    return {factor * rotor_speed_rad_s * rotor_speed_rad_s, 2 * factor * rotor_speed_rad_s};
  }
};

template <class Load>
MotorPoint point_under(FedMotor const& motor, Load const& load) {
  return motor.at(motor.slip_under(load, 0.03));
}

/// The plate that a circuit would carry, by its own currents and losses.
inline MotorOf<double> plate_of(Circuit const& circuit, double voltage_v, double power_w, double service_factor) {
  FedMotor const motor(circuit, circuit.base_frequency_hz, voltage_v, 0);
  MotorPoint const rated = point_under(motor, SteadyPower{power_w});
  MotorOf<double> plate;
  plate.power_w = power_w;
  plate.service_factor = service_factor;
  plate.voltage_v = voltage_v;
  plate.frequency_hz = circuit.base_frequency_hz;
  plate.full_load_current_a = rated.current_a;
  plate.service_factor_current_a = point_under(motor, SteadyPower{power_w * service_factor}).current_a;
  plate.efficiency = rated.shaft_power_w / rated.input_power_w;
  plate.power_factor = rated.power_factor;
  plate.speed_rad_s = rated.rotor_speed_rad_s;
  plate.no_load_current_a = point_under(motor, SteadyPower{0}).current_a;
  plate.locked_rotor_current_a = motor.at(1).current_a;
  plate.winding_limit_c = 130;
  return plate;
}

/// chapman_2012, examples 6-3 and 6-5: 460 V, 25 hp, 60 Hz, four poles. No core resistance: 1100 W of rotational loss.
inline constexpr Circuit chapman = {.stator_ohm = 0.641,
                                    .stator_reactance_ohm = 1.106,
                                    .rotor_ohm = 0.332,
                                    .rotor_reactance_ohm = 0.464,
                                    .magnetising_reactance_ohm = 26.3,
                                    .core_ohm = 0,
                                    .friction_windage_w = 0,
                                    .base_frequency_hz = 60,
                                    .pole_pairs = 2};

/// A small two-pole motor with every element of the circuit.
inline constexpr Circuit small = {.stator_ohm = 2.0,
                                  .stator_reactance_ohm = 1.9,
                                  .rotor_ohm = 1.38,
                                  .rotor_reactance_ohm = 1.9,
                                  .magnetising_reactance_ohm = 43,
                                  .core_ohm = 380,
                                  .friction_windage_w = 140,
                                  .base_frequency_hz = 60,
                                  .pole_pairs = 1};

}  // namespace wellproof::plates
