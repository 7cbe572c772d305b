#pragma once
// A logarithmic axis: whole decades with their figures, and between them the lines that show how far one has come.
#include <string>

#include "sheet/axis.h"

namespace wellproof {

/// @param low_si, high_si > 0 (require); the axis ends on the decades outside them, or on 2 and 5 where it is short
Axis log_axis(std::string const& title, double low_si, double high_si, Dimension dimension, UnitSystem units);

}  // namespace wellproof
