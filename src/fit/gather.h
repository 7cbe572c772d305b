#pragma once
// A logger writes a level each second; a curve over the logarithm of time needs a few hundred.
#include <cstddef>
#include <vector>

#include "fit/pumping_test.h"

namespace wellproof {

/// More readings than this at one place are gathered.
inline constexpr std::size_t many_readings = 600;

/// The readings as means over stretches of time that grow with the time since the rate last changed, forty to a decade.
/// @param record of few readings: comes back as it is
LevelRecord gathered(LevelRecord const& record, std::vector<RateStep> const& rates);

}  // namespace wellproof
