#pragma once
// What is known of a quantity: a number, or a range with its distribution.
//   110 ft                   exactly that
//   110 ± 10 ft              a normal, ± (or +/-) is its 95 % half width, cut at 3 sigma
//   110 ft ± 5 %             the half width as a part of the mean; "65 % ± 5 %" is 60 to 70 %
//   90 .. 140 ft             anything between, evenly; "90 to 140 ft" is the same
//   90 .. 110 .. 140 ft      triangular, the middle likeliest
#include <string>
#include <string_view>
#include <variant>

#include <tl/expected.hpp>

#include "quantity/dimension.h"
#include "quantity/quantity.h"

namespace wellproof {

struct Fixed {
  double value = 0;
  bool operator==(Fixed const&) const = default;
};
/// Normal, cut at three sigma on both sides and renormalised.
struct Normal {
  double mean = 0;
  double half_width_95 = 0;  // 1.96 sigma, > 0
  bool operator==(Normal const&) const = default;
};
struct Even {
  double low = 0;
  double high = 0;  // > low
  bool operator==(Even const&) const = default;
};
struct Triangular {
  double low = 0;
  double mode = 0;
  double high = 0;  // low ≤ mode ≤ high, low < high
  bool operator==(Triangular const&) const = default;
};
using Range = std::variant<Fixed, Normal, Even, Triangular>;

/// The value below which the fraction u of the distribution lies. u in [0, 1].
double quantile(Range const& range, double u);
double lowest(Range const& range);
double highest(Range const& range);
/// The median.
double middle(Range const& range);
bool is_fixed(Range const& range);

/// Text to a range in SI. One unit at the end serves all numbers; a unit after each is accepted too.
tl::expected<Range, TextError> read_range(std::string_view text, Dimension dimension);

/// A range as a person would write it.
std::string write_range(Range const& range, Dimension dimension, UnitSystem system);
/// A range as text that reads back to the same range.
std::string write_range_exactly(Range const& range, Dimension dimension, UnitSystem system);

}  // namespace wellproof
