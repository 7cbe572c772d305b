#include "quantity/number_text.h"

#include <cmath>
#include <optional>

#include <fast_float/fast_float.h>
#include <fmt/format.h>

namespace wellproof {
namespace {

std::size_t end_of_digits(std::string const& signs, std::size_t at, std::size_t end) {
  while (at < end && is_digit(signs[at])) {
    ++at;
  }
  return at;
}

double whole_number(std::string const& signs, std::size_t begin, std::size_t end) {
  double value = 0;
  for (std::size_t i = begin; i < end; ++i) {
    value = 10 * value + (signs[i] - '0');
  }
  return value;
}

constexpr std::size_t longest_fraction_digits = 4;

// "3/4" at `begin`; nothing if no proper fraction stands there.
std::optional<NumberText> fraction(std::string const& signs, std::size_t begin, std::size_t end) {
  std::size_t const slash = end_of_digits(signs, begin, end);
  if (slash == begin || slash - begin > longest_fraction_digits || slash >= end || signs[slash] != '/') {
    return std::nullopt;
  }
  std::size_t const last = end_of_digits(signs, slash + 1, end);
  if (last == slash + 1 || last - slash - 1 > longest_fraction_digits) {
    return std::nullopt;
  }
  double const numerator = whole_number(signs, begin, slash);
  double const denominator = whole_number(signs, slash + 1, last);
  if (numerator <= 0 || denominator <= numerator) {
    return std::nullopt;
  }
  return NumberText{numerator / denominator, last, false};
}

// The "1/4" of "1-1/4" and "1 1/4", with what joins it to the whole.
std::optional<NumberText> fraction_after_whole(std::string const& signs, std::size_t at, std::size_t end) {
  std::size_t begin = at;
  if (begin < end && signs[begin] == '-') {
    ++begin;
  } else {
    while (begin < end && signs[begin] == ' ') {
      ++begin;
    }
  }
  return begin == at ? std::nullopt : fraction(signs, begin, end);
}

}  // namespace

tl::expected<NumberText, TextError> read_number(CleanText const& text, std::size_t begin, std::size_t end,
                                                Dimension dimension) {
  std::string const& signs = text.signs;
  std::size_t at = begin;
  bool negative = false;
  if (at < end && (signs[at] == '+' || signs[at] == '-')) {
    negative = signs[at] == '-';
    ++at;
  }
  bool const begins =
      at < end && (is_digit(signs[at]) || (signs[at] == '.' && at + 1 < end && is_digit(signs[at + 1])));
  if (!begins) {
    return tl::unexpected(
        text.error(begin, end, fmt::format("{} such as \"{}\"", name(dimension), example(dimension))));
  }
  NumberText number;
  std::size_t const digits_end = end_of_digits(signs, at, end);
  if (auto const simple = fraction(signs, at, end)) {
    number = *simple;
  } else {
    char const* const first = signs.data() + at;
    auto const parsed = fast_float::from_chars(first, signs.data() + end, number.value);
    number.end = at + static_cast<std::size_t>(parsed.ptr - first);
    number.whole = number.end == digits_end;
    if (!std::isfinite(number.value)) {
      return tl::unexpected(text.error(begin, number.end, "a number of an ordinary size"));
    }
    if (number.end < end && signs[number.end] == ',') {
      return tl::unexpected(text.error(begin, end, "a number without a comma, such as 1200 or 1.2"));
    }
    if (number.whole) {
      if (auto const rest = fraction_after_whole(signs, number.end, end)) {
        number = {number.value + rest->value, rest->end, false};
      }
    }
  }
  if (negative) {
    number.value = -number.value;
  }
  return number;
}

}  // namespace wellproof
