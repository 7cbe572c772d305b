// What holds for motor, drive and warmth whatever the numbers: energy, slopes, units, the stable meeting of motor and
// load, and that a plate tells the circuit that made it.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <cmath>

#include "law/homogeneous.h"
#include "plant/drive.h"
#include "plant/heat.h"
#include "plant/motor.h"
#include "unit/plant/motor_plates.h"

namespace wellproof {
namespace {

/// Any number between two, evenly.
double between(double low, double high) {
  return low + (high - low) * *rc::gen::inRange(0, 1000001) * 1e-6;
}

Rescaling any_rescaling() {
  auto const factor = [] { return std::exp(between(-2, 2)); };
  return {factor(), factor(), factor(), factor()};
}

/// A motor with its rating. Elements as shares of the rated impedance, about 0.58·V²/P for a small motor.
struct AnyMotor {
  Circuit circuit;
  double power_w = 0;
  double voltage_v = 0;
};

AnyMotor any_motor() {
  AnyMotor motor;
  motor.power_w = std::exp(between(std::log(370), std::log(7500)));
  motor.voltage_v = between(200, 575);
  double const rated_ohm = 0.58 * motor.voltage_v * motor.voltage_v / motor.power_w;
  double const leakage_ohm = rated_ohm * between(0.15, 0.35);
  double const split = between(0.4, 0.6);
  motor.circuit = {.stator_ohm = rated_ohm * between(0.03, 0.10),
                   .stator_reactance_ohm = leakage_ohm * split,
                   .rotor_ohm = rated_ohm * between(0.02, 0.06),
                   .rotor_reactance_ohm = leakage_ohm * (1 - split),
                   .magnetising_reactance_ohm = rated_ohm * between(1.2, 3),
                   .core_ohm = *rc::gen::inRange(0, 4) == 0 ? 0 : rated_ohm * between(8, 25),
                   .friction_windage_w = motor.power_w * between(0, 0.12),
                   .base_frequency_hz = *rc::gen::inRange(0, 2) == 0 ? 50.0 : 60.0,
                   .pole_pairs = *rc::gen::inRange(1, 3)};
  return motor;
}

/// The motor at any frequency, voltage and length of cable.
FedMotor any_fed(AnyMotor const& motor) {
  double const frequency_hz = motor.circuit.base_frequency_hz * between(0.3, 1.4);
  double const voltage_v = motor.voltage_v * between(0.3, 1.1);
  return {motor.circuit, frequency_hz, voltage_v, motor.circuit.stator_ohm * between(0, 1)};
}

RC_GTEST_PROP(MotorLaw, input_is_the_losses_and_the_shaft_power, ()) {
  MotorPoint const point = any_fed(any_motor()).at(between(0, 1));
  double const parts_w = point.cable_loss_w + point.stator_loss_w + point.core_loss_w + point.rotor_loss_w +
                         point.friction_windage_w + point.shaft_power_w;
  RC_ASSERT(std::abs(parts_w - point.input_power_w) < 1e-12 * point.input_power_w);
  RC_ASSERT(point.cable_loss_w >= 0 && point.stator_loss_w >= 0 && point.core_loss_w >= 0 && point.rotor_loss_w >= 0);
  RC_ASSERT(point.power_factor > 0 && point.power_factor < 1);
}

RC_GTEST_PROP(MotorLaw, thevenin_and_the_branches_agree, ()) {
  FedMotor const motor = any_fed(any_motor());
  double const slip = between(0, 1);
  MotorPoint const point = motor.at(slip);
  double const scale_n_m = point.input_power_w / motor.synchronous_speed_rad_s();
  RC_ASSERT(std::abs(motor.shaft_torque_n_m(slip).value - point.shaft_torque_n_m) < 1e-11 * scale_n_m);
  RC_ASSERT(std::abs(point.shaft_torque_n_m * point.rotor_speed_rad_s - point.shaft_power_w) <
            1e-11 * point.input_power_w);
}

RC_GTEST_PROP(MotorLaw, the_slope_of_torque_is_its_difference, ()) {
  FedMotor const motor = any_fed(any_motor());
  double const slip = between(1e-3, 1);
  double const step = 1e-5 * slip;
  double const difference =
      (motor.shaft_torque_n_m(slip + step).value - motor.shaft_torque_n_m(slip - step).value) / (2 * step);
  double const scale_n_m = motor.shaft_torque_n_m(motor.breakdown_slip()).value / motor.breakdown_slip();
  RC_ASSERT(std::abs(motor.shaft_torque_n_m(slip).slope - difference) < 1e-5 * std::abs(scale_n_m));
}

RC_GTEST_PROP(MotorLaw, a_load_below_breakdown_is_met_on_the_stable_side, ()) {
  FedMotor const motor = any_fed(any_motor());
  double const most_n_m = motor.shaft_torque_n_m(motor.breakdown_slip()).value;
  RC_PRE(most_n_m > 0);
  double const speed_rad_s = motor.synchronous_speed_rad_s() * (1 - 0.5 * motor.breakdown_slip());
  plates::PumpLike const pump{between(0, 0.8) * most_n_m * speed_rad_s, speed_rad_s};
  double const slip = motor.slip_under(pump, between(0, 1));
  RC_ASSERT(slip >= 0 && slip < motor.breakdown_slip());
  RC_ASSERT(std::abs(motor.shaft_torque_n_m(slip).value - pump(motor.synchronous_speed_rad_s() * (1 - slip)).value) <
            1e-7 * most_n_m);

  plates::PumpLike const heavier{pump.power_w + 0.05 * most_n_m * speed_rad_s, speed_rad_s};
  RC_ASSERT(motor.slip_under(heavier, slip) > slip);
}

RC_GTEST_PROP(MotorLaw, motor_laws_hold_in_any_units, ()) {
  AnyMotor const any = any_motor();
  Circuit const& c = any.circuit;
  double const slip = between(0.001, 1);
  int const pole_pairs = c.pole_pairs;
  auto fed = [&](double rs, double xs, double rr, double xr, double xm, double rc, double fw, double base_hz, double hz,
                 double v, double cable) {
    return FedMotor(Circuit{rs, xs, rr, xr, xm, rc, fw, base_hz, pole_pairs}, hz, v, cable);
  };
  std::array<Measured, 11> const arguments{{{c.stator_ohm, powers::resistance},
                                            {c.stator_reactance_ohm, powers::resistance},
                                            {c.rotor_ohm, powers::resistance},
                                            {c.rotor_reactance_ohm, powers::resistance},
                                            {c.magnetising_reactance_ohm, powers::resistance},
                                            {c.core_ohm, powers::resistance},
                                            {0, powers::power},  // friction: below, where it does not cancel
                                            {c.base_frequency_hz, powers::rotation},
                                            {between(20, 80), powers::rotation},
                                            {any.voltage_v, powers::voltage},
                                            {c.stator_ohm * between(0, 1), powers::resistance}}};
  Rescaling const rescaling = any_rescaling();
  auto torque = [&](auto... a) { return fed(a...).shaft_torque_n_m(slip).value; };
  auto current = [&](auto... a) { return fed(a...).at(slip).current_a; };
  auto input = [&](auto... a) { return fed(a...).at(slip).input_power_w; };
  RC_ASSERT(departure(torque, arguments, powers::torque, rescaling) < 1e-11);
  RC_ASSERT(departure(current, arguments, powers::current, rescaling) < 1e-11);
  RC_ASSERT(departure(input, arguments, powers::power, rescaling) < 1e-11);
  auto friction = [&](double fw, double base_hz, double hz) {
    return fed(1, 1, 1, 1, 1, 0, fw, base_hz, hz, 0, 0).shaft_torque_n_m(0.04).value;
  };
  std::array<Measured, 3> const rotating{
      {{between(1, 500), powers::power}, {c.base_frequency_hz, powers::rotation}, {between(20, 80), powers::rotation}}};
  RC_ASSERT(departure(friction, rotating, powers::torque, rescaling) < 1e-11);
}

RC_GTEST_PROP(MotorLaw, drive_and_warmth_hold_in_any_units, ()) {
  Rescaling const rescaling = any_rescaling();
  auto loss = [](double output, double current, double rated_current, double rated_power) {
    return drive_loss_w(output, current, rated_current, rated_power, 0.95);
  };
  std::array<Measured, 4> const drive{{{between(0, 2000), powers::power},
                                       {between(0, 10), powers::current},
                                       {between(4, 12), powers::current},
                                       {between(1000, 3000), powers::power}}};
  RC_ASSERT(departure(loss, drive, powers::power, rescaling) < 1e-12);

  auto volts = [](double hz, double base_hz, double base, double available) {
    return drive_voltage_v(hz, base_hz, base, available);
  };
  std::array<Measured, 4> const fed{{{between(10, 90), powers::rotation},
                                     {60, powers::rotation},
                                     {230, powers::voltage},
                                     {between(150, 260), powers::voltage}}};
  RC_ASSERT(departure(volts, fed, powers::voltage, rescaling) < 1e-12);

  auto conductance = [](double at_reference, double reference, double velocity) {
    MotorHeat heat;
    heat.shell_to_water_w_k = at_reference;
    heat.reference_velocity_m_s = reference;
    return shell_to_water_w_k(heat, velocity);
  };
  std::array<Measured, 3> const shell{
      {{between(5, 80), powers::power}, {0.0762, powers::velocity}, {between(0, 1), powers::velocity}}};
  RC_ASSERT(departure(conductance, shell, powers::power, rescaling) < 1e-11);
}

RC_GTEST_PROP(MotorLaw, a_plate_tells_the_currents_of_the_circuit_that_made_it, ()) {
  AnyMotor const motor = any_motor();
  double const service_factor = between(1.1, 1.6);
  FedMotor const truth(motor.circuit, motor.circuit.base_frequency_hz, motor.voltage_v, 0);
  double const rated_n_m = motor.power_w / truth.synchronous_speed_rad_s();
  RC_PRE(truth.shaft_torque_n_m(truth.breakdown_slip()).value > 1.8 * service_factor * rated_n_m);
  RC_PRE(truth.breakdown_slip() < 0.5);

  CircuitFit const fit = fit_circuit(plates::plate_of(motor.circuit, motor.voltage_v, motor.power_w, service_factor));
  RC_ASSERT(fit.converged);
  RC_ASSERT(fit.circuit.pole_pairs == motor.circuit.pole_pairs);
  FedMotor const found(fit.circuit, motor.circuit.base_frequency_hz, motor.voltage_v, 0);
  for (int percent = 0; percent <= 120; percent += 5) {
    plates::SteadyPower const load{0.01 * percent * motor.power_w};
    double const true_a = plates::point_under(truth, load).current_a;
    RC_ASSERT(std::abs(plates::point_under(found, load).current_a - true_a) < 0.02 * true_a);
  }
}

}  // namespace
}  // namespace wellproof
