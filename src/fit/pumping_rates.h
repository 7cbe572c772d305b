#pragma once
// Rates of pumping as a person writes them on a command line.
#include <optional>
#include <string>
#include <vector>

#include "contract/finding.h"
#include "plant/radial_flow.h"

namespace wellproof {

/// @param rates  "788 m3/d"; "20 gpm", "35 gpm @ 60 min"; "20, 35, 50 gpm": the last unit serves those without one
/// @param step_s how long each holds that says no beginning of its own
/// @param stop_s when pumping stopped
/// @param findings takes what is wrong; an empty list of rates is not
std::vector<RateStep> read_rates(std::vector<std::string> const& rates, std::optional<double> step_s,
                                 std::optional<double> stop_s, Findings& findings);

}  // namespace wellproof
