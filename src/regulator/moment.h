#pragma once
// What one sample has at hand, worked out once: what is set, how the controller works, what was measured, and from
// these the reading that it goes by and the time since the sample before.
#include <algorithm>
#include <optional>

#include "regulator/regulator.h"

namespace wellproof {

struct Moment {
  Settings const& settings;
  Logic const& logic;
  Measured const& measured;
  double time_s = 0;
  double step_time_s = 0;  // since the sample before; 0 at the first
  double reading_pa = 0;
  double error_pa = 0;  // target − reading: positive when pressure is missing

  /// The floor can be no higher than the ceiling, whatever is set.
  double floor_hz() const { return std::min(settings.speed_floor_hz, settings.speed_ceiling_hz); }
  double ceiling_hz() const { return settings.speed_ceiling_hz; }
  double full_line_pa() const { return logic.full_line_share * settings.pressure_target_pa; }
  double wake_pressure_pa() const { return settings.pressure_target_pa - settings.pressure_wake_drop_pa; }
};

/// The moment of a sample that follows one at last_time_s (none before the first).
Moment moment(Settings const& settings, Logic const& logic, Measured const& measured,
              std::optional<double> last_time_s);

/// Whether the motor turns, or is about to.
inline bool runs(Mode mode) {
  return mode == Mode::filling || mode == Mode::holding || mode == Mode::easing || mode == Mode::hand;
}

/// A timer kept as the time at which it started: it starts when the condition begins and is gone when it ends.
inline void keep_timer(std::optional<double>& since_s, bool condition, double time_s) {
  if (!condition) {
    since_s.reset();
  } else if (!since_s) {
    since_s = time_s;
  }
}

/// A filter of first order, stepped backward: no step is too long for it, and behind an input that goes evenly it lags
/// by its time constant.
inline double filtered(double before, double measured, double step_time_s, double time_constant_s) {
  double const span_s = step_time_s + std::max(0.0, time_constant_s);
  double const share = span_s > 0 ? step_time_s / span_s : 1.0;
  return before * (1 - share) + measured * share;
}

inline bool timer_over(std::optional<double> const& since_s, double delay_s, double time_s) {
  return since_s && time_s - *since_s >= delay_s;
}

}  // namespace wellproof
