#include "regulator/regulator.h"

#include <cmath>

#include "regulator/guards.h"
#include "regulator/moment.h"
#include "regulator/sleep.h"
#include "regulator/speed.h"

namespace wellproof {
namespace {

using Kind = RegulatorEvent::Kind;
using Happening = std::optional<RegulatorEvent>;

void forget_timers(RegulatorState& state) {
  state.slow_since_s.reset();
  state.dry_since_s.reset();
  state.closed_since_s.reset();
  state.overcurrent_since_s.reset();
  state.settled_since_s.reset();
}

void enter(Moment const& now, RegulatorState& state, Mode mode) {
  state.mode = mode;
  state.mode_since_s = now.time_s;
  forget_timers(state);
  state.supply_good_since_s.reset();
}

// The pump goes off at once, without a ramp: the check valve shuts.
RegulatorEvent stop(Moment const& now, RegulatorState& state, Mode mode, StopCause cause) {
  bool const ran = state.powered_up && runs(state.mode);
  if (state.mode == Mode::hand) {
    state.hand.reset();
  }
  state.speed_hz = 0;
  state.cause = cause;
  enter(now, state, mode);
  return {ran ? Kind::stopped : Kind::mode, mode, cause};
}

// A run begins here. The filter starts at the limit, so that it comes down to what the motor draws: begun at nothing it
// would show a dry pump to the guards. There is no limit of power to start from, so it starts well over the thresholds.
constexpr double over_threshold_at_start = 2;
void begin_run(Moment const& now, RegulatorState& state) {
  state.running_since_s = now.time_s;
  state.filtered_current_a = std::max(now.settings.motor_current_limit_a, now.measured.current_a);
  state.filtered_power_w = std::max({now.measured.power_w, over_threshold_at_start * now.settings.dry_run_power_below_w,
                                     over_threshold_at_start * now.settings.closed_power_below_w});
}

// From off, a pump is needed at about the sleep speed or above it: below, it would have gone on sleeping. A drive that
// has no sleep speed starts from where it last went to sleep. Already turning, it goes on at the speed it has.
void begin_holding(Moment const& now, RegulatorState& state) {
  enter(now, state, Mode::holding);
  state.filtered_speed_hz = state.speed_hz;
  state.filtered_error_pa = now.error_pa;
  state.second_gain = second_gain_acts(now, state.speed_hz);
  double const start_hz =
      now.logic.sleep_test == SleepTest::nudge ? state.eased_from_hz : now.settings.sleep_speed_below_hz;
  state.integral_hz = state.speed_hz > 0
                          ? bumpless_integral_hz(now, state, std::max(state.speed_hz, now.floor_hz()))
                          : std::clamp(start_hz, now.floor_hz(), std::max(now.floor_hz(), now.ceiling_hz()));
}

// The decision at power-up, which is also the one after a rest, after waiting and after a run by hand: an empty line is
// filled, a pressure that holds lets the pump sleep, anything between is held. on_run says what it is called if it
// runs.
RegulatorEvent decide(Moment const& now, RegulatorState& state, Kind on_run) {
  if (!signal_good(now)) {
    return stop(now, state, Mode::waiting, StopCause::sensor_lost);
  }
  if (now.reading_pa > now.wake_pressure_pa()) {
    state.speed_hz = 0;
    state.tries = 0;
    enter(now, state, Mode::asleep);
    return {Kind::mode, Mode::asleep, std::nullopt};
  }
  begin_run(now, state);
  if (on_run == Kind::retried) {
    ++state.tries;
  }
  bool const empty = now.reading_pa < now.full_line_pa();
  if (empty && now.logic.line_fill && !now.logic.two_contact_switch) {
    enter(now, state, Mode::filling);
  } else {
    begin_holding(now, state);
  }
  return {on_run, state.mode, std::nullopt};
}

// Waiting out a trouble. Supply and signal must have been back for a while; the contact and a cool drive start at once.
Happening wait(Moment const& now, RegulatorState& state, std::optional<StopCause> trouble) {
  bool const only_contact = trouble == StopCause::outside_contact;
  if (trouble && !only_contact) {
    state.supply_good_since_s.reset();
    if (state.cause == trouble) {
      return std::nullopt;
    }
    return stop(now, state, Mode::waiting, *trouble);
  }
  if (state.cause == StopCause::low_volts || state.cause == StopCause::sensor_lost) {
    keep_timer(state.supply_good_since_s, signal_good(now), now.time_s);
    if (!timer_over(state.supply_good_since_s, now.logic.supply_return_delay_s, now.time_s)) {
      return std::nullopt;
    }
  }
  if (only_contact) {
    if (state.cause == trouble) {
      return std::nullopt;
    }
    return stop(now, state, Mode::waiting, *trouble);
  }
  return decide(now, state, Kind::started);
}

Happening fill(Moment const& now, RegulatorState& state) {
  if (now.reading_pa >= now.full_line_pa()) {
    begin_holding(now, state);
    return RegulatorEvent{Kind::filled, Mode::holding, std::nullopt};
  }
  if (now.time_s - state.mode_since_s >= now.settings.fill_time_s) {
    begin_holding(now, state);
    return RegulatorEvent{Kind::mode, Mode::holding, std::nullopt};
  }
  double const goal_hz = fill_goal_hz(now);
  state.speed_hz = speed_toward_hz(reach(now, state.speed_hz, std::min(now.floor_hz(), goal_hz)), goal_hz);
  return std::nullopt;
}

// Slow for long enough with the pressure back, nobody is thought to draw. Back means not much below the target: when
// the last tap closes the pressure stays above it for good, and that counts as well. After a ramp that was given up the
// pressure has to come back first: on its way there the regulator passes slow speeds, and would try to sleep under a
// steady draw again and again. A drive that nudges does try again and again, each time after the hold time.
Happening hold(Moment const& now, RegulatorState& state) {
  state.speed_hz = held_speed_hz(now, state);
  filter_error(now, state);
  filter_speed(now, state);
  double const unmet_hz = state.speed_hz - state.integral_hz - gain_hz_pa(now, state) * now.error_pa;
  keep_timer(state.settled_since_s, is_settled(now, state, unmet_hz), now.time_s);
  bool const slow = is_slow(now, state.filtered_speed_hz, state.filtered_error_pa);
  keep_timer(state.slow_since_s, slow, now.time_s);
  if (timer_over(state.slow_since_s, now.settings.sleep_hold_s, now.time_s)) {
    enter(now, state, Mode::easing);
    state.eased_from_hz = state.filtered_speed_hz;
    return RegulatorEvent{Kind::mode, Mode::easing, std::nullopt};
  }
  return std::nullopt;
}

Happening fall_asleep(Moment const& now, RegulatorState& state) {
  state.speed_hz = 0;
  state.tries = 0;
  enter(now, state, Mode::asleep);
  return RegulatorEvent{Kind::slept, Mode::asleep, std::nullopt};
}

Happening ease(Moment const& now, RegulatorState& state) {
  filter_error(now, state);
  if (falls_while_easing(now, state.filtered_error_pa)) {
    begin_holding(now, state);
    state.integral_hz = std::max(state.integral_hz, state.eased_from_hz);  // somebody draws: back to where it held
    return RegulatorEvent{Kind::gave_up_sleep, Mode::holding, std::nullopt};
  }
  double const ramp_hz_s = rises_while_easing(now, state.filtered_error_pa)
                               ? std::max(now.settings.sleep_ramp_hz_s, now.settings.speed_ramp_down_hz_s)
                               : now.settings.sleep_ramp_hz_s;
  state.speed_hz -= std::max(0.0, ramp_hz_s) * now.step_time_s;
  return state.speed_hz > off_below_hz(now) ? std::nullopt : fall_asleep(now, state);
}

// Fixed speed between two pressures: the contact opens at the target.
Happening run_at_ceiling(Moment const& now, RegulatorState& state) {
  if (now.reading_pa >= now.settings.pressure_target_pa) {
    return fall_asleep(now, state);
  }
  state.speed_hz = speed_toward_hz(reach(now, state.speed_hz, now.floor_hz()), now.ceiling_hz());
  state.integral_hz = state.speed_hz;
  return std::nullopt;
}

Happening wake(Moment const& now, RegulatorState& state) {
  if (!signal_good(now) || now.reading_pa > now.wake_pressure_pa()) {
    return std::nullopt;
  }
  state.tries = 0;
  begin_run(now, state);
  begin_holding(now, state);
  return RegulatorEvent{Kind::woke, Mode::holding, std::nullopt};
}

// After high pressure the pump starts as from sleep, when the pressure has fallen far enough; else after its rest.
Happening rest(Moment const& now, RegulatorState& state, std::optional<StopCause> trouble) {
  double const rested_s = now.time_s - state.mode_since_s;
  bool const over = state.cause == StopCause::high_pressure
                        ? rested_s >= now.logic.high_pressure_rest_s && now.reading_pa <= now.wake_pressure_pa()
                        : rested_s >= rest_s(now, state);
  if (!over) {
    return std::nullopt;
  }
  return trouble ? stop(now, state, Mode::waiting, *trouble) : decide(now, state, Kind::retried);
}

RegulatorEvent begin_hand(Moment const& now, RegulatorState& state) {
  bool const ran = state.powered_up && runs(state.mode);
  if (!ran) {
    begin_run(now, state);
  }
  enter(now, state, Mode::hand);
  return {ran ? Kind::mode : Kind::started, Mode::hand, std::nullopt};
}

void run_by_hand(Moment const& now, RegulatorState& state) {
  double const goal_hz = std::clamp(state.hand->speed_hz, 0.0, now.ceiling_hz());
  state.speed_hz = speed_toward_hz(reach(now, state.speed_hz, std::min(now.floor_hz(), goal_hz)), goal_hz);
}

Happening step(Moment const& now, RegulatorState& state) {
  keep_timer(state.sensor_bad_since_s, !signal_good(now), now.time_s);
  if (state.hand && now.time_s >= state.hand->until_time_s) {
    state.hand.reset();
  }
  auto const trouble = outside_trouble(now, state);
  bool const sits_out = state.powered_up && (state.mode == Mode::resting || state.mode == Mode::stopped);
  if (trouble && state.mode != Mode::waiting && !sits_out) {
    return stop(now, state, Mode::waiting, *trouble);
  }
  if (state.hand && !trouble && state.mode != Mode::hand) {
    return begin_hand(now, state);
  }
  if (!state.powered_up) {
    return decide(now, state, Kind::started);
  }
  if (state.mode == Mode::hand && !state.hand) {
    return decide(now, state, Kind::started);
  }
  if (runs(state.mode)) {
    if (auto const act = watch(now, state)) {
      return stop(now, state, act->mode, act->cause);
    }
    if (!signal_good(now) && state.mode != Mode::hand) {
      return std::nullopt;  // nothing to regulate by: the speed stays until the signal is back or given up
    }
  }
  switch (state.mode) {
    case Mode::waiting:
      return wait(now, state, trouble);
    case Mode::asleep:
      return wake(now, state);
    case Mode::filling:
      return fill(now, state);
    case Mode::holding:
      return now.logic.two_contact_switch ? run_at_ceiling(now, state) : hold(now, state);
    case Mode::easing:
      return ease(now, state);
    case Mode::resting:
      return rest(now, state, trouble);
    case Mode::hand:
      run_by_hand(now, state);
      return std::nullopt;
    case Mode::stopped:
      return std::nullopt;
  }
  return std::nullopt;
}

}  // namespace

Command sample(Settings const& settings, Logic const& logic, RegulatorState& state, Measured const& measured) {
  auto const last_s = state.powered_up ? std::optional<double>(state.last_time_s) : std::nullopt;
  Moment const now = moment(settings, logic, measured, last_s);
  auto const event = step(now, state);
  state.last_time_s = now.time_s;
  state.powered_up = true;
  bool const stopped_itself = state.mode == Mode::waiting || state.mode == Mode::resting || state.mode == Mode::stopped;
  bool const closes = settings.fault_contact_sense == FaultSense::closes_on_stop;
  return {state.speed_hz, stopped_itself == closes, event};
}

}  // namespace wellproof
