#include "sheet/log_axis.h"

#include <algorithm>
#include <cmath>
#include <string_view>

#include <fmt/format.h>

#include "contract/require.h"
#include "quantity/customary.h"
#include "quantity/quantity.h"

namespace wellproof {
namespace {

struct Shown {
  std::string_view spelling;
  double factor;
};

Shown shown_unit(double high_si, Dimension dimension, UnitSystem units) {
  if (dimension == Dimension::time) {
    return high_si < 10 * minute_s ? Shown{"s", 1} : high_si < 20 * day_s ? Shown{"min", minute_s} : Shown{"d", day_s};
  }
  auto const unit = customary_unit(dimension, units);
  return {unit.spelling, unit.factor};
}

std::string tick_text(double at) {
  return at >= 1e6 || at < 1e-4 ? fmt::format("{:.0e}", at) : fmt::format("{:g}", at);
}

/// The largest of 1, 2, 5 times a power of ten that is no more; with `whole` of the powers alone.
double step_down(double value, bool whole) {
  double const power = std::pow(10.0, std::floor(std::log10(value) + 1e-9));
  for (double const factor : {5.0, 2.0}) {
    if (!whole && factor * power <= value * (1 + 1e-9)) {
      return factor * power;
    }
  }
  return power;
}

}  // namespace

Axis log_axis(std::string const& title, double low_si, double high_si, Dimension dimension, UnitSystem units) {
  require(low_si > 0 && high_si >= low_si, "a logarithmic axis begins above 0");
  Shown const unit = shown_unit(high_si, dimension, units);
  double const low = low_si / unit.factor;
  double const high = high_si / unit.factor;
  bool const fine = high / low < 300;
  Axis axis;
  axis.logarithmic = true;
  axis.title = unit.spelling.empty() ? title : title + ", " + std::string(unit.spelling);
  axis.factor = unit.factor;
  axis.low = step_down(low, false);
  axis.high = 1 / step_down(1 / high, false);
  if (!(axis.high > 1.5 * axis.low)) {
    axis.low /= 2;
    axis.high *= 2;
  }
  double const first = step_down(axis.low, true);
  int const decades = static_cast<int>(std::ceil(std::log10(axis.high / first)));
  for (int decade = 0; decade <= decades; ++decade) {
    double const power = first * std::pow(10.0, decade);
    for (double const factor : {1.0, 2.0, 5.0}) {
      double const at = factor * power;
      if (at >= axis.low * (1 - 1e-9) && at <= axis.high * (1 + 1e-9)) {
        axis.ticks.push_back({at, factor == 1 || fine ? tick_text(at) : ""});
      }
    }
  }
  return axis;
}

}  // namespace wellproof
