#pragma once
// A controller whose speed moves evenly: it holds the pressure by PI with nothing in its way, goes along a ramp, or
// stays at its floor or ceiling. From sample to sample nothing that it does jumps, and a plant can be carried over many
// samples with the speed following the pressure as if it were looked at all the time. What a sample would lag behind by
// is left out, and where a regulated speed moves so fast that this counts, samples are computed.
#include <optional>

#include "regulator/regulator.h"

namespace wellproof {

/// What shapes the speed.
enum class Course {
  regulated,  // the PI, with nothing in its way
  ramp,       // a ramp that is slower than what the PI wants, or the one down to sleep
  limit,      // floor or ceiling
};

/// speed = integral + gain·error, d(integral)/dt = ramp + gain·error·reset, with error = target − reading. Along a ramp
/// and at a limit there is no gain, and the integral is the speed: along a ramp the mean over a sample's time, in which
/// the speed put out stands.
struct Following {
  Course course = Course::regulated;
  double step_hz = 0;  // what a ramp moves the speed by from sample to sample
  double gain_hz_pa = 0;
  double reset_1_s = 0;
  double ramp_hz_s = 0;
  double integral_hz = 0;                                         // now
  double until_time_s = std::numeric_limits<double>::infinity();  // a timer ends: this sample must be computed
};

/// How the controller goes on from the sample just computed; none if something is in its way.
/// @param sampled  what that sample was given, noise and all
/// @param noise_pa standard deviation from sample to sample; a ramp that would often clip it is in the way
std::optional<Following> following(Settings const& settings, Logic const& logic, RegulatorState const& state,
                                   Measured const& sampled, double noise_pa, double period_s);

/// Whether a sample on these values, with this speed and this error filtered, would go on evenly: no comparison comes
/// out otherwise. The timer on a slow speed is not looked at: it starts and ends on the way (keep_slow).
bool passes_over(Settings const& settings, Logic const& logic, RegulatorState const& state, Following const& following,
                 Measured const& measured, double speed_hz, double filtered_error_pa);

/// The timer on a slow speed as a sample leaves it that is passed over. False if it is over at that sample, which must
/// then be computed; the timer is left as it was.
bool keep_slow(Settings const& settings, Logic const& logic, RegulatorState& state, Measured const& measured,
               double filtered_speed_hz, double filtered_error_pa);

/// Ends of what a value goes through.
struct Span {
  double least = 0;
  double most = 0;
};

/// Whether all samples with values within these spans pass over, and whether all of them are slow or none is.
struct Outlook {
  bool passes = false;
  std::optional<bool> slow{};  // empty: it depends
};
Outlook outlook(Settings const& settings, Logic const& logic, RegulatorState const& state, Following const& following,
                Span pressure_pa, Span speed_hz, Span filtered_speed_hz, Span filtered_error_pa);

/// One step of the plant is over. Filters are carried along, on what they showed and on values without noise, and so is
/// the integral at a limit; false, and the state as it was, if at the end of the step, noise apart, the controller
/// would not go on evenly.
/// @param from, to without noise
bool follow_on(Settings const& settings, Logic const& logic, RegulatorState& state, Following const& following,
               Measured const& from, Measured const& to, double from_speed_hz, double to_speed_hz, double period_s);

/// Whether a speed that moves like this from one sample to the next is too fast to be followed.
bool too_fast(double speed_change_hz_s, double period_s);

/// The end of it: the next sample comes at next_sample_s, at the present time or less than a period after it.
/// @param now without noise
void resume_following(Settings const& settings, Logic const& logic, RegulatorState& state, Following const& following,
                      Measured const& now, double speed_hz, double integral_hz, double next_sample_s, double period_s);

}  // namespace wellproof
