#include "plant/operating.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "plant/drive.h"

namespace wellproof {
namespace {

constexpr double fastest_hz = 400;  // no motor of this kind turns so fast: where a search for a speed ends

FedMotor fed(Plant const& plant, double speed_hz, double supply_share) {
  auto const& site = plant.site;
  double const available_v = drive_available_v(site.supply.voltage_v * supply_share);
  return {plant.circuit, speed_hz,
          drive_voltage_v(speed_hz, site.motor.frequency_hz, site.motor.voltage_v, available_v), plant.cable_ohm};
}

double wetness_at(Plant const& plant, double level_depth_m) {
  return wetness(plant.site.pump.setting_depth_m - level_depth_m, plant.site.pump.least_submergence_m).value;
}

/// Head that the pump has to give for a flow: up to the tee, against its pressure and the friction on the way.
double asked_head_m(Plant const& plant, double flow_m3_s, double tee_pressure_pa, double level_depth_m) {
  return level_depth_m + plant.tee_elevation_m + tee_pressure_pa / plant.weight_n_m3 + plant.up.loss_m(flow_m3_s).value;
}

/// Motor and pump at one frequency: the shaft turns where their torques meet.
class Turning {
 public:
  Turning(Plant const& plant, double speed_hz, double supply_share)
      : plant_(plant), fed_(fed(plant, speed_hz, supply_share)) {}

  double slip(double flow_m3_s, double wetness_share) {
    auto const load = [&](double rotor_speed_rad_s) {
      return plant_.pump.torque_n_m(flow_m3_s, rotor_speed_rad_s, wetness_share);
    };
    double const found = fed_.slip_under(load, slip_guess_);
    slip_guess_ = found < 1 ? found : usual_slip;
    return found;
  }
  double rotor_speed_rad_s(double slip) const { return fed_.synchronous_speed_rad_s() * (1 - slip); }
  double head_m(double flow_m3_s, double wetness_share) {
    return plant_.pump.head_m(flow_m3_s, rotor_speed_rad_s(slip(flow_m3_s, wetness_share)), wetness_share).value;
  }
  MotorPoint motor(double slip) const { return fed_.at(slip); }

