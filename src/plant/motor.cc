#include "plant/motor.h"

#include <cmath>
#include <numbers>

namespace wellproof {

// Complex arithmetic is written out: std::complex checks each product for infinities, which costs more than the
// product.
FedMotor::FedMotor(Circuit const& circuit, double frequency_hz, double voltage_v, double cable_ohm) {
  double const stretch = frequency_hz / circuit.base_frequency_hz;
  double const turn_rad = 2 * std::numbers::pi / circuit.pole_pairs;
  double const base_speed_rad_s = turn_rad * circuit.base_frequency_hz;
  phase_voltage_v_ = voltage_v * (1 / std::numbers::sqrt3);
  synchronous_speed_rad_s_ = turn_rad * frequency_hz;
  cable_ohm_ = cable_ohm;
  stator_ohm_ = circuit.stator_ohm;
  stator_reactance_ohm_ = circuit.stator_reactance_ohm * stretch;
  rotor_ohm_ = circuit.rotor_ohm;
  rotor_reactance_ohm_ = circuit.rotor_reactance_ohm * stretch;
  friction_torque_factor_ = circuit.friction_windage_w / (base_speed_rad_s * base_speed_rad_s);

  magnetising_reactance_ohm_ = circuit.magnetising_reactance_ohm * stretch;
  if (circuit.core_ohm > 0) {
    core_conductance_s_ = 1 / circuit.core_ohm;
    // R·jX/(R + jX), with g = X/R: X·(g + j)/(1 + g²)
    double const ratio = magnetising_reactance_ohm_ * core_conductance_s_;
    magnetising_reactance_ohm_ /= 1 + ratio * ratio;
    magnetising_ohm_ = ratio * magnetising_reactance_ohm_;
  }

  double const series_ohm = stator_ohm_ + cable_ohm_;
  double const loop_ohm = series_ohm + magnetising_ohm_;
  double const loop_reactance_ohm = stator_reactance_ohm_ + magnetising_reactance_ohm_;
  double const loop_square = loop_ohm * loop_ohm + loop_reactance_ohm * loop_reactance_ohm;
  if (!(synchronous_speed_rad_s_ > 0 && loop_square > 0)) {
    return;  // nothing turns
  }
  double const inverse = 1 / loop_square;
  double const real = series_ohm * magnetising_ohm_ - stator_reactance_ohm_ * magnetising_reactance_ohm_;
  double const imaginary = series_ohm * magnetising_reactance_ohm_ + stator_reactance_ohm_ * magnetising_ohm_;
  thevenin_ohm_ = (real * loop_ohm + imaginary * loop_reactance_ohm) * inverse;
  thevenin_reactance_ohm_ = (imaginary * loop_ohm - real * loop_reactance_ohm) * inverse + rotor_reactance_ohm_;
  double const magnetising_square =
      magnetising_ohm_ * magnetising_ohm_ + magnetising_reactance_ohm_ * magnetising_reactance_ohm_;
  torque_factor_ =
      3 * phase_voltage_v_ * phase_voltage_v_ * magnetising_square * inverse * rotor_ohm_ / synchronous_speed_rad_s_;
  double const source_ohm =
      std::sqrt(thevenin_ohm_ * thevenin_ohm_ + thevenin_reactance_ohm_ * thevenin_reactance_ohm_);
  breakdown_slip_ = rotor_ohm_ < source_ohm ? rotor_ohm_ / source_ohm : 1;
}

// T = K·s/D with D = (R_th·s + R_2)² + (X·s)²: numerator and denominator multiplied by s², so that synchronous speed is
// a point like any other. D − s·D' = R_2² − |Z|²·s².
Sloped FedMotor::shaft_torque_n_m(double slip) const {
  double const real = thevenin_ohm_ * slip + rotor_ohm_;
  double const imaginary = thevenin_reactance_ohm_ * slip;
  double const inverse = 1 / (real * real + imaginary * imaginary);
  double const source = thevenin_ohm_ * slip * thevenin_ohm_ * slip + imaginary * imaginary;
  double const friction_n_m = friction_torque_factor_ * synchronous_speed_rad_s_;
  return {torque_factor_ * slip * inverse - friction_n_m * (1 - slip),
          torque_factor_ * (rotor_ohm_ * rotor_ohm_ - source) * inverse * inverse + friction_n_m};
}

MotorPoint FedMotor::at(double slip) const {
  MotorPoint point;
  point.slip = slip;
  point.rotor_speed_rad_s = synchronous_speed_rad_s_ * (1 - slip);
  point.stalled = slip >= 1;

  // Rotor beside magnetising branch, Z_m·(R + jsX)/(R + jsX + s·Z_m); everything of the rotor multiplied by slip.
  double const rotor_reactance_ohm = slip * rotor_reactance_ohm_;
  double const both_ohm = rotor_ohm_ + slip * magnetising_ohm_;
  double const both_reactance_ohm = rotor_reactance_ohm + slip * magnetising_reactance_ohm_;
  double const both_square = both_ohm * both_ohm + both_reactance_ohm * both_reactance_ohm;
  double const inverse = both_square > 0 ? 1 / both_square : 0;
  double const real = magnetising_ohm_ * rotor_ohm_ - magnetising_reactance_ohm_ * rotor_reactance_ohm;
  double const imaginary = magnetising_ohm_ * rotor_reactance_ohm + magnetising_reactance_ohm_ * rotor_ohm_;
  double const input_ohm = cable_ohm_ + stator_ohm_ + (real * both_ohm + imaginary * both_reactance_ohm) * inverse;
  double const input_reactance_ohm =
      stator_reactance_ohm_ + (imaginary * both_ohm - real * both_reactance_ohm) * inverse;
  double const input_impedance_ohm = std::sqrt(input_ohm * input_ohm + input_reactance_ohm * input_reactance_ohm);
  if (!(input_impedance_ohm > 0)) {
    return point;
  }

  double const per_impedance = 1 / input_impedance_ohm;
  point.current_a = phase_voltage_v_ * per_impedance;
  point.power_factor = input_ohm * per_impedance;
  double const current_square = 3 * point.current_a * point.current_a;  // of the three phases
  point.input_power_w = current_square * input_ohm;
  point.cable_loss_w = current_square * cable_ohm_;
  point.stator_loss_w = current_square * stator_ohm_;
  // |E|² of the gap's voltage is |I|²·|Z_m|²·|R + jsX|²/|both|²; the rotor's current is E·s/(R + jsX).
  double const gap = current_square * inverse *
                     (magnetising_ohm_ * magnetising_ohm_ + magnetising_reactance_ohm_ * magnetising_reactance_ohm_);
  point.core_loss_w = gap * (rotor_ohm_ * rotor_ohm_ + rotor_reactance_ohm * rotor_reactance_ohm) * core_conductance_s_;
  double const gap_power_w = gap * slip * rotor_ohm_;
  point.rotor_loss_w = slip * gap_power_w;
  point.friction_windage_w = friction_torque_factor_ * point.rotor_speed_rad_s * point.rotor_speed_rad_s;
  point.shaft_power_w = gap_power_w - point.rotor_loss_w - point.friction_windage_w;
  point.shaft_torque_n_m = synchronous_speed_rad_s_ > 0 ? gap_power_w / synchronous_speed_rad_s_ -
                                                              friction_torque_factor_ * point.rotor_speed_rad_s
                                                        : 0;
  return point;
}

}  // namespace wellproof
