// The method: each comparison that sample() would make splits the line of a measured value into cells. While every
// value stays in the cell it is in now, every comparison comes out the same, and only time can change anything: the
// timers that run. A value that lies exactly on a threshold belongs to no cell, and then nothing is claimed.
#include <cmath>

#include "regulator/guards.h"
#include "regulator/moment.h"
#include "regulator/sleep.h"
#include "regulator/speed.h"

namespace wellproof {
namespace {

constexpr double settled_filter_share = 0.005;   // of the current: the filter has arrived
constexpr double near_threshold_share = 0.01;    // of an amps guard's threshold
constexpr double settled_speed_hz = 1e-9;        // at a fixed goal
constexpr double settled_integral_share = 1e-3;  // of the proportional part, at a limit
constexpr double error_share_kept = 0.9;         // the part of the error at a limit that must remain
constexpr double holding_error_share = 0.002;    // of the target

// A cell under construction.
struct Cell {
  double value;
  double least = -Calm::infinity;
  double most = Calm::infinity;
  bool on_threshold = false;

  void split(double threshold) {
    if (value > threshold) {
      least = std::max(least, threshold);
    } else if (value < threshold) {
      most = std::min(most, threshold);
    } else {
      on_threshold = true;
    }
  }
  bool holds(double other) const { return other > least && other < most; }
};

struct Cells {
  Cell pressure;  // of the signal, before trim
  Cell current;
  Cell power;
  Cell supply;
  Cell sink;
  double trim_pa;
  double until_time_s = Calm::infinity;

