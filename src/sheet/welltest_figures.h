#pragma once
// The charts of a pumping test, each as a piece of SVG.
#include <string>

#include "sheet/welltest.h"

namespace wellproof {

/// Drawdown, downwards, over time: for a test of several rates.
std::string course_figure(WellTest const& test);

/// Drawdown, downwards, over the logarithm of time since each rate began: readings, the fit, and with one rate the
/// straight line where it holds.
std::string semilog_figure(WellTest const& test);

/// Response and its derivative, both logarithmic: slope one where the casing rules, a level derivative where flow is
/// radial. Empty where nothing can be drawn.
std::string diagnostic_figure(WellTest const& test);

/// What the fit leaves of each reading.
std::string residual_figure(WellTest const& test);

}  // namespace wellproof
