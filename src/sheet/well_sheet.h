#pragma once
// What the well gives, for terminal and report: what may be drawn, and what a rest brings back.
#include <string>
#include <vector>

#include "sheet/plan.h"

namespace wellproof {

/// Sentences, each with what it is about before a colon.
std::vector<std::string> well_says(WellOutlook const& outlook, UnitSystem units);

/// Level in the well over the site's own day, with the intake.
std::string day_figure(Plan const& plan);
/// How long the peak can be drawn again after a rest; empty where no draw of the site runs dry.
std::string rest_figure(Plan const& plan);

}  // namespace wellproof
