#include "sheet/axis.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "quantity/customary.h"
#include "quantity/quantity.h"

namespace wellproof {
namespace {

struct Shown {
  std::string_view spelling;
  double factor;
  double offset;
};

Shown shown_unit(double span_si, Dimension dimension, UnitSystem units) {
  if (dimension == Dimension::time) {
    if (span_si > 3 * hour_s) {
      return {"h", hour_s, 0};
    }
    return span_si > 5 * minute_s ? Shown{"min", minute_s, 0} : Shown{"s", 1, 0};
  }
  auto const unit = customary_unit(dimension, units);
  return {unit.spelling, unit.factor, unit.offset};
}

std::string tick_text(double at, double step) {
  int const decimals = std::clamp(static_cast<int>(-std::floor(std::log10(step) + 1e-9)), 0, 9);
  // A sum of steps that should be nothing must not be printed as −0.
  std::string text = fmt::format("{:.{}f}", std::abs(at) < step / 2 ? 0.0 : std::abs(at), decimals);
  return at < -step / 2 ? "−" + text : text;
}

Axis axis(std::string const& title, double low_si, double high_si, Dimension dimension, UnitSystem units,
          int most_ticks, bool round_ends) {
  Shown const unit = shown_unit(high_si - low_si, dimension, units);
  Axis made;
  made.title = unit.spelling.empty() ? title : title + ", " + std::string(unit.spelling);
  made.factor = unit.factor;
  made.offset = unit.offset;
  made.low = (low_si - unit.offset) / unit.factor;
  made.high = (high_si - unit.offset) / unit.factor;
  double const least_span = 1e-3 * std::max(1e-3, std::abs(made.high));
  if (!(made.high - made.low > least_span)) {
    double const middle = (made.low + made.high) / 2;
    double const half = std::max(0.5, 0.05 * std::abs(middle));
    made.low = middle - half;
    made.high = middle + half;
  }
  double const step = round_step(made.high - made.low, most_ticks);
  if (round_ends) {
    made.low = step * std::floor(made.low / step + 1e-9);
    made.high = step * std::ceil(made.high / step - 1e-9);
  }
  auto const first = std::lround(std::ceil(made.low / step - 1e-9));
  auto const last = std::lround(std::floor(made.high / step + 1e-9));
  for (long k = first; k <= last; ++k) {
    double const value = static_cast<double>(k) * step;
    made.ticks.push_back({value, tick_text(value, step)});
  }
  return made;
}

}  // namespace

double round_step(double span, int most_parts) {
  double const raw = span / most_parts;
  double const power = std::pow(10.0, std::floor(std::log10(raw)));
  for (double const factor : {1.0, 2.0, 5.0}) {
    if (factor * power >= raw * (1 - 1e-9)) {
      return factor * power;
    }
  }
  return 10 * power;
}

Axis round_axis(std::string const& title, double low_si, double high_si, Dimension dimension, UnitSystem units,
                int most_ticks) {
  return axis(title, low_si, high_si, dimension, units, most_ticks, true);
}

Axis tight_axis(std::string const& title, double low_si, double high_si, Dimension dimension, UnitSystem units,
                int most_ticks) {
  return axis(title, low_si, high_si, dimension, units, most_ticks, false);
}

}  // namespace wellproof
