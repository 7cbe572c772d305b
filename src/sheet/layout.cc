#include "sheet/layout.h"

#include <algorithm>
#include <cstdint>

namespace wellproof {
namespace {

constexpr std::string_view margin = "  ";
constexpr std::size_t least_last_column = 16;

struct Character {
  std::uint32_t code = 0;
  std::size_t bytes = 1;
};

/// The character at a byte of UTF-8; a byte that fits nowhere is a character by itself.
Character character_at(std::string_view text, std::size_t at) {
  auto const byte = [&](std::size_t i) { return static_cast<std::uint32_t>(static_cast<unsigned char>(text[i])); };
  std::uint32_t const first = byte(at);
  std::size_t const bytes = first < 0x80 ? 1 : first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : first >= 0xC2 ? 2 : 0;
  if (bytes == 1) {
    return {first, 1};
  }
  if (bytes == 0 || at + bytes > text.size()) {
    return {0xFFFD, 1};
  }
  std::uint32_t code = first & (0x7Fu >> bytes);
  for (std::size_t i = 1; i < bytes; ++i) {
    if ((byte(at + i) & 0xC0u) != 0x80u) {
      return {0xFFFD, 1};
    }
    code = (code << 6u) | (byte(at + i) & 0x3Fu);
  }
  return {code, bytes};
}

struct CodeRange {
  std::uint32_t first;
  std::uint32_t last;
};

template <std::size_t n>
bool within(std::uint32_t code, CodeRange const (&ranges)[n]) {
  return std::any_of(ranges, ranges + n, [&](CodeRange const& r) { return code >= r.first && code <= r.last; });
}

bool is_control(std::uint32_t code) {
  // C0, DEL and C1; the marks that turn the direction of writing; separators of lines.
  static constexpr CodeRange controls[] = {{0, 0x1F},        {0x7F, 0x9F},     {0x200B, 0x200F},
                                           {0x2028, 0x202E}, {0x2060, 0x206F}, {0xFEFF, 0xFEFF}};
  return within(code, controls);
}

std::size_t width_of(std::uint32_t code) {
  static constexpr CodeRange combining[] = {{0x300, 0x36F}, {0x1AB0, 0x1AFF}, {0x20D0, 0x20FF}, {0xFE00, 0xFE0F}};
  static constexpr CodeRange wide[] = {{0x1100, 0x115F}, {0x2E80, 0xA4CF},   {0xAC00, 0xD7A3},  {0xF900, 0xFAFF},
                                       {0xFF00, 0xFF60}, {0x1F300, 0x1FAFF}, {0x20000, 0x3FFFD}};
  if (within(code, combining)) {
    return 0;
  }
  return within(code, wide) ? 2 : 1;
}

/// Bytes from the start of a text that take at most so many columns; at least one character.
std::size_t bytes_within(std::string_view text, std::size_t width) {
  std::size_t at = 0;
  std::size_t taken = 0;
  while (at < text.size()) {
    auto const character = character_at(text, at);
    taken += width_of(character.code);
    if (taken > width && at > 0) {
      break;
    }
    at += character.bytes;
  }
  return at;
}

}  // namespace

std::size_t columns(std::string_view text) {
  std::size_t width = 0;
  for (std::size_t at = 0; at < text.size();) {
    auto const character = character_at(text, at);
    width += width_of(character.code);
    at += character.bytes;
  }
  return width;
}

std::string visible(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    auto const character = character_at(text, at);
    if (is_control(character.code)) {
      out += ' ';
    } else if (character.code == 0xFFFD) {
      out += "\xEF\xBF\xBD";
    } else {
      out += text.substr(at, character.bytes);
    }
    at += character.bytes;
  }
  return out;
}

