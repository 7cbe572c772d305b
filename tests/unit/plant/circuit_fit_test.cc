#include <gtest/gtest.h>

#include <cmath>

#include "unit/plant/motor_plates.h"

namespace wellproof {
namespace {

using plates::SteadyPower;

/// Breakdown torque over the torque at service-factor load.
double reserve(Circuit const& circuit, MotorOf<double> const& plate) {
  FedMotor const motor(circuit, plate.frequency_hz, plate.voltage_v, 0);
  return motor.shaft_torque_n_m(motor.breakdown_slip()).value /
         (plate.power_w * plate.service_factor / plate.speed_rad_s);
}

TEST(CircuitFit, a_plate_made_by_a_circuit_is_met) {
  auto const plate = plates::plate_of(plates::small, 230, 1119, 1.3);
  CircuitFit const fit = fit_circuit(plate);
  EXPECT_TRUE(fit.converged);
  EXPECT_LT(fit.worst_misfit, 0.01);
  EXPECT_NEAR(fit.circuit.rotor_ohm, plates::small.rotor_ohm, 0.05 * plates::small.rotor_ohm);
  EXPECT_NEAR(fit.circuit.magnetising_reactance_ohm, plates::small.magnetising_reactance_ohm,
              0.03 * plates::small.magnetising_reactance_ohm);
}

TEST(CircuitFit, every_usual_plate_converges_to_a_motor_with_torque_in_reserve) {
  for (auto const& size : plates::sizes) {
    for (double const voltage_v : {200.0, 230.0, 400.0, 460.0, 575.0}) {
      for (double const frequency_hz : {50.0, 60.0}) {
        for (int const pole_pairs : {1, 2}) {
          auto const plate = plates::plate(size, voltage_v, frequency_hz, pole_pairs);
          CircuitFit const fit = fit_circuit(plate);
          EXPECT_TRUE(fit.converged) << size.power_hp;
          EXPECT_EQ(fit.circuit.pole_pairs, pole_pairs);
          EXPECT_EQ(fit.circuit.base_frequency_hz, frequency_hz);
          EXPECT_GT(reserve(fit.circuit, plate), 1.5) << size.power_hp;

          FedMotor const motor(fit.circuit, frequency_hz, voltage_v, 0);
          auto current_a = [&](double power_w) { return plates::point_under(motor, SteadyPower{power_w}).current_a; };
          EXPECT_NEAR(current_a(plate.power_w), plate.full_load_current_a, 0.02 * plate.full_load_current_a);
          EXPECT_NEAR(current_a(plate.power_w * plate.service_factor), plate.service_factor_current_a,
                      0.04 * plate.service_factor_current_a);
          EXPECT_NEAR(current_a(0), plate.no_load_current_a, 0.04 * plate.no_load_current_a) << size.power_hp;
        }
      }
    }
  }
}

TEST(CircuitFit, the_same_motor_at_another_voltage_is_the_same_circuit_in_other_ohms) {
  Circuit const low = fit_circuit(plates::plate(plates::sizes[3], 230)).circuit;
  Circuit const high = fit_circuit(plates::plate(plates::sizes[3], 460)).circuit;
  EXPECT_NEAR(high.stator_ohm, 4 * low.stator_ohm, 1e-3 * high.stator_ohm);
  EXPECT_NEAR(high.rotor_ohm, 4 * low.rotor_ohm, 1e-3 * high.rotor_ohm);
  EXPECT_NEAR(high.magnetising_reactance_ohm, 4 * low.magnetising_reactance_ohm, 1e-3 * high.magnetising_reactance_ohm);
  EXPECT_NEAR(high.friction_windage_w, low.friction_windage_w, 1e-3 * low.friction_windage_w);
}

TEST(CircuitFit, a_plate_that_contradicts_itself_shows_it_and_still_gives_a_motor) {
  auto const sound = plates::plate(plates::sizes[3]);
  auto twice_the_amperes = sound;
  twice_the_amperes.full_load_current_a *= 2;
  auto little_at_standstill = sound;
  little_at_standstill.locked_rotor_current_a = 1.2 * sound.full_load_current_a;
  auto more_without_load = sound;
  more_without_load.no_load_current_a = 1.5 * sound.full_load_current_a;
  auto slips_more_than_it_loses = sound;
  slips_more_than_it_loses.speed_rad_s = 0.7 * 2 * std::numbers::pi * 60;
  slips_more_than_it_loses.efficiency = 0.95;
  for (auto const& plate : {twice_the_amperes, little_at_standstill, more_without_load, slips_more_than_it_loses}) {
    CircuitFit const fit = fit_circuit(plate);
    EXPECT_TRUE(fit.converged);
    EXPECT_GT(fit.worst_misfit, 0.2);
    EXPECT_LT(fit.worst_misfit, 5);
    EXPECT_GT(reserve(fit.circuit, plate), 1.49);
    for (double const element : {fit.circuit.stator_ohm, fit.circuit.stator_reactance_ohm, fit.circuit.rotor_ohm,
                                 fit.circuit.magnetising_reactance_ohm, fit.circuit.core_ohm}) {
      EXPECT_TRUE(std::isfinite(element) && element > 0);
    }
  }
}

TEST(CircuitFit, a_plate_rounded_to_synchronous_speed_or_a_little_over_it_keeps_its_poles) {
  for (double const factor : {0.999, 1.0, 1.005}) {
    auto plate = plates::plate(plates::sizes[3], 230, 60, 2);
    plate.speed_rad_s = factor * 2 * std::numbers::pi * 60 / 2;
    CircuitFit const fit = fit_circuit(plate);
    EXPECT_EQ(fit.circuit.pole_pairs, 2);
    EXPECT_TRUE(std::isfinite(fit.worst_misfit));
  }
}

TEST(CircuitFit, the_same_plate_gives_the_same_bits) {
  auto const plate = plates::plate(plates::sizes[4]);
  Circuit const one = fit_circuit(plate).circuit;
  Circuit const two = fit_circuit(plate).circuit;
  EXPECT_EQ(one.stator_ohm, two.stator_ohm);
  EXPECT_EQ(one.core_ohm, two.core_ohm);
  EXPECT_EQ(one.stator_reactance_ohm, two.stator_reactance_ohm);
}

}  // namespace
}  // namespace wellproof
