#pragma once
// What stops a pump: outside troubles that pass by themselves (contact, supply, heat, signal), and the guards on what
// the pump itself does (pressure too high, current too high or too low, running without end).
#include <optional>

#include "regulator/moment.h"

namespace wellproof {

// How far back a trouble must have gone before it counts as over. Common practice, no source.
inline constexpr double supply_return_share = 0.05;  // of nominal, above the share at which it stopped
inline constexpr double sink_return_k = 15;          // below the limit
// A motor that starts may draw more than its limit for this long after the quick pass. Common practice, no source.
inline constexpr double start_current_s = 2;

/// Whether the sensor's signal, before trim, is one that a working sensor can give. Always, where there is no sensor.
bool signal_good(Moment const& now);

/// The trouble from outside that forbids to run, if there is one. One that the controller is waiting out stays until
/// its return threshold is passed. A run by hand goes on without a sensor: it may be what is wanted to find out why.
std::optional<StopCause> outside_trouble(Moment const& now, RegulatorState const& state);

/// Speed from which the load guards act.
inline double guard_speed_hz(Moment const& now) {
  return now.logic.guard_speed_share * now.ceiling_hz();
}

/// What the guards on the pump's load look at, by the drive's logic, and under what they act: amperes or watts.
struct Load {
  double measured = 0;
  double filtered = 0;
  double dry_below = 0;
  double closed_below = 0;
};
Load load(Moment const& now, RegulatorState const& state);

/// Whether the load guards look at all. Where they look near the ceiling: at full speed, with the pressure lost.
/// Current alone says little else: at low speed dry, shut and flowing lie within a tenth of an ampere of each other,
/// and a pump that snores at full speed draws what one against a shut line does. A pump at full speed against a shut
/// line with the pressure held is no case that lasts: the regulator slows it down. Between two contacts, pressure is
/// lost while the contact calls. Where they look at any speed: whenever it fills or holds.
bool load_gate_open(Moment const& now, RegulatorState const& state);

/// Whether the load may move a little, and no comparison of it comes out otherwise: neither a guard's nor the current
/// limit's, nor is the rise slowed in the limit's neighbourhood.
bool load_clear(Moment const& now, RegulatorState const& state);

/// What a guard decided: where to go and why.
struct GuardStop {
  Mode mode = Mode::stopped;
  StopCause cause = StopCause::long_run;
};

/// How long the rest lasts that it is in: the one set, longer with each try that did not help where rests grow.
double rest_s(Moment const& now, RegulatorState const& state);

/// Keeps the guards' timers and the filtered load, and says which guard acts, if one does: the pressure first, then
/// over-current, dry run, closed discharge, long run. The two load guards have each its own delay and run side by side
/// when the load is under both; whichever ends first acts, dry run when both do. A timer starts anew when the gate
/// closes or the filtered load is back over the threshold; the filter is what keeps jitter from doing that.
std::optional<GuardStop> watch(Moment const& now, RegulatorState& state);

}  // namespace wellproof
