// Ranges as text. The separators first, then each number, then the one unit that serves those without.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "quantity/clean_text.h"
#include "quantity/range.h"
#include "quantity/reading.h"
#include "quantity/writing.h"

namespace wellproof {
namespace {

enum class Separator { plus_minus, dots };

struct Pieces {
  std::vector<Stretch> stretches;
  std::vector<Separator> separators;
};

struct Found {
  Separator separator = Separator::dots;
  std::size_t signs = 0;  // 0: none here
};

Found separator_at(std::string const& signs, std::size_t at) {
  if (signs.compare(at, 3, "+/-") == 0) {
    return {Separator::plus_minus, 3};
  }
  if (signs.compare(at, 2, "+-") == 0) {
    return {Separator::plus_minus, 2};
  }
  if (signs.compare(at, 2, "..") == 0) {
    return {Separator::dots, 2};
  }
  bool const a_word = at > 0 && signs[at - 1] == ' ' && (signs.compare(at, 3, "to ") == 0 || signs.substr(at) == "to");
  return a_word ? Found{Separator::dots, 2} : Found{};
}

tl::expected<Pieces, TextError> separated(CleanText const& text) {
  std::string const& signs = text.signs;
  Pieces pieces;
  std::size_t begin = 0;
  for (std::size_t at = 0; at < signs.size();) {
    if (signs.compare(at, 3, "...") == 0) {
      return tl::unexpected(text.error(at, at + 3, "two dots between the ends of a range, as in \"90 .. 140\""));
    }
    Found const found = separator_at(signs, at);
    if (found.signs == 0) {
      ++at;
      continue;
    }
    pieces.stretches.push_back({begin, at});
    pieces.separators.push_back(found.separator);
    at += found.signs;
    begin = at;
  }
  pieces.stretches.push_back({begin, signs.size()});
  return pieces;
}

constexpr std::string_view range_forms =
    "a number, \"mean ± half width\", \"low .. high\" or \"low .. likeliest .. high\"";

TextError out_of_size(CleanText const& text) {
  return text.error(0, text.signs.size(), "numbers of an ordinary size");
}

// One number of a range; `shared` is the unit at the end, for those that have none.
tl::expected<double, TextError> value_si(CleanText const& text, ReadQuantity const& reading, Unit const* shared,
                                         Dimension dimension, bool difference) {
  if (reading.whole) {
    return *reading.whole;
  }
  Unit const* const unit = reading.unit != nullptr ? reading.unit : shared;
  if (unit == nullptr && dimension != Dimension::none) {
    return tl::unexpected(unit_missing(text, reading, dimension));
  }
  double const value = in_si(reading.number, unit, difference);
  if (!std::isfinite(value)) {
    return tl::unexpected(out_of_size(text));
  }
  return value;
}

bool is_wire_size(ReadQuantity const& reading, Dimension dimension) {
  return reading.whole.has_value() && reading.unit == nullptr && dimension != Dimension::none;
}

tl::expected<Range, TextError> with_half_width(CleanText const& text, Pieces const& pieces, Dimension dimension) {
  Stretch const right = trimmed(text, pieces.stretches[1]);
  auto const mean = read_one(text, pieces.stretches[0], dimension);
  if (!mean) {
    return tl::unexpected(mean.error());
  }
  bool const percent = right.end > right.begin && text.signs[right.end - 1] == '%';
  // "65 % ± 5 %" is 60 to 70 %; every other "± 5 %" is of the mean.
  bool const percent_of_mean = percent && mean->unit == nullptr ? true : percent && dimension != Dimension::none;
  if (percent_of_mean && dimension == Dimension::temperature) {
    return tl::unexpected(text.error(right.begin, right.end, "a half width in degrees"));
  }
  auto const half = read_one(text, right, percent_of_mean ? Dimension::none : dimension);
  if (!half) {
    return tl::unexpected(half.error());
  }
  bool const wire_half = !percent_of_mean && is_wire_size(*half, dimension);
  if (wire_half) {
    return tl::unexpected(text.error(right.begin, right.end, "a half width in a unit of length or area"));
  }
  auto const mean_si = value_si(text, *mean,
                                percent_of_mean ? nullptr
                                : half->whole   ? nullptr
                                                : half->unit,
                                dimension, false);
  if (!mean_si) {
    return tl::unexpected(mean_si.error());
  }
  auto half_si = percent_of_mean ? value_si(text, *half, nullptr, Dimension::none, true)
                                 : value_si(text, *half, nullptr, dimension, true);
  if (!half_si) {
    return tl::unexpected(half_si.error());
  }
  double const half_width = percent_of_mean ? *half_si * std::abs(*mean_si) : *half_si;
  if (*half_si < 0) {
    return tl::unexpected(text.error(right.begin, right.end, "a half width that is not negative"));
  }
  if (half_width == 0) {
    return Range(Fixed{*mean_si});
  }
  Range const range = Normal{*mean_si, half_width};
  if (!std::isfinite(lowest(range)) || !std::isfinite(highest(range))) {
    return tl::unexpected(out_of_size(text));
  }
  return range;
}

tl::expected<Range, TextError> between(CleanText const& text, Pieces const& pieces, Dimension dimension) {
  std::vector<ReadQuantity> readings;
  Unit const* shared = nullptr;
  for (Stretch stretch : pieces.stretches) {
    auto const reading = read_one(text, stretch, dimension);
    if (!reading) {
      return tl::unexpected(reading.error());
    }
    readings.push_back(*reading);
    // After "5 ft 3 in" it would be open which of the two units serves the others.
    shared = reading->whole ? nullptr : reading->unit;
  }
  std::vector<double> values;
  for (ReadQuantity const& reading : readings) {
    auto const value = value_si(text, reading, shared, dimension, false);
    if (!value) {
      return tl::unexpected(value.error());
    }
    if (!values.empty() && *value < values.back()) {
      return tl::unexpected(
          text.error(readings.front().stretch.begin, readings.back().stretch.end, "the lower end of the range first"));
    }
    values.push_back(*value);
  }
  if (!std::isfinite(values.back() - values.front())) {
    return tl::unexpected(out_of_size(text));
  }
  if (values.front() == values.back()) {
    return Range(Fixed{values.front()});
  }
  if (values.size() == 2) {
    return Range(Even{values[0], values[1]});
  }
  return Range(Triangular{values[0], values[1], values[2]});
}

std::vector<double> ends(Even const& even) {
  return {even.low, even.high};
}
std::vector<double> ends(Triangular const& triangular) {
  return {triangular.low, triangular.mode, triangular.high};
}

// Numbers with " .. " between and one unit at the end.
std::string joined(std::vector<std::string> const& numbers, CustomaryUnit const& unit) {
  return with_unit(fmt::format("{}", fmt::join(numbers, " .. ")), unit);
}

struct Writer {
  Dimension dimension;
  UnitSystem system;