 private:
  Plant const& plant_;
  FedMotor fed_;
  double slip_guess_ = usual_slip;
};

/// Root of a function that falls from ≥ 0 at low to ≤ 0 at high: false position, its lazy end halved (Illinois).
template <class F>
double falling_root(F const& f, double low, double high, double close_enough) {
  double f_low = f(low);
  if (f_low <= 0) {
    return low;
  }
  double f_high = f(high);
  if (f_high >= 0) {
    return high;
  }
  for (int round = 0; round < 100 && high - low > close_enough; ++round) {
    double middle = low + (high - low) * f_low / (f_low - f_high);
    if (!(middle > low && middle < high)) {
      middle = 0.5 * (low + high);
    }
    double const f_middle = f(middle);
    if (f_middle > 0) {
      low = middle;
      f_low = f_middle;
      f_high *= 0.5;
    } else if (f_middle < 0) {
      high = middle;
      f_high = f_middle;
      f_low *= 0.5;
    } else {
      return middle;
    }
  }
  return std::abs(f_low) < std::abs(f_high) ? low : high;
}

OperatingPoint point(Turning& turning, double speed_hz, double flow_m3_s, double wetness_share) {
  OperatingPoint found;
  found.speed_hz = speed_hz;
  found.flow_m3_s = flow_m3_s;
  found.wetness = wetness_share;
  double const slip = turning.slip(flow_m3_s, wetness_share);
  found.motor = turning.motor(slip);
  found.head_m = turning.head_m(flow_m3_s, wetness_share);
  found.reached = slip < 1;
  return found;
}

/// The frequency at which the rotor turns at a speed under the pump's torque. The rotor follows the field closely, so
/// that moving the frequency by what is missing comes to rest within a few rounds.
double speed_hz_for_rotor(Plant const& plant, double rotor_speed_rad_s, double flow_m3_s, double wetness_share,
                          double supply_share) {
  double const hz_for_rad_s = plant.circuit.pole_pairs / (2 * std::numbers::pi);
  double speed_hz = rotor_speed_rad_s * hz_for_rad_s;
  for (int round = 0; round < 60 && speed_hz < fastest_hz; ++round) {
    Turning turning(plant, speed_hz, supply_share);
    double const slip = turning.slip(flow_m3_s, wetness_share);
    double const missing_hz = slip < 1 ? (rotor_speed_rad_s - turning.rotor_speed_rad_s(slip)) * hz_for_rad_s
                                       : 0.02 * speed_hz;  // stalled: too slow, or too fast for its volts
    speed_hz += missing_hz;
    if (slip < 1 && std::abs(missing_hz) < 1e-10 * speed_hz) {
      break;
    }
  }
  return speed_hz;
}

}  // namespace

OperatingPoint dry_point(Plant const& plant, double speed_hz, double supply_share) {
  Turning turning(plant, speed_hz, supply_share);
  auto found = point(turning, speed_hz, 0, 0);
  found.level_depth_m = plant.site.pump.setting_depth_m;
  return found;
}

OperatingPoint shut_point(Plant const& plant, double speed_hz, double supply_share) {
  Turning turning(plant, speed_hz, supply_share);
  auto found = point(turning, speed_hz, 0, 1);
  found.level_depth_m = plant.well.static_level_depth_m;
  found.tee_pressure_pa = plant.weight_n_m3 * (found.head_m - plant.well.static_level_depth_m - plant.tee_elevation_m);
  return found;
}

OperatingPoint point_at_speed(Plant const& plant, double speed_hz, double tee_pressure_pa, double level_depth_m,
                              double supply_share) {
  Turning turning(plant, speed_hz, supply_share);
  double const wet = wetness_at(plant, level_depth_m);
  auto const spare_head_m = [&](double flow_m3_s) {
    return turning.head_m(flow_m3_s, wet) - asked_head_m(plant, flow_m3_s, tee_pressure_pa, level_depth_m);
  };
  double const base_rad_s = 2 * std::numbers::pi * plant.site.motor.frequency_hz / plant.circuit.pole_pairs;
  double const most_m3_s = 2 * plant.pump.runout_flow_m3_s() * std::max(1.0, speed_hz / plant.site.motor.frequency_hz) *
                           std::max(1.0, base_rad_s / plant.pump.curve_speed_rad_s());
  bool const lifts = spare_head_m(0) >= 0;
  double const flow_m3_s = falling_root(spare_head_m, 0, most_m3_s, 1e-12 * most_m3_s);
  auto found = point(turning, speed_hz, flow_m3_s, wet);
  found.tee_pressure_pa = tee_pressure_pa;
  found.level_depth_m = level_depth_m;
  // Where the motor breaks down on the way the head jumps past what is asked: no flow is steady there.
  double const asked_m = asked_head_m(plant, flow_m3_s, tee_pressure_pa, level_depth_m);
  bool const steady = std::abs(found.head_m - asked_m) < 1e-4 * (1 + std::abs(asked_m));
  found.reached = found.reached && lifts && steady;
  return found;
}

OperatingPoint point_passing(Plant const& plant, double speed_hz, double flow_m3_s, double level_depth_m,
                             double supply_share) {
  Turning turning(plant, speed_hz, supply_share);
  auto found = point(turning, speed_hz, flow_m3_s, wetness_at(plant, level_depth_m));
  found.tee_pressure_pa = plant.weight_n_m3 * (found.head_m - asked_head_m(plant, flow_m3_s, 0, level_depth_m));
  found.level_depth_m = level_depth_m;
  found.reached = found.reached && found.tee_pressure_pa >= 0;
  return found;
}

OperatingPoint point_for_flow(Plant const& plant, double flow_m3_s, double tee_pressure_pa, double level_depth_m,
                              double supply_share) {
  double const wet = wetness_at(plant, level_depth_m);
  double const asked_m = asked_head_m(plant, flow_m3_s, tee_pressure_pa, level_depth_m);
  double const rotor_rad_s = plant.pump.speed_for_rad_s(flow_m3_s, std::max(asked_m, 0.0), wet);
  double const speed_hz = speed_hz_for_rotor(plant, rotor_rad_s, flow_m3_s, wet, supply_share);
  Turning turning(plant, speed_hz, supply_share);
  auto found = point(turning, speed_hz, flow_m3_s, wet);
  found.tee_pressure_pa = tee_pressure_pa;
  found.level_depth_m = level_depth_m;
  found.reached = found.reached && wet > 0 && std::abs(found.head_m - asked_m) < 1e-4 * (1 + asked_m);
  return found;
}

double zero_flow_speed_hz(Plant const& plant, double tee_pressure_pa, double level_depth_m, double supply_share) {
  double const asked_m = asked_head_m(plant, 0, tee_pressure_pa, level_depth_m);
  double const rotor_rad_s = plant.pump.zero_flow_speed_rad_s(std::max(asked_m, 0.0));
  return speed_hz_for_rotor(plant, rotor_rad_s, 0, 1, supply_share);
}

OperatingPoint snoring_point(Plant const& plant, double speed_hz, double supply_share, double inflow_share) {
  auto const inflow_m3_s = [&](double level_depth_m) {
    return std::max(plant.well.flow_for_level_m3_s(level_depth_m, settled_time_s, 0, inflow_share), 0.0);
  };
  double const intake_m = plant.site.pump.setting_depth_m;
  double const rise_m = plant.site.demand.outlet_rise_m;
  auto const& house = plant.outlets[outlet::house];
  // What the taps, all open, leave at the tee.
  auto const tee_pressure_pa = [&](double flow_m3_s) {
    double const part = house.nominal_flow_m3_s > 0 ? flow_m3_s / house.nominal_flow_m3_s : 0;
    return part * part * house.nominal_pressure_pa + plant.weight_n_m3 * (rise_m + plant.house.loss_m(flow_m3_s).value);
  };
  Turning turning(plant, speed_hz, supply_share);
  auto const missing_head_m = [&](double level_depth_m) {
    double const flow_m3_s = inflow_m3_s(level_depth_m);
    return turning.head_m(flow_m3_s, wetness_at(plant, level_depth_m)) -
           asked_head_m(plant, flow_m3_s, tee_pressure_pa(flow_m3_s), level_depth_m);
  };
  // The deeper the level, the more comes in and the less head the pump has: one level where both agree.
  double const level_depth_m =
      falling_root(missing_head_m, std::min(plant.well.static_level_depth_m, intake_m), intake_m, 1e-9);
  double const flow_m3_s = inflow_m3_s(level_depth_m);
  auto found = point(turning, speed_hz, flow_m3_s, wetness_at(plant, level_depth_m));
  found.level_depth_m = level_depth_m;
  found.tee_pressure_pa = tee_pressure_pa(flow_m3_s);
  return found;
}

}  // namespace wellproof
