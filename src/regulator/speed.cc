#include "regulator/speed.h"

#include <cmath>

namespace wellproof {
namespace {

constexpr double current_headroom_share = 0.1;  // of the limit, over which the rise is slowed
constexpr double error_share_beyond = 0.5;      // of the proportional part, that may stand beyond a limit

}  // namespace

double risen_speed_hz(Settings const& settings, Logic const& logic, double speed_hz, double time_s) {
  double left_s = time_s;
  if (speed_hz < logic.start_speed_hz) {
    double const quick_s = logic.start_time_s * (1 - speed_hz / logic.start_speed_hz);
    double const by_ramp_s = (logic.start_speed_hz - speed_hz) / std::max(settings.speed_ramp_up_hz_s, 1e-9);
    double const pass_s = std::min(quick_s, by_ramp_s);
    if (left_s < pass_s) {
      return speed_hz + (logic.start_speed_hz - speed_hz) * (left_s / pass_s);
    }
    left_s -= pass_s;
    speed_hz = logic.start_speed_hz;
  }
  return speed_hz + settings.speed_ramp_up_hz_s * left_s;
}

double rise_share(Moment const& now) {
  double const limit_a = now.settings.motor_current_limit_a;
  double const headroom_a = current_headroom_share * limit_a;
  return headroom_a > 0 ? std::clamp((limit_a - now.measured.current_a) / headroom_a, 0.0, 1.0) : 0.0;
}

Reach reach(Moment const& now, double speed_hz, double least_hz) {
  Settings const& settings = now.settings;
  double const fall_hz = std::max(0.0, speed_hz - settings.speed_ramp_down_hz_s * now.step_time_s);
  double const rise_hz = risen_speed_hz(settings, now.logic, speed_hz, now.step_time_s);
  if (speed_hz < now.logic.start_speed_hz) {
    return {.fall_hz = fall_hz, .rise_hz = rise_hz};
  }
  if (now.measured.current_a > settings.motor_current_limit_a) {
    double const forced_hz = std::max(fall_hz, std::min(speed_hz, least_hz));
    return {.fall_hz = forced_hz, .rise_hz = forced_hz, .held_by_current = true};
  }
  return {.fall_hz = fall_hz, .rise_hz = speed_hz + (rise_hz - speed_hz) * rise_share(now)};
}

bool second_gain_acts(Moment const& now, double speed_hz) {
  switch (now.logic.second_gain) {
    case SecondGain::none:
      return false;
    case SecondGain::below_speed:
      return speed_hz < now.logic.second_gain_below_hz;
    case SecondGain::large_error:
      return std::abs(now.error_pa) > now.logic.second_gain_error_pa;
  }
  return false;
}

double gain_hz_pa(Moment const& now, RegulatorState const& state) {
  return now.settings.regulator_gain_hz_pa * (state.second_gain ? now.logic.second_gain_share : 1.0);
}

double integral_bound_hz(Moment const& now, RegulatorState const& state) {
  double const limit_hz = now.error_pa > 0 ? now.ceiling_hz() : now.floor_hz();
  return limit_hz - (1 - error_share_beyond) * gain_hz_pa(now, state) * now.error_pa;
}

double held_speed_hz(Moment const& now, RegulatorState& state) {
  double const floor_hz = now.floor_hz();
  double const ceiling_hz = now.ceiling_hz();
  double const first_hz = gain_hz_pa(now, state) * now.error_pa;
  state.second_gain = second_gain_acts(now, state.speed_hz);
  double const proportional_hz = gain_hz_pa(now, state) * now.error_pa;
  state.integral_hz += first_hz - proportional_hz;
  double const reset_s = now.settings.regulator_reset_time_s;
  Reach const within = reach(now, state.speed_hz, floor_hz);

  double const before_hz = state.integral_hz;
  double integral_hz = before_hz + (reset_s > 0 ? proportional_hz * (now.step_time_s / reset_s) : 0.0);
  double const bound_hz = integral_bound_hz(now, state);
  double const wanted_hz = proportional_hz + before_hz;
  if (now.error_pa > 0) {
    bool const by_ramp = wanted_hz > within.rise_hz && within.rise_hz < ceiling_hz;
    integral_hz = by_ramp ? before_hz : std::max(before_hz, std::min(integral_hz, bound_hz));
    integral_hz = std::max(std::min(integral_hz, ceiling_hz), floor_hz - proportional_hz);
  } else {
    bool const by_ramp = wanted_hz < within.fall_hz && within.fall_hz > floor_hz;
    integral_hz = by_ramp ? before_hz : std::min(before_hz, std::max(integral_hz, bound_hz));
    integral_hz = std::min(std::max(integral_hz, floor_hz), ceiling_hz - proportional_hz);
  }

  double const wish_hz = std::clamp(proportional_hz + integral_hz, floor_hz, ceiling_hz);
  double const speed_hz = speed_toward_hz(within, wish_hz);
  if (within.held_by_current && wish_hz > speed_hz) {
    double const left_over_hz = error_share_beyond * std::max(0.0, proportional_hz);
    integral_hz = std::min(integral_hz, bumpless_integral_hz(now, state, speed_hz) + left_over_hz);
  }
  state.integral_hz = integral_hz;
  return std::min(speed_hz, ceiling_hz);
}

double bumpless_integral_hz(Moment const& now, RegulatorState const& state, double speed_hz) {
  return speed_hz - gain_hz_pa(now, state) * now.error_pa;
}

}  // namespace wellproof