  std::string operator()(Fixed const& fixed) const { return write_quantity(fixed.value, dimension, system); }
  std::string operator()(Normal const& normal) const {
    CustomaryUnit const unit = unit_for_size(normal.mean, dimension, system);
    return with_unit(fmt::format("{} ± {}", write_number(in_unit(normal.mean, unit, false)),
                                 write_number(in_unit(normal.half_width_95, unit, true))),
                     unit);
  }
  template <class Between>
  std::string operator()(Between const& range) const {
    CustomaryUnit const unit = unit_for_size(std::max(std::abs(range.low), std::abs(range.high)), dimension, system);
    std::vector<std::string> numbers;
    for (double end : ends(range)) {
      numbers.push_back(write_number(in_unit(end, unit, false)));
    }
    return joined(numbers, unit);
  }
};

struct ExactWriter {
  Dimension dimension;
  UnitSystem system;

  std::string operator()(Fixed const& fixed) const { return write_quantity_exactly(fixed.value, dimension, system); }
  std::string operator()(Normal const& normal) const {
    CustomaryUnit const unit = unit_for_size(normal.mean, dimension, system);
    auto const mean = write_number_exactly(normal.mean, unit, false);
    auto const half = write_number_exactly(normal.half_width_95, unit, true);
    if (mean && half) {
      return with_unit(fmt::format("{} ± {}", *mean, *half), unit);
    }
    CustomaryUnit const si = plain_si_unit(dimension);
    std::string const mean_text =
        mean ? with_unit(*mean, unit) : with_unit(*write_number_exactly(normal.mean, si, false), si);
    std::string const half_text =
        half ? with_unit(*half, unit) : with_unit(*write_number_exactly(normal.half_width_95, si, true), si);
    return fmt::format("{} ± {}", mean_text, half_text);
  }
  template <class Between>
  std::string operator()(Between const& range) const {
    CustomaryUnit const unit = unit_for_size(std::max(std::abs(range.low), std::abs(range.high)), dimension, system);
    std::vector<std::string> numbers;
    std::vector<std::string> quantities;
    for (double end : ends(range)) {
      if (auto const number = write_number_exactly(end, unit, false)) {
        numbers.push_back(*number);
      }
      quantities.push_back(write_quantity_exactly(end, dimension, system));
    }
    bool const one_unit_serves = numbers.size() == quantities.size();
    return one_unit_serves ? joined(numbers, unit) : fmt::format("{}", fmt::join(quantities, " .. "));
  }
};

}  // namespace

tl::expected<Range, TextError> read_range(std::string_view text, Dimension dimension) {
  auto const clean = clean_text(text);
  if (!clean) {
    return tl::unexpected(clean.error());
  }
  auto const pieces = separated(*clean);
  if (!pieces) {
    return tl::unexpected(pieces.error());
  }
  auto const& separators = pieces->separators;
  if (separators.empty()) {
    return read_quantity(text, dimension).map([](double value) { return Range(Fixed{value}); });
  }
  auto const widths = std::count(separators.begin(), separators.end(), Separator::plus_minus);
  if (widths == 1 && separators.size() == 1) {
    return with_half_width(*clean, *pieces, dimension);
  }
  if (widths > 0 || separators.size() > 2) {
    return tl::unexpected(clean->error(0, clean->signs.size(), std::string(range_forms)));
  }
  return between(*clean, *pieces, dimension);
}

std::string write_range(Range const& range, Dimension dimension, UnitSystem system) {
  return std::visit(Writer{dimension, system}, range);
}

std::string write_range_exactly(Range const& range, Dimension dimension, UnitSystem system) {
  return std::visit(ExactWriter{dimension, system}, range);
}

}  // namespace wellproof