  void split_reading(double threshold_pa) { pressure.split(threshold_pa - trim_pa); }
  void end(std::optional<double> const& since_s, double delay_s) {
    if (since_s) {
      until_time_s = std::min(until_time_s, *since_s + delay_s);
    }
  }
  bool on_threshold() const {
    return pressure.on_threshold || current.on_threshold || power.on_threshold || supply.on_threshold ||
           sink.on_threshold;
  }
};

// Noise may have put the last sample on the other side of a threshold from where the value is: then the timer is about
// to start or to end, which its next sample must say.
bool runs_as(bool condition, std::optional<double> const& since_s) {
  return since_s.has_value() == condition;
}

// What is looked at in every mode.
void split_outside(Moment const& now, RegulatorState const& state, Cells& cells) {
  Logic const& logic = now.logic;
  if (!logic.two_contact_switch) {
    cells.pressure.split(logic.sensor_low_share * now.settings.sensor_full_scale_pa);
    cells.pressure.split(logic.sensor_high_share * now.settings.sensor_full_scale_pa);
    if (state.mode != Mode::waiting || state.cause != StopCause::sensor_lost) {
      auto const left = timer_over(state.sensor_bad_since_s, logic.sensor_fault_delay_s, now.time_s)
                            ? std::nullopt
                            : state.sensor_bad_since_s;
      cells.end(left, logic.sensor_fault_delay_s);
    }
  }
  cells.supply.split(logic.low_volts_share);
  cells.sink.split(logic.sink_limit_c);
  if (state.mode == Mode::waiting) {
    cells.supply.split(logic.low_volts_share + supply_return_share);
    cells.sink.split(logic.sink_limit_c - sink_return_k);
    cells.end(state.supply_good_since_s, logic.supply_return_delay_s);
  }
}

// What is looked at while the motor turns. False if it is on its way: over its limit, or the filter has not arrived.
bool split_running(Moment const& now, RegulatorState const& state, Cells& cells) {
  Settings const& settings = now.settings;
  Logic const& logic = now.logic;
  double const current_a = now.measured.current_a;
  Load const seen = load(now, state);
  if (state.speed_hz <= 0 || current_a > settings.motor_current_limit_a ||
      std::abs(seen.filtered - seen.measured) > settled_filter_share * std::abs(seen.measured) ||
      state.overcurrent_since_s || !signal_good(now)) {
    return false;
  }
  cells.current.split(settings.motor_current_limit_a);
  cells.current.split(logic.overcurrent_share * settings.motor_current_limit_a);
  if (!logic.two_contact_switch) {
    cells.split_reading(settings.pressure_stop_above_pa);
  }
  if (state.mode == Mode::hand) {
    return true;
  }
  if (logic.long_run_guard) {
    cells.end(state.running_since_s, settings.long_run_limit_s);
  }
  if (logic.guard_where == GuardWhere::near_ceiling && state.speed_hz >= guard_speed_hz(now) &&
      !logic.two_contact_switch) {
    cells.split_reading(logic.guard_pressure_share * settings.pressure_target_pa);
  }
  bool const gate = load_gate_open(now, state);
  if (!runs_as(gate && seen.filtered < seen.dry_below, state.dry_since_s) ||
      !runs_as(gate && seen.filtered < seen.closed_below, state.closed_since_s)) {
    return false;
  }
  if (gate) {
    Cell& cell = logic.guard_by == GuardBy::power ? cells.power : cells.current;
    // Near a threshold the filter's lag decides at which sample it is crossed: there each is computed.
    for (double const threshold : {seen.dry_below, seen.closed_below}) {
      if (std::abs(seen.measured - threshold) <= near_threshold_share * threshold) {
        return false;
      }
      cell.split(threshold * (1 - near_threshold_share));
      cell.split(threshold * (1 + near_threshold_share));
    }
    cells.end(state.dry_since_s, settings.dry_run_delay_s);
    cells.end(state.closed_since_s, settings.closed_delay_s);
    return cell.holds(seen.filtered);
  }
  return true;
}

// A regulator at its floor or ceiling with the error driving it there. What the integral still does while the error
// changes by a tenth does not show in the speed.
bool held_at_limit(Moment const& now, RegulatorState const& state, Cells& cells) {
  double const proportional_hz = gain_hz_pa(now, state) * now.error_pa;
  double const slack_hz = settled_integral_share * std::abs(proportional_hz);
  bool const at_ceiling = proportional_hz > 0 && state.speed_hz >= now.ceiling_hz() &&
                          state.integral_hz >= integral_bound_hz(now, state) - slack_hz;
  bool const at_floor = proportional_hz < 0 && std::abs(state.speed_hz - now.floor_hz()) < settled_speed_hz &&
                        state.integral_hz <= integral_bound_hz(now, state) + slack_hz;
  if (at_ceiling || at_floor) {
    cells.split_reading(now.settings.pressure_target_pa - error_share_kept * now.error_pa);
  }
  return at_ceiling || at_floor;
}

// Sleep is looked for at and under the sleep speed. A filter stays between what it shows and what it is given: false if
// these are not on the same side of what it is compared with.
bool split_sleep(Moment const& now, RegulatorState const& state, Cells& cells) {
  bool const may_sleep = may_sleep_at(now, state.speed_hz);
  if (may_sleep_at(now, state.filtered_speed_hz) != may_sleep) {
    return false;
  }
  if (may_sleep) {
    cells.split_reading(now.settings.pressure_target_pa - back_share * now.settings.sleep_band_pa);
    cells.end(state.slow_since_s, now.settings.sleep_hold_s);
  }
  return runs_as(is_slow(now, state.filtered_speed_hz, state.filtered_error_pa), state.slow_since_s) &&
         (!may_sleep || is_back(now, now.error_pa) == is_back(now, state.filtered_error_pa));
}

bool near(double speed_hz, double goal_hz) {
  return std::abs(speed_hz - goal_hz) < settled_speed_hz;
}

Calm::Kind kind_while_holding(Moment const& now, RegulatorState const& state, Cells& cells) {
  if (now.logic.two_contact_switch) {
    cells.pressure.split(now.settings.pressure_target_pa - cells.trim_pa);
    return near(state.speed_hz, now.ceiling_hz()) ? Calm::Kind::steady : Calm::Kind::none;
  }
  if (!split_sleep(now, state, cells)) {
    return Calm::Kind::none;
  }
  if (now.logic.second_gain == SecondGain::large_error) {
    cells.split_reading(now.settings.pressure_target_pa - now.logic.second_gain_error_pa);
    cells.split_reading(now.settings.pressure_target_pa + now.logic.second_gain_error_pa);
  }
  if (held_at_limit(now, state, cells)) {
    return Calm::Kind::steady;
  }
  bool const inside = state.speed_hz > now.floor_hz() && state.speed_hz < now.ceiling_hz();
  if (!inside || !timer_over(state.settled_since_s, settled_for_s(now.settings), now.time_s)) {
    return Calm::Kind::none;
  }
  cells.split_reading(now.settings.pressure_target_pa * (1 - holding_error_share));
  cells.split_reading(now.settings.pressure_target_pa * (1 + holding_error_share));
  return Calm::Kind::holding;
}

// Where the pressure is that low already, as it can be at the sample that stopped, the next one starts the pump.
Calm::Kind until_wake_pressure(Moment const& now, Cells& cells) {
  cells.split_reading(now.wake_pressure_pa());
  return now.reading_pa <= now.wake_pressure_pa() ? Calm::Kind::none : Calm::Kind::steady;
}

Calm::Kind kind_now(Moment const& now, RegulatorState const& state, Cells& cells) {
  switch (state.mode) {
    case Mode::waiting:
    case Mode::stopped:
      return Calm::Kind::steady;
    case Mode::asleep:
      return until_wake_pressure(now, cells);
    case Mode::resting:
      if (state.cause == StopCause::high_pressure) {
        if (now.time_s - state.mode_since_s < now.logic.high_pressure_rest_s) {
          cells.end(state.mode_since_s, now.logic.high_pressure_rest_s);
          return Calm::Kind::steady;
        }
        return until_wake_pressure(now, cells);
      }
      cells.end(state.mode_since_s, rest_s(now, state));
      return Calm::Kind::steady;
    case Mode::filling:
      cells.split_reading(now.full_line_pa());
      cells.end(state.mode_since_s, now.settings.fill_time_s);
      return near(state.speed_hz, fill_goal_hz(now)) ? Calm::Kind::steady : Calm::Kind::none;
    case Mode::holding:
      return kind_while_holding(now, state, cells);
    case Mode::hand:
      return near(state.speed_hz, std::min(state.hand->speed_hz, now.ceiling_hz())) ? Calm::Kind::steady
                                                                                    : Calm::Kind::none;
    case Mode::easing:
      return Calm::Kind::none;
  }
  return Calm::Kind::none;
}

// Outside these the sleep timer would start or end, or a limit would be met.
void limit_speed(Moment const& now, RegulatorState const& state, Calm& calm) {
  calm.least_speed_hz = now.floor_hz();
  calm.most_speed_hz = now.ceiling_hz();
  auto const stay_on_this_side = [&](double speed_hz) {
    if (state.speed_hz <= speed_hz) {
      calm.most_speed_hz = std::min(calm.most_speed_hz, speed_hz);
    } else {
      calm.least_speed_hz = std::max(calm.least_speed_hz, speed_hz);
    }
  };
  if (now.logic.sleep_test == SleepTest::slow_speed) {
    stay_on_this_side(now.settings.sleep_speed_below_hz);
  }
  if (now.logic.second_gain == SecondGain::below_speed) {
    stay_on_this_side(now.logic.second_gain_below_hz);
  }
}

}  // namespace

Calm calm(Settings const& settings, Logic const& logic, RegulatorState const& state, Measured const& measured) {
  Moment const now = moment(settings, logic, measured, measured.time_s);
  bool const commanded = state.hand && state.mode != Mode::hand;
  if (!state.powered_up || commanded) {
    return {};
  }
  Cells cells{.pressure = {measured.pressure_pa},
              .current = {measured.current_a},
              .power = {measured.power_w},
              .supply = {measured.supply_share},
              .sink = {measured.sink_c},
              .trim_pa = settings.sensor_trim_pa};
  split_outside(now, state, cells);
  if (state.hand) {
    cells.end(state.hand->until_time_s, 0);
  }
  if (runs(state.mode) && !split_running(now, state, cells)) {
    return {};
  }
  Calm::Kind const kind = kind_now(now, state, cells);
  if (kind == Calm::Kind::none || cells.on_threshold() || cells.until_time_s <= measured.time_s) {
    return {};
  }
  Calm found{.kind = kind,
             .until_time_s = cells.until_time_s,
             .least_pressure_pa = cells.pressure.least,
             .most_pressure_pa = cells.pressure.most,
             .least_current_a = cells.current.least,
             .most_current_a = cells.current.most,
             .least_power_w = cells.power.least,
             .most_power_w = cells.power.most,
             .least_supply_share = cells.supply.least,
             .most_supply_share = cells.supply.most,
             .least_sink_c = cells.sink.least,
             .most_sink_c = cells.sink.most};
  if (kind == Calm::Kind::holding) {
    limit_speed(now, state, found);
  }
  return found;
}

void resume(Settings const& settings, Logic const& logic, RegulatorState& state, Measured const& measured,
            double speed_hz) {
  state.integral_hz += speed_hz - state.speed_hz;
  state.speed_hz = speed_hz;
  state.filtered_current_a = measured.current_a;
  state.filtered_power_w = measured.power_w;
  state.filtered_speed_hz = speed_hz;
  state.filtered_error_pa = moment(settings, logic, measured, measured.time_s).error_pa;
  state.last_time_s = measured.time_s;
}

}  // namespace wellproof
