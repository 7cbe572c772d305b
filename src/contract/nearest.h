#pragma once
// The known word that a mistyped one was probably meant to be: for the "did you mean …?" of a finding.
#include <span>
#include <string>
#include <string_view>

namespace wellproof {

/// The known word nearest to this one, by insertions, deletions, substitutions and swaps of neighbours; a letter in the
/// wrong case counts half. Empty if none is near: a word of up to four letters may have one slip, of up to eight two,
/// a longer one three. Of equally near words the first.
std::string nearest_word(std::string_view word, std::span<std::string_view const> known);

}  // namespace wellproof
