#pragma once
// The words of a line, and those that speak of time.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wellproof {

/// A number, a word in small letters, or one sign.
struct ToldToken {
  enum class Kind { number, word, sign };
  Kind kind = Kind::sign;
  std::string text;
  double number = 0;
  int digits = 0;  // before a point
};

/// Blanks separate; a letter and a digit side by side are two tokens ("2d" is 2 and d).
std::vector<ToldToken> told_tokens(std::string_view line);

/// 1 January … 12 December, by at least three letters.
std::optional<int> month_named(std::string_view word);
/// 0 Monday … 6 Sunday, by at least three letters.
std::optional<int> weekday_named(std::string_view word);
/// "h", "hrs", "hours" … in seconds; m is minutes.
std::optional<double> span_unit_s(std::string_view word);

}  // namespace wellproof
