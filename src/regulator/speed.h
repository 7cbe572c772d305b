#pragma once
// How the speed moves: ramps, the quick pass through the low speeds, the current limit, and the PI that holds pressure.
#include "regulator/moment.h"

namespace wellproof {

/// The speeds that can be put out at this sample, starting from the one put out before.
struct Reach {
  double fall_hz = 0;            // lowest
  double rise_hz = 0;            // highest
  bool held_by_current = false;  // the current limit makes it fall
};

/// Speed after rising for a time as fast as allowed: up to the start speed in the start time, from there by the ramp.
double risen_speed_hz(Settings const& settings, Logic const& logic, double speed_hz, double time_s);

/// Share of the ramp up that the current leaves: 1 up to a tenth below the limit, nothing at it.
double rise_share(Moment const& now);

/// Ramps and current limit. Over the limit the speed falls by the ramp, not below least_hz. From a tenth below the
/// limit the rise is slowed in proportion, so that speed settles at the limit in place of hunting about it. The quick
/// pass below the start speed is exempt: it lasts a second and a motor that cannot turn is caught by its over-current.
Reach reach(Moment const& now, double speed_hz, double least_hz);

/// The speed to put out on the way to a goal.
inline double speed_toward_hz(Reach const& within, double goal_hz) {
  return std::clamp(goal_hz, within.fall_hz, std::max(within.fall_hz, within.rise_hz));
}

/// The speed at which an empty line is filled.
inline double fill_goal_hz(Moment const& now) {
  return std::clamp(now.settings.fill_speed_hz, 0.0, now.ceiling_hz());
}

/// Whether the second gain acts at this speed and error.
bool second_gain_acts(Moment const& now, double speed_hz);
/// The gain that acts.
double gain_hz_pa(Moment const& now, RegulatorState const& state);

/// One step of the PI: speed = gain · error + integral, with the integral kept from winding up.
/// - Held by floor or ceiling, the integral goes on only until half of the proportional part stands beyond the limit.
///   So noise does not pull the speed off its limit, and yet an error that shrinks faster than the reset time frees it
///   when half is gone, before the pressure has reached the target.
/// - Held by a ramp in the direction of the error, the integral stands.
/// - What a change of mode left of it on the far side of a limit, where it does not show in the speed, is dropped.
/// - Made to fall by the current limit, the integral follows down to where half of the proportional part is left over.
/// - Where one gain takes over from another the integral takes up the difference, so that the speed does not jump.
/// The speed stays between floor and ceiling but for the way up from off.
double held_speed_hz(Moment const& now, RegulatorState& state);

/// The integral at which the PI would put out this speed now: for a change of mode without a bump.
double bumpless_integral_hz(Moment const& now, RegulatorState const& state, double speed_hz);

/// The integral's bound at the limit toward which this error drives.
double integral_bound_hz(Moment const& now, RegulatorState const& state);

}  // namespace wellproof
