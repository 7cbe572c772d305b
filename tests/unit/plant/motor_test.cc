#include "plant/motor.h"

#include <gtest/gtest.h>

#include "unit/plant/motor_plates.h"

namespace wellproof {
namespace {

using plates::PumpLike;
using plates::SteadyPower;

double parts_w(MotorPoint const& point) {
  return point.cable_loss_w + point.stator_loss_w + point.core_loss_w + point.rotor_loss_w + point.friction_windage_w +
         point.shaft_power_w;
}

TEST(Motor, input_is_the_losses_and_the_shaft_power) {
  FedMotor const motor(plates::small, 52, 200, 0.4);
  for (double const slip : {0.0, 0.001, 0.04, 0.3, 1.0}) {
    MotorPoint const point = motor.at(slip);
    EXPECT_NEAR(parts_w(point), point.input_power_w, 1e-12 * point.input_power_w) << slip;
    EXPECT_NEAR(std::numbers::sqrt3 * 200 * point.current_a * point.power_factor, point.input_power_w,
                1e-12 * point.input_power_w);
  }
}

TEST(Motor, torque_by_thevenin_is_torque_by_branches) {
  FedMotor const motor(plates::small, 47, 180, 0.7);
  for (double const slip : {0.0, 0.01, 0.05, 0.2, 1.0}) {
    EXPECT_NEAR(motor.shaft_torque_n_m(slip).value, motor.at(slip).shaft_torque_n_m, 1e-11) << slip;
  }
}

TEST(Motor, at_synchronous_speed_only_friction_and_windage_are_left) {
  FedMotor const motor(plates::small, 60, 230, 0);
  EXPECT_NEAR(motor.shaft_torque_n_m(0).value * motor.synchronous_speed_rad_s(), -plates::small.friction_windage_w,
              1e-9);
  EXPECT_NEAR(motor.at(0).shaft_power_w, -plates::small.friction_windage_w, 1e-9);
}

TEST(Motor, no_torque_is_larger_than_at_breakdown) {
  FedMotor const motor(plates::chapman, 60, 460, 0);
  double const most = motor.shaft_torque_n_m(motor.breakdown_slip()).value;
  for (int i = 1; i <= 1000; ++i) {
    EXPECT_LE(motor.shaft_torque_n_m(i * 0.001).value, most);
  }
}

TEST(Motor, meets_its_load) {
  FedMotor const motor(plates::small, 60, 230, 0.3);
  for (double const power_w : {0.0, 100.0, 1000.0, 2000.0}) {
    MotorPoint const point = plates::point_under(motor, PumpLike{power_w, 360});
    EXPECT_NEAR(point.shaft_torque_n_m, PumpLike({power_w, 360})(point.rotor_speed_rad_s).value,
                3e-7);  // N·m: slip is met to 1e-8
    EXPECT_FALSE(point.stalled);
  }
}

TEST(Motor, slip_under_a_load_does_not_hang_on_the_guess) {
  FedMotor const motor(plates::small, 60, 230, 0.3);
  double const slip = motor.slip_under(PumpLike{1200, 360}, 0.03);
  for (double const guess : {-1.0, 0.0, 1e-6, 0.2, 1.0, 7.0}) {
    EXPECT_NEAR(motor.slip_under(PumpLike{1200, 360}, guess), slip, 1e-10);
  }
}

TEST(Motor, stalls_under_more_than_its_breakdown_torque) {
  FedMotor const motor(plates::small, 60, 230, 0.3);
  double const slip = motor.slip_under(PumpLike{20e3, 360}, 0.03);
  EXPECT_EQ(slip, 1);
  MotorPoint const point = motor.at(slip);
  EXPECT_TRUE(point.stalled);
  EXPECT_EQ(point.rotor_speed_rad_s, 0);
  EXPECT_EQ(point.friction_windage_w, 0);
  EXPECT_NEAR(point.shaft_power_w, 0, 1e-9);
}

TEST(Motor, a_longer_cable_takes_torque_and_adds_slip) {
  FedMotor const near(plates::small, 60, 230, 0);
  FedMotor const far(plates::small, 60, 230, 1.5);
  EXPECT_LT(far.shaft_torque_n_m(far.breakdown_slip()).value, near.shaft_torque_n_m(near.breakdown_slip()).value);
  EXPECT_GT(far.slip_under(SteadyPower{1200}, 0.03), near.slip_under(SteadyPower{1200}, 0.03));
  EXPECT_LT(far.at(1).current_a, near.at(1).current_a);
  EXPECT_EQ(near.at(0.04).cable_loss_w, 0);
}

TEST(Motor, without_frequency_nothing_turns_and_nothing_flows) {
  FedMotor const motor(plates::small, 0, 0, 0.3);
  EXPECT_EQ(motor.shaft_torque_n_m(1).value, 0);
  MotorPoint const point = motor.at(1);
  EXPECT_EQ(point.current_a, 0);
  EXPECT_EQ(point.shaft_torque_n_m, 0);
  EXPECT_EQ(point.input_power_w, 0);
}

TEST(Motor, at_constant_volts_per_hertz_the_no_load_current_stays) {
  FedMotor const full(plates::small, 60, 230, 0);
  FedMotor const slow(plates::small, 45, 172.5, 0);
  EXPECT_NEAR(plates::point_under(slow, SteadyPower{0}).current_a, plates::point_under(full, SteadyPower{0}).current_a,
              0.02 * plates::point_under(full, SteadyPower{0}).current_a);
}

// What fixed underload thresholds rest on: 0.56 to 0.66 of the service-factor amperes for a dry pump, 0.75 to 0.85 for
// a shut line (common practice, no source; here the middle of each). A pump takes up to the service-factor load, about
// 57 % of it against a shut line, about a tenth dry.
TEST(Motor, at_full_speed_current_tells_dry_from_shut_from_ordinary_and_at_45_hz_it_does_not) {
  constexpr double dry_threshold = 0.61;
  constexpr double shut_threshold = 0.80;
  for (auto const& size : plates::sizes) {
    if (size.power_hp < 1.5 || size.power_hp > 3) {
      continue;
    }
    auto const plate = plates::plate(size);
    Circuit const circuit = fit_circuit(plate).circuit;
    FedMotor const full(circuit, 60, 230, 0.3);
    FedMotor const slow(circuit, 45, 172.5, 0.3);
    auto share = [&](FedMotor const& motor, double load) {
      PumpLike const pump{load * plate.power_w * plate.service_factor, plate.speed_rad_s};
      return plates::point_under(motor, pump).current_a / plate.service_factor_current_a;
    };
    EXPECT_LT(share(full, 0.12), 0.56) << size.power_hp;
    EXPECT_GT(share(full, 0.08), 0.48) << size.power_hp;
    EXPECT_GT(share(full, 0.57), dry_threshold + 0.05) << size.power_hp;
    EXPECT_LT(share(full, 0.57), shut_threshold - 0.05) << size.power_hp;
    EXPECT_GT(share(full, 0.90), shut_threshold + 0.05) << size.power_hp;

    EXPECT_LT(share(slow, 0.57), dry_threshold) << size.power_hp;
    EXPECT_LT(share(slow, 1.00), shut_threshold - 0.05) << size.power_hp;
    double const gap = share(full, 0.57) - share(full, 0.10);
    EXPECT_LT(share(slow, 0.57) - share(slow, 0.10), 0.45 * gap) << size.power_hp;
  }
}

}  // namespace
}  // namespace wellproof