std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
  std::string const clean = visible(text);
  std::string_view rest = clean;
  width = std::max<std::size_t>(width, 1);
  std::vector<std::string> lines;
  std::string line;
  while (!rest.empty()) {
    std::size_t const begin = rest.find_first_not_of(' ');
    if (begin == std::string_view::npos) {
      break;
    }
    rest.remove_prefix(begin);
    std::string_view word = rest.substr(0, rest.find(' '));
    rest.remove_prefix(word.size());
    std::size_t const before = line.empty() ? 0 : columns(line) + 1;
    if (!line.empty() && before + columns(word) > width) {
      lines.push_back(line);
      line.clear();
    }
    while (line.empty() && columns(word) > width) {
      std::size_t const bytes = bytes_within(word, width);
      lines.emplace_back(word.substr(0, bytes));
      word.remove_prefix(bytes);
    }
    if (!word.empty()) {
      line += line.empty() ? "" : " ";
      line += word;
    }
  }
  if (!line.empty() || lines.empty()) {
    lines.push_back(line);
  }
  return lines;
}

std::string block(std::string_view text, std::string_view first, std::string_view rest, std::size_t width) {
  std::size_t const indent = std::max(columns(first), columns(rest));
  std::string out;
  std::string_view before = first;
  for (auto const& line : wrapped(text, width > indent ? width - indent : 1)) {
    out += before;
    out += line;
    out += '\n';
    before = rest;
  }
  return out;
}

std::string left(std::string_view text, std::size_t width) {
  std::size_t const taken = columns(text);
  return std::string(text) + std::string(width > taken ? width - taken : 0, ' ');
}

std::string right(std::string_view text, std::size_t width) {
  std::size_t const taken = columns(text);
  return std::string(width > taken ? width - taken : 0, ' ') + std::string(text);
}

std::string Paint::wrapped_in(std::string_view code, std::string_view text) const {
  if (!colour_) {
    return std::string(text);
  }
  std::string painted = "\x1b[";
  painted += code;
  painted += 'm';
  painted += text;
  painted += "\x1b[0m";
  return painted;
}

std::string heading(std::string_view text, Paint const& paint) {
  std::string rule;
  for (std::size_t i = 0; i < columns(text); ++i) {
    rule += "─";
  }
  return "\n" + paint.strong(text) + "\n" + paint.quiet(rule) + "\n";
}

std::string text(Table const& table, Paint const& paint, std::size_t width) {
  std::size_t const last = table.head.size() - 1;
  std::vector<std::size_t> widths;
  std::size_t taken = margin.size();
  for (std::size_t c = 0; c < table.head.size(); ++c) {
    std::size_t widest = columns(table.head[c].head);
    for (auto const& row : table.rows) {
      widest = std::max(widest, columns(visible(row[c])));
    }
    if (c == last && taken + widest > width) {
      widest = std::max(least_last_column, width > taken ? width - taken : 0);
    }
    widths.push_back(widest);
    taken += widest + margin.size();
  }
  auto const cell = [&](std::string_view text_of_cell, std::size_t c) {
    return table.head[c].to_the_right ? right(text_of_cell, widths[c])
           : c == last                ? std::string(text_of_cell)
                                      : left(text_of_cell, widths[c]);
  };
  std::string out;
  auto const end_line = [&out] {
    out.erase(out.find_last_not_of(' ') + 1);  // an empty cell at the end leaves no blanks
    out += '\n';
  };
  for (std::size_t c = 0; c < table.head.size(); ++c) {
    out += std::string(margin) + paint.quiet(cell(table.head[c].head, c));
  }
  end_line();
  for (auto const& row : table.rows) {
    std::size_t indent = margin.size();
    for (std::size_t c = 0; c < last; ++c) {
      out += std::string(margin) + cell(visible(row[c]), c);
      indent += widths[c] + margin.size();
    }
    auto const lines = wrapped(row[last], widths[last]);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      out += i == 0 ? std::string(margin) : std::string(indent, ' ');
      out += cell(lines[i], last);
      end_line();
    }
  }
  return out;
}

}  // namespace wellproof
