#pragma once
// The number in front of a unit: "1.5", "-2", "1e3", "3/4", "1-1/4".
#include <cstddef>

#include <tl/expected.hpp>

#include "quantity/clean_text.h"

namespace wellproof {

struct NumberText {
  double value = 0;
  std::size_t end = 0;  // the sign after it
  bool whole = false;   // digits only
};

/// Reads the number that begins at `begin` and ends before `end` at the latest.
tl::expected<NumberText, TextError> read_number(CleanText const& text, std::size_t begin, std::size_t end,
                                                Dimension dimension);

inline bool is_digit(char sign) {
  return sign >= '0' && sign <= '9';
}

}  // namespace wellproof
