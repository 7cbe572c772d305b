#include "regulator/guards.h"

#include <cmath>

#include "regulator/speed.h"

namespace wellproof {
namespace {

constexpr double clear_share = 0.02;  // of a threshold

bool contact_forbids(Moment const& now) {
  switch (now.settings.permissive_sense) {
    case ContactSense::unused:
      return false;
    case ContactSense::closed_runs:
      return !now.measured.permissive_closed;
    case ContactSense::open_runs:
      return now.measured.permissive_closed;
  }
  return false;
}

}  // namespace

bool signal_good(Moment const& now) {
  if (now.logic.two_contact_switch) {
    return true;
  }
  double const full_scale_pa = now.settings.sensor_full_scale_pa;
  return now.measured.pressure_pa >= now.logic.sensor_low_share * full_scale_pa &&
         now.measured.pressure_pa <= now.logic.sensor_high_share * full_scale_pa;
}

std::optional<StopCause> outside_trouble(Moment const& now, RegulatorState const& state) {
  auto const waits_for = [&](StopCause cause) { return state.mode == Mode::waiting && state.cause == cause; };
  if (contact_forbids(now)) {
    return StopCause::outside_contact;
  }
  double const back_share = waits_for(StopCause::low_volts) ? supply_return_share : 0.0;
  if (now.measured.supply_share < now.logic.low_volts_share + back_share) {
    return StopCause::low_volts;
  }
  double const back_k = waits_for(StopCause::drive_hot) ? sink_return_k : 0.0;
  if (now.measured.sink_c > now.logic.sink_limit_c - back_k) {
    return StopCause::drive_hot;
  }
  bool const lost = timer_over(state.sensor_bad_since_s, now.logic.sensor_fault_delay_s, now.time_s) ||
                    (state.sensor_bad_since_s && waits_for(StopCause::sensor_lost));
  if (lost && !state.hand) {
    return StopCause::sensor_lost;
  }
  return std::nullopt;
}

Load load(Moment const& now, RegulatorState const& state) {
  Settings const& settings = now.settings;
  if (now.logic.guard_by == GuardBy::power) {
    return {now.measured.power_w, state.filtered_power_w, settings.dry_run_power_below_w,
            settings.closed_power_below_w};
  }
  return {now.measured.current_a, state.filtered_current_a, settings.dry_run_amps_below_a,
          settings.closed_amps_below_a};
}

bool load_gate_open(Moment const& now, RegulatorState const& state) {
  if (state.mode != Mode::filling && state.mode != Mode::holding) {
    return false;
  }
  if (now.logic.guard_where == GuardWhere::any_speed) {
    return state.speed_hz > 0;
  }
  bool const lost =
      now.logic.two_contact_switch ||
      (signal_good(now) && now.reading_pa < now.logic.guard_pressure_share * now.settings.pressure_target_pa);
  return lost && state.speed_hz > 0 && state.speed_hz >= guard_speed_hz(now);
}

bool load_clear(Moment const& now, RegulatorState const& state) {
  Load const seen = load(now, state);
  auto const clear_of = [&](double threshold) { return std::abs(seen.measured - threshold) > clear_share * threshold; };
  return clear_of(seen.dry_below) && clear_of(seen.closed_below) && rise_share(now) >= 1;
}

double rest_s(Moment const& now, RegulatorState const& state) {
  double const first_s = now.settings.dry_run_rest_s;
  double const longest_s = std::max(first_s, now.logic.longest_rest_s);
  double rest_s = first_s;
  for (std::uint32_t i = 0; i < state.tries && now.logic.rest_growth > 1 && rest_s < longest_s; ++i) {
    rest_s *= now.logic.rest_growth;
  }
  return std::min(rest_s, longest_s);
}

std::optional<GuardStop> watch(Moment const& now, RegulatorState& state) {
  Settings const& settings = now.settings;
  Logic const& logic = now.logic;
  double const current_a = now.measured.current_a;
  state.filtered_current_a = filtered(state.filtered_current_a, current_a, now.step_time_s, logic.current_filter_s);
  state.filtered_power_w =
      filtered(state.filtered_power_w, now.measured.power_w, now.step_time_s, logic.current_filter_s);

  bool const gate = load_gate_open(now, state);
  Load const seen = load(now, state);
  keep_timer(state.dry_since_s, gate && seen.filtered < seen.dry_below, now.time_s);
  keep_timer(state.closed_since_s, gate && seen.filtered < seen.closed_below, now.time_s);
  bool const started = now.time_s - state.running_since_s >= logic.start_time_s + start_current_s;
  keep_timer(state.overcurrent_since_s, started && current_a > logic.overcurrent_share * settings.motor_current_limit_a,
             now.time_s);

  if (!logic.two_contact_switch && signal_good(now) && state.speed_hz > 0 &&
      now.reading_pa > settings.pressure_stop_above_pa) {
    return GuardStop{Mode::resting, StopCause::high_pressure};
  }
  if (timer_over(state.overcurrent_since_s, logic.overcurrent_delay_s, now.time_s)) {
    return GuardStop{Mode::stopped, StopCause::over_current};
  }
  if (timer_over(state.dry_since_s, settings.dry_run_delay_s, now.time_s)) {
    return GuardStop{Mode::resting, StopCause::dry_run};
  }
  if (timer_over(state.closed_since_s, settings.closed_delay_s, now.time_s)) {
    return GuardStop{Mode::resting, StopCause::closed_discharge};
  }
  if (logic.long_run_guard && state.mode != Mode::hand &&
      now.time_s - state.running_since_s >= settings.long_run_limit_s) {
    return GuardStop{Mode::stopped, StopCause::long_run};
  }
  return std::nullopt;
}

}  // namespace wellproof
