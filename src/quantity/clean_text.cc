#include "quantity/clean_text.h"

#include <cstdint>

#include <fmt/format.h>

#include "contract/require.h"

namespace wellproof {
namespace {

struct Decoded {
  char32_t character = 0;
  std::size_t bytes = 0;  // 0: not UTF-8
};

Decoded decode(std::string_view text) {
  auto const byte = [&](std::size_t i) { return static_cast<std::uint8_t>(text[i]); };
  std::uint8_t const first = byte(0);
  if (first < 0x80) {
    return {first, 1};
  }
  std::size_t const count = first >= 0xF0 && first < 0xF5   ? 4
                            : first >= 0xE0 && first < 0xF0 ? 3
                            : first >= 0xC2                 ? 2
                                                            : 0;
  if (count == 0 || first >= 0xF5 || text.size() < count) {
    return {};
  }
  char32_t character = first & (0xFFU >> (count + 1));
  for (std::size_t i = 1; i < count; ++i) {
    if ((byte(i) & 0xC0U) != 0x80U) {
      return {};
    }
    character = (character << 6U) | (byte(i) & 0x3FU);
  }
  bool const overlong = (count == 3 && character < 0x800) || (count == 4 && character < 0x10000);
  bool const not_a_character = (character >= 0xD800 && character < 0xE000) || character > 0x10FFFF;
  return overlong || not_a_character ? Decoded{} : Decoded{character, count};
}

std::string plain(char32_t character) {
  if (character == U'\t' || character == U'\n' || character == U'\r') {
    return " ";
  }
  if (character < 0x7F) {
    return std::string(1, static_cast<char>(character));
  }
  switch (character) {
    case U'\u00A0':  // no-break space, and the thin ones
    case U'\u2009':
    case U'\u202F':
      return " ";
    case U'\u00B0':
      return "deg";
    case U'\u00B1':
      return "+/-";
    case U'\u00B2':
      return "2";
    case U'\u00B3':
      return "3";
    case U'\u00B5':  // micro sign, Greek mu
    case U'\u03BC':
      return "u";
    case U'\u00B7':  // middle dot, dot operator
    case U'\u22C5':
      return "*";
    case U'\u03A9':  // Greek omega, ohm sign
    case U'\u2126':
      return "ohm";
    case U'\u2212':
      return "-";
    case U'\u2032':
    case U'\u2019':
      return "'";
    case U'\u2033':
    case U'\u201D':
      return "\"";
    default:
      return "\x7f";
  }
}

}  // namespace

std::string CleanText::quoted(std::size_t begin, std::size_t end) const {
  if (begin >= end) {
    return "nothing";
  }
  std::size_t last = byte[end];
  // A character may stand behind several signs; take all of it.
  if (last <= byte[begin]) {
    std::size_t next = end;
    while (next + 1 < byte.size() && byte[next] == byte[begin]) {
      ++next;
    }
    last = byte[next];
  }
  return fmt::format("\"{}\"", std::string_view(original).substr(byte[begin], last - byte[begin]));
}

TextError CleanText::error(std::size_t begin, std::size_t end, std::string expected, std::string nearest) const {
  return {character[begin], quoted(begin, end), std::move(expected), std::move(nearest)};
}

tl::expected<CleanText, TextError> clean_text(std::string_view text) {
  if (text.size() > longest_quantity_text) {
    return tl::unexpected(TextError{0, fmt::format("a text of {} bytes", text.size()),
                                    fmt::format("at most {}", longest_quantity_text), ""});
  }
  CleanText clean;
  clean.original = text;
  std::size_t characters = 0;
  for (std::size_t at = 0; at < text.size(); ++characters) {
    Decoded const decoded = decode(text.substr(at));
    if (decoded.bytes == 0) {
      return tl::unexpected(TextError{characters, "a byte that is not UTF-8", "UTF-8 text", ""});
    }
    std::string const signs = plain(decoded.character);
    if ((decoded.character < 0x20 && signs != " ") || decoded.character == 0x7F) {
      return tl::unexpected(TextError{characters, "a control character", "printable text", ""});
    }
    clean.signs += signs;
    clean.byte.insert(clean.byte.end(), signs.size(), at);
    clean.character.insert(clean.character.end(), signs.size(), characters);
    at += decoded.bytes;
  }
  clean.byte.push_back(text.size());
  clean.character.push_back(characters);
  return clean;
}

std::string plain_spelling(std::string_view spelling) {
  std::string signs;
  for (std::size_t at = 0; at < spelling.size();) {
    Decoded const decoded = decode(spelling.substr(at));
    require(decoded.bytes > 0, "a unit is spelled in UTF-8");
    for (char sign : plain(decoded.character)) {
      if (sign != ' ' && sign != '^') {
        signs += sign;
      }
    }
    at += decoded.bytes;
  }
  return signs;
}

}  // namespace wellproof
