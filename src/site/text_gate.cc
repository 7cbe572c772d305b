#include "site/text_gate.h"

#include <fmt/format.h>

#include <string>
#include <utility>

namespace wellproof {
namespace {

constexpr std::size_t most_bytes = 256 << 10;
constexpr int most_dots_in_line = 200;  // each dot of a dotted key nests a table: a bound on the parser's depth

/// Length of the well-formed UTF-8 sequence at the start (Unicode 15, table 3-7); 0 if there is none.
std::size_t sequence_length(std::string_view text) {
  auto const byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
  auto const tail = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
  auto const lead = byte(0);
  if (lead < 0x80U) {
    return 1;
  }
  if (lead >= 0xC2U && lead <= 0xDFU) {
    return tail(1) ? 2 : 0;
  }
  if (lead >= 0xE0U && lead <= 0xEFU) {
    bool const overlong = lead == 0xE0U && byte(1) < 0xA0U;
    bool const surrogate = lead == 0xEDU && byte(1) > 0x9FU;
    return tail(1) && tail(2) && !overlong && !surrogate ? 3 : 0;
  }
  if (lead >= 0xF0U && lead <= 0xF4U) {
    bool const overlong = lead == 0xF0U && byte(1) < 0x90U;
    bool const beyond = lead == 0xF4U && byte(1) > 0x8FU;
    return tail(1) && tail(2) && tail(3) && !overlong && !beyond ? 4 : 0;
  }
  return 0;
}

/// Walks the text once before the parser sees it: bytes that are no UTF-8, letters that may only stand in quotes or in
/// a comment, lines that would nest too deep.
class Gate {
 public:
  Gate(std::string_view text, std::string_view file) : text_(text), file_(file) {}

  std::optional<Finding> stopper() {
    if (text_.size() > most_bytes) {
      return Finding{{std::string(file_), 0, 0},
                     "",
                     fmt::format("{} bytes", text_.size()),
                     fmt::format("a site file of at most {} bytes", most_bytes),
                     ""};
    }
    for (std::size_t at = 0; at < text_.size();) {
      auto const length = sequence_length(text_.substr(at));
      if (length == 0) {
        return here("", fmt::format("byte 0x{:02X}", static_cast<unsigned char>(text_[at])), "text in UTF-8");
      }
      if (length > 1 && within_ == Within::plain && !(at == 0 && text_.substr(0, 3) == "\xEF\xBB\xBF")) {
        return here("", fmt::format("\"{}\" outside quotes", text_.substr(at, length)),
                    "keys of plain letters, and text in quotes");
      }
      step(at);
      if (dots_ > most_dots_in_line) {
        return here("", "very many dots in one line", "key = \"value\"");
      }
      at += length;
    }
    return std::nullopt;
  }

 private:
  enum class Within { plain, comment, basic, literal, long_basic, long_literal };

  Finding here(std::string key, std::string found, std::string expected) const {
    return {{std::string(file_), line_, column_}, std::move(key), std::move(found), std::move(expected), ""};
  }

  bool three(std::size_t at, char quote) const { return text_.substr(at, 3) == std::string(3, quote); }

  void step(std::size_t at) {
    char const c = text_[at];
    ++column_;
    if (c == '\n') {
      ++line_;
      column_ = 1;
      dots_ = 0;
      skip_ = 0;
      if (within_ != Within::long_basic && within_ != Within::long_literal) {
        within_ = Within::plain;
      }
      return;
    }
    dots_ += c == '.' && within_ != Within::comment ? 1 : 0;
    if (skip_ > 0) {
      --skip_;
      return;
    }
    switch (within_) {
      case Within::plain:
        if (c == '#') {
          within_ = Within::comment;
        } else if (c == '"' || c == '\'') {
          bool const is_long = three(at, c);
          skip_ = is_long ? 2 : 0;
          within_ = c == '"' ? (is_long ? Within::long_basic : Within::basic)
                             : (is_long ? Within::long_literal : Within::literal);
        }
        break;
      case Within::comment:
        break;
      case Within::basic:
        skip_ = c == '\\' ? 1 : 0;
        within_ = c == '"' ? Within::plain : within_;
        break;
      case Within::literal:
        within_ = c == '\'' ? Within::plain : within_;
        break;
      case Within::long_basic:
        skip_ = c == '\\' ? 1 : 0;
        leave_long(at, c, '"');
        break;
      case Within::long_literal:
        leave_long(at, c, '\'');
        break;
    }
  }

  void leave_long(std::size_t at, char c, char quote) {
    if (c == quote && three(at, quote)) {
      skip_ = 2;
      within_ = Within::plain;
    }
  }

  std::string_view text_;
  std::string_view file_;
  Within within_ = Within::plain;
  int line_ = 1;
  int column_ = 1;
  int dots_ = 0;
  int skip_ = 0;
};

}  // namespace

std::optional<Finding> stopping_finding(std::string_view text, std::string_view file) {
  return Gate(text, file).stopper();
}

}  // namespace wellproof
