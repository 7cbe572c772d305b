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
inline constexpr double back_share = 0.25;     // of the sleep band: so much may still be missing when slow begins
inline constexpr double settled_filter_s = 2;  // on the error, so that noise of the signal does not count

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

inline bool is_slow(Moment const& now, double speed_hz, double filtered_error_pa) {
  return may_sleep_at(now, speed_hz) && now.reading_pa >= now.held_pressure_pa() &&
         filtered_error_pa <= back_share * now.settings.sleep_band_pa;
}

/// On the way down from a nudge, which may begin at any speed, the last tap may close: the pressure then rises, and the
/// drive need not watch for a draw any longer.
inline bool rises_while_easing(Moment const& now) {
  return now.logic.sleep_test == SleepTest::nudge &&
         now.reading_pa > now.settings.pressure_target_pa + now.settings.sleep_band_pa;
}

inline double off_below_hz(Moment const& now) {
  return std::min(now.logic.start_speed_hz, now.floor_hz());
}

}  // namespace wellproof
