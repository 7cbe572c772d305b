#pragma once
// When a regulator counts as settled or slow, and where its ramp to sleep ends.
#include <algorithm>
#include <cmath>

#include "regulator/moment.h"
#include "regulator/speed.h"

namespace wellproof {

// An error and a share of the integral that are nothing: a holding regulator is settled.
inline constexpr double settled_error_share = 0.002;  // of the target
inline constexpr double settled_speed_hz = 0.05;
inline constexpr double back_share = 0.25;  // of the sleep band: so much may be missing while it is slow

// Whether it is settled, slow, or easing while somebody draws is never told by a single sample, which noise may have
// put anywhere, but by error and speed filtered. While the speed is regulated there is time; on the way down a tap that
// opens is fed by the tank alone and the pressure falls on for the filter's lag, so that it is shorter: of 20 samples a
// second it leaves a fifth of the noise, and the pump takes longer than that to come back by its ramp.
inline constexpr double settled_filter_s = 2;
inline constexpr double easing_filter_s = 0.5;

inline double error_filter_s(Mode mode) {
  return mode == Mode::easing ? easing_filter_s : settled_filter_s;
}

/// Of the standard deviation of noise from sample to sample, what such a filter leaves, in [0, 1].
inline double noise_left_share(double time_constant_s, double period_s) {
  double const share = period_s / (period_s + time_constant_s);
  return std::sqrt(share / (2 - share));
}

inline void filter_error(Moment const& now, RegulatorState& state) {
  state.filtered_error_pa =
      filtered(state.filtered_error_pa, now.error_pa, now.step_time_s, error_filter_s(state.mode));
}

inline void filter_speed(Moment const& now, RegulatorState& state) {
  state.filtered_speed_hz = filtered(state.filtered_speed_hz, state.speed_hz, now.step_time_s, settled_filter_s);
}

/// @param unmet_hz what the speed differs by from what the regulator wants
inline bool is_settled(Moment const& now, RegulatorState const& state, double unmet_hz) {
  return std::abs(state.filtered_error_pa) < settled_error_share * now.settings.pressure_target_pa &&
         std::abs(gain_hz_pa(now, state) * state.filtered_error_pa) < settled_speed_hz &&
         std::abs(unmet_hz) < settled_speed_hz;
}

/// So long must it have been settled before it counts: an error that only passes through nothing is not settled.
inline double settled_for_s(Settings const& settings) {
  constexpr double least_s = 1;
  return std::max(least_s, settings.regulator_reset_time_s);
}

/// A speed at which sleep is looked for.
inline bool may_sleep_at(Moment const& now, double speed_hz) {
  return now.logic.sleep_test == SleepTest::nudge || speed_hz <= now.settings.sleep_speed_below_hz;
}

/// The pressure is back, or above the target.
inline bool is_back(Moment const& now, double filtered_error_pa) {
  return filtered_error_pa <= back_share * now.settings.sleep_band_pa;
}

inline bool is_slow(Moment const& now, double filtered_speed_hz, double filtered_error_pa) {
  return may_sleep_at(now, filtered_speed_hz) && is_back(now, filtered_error_pa);
}

/// On the way down, somebody draws: the band is lost.
inline bool falls_while_easing(Moment const& now, double filtered_error_pa) {
  return filtered_error_pa > std::min(now.settings.sleep_band_pa, now.settings.pressure_wake_drop_pa);
}

/// On the way down from a nudge, which may begin at any speed, the last tap may close: the pressure then rises, and the
/// drive need not watch for a draw any longer.
inline bool rises_while_easing(Moment const& now, double filtered_error_pa) {
  return now.logic.sleep_test == SleepTest::nudge && -filtered_error_pa > now.settings.sleep_band_pa;
}

inline double off_below_hz(Moment const& now) {
  return std::min(now.logic.start_speed_hz, now.floor_hz());
}

}  // namespace wellproof
