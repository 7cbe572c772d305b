#include "quantity/reading.h"

#include <cmath>

#include <fmt/format.h>

#include "quantity/number_text.h"
#include "quantity/unit_lookup.h"
#include "quantity/wire_gauge.h"

namespace wellproof {
namespace {

std::size_t after_blanks(CleanText const& text, std::size_t at, std::size_t end) {
  while (at < end && text.signs[at] == ' ') {
    ++at;
  }
  return at;
}

bool begins_number(char sign) {
  return is_digit(sign) || sign == '.' || sign == '+' || sign == '-';
}

bool is_mark(char sign) {
  return sign == '\'' || sign == '"';
}

std::size_t end_of_word(CleanText const& text, std::size_t at, std::size_t end) {
  if (is_mark(text.signs[at])) {
    return at + 1;
  }
  while (at < end && text.signs[at] != ' ' && !is_mark(text.signs[at])) {
    ++at;
  }
  return at;
}

// Dimensions of which a quantity may have several parts, "5 ft 3 in", "1 h 30 min". None of their units has a digit.
bool has_parts(Dimension dimension) {
  return dimension == Dimension::length || dimension == Dimension::diameter || dimension == Dimension::time;
}

struct UnitText {
  Unit const* unit = nullptr;
  std::size_t end = 0;
};

// The unit that begins at `begin`: as many words as make one ("ft H2O", "gal / min"), or else the word up to a digit
// ("5ft3in").
UnitText longest_unit(CleanText const& text, std::size_t begin, std::size_t end, Dimension dimension) {
  UnitText longest;
  for (std::size_t at = begin; at < end;) {
    at = end_of_word(text, at, end);
    std::string const plain = plain_spelling(text.signs.substr(begin, at - begin));
    if (Unit const* unit = find_unit(plain, dimension)) {
      longest = {unit, at};
    }
    at = after_blanks(text, at, end);
    if (at < end && (begins_number(text.signs[at]) || is_mark(text.signs[at]))) {
      break;
    }
  }
  if (longest.unit == nullptr && has_parts(dimension)) {
    std::size_t at = begin;
    while (at < end && !is_digit(text.signs[at])) {
      ++at;
    }
    longest = {find_unit(plain_spelling(text.signs.substr(begin, at - begin)), dimension), at};
  }
  return longest;
}

// What stands where a unit of the dimension should: a unit of another one, or no unit at all.
TextError not_a_unit(CleanText const& text, std::size_t begin, std::size_t end, Dimension dimension) {
  Stretch const rest = trimmed(text, {begin, end});
  std::string const plain = plain_spelling(text.signs.substr(rest.begin, rest.end - rest.begin));
  std::string_view other = dimension_of_unit(plain);
  std::size_t last = rest.end;
  if (other.empty()) {
    last = end_of_word(text, begin, end);
    other = dimension_of_unit(plain_spelling(text.signs.substr(begin, last - begin)));
  }
  std::string const expected = fmt::format("{} such as \"{}\"", name(dimension), example(dimension));
  if (!other.empty()) {
    TextError error = text.error(begin, last, expected);
    error.found += fmt::format(", {}", other);
    return error;
  }
  return text.error(begin, rest.end, expected, nearest_unit(plain, dimension));
}

// "12 AWG", "AWG 12", "2/0 AWG": the gauge, if the stretch is one.
struct WireGauge {
  bool is_one = false;
  std::optional<int> gauge;
};

WireGauge wire_gauge(CleanText const& text, Stretch stretch) {
  std::string plain = plain_spelling(text.signs.substr(stretch.begin, stretch.end - stretch.begin));
  for (char& letter : plain) {
    letter = letter >= 'a' && letter <= 'z' ? static_cast<char>(letter - 'a' + 'A') : letter;
  }
  std::size_t const word = plain.find("AWG");
  if (word == std::string::npos) {
    return {};
  }
  plain.erase(word, 3);
  constexpr int thinnest = 40;
  if (plain.size() == 3 && plain[0] >= '1' && plain[0] <= '4' && plain.substr(1) == "/0") {
    return {true, 1 - (plain[0] - '0')};
  }
  if (plain.empty() || plain.size() > 2 || !is_digit(plain.front()) || !is_digit(plain.back())) {
    return {true, std::nullopt};
  }
  int const gauge = plain.size() == 1 ? plain[0] - '0' : 10 * (plain[0] - '0') + (plain[1] - '0');
  return {true, gauge <= thinnest ? std::optional<int>(gauge) : std::nullopt};
}

}  // namespace

Stretch trimmed(CleanText const& text, Stretch stretch) {
  stretch.begin = after_blanks(text, stretch.begin, stretch.end);
  while (stretch.end > stretch.begin && text.signs[stretch.end - 1] == ' ') {
    --stretch.end;
  }
  return stretch;
}

double in_si(double number, Unit const* unit, bool difference) {
  if (unit == nullptr) {
    return number;
  }
  bool const shifted = !difference && unit->offset != 0;
  return shifted ? unit->factor * number + unit->offset : unit->factor * number;
}

TextError unit_missing(CleanText const& text, ReadQuantity const& reading, Dimension dimension) {
  TextError error = text.error(reading.stretch.begin, reading.stretch.end,
                               fmt::format("{} with its unit, such as \"{}\"", name(dimension), example(dimension)));
  error.found += " without a unit";
  return error;
}

tl::expected<ReadQuantity, TextError> read_one(CleanText const& text, Stretch stretch, Dimension dimension) {
  stretch = trimmed(text, stretch);
  auto const [begin, end] = stretch;
  ReadQuantity reading;
  reading.stretch = stretch;
  if (dimension == Dimension::diameter || dimension == Dimension::area) {
    if (WireGauge const wire = wire_gauge(text, stretch); wire.is_one) {
      if (!wire.gauge) {
        return tl::unexpected(text.error(begin, end, "a wire size such as \"12 AWG\" or \"2/0 AWG\""));
      }
      bool const thick = dimension == Dimension::diameter;
      reading.whole = thick ? wire_gauge_diameter_m(*wire.gauge) : wire_gauge_area_m2(*wire.gauge);
      return reading;
    }
  }
  auto number = read_number(text, begin, end, dimension);
  if (!number) {
    return tl::unexpected(number.error());
  }
  reading.number = number->value;
  std::size_t at = after_blanks(text, number->end, end);
  if (at == end) {
    return reading;
  }
  if (begins_number(text.signs[at])) {
    return tl::unexpected(text.error(at, end, "a unit"));
  }
  UnitText unit = longest_unit(text, at, end, dimension);
  if (unit.unit == nullptr) {
    return tl::unexpected(not_a_unit(text, at, end, dimension));
  }
  reading.unit = unit.unit;
  at = after_blanks(text, unit.end, end);
  bool const negative = std::signbit(number->value);
  double size_si = in_si(std::abs(number->value), unit.unit, has_parts(dimension));
  bool several = false;
  while (at < end && has_parts(dimension) && (is_digit(text.signs[at]) || text.signs[at] == '.')) {
    std::size_t const part_begin = at;
    Unit const* const larger = unit.unit;
    if (!number->whole) {
      return tl::unexpected(text.error(part_begin, end, "nothing after a part that is not a whole number"));
    }
    number = read_number(text, at, end, dimension);
    if (!number) {
      return tl::unexpected(number.error());
    }
    at = after_blanks(text, number->end, end);
    if (at == end || begins_number(text.signs[at])) {
      return tl::unexpected(text.error(part_begin, end, "a unit after each part"));
    }
    unit = longest_unit(text, at, end, dimension);
    if (unit.unit == nullptr) {
      return tl::unexpected(not_a_unit(text, at, end, dimension));
    }
    at = after_blanks(text, unit.end, end);
    double const part_si = in_si(number->value, unit.unit, true);
    if (unit.unit->factor >= larger->factor || part_si >= larger->factor) {
      return tl::unexpected(
          text.error(part_begin, at, fmt::format("a part smaller than one {}", larger->spellings.front())));
    }
    size_si += part_si;
    several = true;
  }
  if (at < end) {
    return tl::unexpected(text.error(at, end, fmt::format("nothing after {}", text.quoted(begin, unit.end))));
  }
  if (several) {
    reading.whole = negative ? -size_si : size_si;
  }
  return reading;
}

}  // namespace wellproof
