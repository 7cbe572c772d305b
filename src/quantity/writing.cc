#include "quantity/writing.h"

#include <cmath>
#include <limits>

#include <fast_float/fast_float.h>
#include <fmt/format.h>

#include "contract/require.h"
#include "quantity/customary.h"

namespace wellproof {
namespace {

constexpr int digits_shown = 4;
constexpr int least_plain_exponent = -5;
constexpr int greatest_plain_exponent = 8;

bool same_bits(double a, double b) {
  return a == b && std::signbit(a) == std::signbit(b);
}

// As the reader reads it: sign apart, then factor and offset.
double read_back(std::string const& digits, CustomaryUnit const& unit, bool difference) {
  bool const negative = digits.front() == '-';
  double number = 0;
  fast_float::from_chars(digits.data() + (negative ? 1 : 0), digits.data() + digits.size(), number);
  number = negative ? -number : number;
  return !difference && unit.offset != 0 ? unit.factor * number + unit.offset : unit.factor * number;
}

// "2.4e+02" as "240", the same number; what is very large or small stays as it is.
std::string without_small_exponent(std::string const& digits) {
  std::size_t const mark = digits.find("e+");
  if (mark == std::string::npos || digits.size() - mark > 4) {
    return digits;
  }
  int const power = 10 * (digits[mark + 2] - '0') + (digits[mark + 3] - '0');
  if (power > greatest_plain_exponent) {
    return digits;
  }
  auto const exponent = static_cast<std::size_t>(power);
  std::string plain = digits.substr(0, mark);
  std::size_t const point = plain.find('.');
  std::size_t decimals = 0;
  if (point != std::string::npos) {
    decimals = plain.size() - point - 1;
    plain.erase(point, 1);
  }
  // %g takes an exponent only where it has no digits left for the places before the point.
  require(decimals <= exponent, "an exponent reaches past the digits");
  return plain + std::string(exponent - decimals, '0');
}

}  // namespace

std::string write_number(double number) {
  require(std::isfinite(number), "only a finite number is written");
  // "d.ddde±xx", from which the digits and the place of the point are taken.
  std::string const scientific = fmt::format("{:.{}e}", std::abs(number), digits_shown - 1);
  std::size_t const mark = scientific.find('e');
  int exponent = 0;
  for (std::size_t i = mark + 2; i < scientific.size(); ++i) {
    exponent = 10 * exponent + (scientific[i] - '0');
  }
  exponent = scientific[mark + 1] == '-' ? -exponent : exponent;
  std::string digits = scientific.substr(0, 1) + scientific.substr(2, mark - 2);
  while (digits.size() > 1 && digits.back() == '0') {
    digits.pop_back();
  }
  std::string const sign = number < 0 ? "-" : "";
  if (exponent < least_plain_exponent || exponent > greatest_plain_exponent) {
    std::string const rest = digits.size() > 1 ? "." + digits.substr(1) : "";
    return fmt::format("{}{}{}e{}", sign, digits.substr(0, 1), rest, exponent);
  }
  if (exponent < 0) {
    return sign + "0." + std::string(static_cast<std::size_t>(-exponent - 1), '0') + digits;
  }
  std::size_t const before_point = static_cast<std::size_t>(exponent) + 1;
  if (digits.size() <= before_point) {
    return sign + digits + std::string(before_point - digits.size(), '0');
  }
  return sign + digits.substr(0, before_point) + "." + digits.substr(before_point);
}

CustomaryUnit unit_for_size(double size_si, Dimension dimension, UnitSystem system) {
  double const size = std::abs(size_si);
  if (dimension != Dimension::time || size < 2 * minute_s) {
    return customary_unit(dimension, system);
  }
  // 410 s read better than 6.833 min, and 90 min than 1.5 h.
  constexpr double longest_odd_s = 1000;
  auto const goes_into = [&](double unit_s) {
    double const tenths = 10 * size / unit_s;
    return std::abs(tenths - std::round(tenths)) < 1e-6;
  };
  if (size < longest_odd_s && !goes_into(minute_s)) {
    return customary_unit(dimension, system);
  }
  if (size < 2 * hour_s || (size < 2 * day_s && !goes_into(hour_s) && goes_into(minute_s))) {
    return {"min", minute_s, 0};
  }
  return size < 2 * day_s ? CustomaryUnit{"h", hour_s, 0} : CustomaryUnit{"d", day_s, 0};
}

CustomaryUnit plain_si_unit(Dimension dimension) {
  return {si_unit(dimension), 1, 0};
}

double in_unit(double value_si, CustomaryUnit const& unit, bool difference) {
  double const offset = difference ? 0 : unit.offset;
  double const number = (value_si - offset) / unit.factor;
  // What is left of a cancelled offset is rounding, not a figure.
  double const rounding = 8 * std::numeric_limits<double>::epsilon() * std::abs(offset / unit.factor);
  return std::abs(number) <= rounding ? 0 : number;
}

std::optional<std::string> write_number_exactly(double value_si, CustomaryUnit const& unit, bool difference) {
  require(std::isfinite(value_si), "only a finite number is written");
  double const nearest = (value_si - (difference ? 0 : unit.offset)) / unit.factor;
  if (!std::isfinite(nearest)) {
    return std::nullopt;
  }
  constexpr int all_digits = 17;
  for (int count = 1; count <= all_digits; ++count) {
    std::string digits = fmt::format("{:.{}g}", nearest, count);
    if (same_bits(read_back(digits, unit, difference), value_si)) {
      return without_small_exponent(digits);
    }
  }
  // The division was rounded; the number that reads back may be a neighbour.
  double below = nearest;
  double above = nearest;
  constexpr int neighbours = 4;
  for (int step = 0; step < neighbours; ++step) {
    below = std::nextafter(below, -std::numeric_limits<double>::max());
    above = std::nextafter(above, std::numeric_limits<double>::max());
    for (double candidate : {below, above}) {
      std::string digits = fmt::format("{:.17g}", candidate);
      if (same_bits(read_back(digits, unit, difference), value_si)) {
        return digits;
      }
    }
  }
  return std::nullopt;
}

std::string with_unit(std::string const& number, CustomaryUnit const& unit) {
  return unit.spelling.empty() ? number : fmt::format("{} {}", number, unit.spelling);
}

std::string write_quantity(double value_si, Dimension dimension, UnitSystem system) {
  CustomaryUnit const unit = unit_for_size(value_si, dimension, system);
  return with_unit(write_number(in_unit(value_si, unit, false)), unit);
}

std::string write_quantity_exactly(double value_si, Dimension dimension, UnitSystem system) {
  CustomaryUnit const unit = unit_for_size(value_si, dimension, system);
  if (auto const number = write_number_exactly(value_si, unit, false)) {
    return with_unit(*number, unit);
  }
  CustomaryUnit const si = plain_si_unit(dimension);
  auto const number = write_number_exactly(value_si, si, false);
  require(number.has_value(), "a number in its SI unit reads back");
  return with_unit(*number, si);
}

}  // namespace wellproof
