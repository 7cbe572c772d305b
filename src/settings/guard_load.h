#pragma once
// The load that a drive's guards look at, amperes or watts, as the derivation needs it.
#include <string>
#include <string_view>

#include "settings/study.h"

namespace wellproof {

/// What the guards would see of the motor.
inline double guard_load(Logic const& logic, MotorPoint const& motor) {
  return logic.guard_by == GuardBy::power ? motor.input_power_w : motor.current_a;
}
std::string load_text(Study const& study, double load);

/// Lowest load of lasting work with the pressure held: just above the sleep speed with hardly a draw. A slower pump
/// goes to sleep before the delay of a guard that looks at any speed is over, and one that nudges starts that delay
/// anew with each nudge. Filling, the slowest pump fills at what just passes the pressure from which the line counts as
/// full.
double slow_work_load(Plant const& plant, Settings const& settings, Logic const& logic);

/// The thresholds that act: of current or of power.
inline double dry_below(Settings const& settings, Logic const& logic) {
  return logic.guard_by == GuardBy::power ? settings.dry_run_power_below_w : settings.dry_run_amps_below_a;
}
inline double closed_below(Settings const& settings, Logic const& logic) {
  return logic.guard_by == GuardBy::power ? settings.closed_power_below_w : settings.closed_amps_below_a;
}

/// The keys by which such a drive is set, and the thresholds themselves.
std::string_view dry_key(Logic const& logic);
std::string_view closed_key(Logic const& logic);
double& dry_below(Study& study);
double& closed_below(Study& study);

/// Why the guards look where they look, and what that costs.
void explain_where_guards_look(Study& study);
/// A pump that breaks suction passes what the well gives, mixed with air. Which guard sees it?
void explain_snoring(Study& study);

}  // namespace wellproof
