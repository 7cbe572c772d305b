#pragma once
// An axis of a chart: SI in, round figures in customary units shown.
#include <cmath>
#include <string>
#include <vector>

#include "quantity/dimension.h"

namespace wellproof {

struct Tick {
  double at = 0;  // in the shown unit
  std::string text;
};

struct Axis {
  std::string title;  // with its unit: "pressure, psi"
  double factor = 1;  // SI = factor · shown + offset
  double offset = 0;
  double low = 0;  // ends of the axis, in the shown unit
  double high = 1;
  std::vector<Tick> ticks;
  bool logarithmic = false;  // then both ends are above 0

  /// Where a value stands between the ends: 0 at low, 1 at high; no number for one up to 0 on a logarithmic axis.
  double share(double value_si) const {
    double const shown = (value_si - offset) / factor;
    return logarithmic ? std::log(shown / low) / std::log(high / low) : (shown - low) / (high - low);
  }
};

/// An axis that takes in these values and ends on round figures. Times are shown in seconds, minutes or hours.
/// @param low_si, high_si finite; equal or crossed ends are spread
/// @param most_ticks about so many
Axis round_axis(std::string const& title, double low_si, double high_si, Dimension dimension, UnitSystem units,
                int most_ticks);

/// The same without rounding the ends outwards: for time.
Axis tight_axis(std::string const& title, double low_si, double high_si, Dimension dimension, UnitSystem units,
                int most_ticks);

/// The step of 1, 2 or 5 times a power of ten that makes at most so many parts of a span.
/// @param span > 0, @param most_parts ≥ 1
double round_step(double span, int most_parts);

}  // namespace wellproof
