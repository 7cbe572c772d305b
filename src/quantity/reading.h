#pragma once
// One quantity inside a longer text: what read_quantity and read_range share.
#include <cstddef>
#include <optional>

#include <tl/expected.hpp>

#include "quantity/clean_text.h"
#include "quantity/quantity.h"

namespace wellproof {

/// A stretch [begin, end) of the signs of a clean text.
struct Stretch {
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// Without the blanks around it.
Stretch trimmed(CleanText const& text, Stretch stretch);

/// One quantity as it stood there.
/// number  before its unit
/// unit    null where none stood, and for what is complete without one
/// whole   the value in SI where it needs no unit from elsewhere ("5 ft 3 in", "12 AWG")
struct ReadQuantity {
  double number = 0;
  Unit const* unit = nullptr;
  std::optional<double> whole;
  Stretch stretch;
};

/// Reads all of the stretch as one quantity, with or without a unit.
tl::expected<ReadQuantity, TextError> read_one(CleanText const& text, Stretch stretch, Dimension dimension);

/// The number in SI, by this unit; with a null unit the number itself. `difference`: a width, not a point, so that the
/// offset of a temperature scale has no part in it.
double in_si(double number, Unit const* unit, bool difference);

/// That a number has no unit although the dimension has one.
TextError unit_missing(CleanText const& text, ReadQuantity const& reading, Dimension dimension);

}  // namespace wellproof
