#pragma once
// Margins as a person reads them: how far a run stayed from its limit in the limit's own unit, and four figures for the
// whole plan: amps to the nearest false stop, seconds to harm, pressure to the rating, hertz to the speed at which it
// will not sleep.
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "proof/prove.h"

namespace wellproof {

/// From a value to its limit, in the unit of the measure; < 0 beyond the limit.
double distance_to_limit(Measure measure, double value, double limit);

/// The same as a few words: "4.6 psi to rating", "2 too many".
std::string distance_words(Measure measure, Outcome const& outcome, UnitSystem units);

/// Where a motor at work with its pressure lost takes least, against the thresholds of the amps guards: the guards look
/// there, and a current under a threshold would be a stop for nothing. Empty value where both guards are off.
PlanMargin false_stop_margin(std::span<Plant const> plants, Settings const& settings, Logic const& logic,
                             UnitSystem units);

/// From the moment at which a guard stops a pump that is dry or shut to the moment at which that harms it, counted from
/// when the guards look. Empty value where nothing would ever stop it.
PlanMargin harm_margin(std::span<Plant const> plants, Settings const& settings, Logic const& logic, UnitSystem units);

/// From the speed at which a leak is held, soon after a peak, up to the sleep speed. Empty where nothing sleeps (a
/// pressure switch).
PlanMargin sleep_margin(std::span<Plant const> plants, Settings const& settings, Logic const& logic, UnitSystem units);

/// From the highest pressure of all runs to what the part can bear that is nearest to its rating.
/// @param outcomes of each hazard, in their order
PlanMargin rating_margin(std::vector<std::vector<Outcome>> const& outcomes, UnitSystem units);

}  // namespace wellproof
