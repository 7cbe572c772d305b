#include "regulator/following.h"

#include <cmath>

#include "regulator/guards.h"
#include "regulator/moment.h"
#include "regulator/sleep.h"
#include "regulator/speed.h"

namespace wellproof {
namespace {

constexpr double same_speed_hz = 1e-6;
constexpr double clear_of_ramp_share = 0.8;    // so fast may the speed move, of what the ramps allow
constexpr double clear_of_limit_share = 0.98;  // of the current limit
constexpr double most_lag_hz = 0.1;            // that the speed may move from sample to sample
constexpr double clear_of_guard_share = 1.02;  // of a guard's threshold
constexpr double noise_steps = 2;              // standard deviations of a step between two samples that no ramp clips

/// A first-order filter over a time in which its input went straight from one value to another.
double filtered_over(double value, double from, double to, double time_constant_s, double duration_s) {
  if (!(time_constant_s > 0)) {
    return to;
  }
  double const lag = (to - from) / duration_s * time_constant_s;
  return to - lag + (value - from + lag) * std::exp(-duration_s / time_constant_s);
}

/// What the PI wants, before its limits.
double wish_hz(Moment const& now, RegulatorState const& state) {
  return state.integral_hz + gain_hz_pa(now, state) * now.error_pa;
}

/// Whether the next sample goes the same way: regulated, with neither floor nor ceiling in the way; along the ramp,
/// with more wanted than it gives and the integral standing; at the limit, with more wanted than it allows.
bool stays_on(Course course, double step_hz, Moment const& now, RegulatorState const& state, double speed_hz) {
  double const floor_hz = now.floor_hz();
  double const ceiling_hz = now.ceiling_hz();
  double const wanted_hz = wish_hz(now, state);
  switch (course) {
    case Course::regulated:
      return speed_hz > floor_hz && speed_hz < ceiling_hz;
    case Course::ramp:
      return step_hz > 0 ? now.error_pa > 0 && wanted_hz > std::max(speed_hz + step_hz, floor_hz) &&
                               speed_hz + step_hz < ceiling_hz && state.integral_hz <= ceiling_hz
                         : now.error_pa < 0 && wanted_hz < speed_hz + step_hz && speed_hz + step_hz > floor_hz &&
                               state.integral_hz >= floor_hz;
    case Course::limit:
      return speed_hz > floor_hz ? now.error_pa > 0 && wanted_hz > ceiling_hz
                                 : now.error_pa < 0 && wanted_hz < floor_hz;
  }
  return false;
}

/// The quick pass below the start speed does not look at the current.
bool nothing_wrong(Moment const& now, RegulatorState const& state, Following const& following) {
  double const clear_a = clear_of_limit_share * now.settings.motor_current_limit_a;
  bool const starts = following.course == Course::ramp && state.speed_hz < now.logic.start_speed_hz;
  bool const full_ramp = following.course != Course::ramp || following.step_hz < 0 || rise_share(now) >= 1;
  return signal_good(now) && !outside_trouble(now, state) &&
         (starts || (now.measured.current_a < clear_a && full_ramp));
}

Following easing(Moment const& now, RegulatorState const& state, double period_s) {
  double const ramp_hz_s = -std::max(0.0, now.settings.sleep_ramp_hz_s);
  double const left_hz = state.speed_hz - off_below_hz(now);
  return {.course = Course::ramp,
          .step_hz = ramp_hz_s * period_s,
          .ramp_hz_s = ramp_hz_s,
          .integral_hz = state.speed_hz - 0.5 * ramp_hz_s * period_s,
          .until_time_s = ramp_hz_s < 0 ? now.time_s - left_hz / ramp_hz_s : std::numeric_limits<double>::infinity()};
}

/// Up through the low speeds, up by the ramp, or down by it.
Following along_ramp(Moment const& now, RegulatorState const& state, bool down, double period_s) {
  auto const& settings = now.settings;
  Following found{.course = Course::ramp, .integral_hz = state.speed_hz};
  bool const starts = state.speed_hz < now.logic.start_speed_hz;
  double const risen_hz = risen_speed_hz(settings, now.logic, state.speed_hz, period_s) - state.speed_hz;
  found.step_hz = down ? -settings.speed_ramp_down_hz_s * period_s : risen_hz;
  found.ramp_hz_s = found.step_hz / period_s;
  if (starts && found.ramp_hz_s > 0) {
    found.until_time_s = std::min(now.time_s + (now.logic.start_speed_hz - state.speed_hz) / found.ramp_hz_s,
                                  state.running_since_s + now.logic.start_time_s + start_current_s);
  }
  found.integral_hz -= 0.5 * found.step_hz;
  return found;
}

std::optional<Following> while_holding(Moment const& now, RegulatorState const& state, double noise_pa,
                                       double period_s) {
  auto const& settings = now.settings;
  double const wanted_hz = wish_hz(now, state);
  if (std::abs(wanted_hz - state.speed_hz) > same_speed_hz) {
    bool const at_limit = wanted_hz > state.speed_hz ? state.speed_hz >= now.ceiling_hz()
                                                     : std::abs(state.speed_hz - now.floor_hz()) < same_speed_hz;
    return at_limit ? Following{.course = Course::limit, .integral_hz = state.speed_hz}
                    : along_ramp(now, state, wanted_hz < state.speed_hz, period_s);
  }
  double const gain = gain_hz_pa(now, state);
  double const ramp_hz =
      period_s * std::min(settings.speed_ramp_up_hz_s * rise_share(now), settings.speed_ramp_down_hz_s);
  double const noise_hz = noise_steps * std::sqrt(2.0) * gain * noise_pa;
  if (noise_hz > ramp_hz) {
    return std::nullopt;
  }
  return Following{.course = Course::regulated,
                   .gain_hz_pa = gain,
                   .reset_1_s = settings.regulator_reset_time_s > 0 ? 1 / settings.regulator_reset_time_s : 0,
                   .integral_hz = state.integral_hz};
}

/// The integral at floor or ceiling, as held_speed_hz moves it from sample to sample.
void go_on_at_limit(Moment const& now, RegulatorState& state, double mean_error_pa, double duration_s) {
  double const reset_s = now.settings.regulator_reset_time_s;
  double const gain = gain_hz_pa(now, state);
  double const bound_hz = integral_bound_hz(now, state);
  double const gone_hz = state.integral_hz + (reset_s > 0 ? gain * mean_error_pa * (duration_s / reset_s) : 0.0);
  if (now.error_pa > 0) {
    state.integral_hz = std::min(std::max(state.integral_hz, std::min(gone_hz, bound_hz)), now.ceiling_hz());
  } else {
    state.integral_hz = std::max(std::min(state.integral_hz, std::max(gone_hz, bound_hz)), now.floor_hz());
  }
}

/// The load guards look, and what they see is not clear of their thresholds.
bool guards_matter(Moment const& now, RegulatorState const& state, double speed_hz) {
  auto then = state;
  then.speed_hz = speed_hz;
  if (!load_gate_open(now, then)) {
    return false;
  }
  Load const seen = load(now, state);
  double const clear_above = clear_of_guard_share * std::max(seen.dry_below, seen.closed_below);
  return std::min(seen.measured, seen.filtered) < clear_above;
}

std::optional<Following> course_ahead(Moment const& now, RegulatorState const& state, double noise_pa,
                                      double period_s) {
  switch (state.mode) {
    case Mode::easing:
      return easing(now, state, period_s);
    case Mode::filling: {
      auto found = along_ramp(now, state, false, period_s);
      found.until_time_s = std::min(found.until_time_s, state.mode_since_s + now.settings.fill_time_s);
      return found;
    }
    case Mode::holding:
      return while_holding(now, state, noise_pa, period_s);
    default:
      return std::nullopt;
  }
}

}  // namespace

std::optional<Following> following(Settings const& settings, Logic const& logic, RegulatorState const& state,
                                   Measured const& sampled, double noise_pa, double period_s) {
  Moment const now = moment(settings, logic, sampled, sampled.time_s);
  bool const quiet = state.powered_up && state.speed_hz > 0 && !state.hand && !state.overcurrent_since_s &&
                     !state.dry_since_s && !state.closed_since_s && !state.sensor_bad_since_s;
  if (!quiet || logic.two_contact_switch) {
    return std::nullopt;
  }
  auto found = course_ahead(now, state, noise_pa, period_s);
  if (!found || !nothing_wrong(now, state, *found) ||
      !passes_over(settings, logic, state, *found, sampled, state.speed_hz, state.filtered_error_pa)) {
    return std::nullopt;
  }
  if (logic.long_run_guard) {
    found->until_time_s = std::min(found->until_time_s, state.running_since_s + settings.long_run_limit_s);
  }
  return found;
}

bool passes_over(Settings const& settings, Logic const& logic, RegulatorState const& state, Following const& following,
                 Measured const& measured, double speed_hz, double filtered_error_pa) {
  Moment const now = moment(settings, logic, measured, measured.time_s);
  if (now.reading_pa > settings.pressure_stop_above_pa) {
    return false;
  }
  if (state.mode == Mode::easing) {
    return !falls_while_easing(now, filtered_error_pa) && !rises_while_easing(now, filtered_error_pa) &&
           speed_hz > off_below_hz(now);
  }
  if (state.mode == Mode::filling) {
    return now.reading_pa < now.full_line_pa() && speed_hz + following.step_hz < fill_goal_hz(now) &&
           !guards_matter(now, state, speed_hz);
  }
  return second_gain_acts(now, speed_hz) == state.second_gain &&
         stays_on(following.course, following.step_hz, now, state, speed_hz) && !guards_matter(now, state, speed_hz);
}

bool keep_slow(Settings const& settings, Logic const& logic, RegulatorState& state, Measured const& measured,
               double filtered_speed_hz, double filtered_error_pa) {
  if (state.mode != Mode::holding) {
    return true;
  }
  Moment const now = moment(settings, logic, measured, measured.time_s);
  bool const slow = is_slow(now, filtered_speed_hz, filtered_error_pa);
  if (slow && now.time_s - state.slow_since_s.value_or(now.time_s) >= settings.sleep_hold_s) {
    return false;
  }
  keep_timer(state.slow_since_s, slow, now.time_s);
  return true;
}

// Each comparison is of one value, and goes one way with it: the ends of the spans tell for all.
Outlook outlook(Settings const& settings, Logic const& logic, RegulatorState const& state, Following const& following,
                Span pressure_pa, Span speed_hz, Span filtered_speed_hz, Span filtered_error_pa) {
  auto const at = [&](double one_pressure_pa) {
    // Loads are looked at by follow_on at the end of each step.
    Measured measured;
    measured.pressure_pa = one_pressure_pa;
    measured.current_a = Calm::infinity;
    measured.power_w = Calm::infinity;
    return measured;
  };
  auto const low = at(pressure_pa.least);
  auto const high = at(pressure_pa.most);
  Moment const lowest = moment(settings, logic, low, 0.0);
  Moment const highest = moment(settings, logic, high, 0.0);
  Outlook found;
  found.passes = true;
  for (double const one_speed_hz : {speed_hz.least, speed_hz.most}) {
    found.passes = found.passes &&
                   passes_over(settings, logic, state, following, low, one_speed_hz, filtered_error_pa.most) &&
                   passes_over(settings, logic, state, following, high, one_speed_hz, filtered_error_pa.least);
  }
  // A second gain by the error acts on either side of the target, and not between.
  bool const both_sides = lowest.error_pa > 0 && highest.error_pa < 0;
  found.passes = found.passes && !(logic.second_gain == SecondGain::large_error && state.second_gain && both_sides);
  bool const all = is_slow(lowest, filtered_speed_hz.most, filtered_error_pa.most);
  bool const some = is_slow(highest, filtered_speed_hz.least, filtered_error_pa.least);
  if (all == some) {
    found.slow = all;
  }
  return found;
}

bool too_fast(double speed_change_hz_s, double period_s) {
  return std::abs(speed_change_hz_s) * period_s > most_lag_hz;
}

bool follow_on(Settings const& settings, Logic const& logic, RegulatorState& state, Following const& following,
               Measured const& from, Measured const& to, double from_speed_hz, double to_speed_hz, double period_s) {
  Moment const now = moment(settings, logic, to, to.time_s);
  double const duration_s = to.time_s - from.time_s;
  double const moved_hz = to_speed_hz - from_speed_hz;
  bool const by_ramp = moved_hz > clear_of_ramp_share * duration_s * settings.speed_ramp_up_hz_s * rise_share(now) ||
                       -moved_hz > clear_of_ramp_share * duration_s * settings.speed_ramp_down_hz_s;
  double const from_error_pa = now.error_pa + to.pressure_pa - from.pressure_pa;
  double const error_pa =
      filtered_over(state.filtered_error_pa, from_error_pa, now.error_pa, error_filter_s(state.mode), duration_s);
  bool const regulated = following.course == Course::regulated;
  if (!nothing_wrong(now, state, following) ||
      !passes_over(settings, logic, state, following, to, to_speed_hz, error_pa) ||
      (regulated && (by_ramp || too_fast(moved_hz / duration_s, period_s)))) {
    return false;
  }
  state.filtered_error_pa = error_pa;
  if (following.course == Course::limit) {
    go_on_at_limit(now, state, 0.5 * (from_error_pa + now.error_pa), duration_s);
  }
  if (state.mode == Mode::holding) {
    state.filtered_speed_hz =
        filtered_over(state.filtered_speed_hz, from_speed_hz, to_speed_hz, settled_filter_s, duration_s);
    double const unmet_hz = regulated ? 0 : to_speed_hz - wish_hz(now, state);
    keep_timer(state.settled_since_s, is_settled(now, state, unmet_hz), now.time_s);
  }
  state.filtered_current_a =
      filtered_over(state.filtered_current_a, from.current_a, to.current_a, logic.current_filter_s, duration_s);
  state.filtered_power_w =
      filtered_over(state.filtered_power_w, from.power_w, to.power_w, logic.current_filter_s, duration_s);
  return true;
}

void resume_following(Settings const& settings, Logic const& logic, RegulatorState& state, Following const& following,
                      Measured const& now, double speed_hz, double integral_hz, double next_sample_s, double period_s) {
  // As if the sample a period before the next one had been the last: so much the next one adds again.
  double const again_s = now.time_s - (next_sample_s - period_s);
  double const error_pa = moment(settings, logic, now, now.time_s).error_pa;
  state.last_time_s = next_sample_s - period_s;
  state.speed_hz = speed_hz - again_s * following.ramp_hz_s + 0.5 * following.step_hz;
  if (following.course == Course::regulated) {
    state.integral_hz = integral_hz - again_s * following.gain_hz_pa * following.reset_1_s * error_pa;
  }
}

}  // namespace wellproof
