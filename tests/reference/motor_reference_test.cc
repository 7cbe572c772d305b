// The T circuit against worked examples of textbooks, and fitted motors against the code's table of currents.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "plant/motor.h"
#include "unit/plant/motor_plates.h"

namespace wellproof {
namespace {

double gap_power_w(MotorPoint const& point) {
  return point.shaft_power_w + point.friction_windage_w + point.rotor_loss_w;
}

double rotor_current_a(MotorPoint const& point, Circuit const& circuit) {
  return std::sqrt(point.rotor_loss_w / (3 * circuit.rotor_ohm));
}

/// Friction and windage at synchronous speed that make a rotational loss as given at a slip.
double at_synchronous_w(double rotational_loss_w, double slip) {
  return rotational_loss_w / ((1 - slip) * (1 - slip));
}

// chapman_2012, example 6-3: printed 18.88 A, power factor .833, input 12.53 kW, air gap 11.84 kW, converted 11.58 kW,
// induced torque 62.8 N·m; the more exact figures were computed from the circuit with complex numbers.
TEST(MotorReference, chapman_example_at_2_2_percent_slip) {
  Circuit circuit = plates::chapman;
  circuit.friction_windage_w = at_synchronous_w(1100, 0.022);
  MotorPoint const point = FedMotor(circuit, 60, 460, 0).at(0.022);
  EXPECT_NEAR(point.current_a, 18.88, 0.02);
  EXPECT_NEAR(point.current_a, 18.892, 0.0005);
  EXPECT_NEAR(point.power_factor, 0.833, 0.001);
  EXPECT_NEAR(point.power_factor, 0.83212, 0.000005);
  EXPECT_NEAR(point.input_power_w, 12525.1, 0.06);
  EXPECT_NEAR(point.stator_loss_w, 686.3, 0.06);
  EXPECT_NEAR(gap_power_w(point), 11838.8, 0.06);
  EXPECT_NEAR(gap_power_w(point) - point.rotor_loss_w, 11578.4, 0.06);
  EXPECT_NEAR(point.shaft_power_w, 10478.4, 0.06);
  EXPECT_NEAR(point.shaft_torque_n_m, 56.840, 0.0006);
  EXPECT_NEAR(gap_power_w(point) / (2 * std::numbers::pi * 30), 62.807, 0.0006);
  EXPECT_NEAR(point.rotor_speed_rad_s, 184.35, 0.005);
}

// chapman_2012, example 6-5, printed (from memory) slip .198, 229 N·m at breakdown and 104 N·m at start, with rounding
// on the way; computed from the circuit .2014, 230.8 and 106.6 N·m, locked rotor 144.5 A.
TEST(MotorReference, chapman_example_at_breakdown_and_start) {
  FedMotor const motor(plates::chapman, 60, 460, 0);
  EXPECT_NEAR(motor.breakdown_slip(), 0.2014, 0.00006);
  EXPECT_NEAR(motor.shaft_torque_n_m(motor.breakdown_slip()).value, 230.8, 0.06);
  EXPECT_NEAR(motor.shaft_torque_n_m(1).value, 106.6, 0.06);
  EXPECT_NEAR(motor.at(1).current_a, 144.5, 0.06);
  EXPECT_NEAR(motor.breakdown_slip(), 0.198, 0.03 * 0.198);
  EXPECT_NEAR(motor.shaft_torque_n_m(motor.breakdown_slip()).value, 229, 0.03 * 229);
  EXPECT_NEAR(motor.shaft_torque_n_m(1).value, 104, 0.03 * 104);
}

constexpr Circuit fitzgerald = {.stator_ohm = 0.294,
                                .stator_reactance_ohm = 0.503,
                                .rotor_ohm = 0.144,
                                .rotor_reactance_ohm = 0.209,
                                .magnetising_reactance_ohm = 13.25,
                                .core_ohm = 0,
                                .friction_windage_w = 0,
                                .base_frequency_hz = 60,
                                .pole_pairs = 3};

// fitzgerald_2003, examples 6.2 and 6.3: 220 V, six poles. Printed (from memory) 18.8 A, .845, 5740 W, 5220 W, 42.4
// N·m; 23.9 A, 7970 W, 65.4 N·m at 3 %; 175 N·m at 970 rpm, 78.0 N·m at start; the more exact ones computed.
TEST(MotorReference, fitzgerald_example) {
  Circuit circuit = fitzgerald;
  circuit.friction_windage_w = at_synchronous_w(403, 0.02);
  MotorPoint const point = FedMotor(circuit, 60, 220, 0).at(0.02);
  EXPECT_NEAR(point.current_a, 18.778, 0.0006);
  EXPECT_NEAR(point.power_factor, 0.8456, 0.00006);
  EXPECT_NEAR(point.input_power_w, 6050.4, 0.06);
  EXPECT_NEAR(gap_power_w(point), 5739.4, 0.06);
  EXPECT_NEAR(point.shaft_power_w, 5221.6, 0.1);
  EXPECT_NEAR(point.shaft_torque_n_m, 42.40, 0.006);

  FedMotor const motor(fitzgerald, 60, 220, 0);
  MotorPoint const at_three = motor.at(0.03);
  EXPECT_NEAR(rotor_current_a(at_three, fitzgerald), 23.89, 0.006);
  EXPECT_NEAR(at_three.shaft_power_w, 7973, 0.6);
  EXPECT_NEAR(at_three.shaft_torque_n_m, 65.41, 0.006);
  EXPECT_NEAR(motor.shaft_torque_n_m(motor.breakdown_slip()).value, 174.6, 0.06);
  EXPECT_NEAR((1 - motor.breakdown_slip()) * 1200, 969.8, 0.06);
  EXPECT_NEAR(motor.shaft_torque_n_m(1).value, 77.6, 0.06);
}

// A problem of public lecture notes on machines (440 V, 50 Hz, four poles), printed: 37.545 A, rotor 32.60 A,
// 22 956 W over the air gap, 21 097 W and 137.05 N·m at the shaft.
TEST(MotorReference, lecture_problem_at_50_hz) {
  Circuit circuit = fitzgerald;
  circuit.rotor_reactance_ohm = 0.203;
  circuit.base_frequency_hz = 50;
  circuit.pole_pairs = 2;
  circuit.friction_windage_w = at_synchronous_w(1400, 0.02);
  MotorPoint const point = FedMotor(circuit, 50, 440, 0).at(0.02);
  EXPECT_NEAR(point.current_a, 37.545, 0.0015);
  EXPECT_NEAR(rotor_current_a(point, circuit), 32.60, 0.005);
  EXPECT_NEAR(gap_power_w(point), 22956, 0.0003 * 22956);
  EXPECT_NEAR(point.shaft_power_w, 21097, 0.0003 * 21097);
  EXPECT_NEAR(point.shaft_torque_n_m, 137.05, 0.0003 * 137.05);
}

// A motor fed over a resistance is the motor with that much more in its stator: nothing to look up, but what a cable
// is.
TEST(MotorReference, a_cable_is_stator_resistance_outside_the_motor) {
  Circuit with_cable = plates::chapman;
  with_cable.stator_ohm += 0.5;
  MotorPoint const inside = FedMotor(with_cable, 60, 460, 0).at(0.03);
  MotorPoint const outside = FedMotor(plates::chapman, 60, 460, 0.5).at(0.03);
  EXPECT_NEAR(outside.current_a, inside.current_a, 1e-12 * inside.current_a);
  EXPECT_NEAR(outside.shaft_power_w, inside.shaft_power_w, 1e-11 * inside.shaft_power_w);
  EXPECT_NEAR(outside.cable_loss_w + outside.stator_loss_w, inside.stator_loss_w, 1e-11 * inside.stator_loss_w);
}

struct CodeCurrent {
  double power_hp;
  double current_a;
};

// nec_2020, table 430.250, three-phase 230 V. The code's figures are for wiring and stand for all motors of a size, so
// one motor may lie a fifth off.
constexpr CodeCurrent code_currents[] = {{0.5, 2.2}, {0.75, 3.2}, {1, 4.2},    {1.5, 6.0}, {2, 6.8},
                                         {3, 9.6},   {5, 15.2},   {7.5, 22.0}, {10, 28.0}};

TEST(MotorReference, fitted_motors_draw_about_what_the_code_lists) {
  for (auto const& size : plates::sizes) {
    auto const plate = plates::plate(size);
    FedMotor const motor(fit_circuit(plate).circuit, 60, 230, 0);
    double const current_a = plates::point_under(motor, plates::SteadyPower{plate.power_w}).current_a;
    for (auto const& row : code_currents) {
      if (row.power_hp == size.power_hp) {
        EXPECT_NEAR(current_a, row.current_a, 0.2 * row.current_a) << size.power_hp << " hp";
      }
    }
  }
}

}  // namespace
}  // namespace wellproof
