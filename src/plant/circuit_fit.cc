// Circuit from a nameplate: least squares after Levenberg and Marquardt (marquardt_1963) on five numbers within bounds,
// from estimates in closed form. Logarithms keep every element positive and make the steps relative. Efficiency tells
// the loss of stator winding, core and friction together well and its parts badly, so the sum and the share are sought,
// not the parts: else the search would creep along a curved valley.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <Eigen/Dense>

#include "contract/require.h"
#include "plant/motor.h"

namespace wellproof {
namespace {

// What is sought: natural logarithms, and the stator winding's share of the loss that is not the rotor's.
enum Unknown { log_loss, stator_share, log_leakage, log_rotor, log_magnetising, unknowns };
using Unknowns = Eigen::Matrix<double, unknowns, 1>;

// What is asked of the circuit: the plate's seven figures, then an assumption, then a demand.
enum Asked {
  rated_current,
  rated_power_factor,
  rated_efficiency,
  rated_slip,
  service_factor_current,
  no_load_current,
  locked_rotor_current,
  loss_shares,
  breakdown_reserve,
  asked
};
using Residuals = Eigen::Matrix<double, asked, 1>;
using Jacobian = Eigen::Matrix<double, asked, unknowns>;

// How far a figure may be off, relative, before it counts as much as another. Current under load is what a guard is set
// by; the locked-rotor current of a real rotor depends on its bars' depth, the slip on how warm it is. The loss shares
// only settle what the plate leaves open. Common practice, no source.
constexpr double tolerance[asked] = {0.01, 0.03, 0.03, 0.08, 0.01, 0.02, 0.15, 0.5, 0.05};

constexpr double least_reserve = 1.5;   // breakdown torque over the torque at service-factor load
constexpr double sought_reserve = 1.6;  // a little more, since a penalty yields
constexpr double least_slip = 0.002;    // plates round the speed, some to the synchronous one
constexpr double most_slip = 0.25;
constexpr double speed_rounding = 1.02;  // a plate's speed may stand this far over the synchronous one
constexpr int most_rounds = 60;
constexpr double rest = 1e-5;  // the search ends when a step gains less than this share of the misfit

/// The plate as the fit uses it.
struct Plate {
  MotorOf<double> const& motor;
  int pole_pairs = 1;
  double synchronous_speed_rad_s = 0;
  double slip = 0;
  double phase_voltage_v = 0;
};

Plate read_plate(MotorOf<double> const& motor) {
  double const cycle_rad_s = 2 * std::numbers::pi * motor.frequency_hz;
  Plate plate{.motor = motor};
  plate.pole_pairs = std::max(1, static_cast<int>(cycle_rad_s / motor.speed_rad_s * speed_rounding));
  plate.synchronous_speed_rad_s = cycle_rad_s / plate.pole_pairs;
  plate.slip = std::clamp(1 - motor.speed_rad_s / plate.synchronous_speed_rad_s, least_slip, most_slip);
  plate.phase_voltage_v = motor.voltage_v / std::numbers::sqrt3;
  return plate;
}

double currents_a2(Plate const& plate) {
  return 3 * plate.motor.full_load_current_a * plate.motor.full_load_current_a;
}

Circuit circuit_of(Plate const& plate, Unknowns const& sought) {
  double const loss_w = std::exp(sought[log_loss]);
  double const constant_loss_w = (1 - sought[stator_share]) * loss_w;
  double const leakage_ohm = std::exp(sought[log_leakage]);
  return {.stator_ohm = sought[stator_share] * loss_w / currents_a2(plate),
          .stator_reactance_ohm = 0.5 * leakage_ohm,
          .rotor_ohm = std::exp(sought[log_rotor]),
          .rotor_reactance_ohm = 0.5 * leakage_ohm,
          .magnetising_reactance_ohm = std::exp(sought[log_magnetising]),
          .core_ohm = 3 * plate.phase_voltage_v * plate.phase_voltage_v / (0.5 * constant_loss_w),
          .friction_windage_w = 0.5 * constant_loss_w,
          .base_frequency_hz = plate.motor.frequency_hz,
          .pole_pairs = plate.pole_pairs};
}

/// Estimates in closed form: half of what the rotor's slip does not explain of the loss lies in the stator's winding,
/// the no-load current passes stator and magnetising reactance, the locked-rotor current resistance and leakage.
Unknowns first_estimate(Plate const& plate) {
  auto const& motor = plate.motor;
  double const input_w = motor.power_w / motor.efficiency;
  double const rotor_loss_w = plate.slip / (1 - plate.slip) * motor.power_w;
  double const other_loss_w = std::max(input_w - motor.power_w - rotor_loss_w, 0.1 * (input_w - motor.power_w));
  double const stator_ohm = 0.5 * other_loss_w / currents_a2(plate);
  double const gap_power_w = motor.power_w + rotor_loss_w;
  double const gap_voltage_v = 0.85 * plate.phase_voltage_v;
  double const rotor_ohm = plate.slip * 3 * gap_voltage_v * gap_voltage_v / gap_power_w;
  double const locked_ohm = plate.phase_voltage_v / motor.locked_rotor_current_a;
  double const resistance_ohm = stator_ohm + rotor_ohm;
  double const leakage_ohm =
      std::sqrt(std::max(locked_ohm * locked_ohm - resistance_ohm * resistance_ohm, 0.1 * locked_ohm * locked_ohm));
  double const no_load_ohm = plate.phase_voltage_v / motor.no_load_current_a;
  Unknowns estimate;
  estimate[log_loss] = std::log(other_loss_w);
  estimate[stator_share] = 0.5;
  estimate[log_leakage] = std::log(leakage_ohm);
  estimate[log_rotor] = std::log(rotor_ohm);
  estimate[log_magnetising] = std::log(std::max(no_load_ohm - 0.5 * leakage_ohm, 0.5 * no_load_ohm));
  return estimate;
}

/// Bounds: the rotor's resistance about what the slip asks for, the rest as shares of the plate's power and impedance.
struct Bounds {
  Unknowns least;
  Unknowns most;
};

Bounds bounds_of(Plate const& plate, Unknowns const& estimate) {
  double const log_power = std::log(plate.motor.power_w);
  double const log_rated = std::log(plate.phase_voltage_v / plate.motor.full_load_current_a);
  double const rotor = estimate[log_rotor];
  Bounds bounds;
  bounds.least << log_power + std::log(0.01), 0.05, log_rated + std::log(0.08), rotor + std::log(0.4),
      log_rated + std::log(0.5);
  bounds.most << log_power + std::log(2.0), 0.95, log_rated + std::log(0.8), rotor + std::log(2.0),
      log_rated + std::log(20.0);
  return bounds;
}

/// A load that takes the same power at any speed, as a plate states it; below half speed the same torque, so that even
/// a circuit far from the plate meets it once at most before its breakdown.
struct PlateLoad {
  double power_w = 0;
  double half_speed_rad_s = 0;
  Sloped operator()(double rotor_speed_rad_s) const {
    if (rotor_speed_rad_s < half_speed_rad_s) {
      return {power_w / half_speed_rad_s, 0};
    }
    double const torque_n_m = power_w / rotor_speed_rad_s;
    return {torque_n_m, -torque_n_m / rotor_speed_rad_s};
  }
};

/// What a circuit makes of the plate's loads. A load over the breakdown torque is answered at breakdown (or half
/// speed), so that the answer stays continuous for the search.
struct PlateRun {
  MotorPoint rated;
  MotorPoint service;
  MotorPoint no_load;
  MotorPoint locked;
  double reserve = 0;  // breakdown torque over the torque at service-factor load
};

PlateRun run_plate(Plate const& plate, Circuit const& circuit) {
  auto const& motor = plate.motor;
  FedMotor const fed(circuit, motor.frequency_hz, motor.voltage_v, 0);
  double const most = std::min(fed.breakdown_slip(), 0.5);
  double const half_speed_rad_s = 0.5 * fed.synchronous_speed_rad_s();
  auto under = [&](double power_w) {
    double const slip = fed.slip_under(PlateLoad{power_w, half_speed_rad_s}, plate.slip);
    return slip < most ? slip : most;
  };
  double const service_power_w = motor.power_w * motor.service_factor;
  double const service_slip = under(service_power_w);
  PlateRun run{.rated = fed.at(under(motor.power_w)),
               .service = fed.at(service_slip),
               .no_load = fed.at(under(0)),
               .locked = fed.at(1)};
  double const service_speed_rad_s = fed.synchronous_speed_rad_s() * (1 - service_slip);
  double const service_torque_n_m =
      service_power_w / std::min(std::max(service_speed_rad_s, half_speed_rad_s), motor.speed_rad_s);
  run.reserve = std::max(fed.shaft_torque_n_m(fed.breakdown_slip()).value / service_torque_n_m, 1e-6);
  return run;
}

double efficiency(MotorPoint const& point) {
  return point.shaft_power_w / point.input_power_w;
}

Residuals residuals(Plate const& plate, Unknowns const& sought) {
  auto const& motor = plate.motor;
  Circuit const circuit = circuit_of(plate, sought);
  PlateRun const run = run_plate(plate, circuit);
  Residuals left;
  left[rated_current] = run.rated.current_a / motor.full_load_current_a - 1;
  left[rated_power_factor] = run.rated.power_factor / motor.power_factor - 1;
  left[rated_efficiency] = efficiency(run.rated) / motor.efficiency - 1;
  left[rated_slip] = run.rated.slip / plate.slip - 1;
  left[service_factor_current] = run.service.current_a / motor.service_factor_current_a - 1;
  left[no_load_current] = run.no_load.current_a / motor.no_load_current_a - 1;
  left[locked_rotor_current] = run.locked.current_a / motor.locked_rotor_current_a - 1;
  left[loss_shares] = sought[stator_share] - 0.5;
  left[breakdown_reserve] = std::max(0.0, std::log(sought_reserve / run.reserve));
  for (int i = 0; i < asked; ++i) {
    left[i] /= tolerance[i];
  }
  return left;
}

double worst_misfit(MotorOf<double> const& motor, PlateRun const& run) {
  double const departures[] = {run.rated.current_a / motor.full_load_current_a - 1,
                               run.rated.power_factor / motor.power_factor - 1,
                               efficiency(run.rated) / motor.efficiency - 1,
                               run.rated.rotor_speed_rad_s / motor.speed_rad_s - 1,
                               run.service.current_a / motor.service_factor_current_a - 1,
                               run.no_load.current_a / motor.no_load_current_a - 1,
                               run.locked.current_a / motor.locked_rotor_current_a - 1};
  double worst = 0;
  for (double const departure : departures) {
    worst = std::max(worst, std::fabs(departure));
  }
  return worst;
}

Jacobian jacobian(Plate const& plate, Unknowns const& sought, Residuals const& left) {
  constexpr double step = 1e-6;
  Jacobian slopes;
  for (int i = 0; i < unknowns; ++i) {
    Unknowns beside = sought;
    beside[i] += step;
    slopes.col(i) = (residuals(plate, beside) - left) / step;
  }
  return slopes;
}

using Normal = Eigen::Matrix<double, unknowns, unknowns>;

/// The damped step downhill that stays within the bounds: what would leave them goes to its bound and stays there while
/// the others are sought again.
Unknowns step_within(Bounds const& bounds, Unknowns const& sought, Normal const& normal, Unknowns const& downhill,
                     double damping) {
  Unknowns step = Unknowns::Zero();
  bool held[unknowns] = {};
  for (int round = 0; round < unknowns; ++round) {
    Normal matrix = normal;
    Unknowns right = downhill;
    matrix.diagonal() *= 1 + damping;
    for (int i = 0; i < unknowns; ++i) {
      if (held[i]) {
        right -= matrix.col(i) * step[i];
      }
    }
    for (int i = 0; i < unknowns; ++i) {
      if (held[i]) {
        matrix.row(i).setZero();
        matrix.col(i).setZero();
        matrix(i, i) = 1;
        right[i] = step[i];
      }
    }
    step = matrix.ldlt().solve(right);
    bool within = true;
    for (int i = 0; i < unknowns; ++i) {
      double const allowed = std::clamp(step[i], bounds.least[i] - sought[i], bounds.most[i] - sought[i]);
      if (!held[i] && allowed != step[i]) {
        held[i] = true;
        within = false;
      }
      step[i] = allowed;
    }
    if (within) {
      break;
    }
  }
  return step;
}

/// The search. @return whether it came to rest; `sought` is improved in place
bool settle(Plate const& plate, Unknowns& sought) {
  Bounds const bounds = bounds_of(plate, sought);
  sought = sought.cwiseMax(bounds.least).cwiseMin(bounds.most);
  Residuals left = residuals(plate, sought);
  double cost = left.squaredNorm();
  Jacobian slopes = jacobian(plate, sought, left);
  double damping = 1e-3;
  double harder = 4;
  for (int round = 0; round < most_rounds; ++round) {
    Unknowns const downhill = -(slopes.transpose() * left);
    Normal const normal = slopes.transpose() * slopes + 1e-9 * Normal::Identity();
    Unknowns const step = step_within(bounds, sought, normal, downhill, damping);
    Unknowns const next = (sought + step).cwiseMax(bounds.least).cwiseMin(bounds.most);
    Residuals const next_left = residuals(plate, next);
    double const next_cost = next_left.squaredNorm();
    double const gain = cost - next_cost;
    double const expected_gain = cost - (left + slopes * step).squaredNorm();
    if (gain > 0) {
      sought = next;
      left = next_left;
      cost = next_cost;
      if (gain < rest * (cost + rest)) {
        return true;
      }
      slopes = jacobian(plate, sought, left);
      damping = std::max(damping * (gain > 0.25 * expected_gain ? 0.2 : 1.0), 1e-6);
      harder = 4;
    } else {
      if (expected_gain < rest * (cost + rest) || step.lpNorm<Eigen::Infinity>() < 1e-6) {
        return true;
      }
      damping *= harder;
      harder *= 2;
    }
  }
  return false;
}

}  // namespace

CircuitFit fit_circuit(MotorOf<double> const& plate_motor) {
  auto const& m = plate_motor;
  for (double const figure :
       {m.power_w, m.service_factor, m.voltage_v, m.frequency_hz, m.full_load_current_a, m.service_factor_current_a,
        m.efficiency, m.power_factor, m.speed_rad_s, m.no_load_current_a, m.locked_rotor_current_a}) {
    require(figure > 0 && figure < 1e12, "a motor's plate has positive figures");
  }
  require(m.efficiency < 1 && m.power_factor <= 1, "efficiency and power factor of a motor lie under 1");

  Plate const plate = read_plate(plate_motor);
  Unknowns sought = first_estimate(plate);
  CircuitFit fit;
  fit.converged = settle(plate, sought);
  fit.circuit = circuit_of(plate, sought);
  PlateRun run = run_plate(plate, fit.circuit);
  // Only a plate that contradicts itself comes here: its load and its losses leave no torque in reserve.
  for (int round = 0; round < 400 && run.reserve < least_reserve; ++round) {
    constexpr double smaller = 0.95;
    fit.circuit.stator_ohm *= smaller;
    fit.circuit.stator_reactance_ohm *= smaller;
    fit.circuit.rotor_ohm *= smaller;
    fit.circuit.rotor_reactance_ohm *= smaller;
    run = run_plate(plate, fit.circuit);
  }
  fit.worst_misfit = worst_misfit(plate_motor, run);
  return fit;
}

}  // namespace wellproof
