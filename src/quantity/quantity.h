#pragma once
// Numbers with units, as people write them, to SI and back: "240 ft", "5 ft 3 in", "1.5 hp", "-2 °C", "12 AWG".
// A bare number is refused where the dimension has a unit: a figure without one is the commonest way to be wrong.
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "quantity/dimension.h"

namespace wellproof {

/// What is wrong inside a piece of text; offset counts characters from its start.
struct TextError {
  std::size_t offset = 0;
  std::string found;
  std::string expected;
  std::string nearest;
};

/// One unit that is understood: its spellings, and how it becomes SI (si = factor · x + offset).
struct Unit {
  std::vector<std::string_view> spellings;
  Dimension dimension;
  double factor;
  double offset;
};

/// All units, for the reader, the docs and the check against UDUNITS-2.
std::vector<Unit> const& units();

/// Text to SI.
tl::expected<double, TextError> read_quantity(std::string_view text, Dimension dimension);

/// SI to text in the customary unit of the system, with as many digits as a person would write (4 significant).
std::string write_quantity(double value_si, Dimension dimension, UnitSystem system);

/// SI to text that reads back to exactly the same number.
std::string write_quantity_exactly(double value_si, Dimension dimension, UnitSystem system);

/// The customary unit of a dimension ("ft", "psi"), and what one of it is in SI: for axes and tables.
struct CustomaryUnit {
  std::string_view spelling;
  double factor;
  double offset;
};
CustomaryUnit customary_unit(Dimension dimension, UnitSystem system);

}  // namespace wellproof
