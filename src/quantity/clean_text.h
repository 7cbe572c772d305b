#pragma once
// A person's text made plain: one way to write each sign (³ as 3, ± as +/-, Ω as ohm, ° as deg, primes as quotes),
// while every sign still knows where it stood, so that a finding points into what the person wrote.
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "quantity/quantity.h"

namespace wellproof {

/// The longest text of a quantity or a range, in bytes.
inline constexpr std::size_t longest_quantity_text = 300;

struct CleanText {
  std::string signs;                   // plain ASCII; a character that means nothing here is \x7f
  std::vector<std::size_t> byte;       // of the original, for each sign and for the end
  std::vector<std::size_t> character;  // of the original, for each sign and for the end
  std::string original;

  /// The piece of the original behind the signs [begin, end).
  std::string quoted(std::size_t begin, std::size_t end) const;
  TextError error(std::size_t begin, std::size_t end, std::string expected, std::string nearest = {}) const;
};

/// Refuses what is too long, what is not UTF-8, and control characters.
tl::expected<CleanText, TextError> clean_text(std::string_view text);

/// The same plain form for a unit of the table, without what a person may add or leave out (spaces, ^).
std::string plain_spelling(std::string_view spelling);

}  // namespace wellproof
