#pragma once
// A plant small enough to see through, and a rig that samples it, for the claims about the regulator. The figures are
// those of a 2-gallon tank, a pump of the 10 gpm class and a target of 50 psi in round numbers; none is checked here.
#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "regulator/regulator.h"

namespace wellproof::toy {

using Kind = RegulatorEvent::Kind;

inline constexpr double target_pa = 345e3;
inline constexpr double psi_pa = 6894.757;

inline Settings settings() {
  Settings s;
  s.pressure_target_pa = target_pa;
  s.pressure_wake_drop_pa = 35e3;
  s.pressure_stop_above_pa = 620e3;
  s.sensor_full_scale_pa = 690e3;
  s.motor_current_limit_a = 6.5;
  s.speed_floor_hz = 32;
  s.speed_ceiling_hz = 60;
  s.speed_ramp_up_hz_s = 10;
  s.speed_ramp_down_hz_s = 10;
  s.regulator_gain_hz_pa = 3e-5;
  s.regulator_reset_time_s = 0.6;
  s.sleep_speed_below_hz = 49.5;
  s.sleep_hold_s = 8;
  s.sleep_band_pa = 20e3;
  s.sleep_ramp_hz_s = 2;
  s.dry_run_amps_below_a = 3.6;
  s.dry_run_delay_s = 5;
  s.dry_run_rest_s = 600;
  s.closed_amps_below_a = 4.4;
  s.closed_delay_s = 20;
  s.long_run_limit_s = 4 * 3600;
  s.fill_time_s = 300;
  s.fill_speed_hz = 45;
  return s;
}

/// Pump on a check valve, a tank, a tap and a leak.
struct Plant {
  double pressure_pa = target_pa;
  double tap_m3_s = 0;   // at the target; goes with the root of pressure
  double leak_m3_s = 0;  // likewise
  bool dry = false;
  bool line_empty = false;  // no pressure, whatever is pumped, until filled_m3 is in
  double line_left_m3 = 0;  // still to be filled
  double tank_m3_pa = 1e-8;

  static constexpr double lift_pa = 300e3;
  static constexpr double shut_pa = 1000e3;  // of the pump at 60 Hz
  static double zero_flow_speed_hz(double at_pa) { return 60 * std::sqrt((at_pa + lift_pa) / shut_pa); }

  double flow_m3_s(double speed_hz) const {
    double const share = speed_hz / 60;
    double const over_pa = shut_pa * share * share - lift_pa - pressure_pa;
    return dry || over_pa <= 0 ? 0 : std::sqrt(over_pa / 3e11);
  }
  double current_a(double speed_hz) const {
    if (speed_hz <= 0) {
      return 0;
    }
    double const share = speed_hz / 60;
    return 3 + (dry ? 0.1 : 1 + 1.5e3 * flow_m3_s(speed_hz)) * share * share;
  }
  double power_w(double speed_hz) const {
    double const share = speed_hz / 60;
    return (dry ? 150 : 500 + 1e6 * flow_m3_s(speed_hz)) * share * share * share;
  }
  void pass(double speed_hz, double time_s) {
    int const parts = std::max(1, static_cast<int>(std::ceil(time_s / 0.005)));
    double const part_s = time_s / parts;
    for (int i = 0; i < parts; ++i) {
      double const flow = flow_m3_s(speed_hz);
      if (line_left_m3 > 0) {
        line_left_m3 -= flow * part_s;
        continue;
      }
      double const out = (tap_m3_s + leak_m3_s) * std::sqrt(std::max(0.0, pressure_pa) / target_pa);
      pressure_pa = std::max(0.0, pressure_pa + (flow - out) / tank_m3_pa * part_s);
    }
  }
};

/// What happened, and when.
struct Happened {
  double time_s = 0;
  RegulatorEvent event;
};

/// Samples a regulator on what is measured; keeps what happened.
struct Rig {
  Settings settings = toy::settings();
  Logic logic;
  RegulatorState state;
  Plant plant;
  Measured measured;
  double period_s = 0.05;
  double next_time_s = 0;
  double noise_a = 0;
  double most_pressure_pa = 0;
  double least_pressure_pa = 1e9;
  bool fault_contact_closed = false;
  std::vector<Happened> happened;
  std::vector<double> speeds_hz;
  int samples = 0;

  Command once() {
    measured.time_s = next_time_s;
    Command const command = sample(settings, logic, state, measured);
    ++samples;
    next_time_s += period_s;
    fault_contact_closed = command.fault_contact_closed;
    if (command.event) {
      happened.push_back({measured.time_s, *command.event});
    }
    speeds_hz.push_back(command.speed_hz);
    return command;
  }
  /// On values given by hand, which stay as they are.
  void feed(double pressure_pa, double current_a, double time_s) {
    measured.pressure_pa = pressure_pa;
    measured.current_a = current_a;
    double const end_s = next_time_s + time_s - 1e-9;
    while (next_time_s < end_s) {
      once();
    }
  }
  /// On the toy plant.
  void run(double time_s) {
    double const end_s = next_time_s + time_s - 1e-9;
    while (next_time_s < end_s) {
      measured.pressure_pa = plant.pressure_pa;
      measured.current_a = plant.current_a(state.speed_hz) + ((samples % 2) != 0 ? noise_a : -noise_a);
      measured.power_w = plant.power_w(state.speed_hz);
      once();
      plant.pass(state.speed_hz, period_s);
      most_pressure_pa = std::max(most_pressure_pa, plant.pressure_pa);
      least_pressure_pa = std::min(least_pressure_pa, plant.pressure_pa);
    }
  }
  void forget_extremes() {
    most_pressure_pa = 0;
    least_pressure_pa = 1e9;
  }
  int count(Kind kind) const {
    return static_cast<int>(
        std::count_if(happened.begin(), happened.end(), [kind](Happened const& h) { return h.event.kind == kind; }));
  }
  /// Time of the first of this kind; -1 if there is none.
  double time_of(Kind kind) const {
    for (Happened const& h : happened) {
      if (h.event.kind == kind) {
        return h.time_s;
      }
    }
    return -1;
  }
};

/// A rig at full speed with the pressure lost: where the amps guards look. No more than some seconds old.
inline Rig at_ceiling_with_pressure_lost() {
  Rig rig;
  rig.feed(0.7 * target_pa, 5.3, 8);
  return rig;
}

}  // namespace wellproof::toy
