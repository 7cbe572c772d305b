#pragma once
// The three-phase induction motor by its per-phase T circuit (ieee_112): stator, magnetising branch with core loss,
// rotor; friction and windage on the shaft. All values per phase of the equivalent star, reactances at base frequency.
// Left out: saturation, stray load loss (it is in what the fit ascribes to the stator), harmonics of the drive's
// voltage, resistance rising with temperature.
#include <algorithm>

#include "contract/finding.h"
#include "plant/slope.h"
#include "site/site.h"

namespace wellproof {

struct Circuit {
  double stator_ohm = 0;
  double stator_reactance_ohm = 0;
  double rotor_ohm = 0;
  double rotor_reactance_ohm = 0;
  double magnetising_reactance_ohm = 0;
  double core_ohm = 0;            // beside the magnetising reactance, the same at every frequency; 0: none
  double friction_windage_w = 0;  // at base synchronous speed; ∝ speed²
  double base_frequency_hz = 60;
  int pole_pairs = 1;
};

/// How well a circuit could be made to say what the plate says.
struct CircuitFit {
  Circuit circuit;
  double worst_misfit = 0;  // largest relative departure from a plate figure
  bool converged = false;
};

/// Circuit from a nameplate by least squares on current, power factor, efficiency and speed at rated power, current at
/// service-factor load, no-load current and locked-rotor current. The current crowding in deep rotor bars at standstill
/// is left out. Poles follow from speed and frequency. A plate gives fewer figures than a circuit has elements, so
/// three things are assumed (common practice, no source): stator and rotor leakage are alike (ieee_112, design A); core
/// loss, and friction and windage, are alike at rated voltage and speed; and, weakly, so are the loss in the stator's
/// winding and these two together. Range:   a plate within the limits of site/fields.h. Outside: require.
/// @return always a circuit with a breakdown torque over 1.5 times the torque at service-factor load. A plate that
///         contradicts itself shows as a large worst_misfit.
/// Checked: tests/law/motor_law_test.cc (planted circuits), tests/unit/plant/circuit_fit_test.cc
CircuitFit fit_circuit(MotorOf<double> const& plate);

/// What motor and cable do at one slip.
struct MotorPoint {
  double slip = 0;
  double rotor_speed_rad_s = 0;
  double shaft_torque_n_m = 0;
  double shaft_power_w = 0;
  double current_a = 0;      // line
  double power_factor = 0;   // at the drive's terminals
  double input_power_w = 0;  // at the drive's terminals
  double cable_loss_w = 0;
  double stator_loss_w = 0;
  double core_loss_w = 0;
  double rotor_loss_w = 0;
  double friction_windage_w = 0;
  bool stalled = false;  // the load is more than the motor can turn: rotor at rest, locked-rotor current
};

inline constexpr double usual_slip = 0.04;  // of a motor at work: where the search for a slip begins

/// The motor fed with one frequency and voltage through a cable: its circuit folded to Thevenin's, prepared once for
/// each sample.
///
/// Reactances go with frequency, friction and windage torque with speed. The core's resistance stays, so that at
/// constant volts per hertz core loss goes with frequency squared: between hysteresis (∝ f) and eddy currents (∝ f²),
/// and nearer to the latter (common practice, no source). Source:  ieee_112 (the circuit); chapman_2012, section 6.5
/// (Thevenin's form and the breakdown slip) Checked: tests/reference/motor_reference_test.cc,
/// tests/law/motor_law_test.cc
class FedMotor {
 public:
  FedMotor() = default;
  /// @param frequency_hz ≥ 0; at 0 there is neither torque nor current
  /// @param voltage_v    line to line at the drive
  /// @param cable_ohm    one conductor
  FedMotor(Circuit const& circuit, double frequency_hz, double voltage_v, double cable_ohm);

  double synchronous_speed_rad_s() const { return synchronous_speed_rad_s_; }
  /// Shaft torque at a slip (friction and windage taken off), and its slope with slip.
  Sloped shaft_torque_n_m(double slip) const;
  /// Everything at a slip in [0, 1]. Input is the sum of the losses and the shaft power, to rounding; power factor from
  /// the impedance at the drive's terminals. At slip 1 the point is marked stalled.
  MotorPoint at(double slip) const;
  /// Slip of the largest air-gap torque, 1 at most.
  double breakdown_slip() const { return breakdown_slip_; }

  /// Slip at which the shaft torque meets a load. Newton inside (0, breakdown], to 1e-10.
  /// @param load     callable: rotor speed [rad/s] → Sloped torque [N·m] and its slope [N·m·s]
  /// @param slip_guess from the step before
  /// @return the slip; 1 if the load is more than the breakdown torque
  template <class Load>
  double slip_under(Load const& load, double slip_guess) const;

 private:
  // Per phase, at the frequency fed. The magnetising branch is held as the series pair that equals its two in parallel.
  double phase_voltage_v_ = 0;
  double synchronous_speed_rad_s_ = 0;
  double cable_ohm_ = 0;
  double stator_ohm_ = 0;
  double stator_reactance_ohm_ = 0;
  double rotor_ohm_ = 1;  // not 0, so that a motor not fed has the torque 0
  double rotor_reactance_ohm_ = 0;
  double magnetising_ohm_ = 0;
  double magnetising_reactance_ohm_ = 0;
  double core_conductance_s_ = 0;
  double friction_torque_factor_ = 0;  // N·m for each rad/s
  double thevenin_ohm_ = 0;            // of supply, cable and stator, as the rotor sees them
  double thevenin_reactance_ohm_ = 0;  // with the rotor's
  double torque_factor_ = 0;           // 3·V²·R_rotor/ω of Thevenin's source [N·m·Ω]
  double breakdown_slip_ = 1;
};

template <class Load>
double FedMotor::slip_under(Load const& load, double slip_guess) const {
  double low = 0;
  double high = breakdown_slip_;
  double const settled = 1e-4 * breakdown_slip_;
  bool breakdown_seen = false;
  double slip = slip_guess > low && slip_guess < high ? slip_guess : 0.3 * high;
  for (int round = 0; round < 60; ++round) {
    auto const motor = shaft_torque_n_m(slip);
    auto const asked = load(synchronous_speed_rad_s_ * (1 - slip));
    double const excess = motor.value - asked.value;
    (excess > 0 ? high : low) = slip;
    double const slope = motor.slope + asked.slope * synchronous_speed_rad_s_;
    double const step = slope > 0 ? -excess / slope : high - slip;
    // Newton's error is the square of its last move, so that the root is met to 1e-8.
    if (slope > 0 && step < settled && step > -settled) {
      return std::max(slip + step, low);
    }
    slip += step;
    if (!(slip > low && slip < high)) {
      if (!breakdown_seen) {
        breakdown_seen = true;
        auto const most = shaft_torque_n_m(breakdown_slip_);
        if (most.value < load(synchronous_speed_rad_s_ * (1 - breakdown_slip_)).value) {
          return 1;
        }
      }
      slip = 0.5 * (low + high);
    }
  }
  return slip;
}

}  // namespace wellproof
