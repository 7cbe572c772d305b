#include "book/entry.h"

#include <algorithm>
#include <array>
#include <utility>

#include <fmt/format.h>

namespace wellproof {
namespace {

constexpr std::array<std::pair<EntryKind, std::string_view>, 7> words{{{EntryKind::site, "site"},
                                                                       {EntryKind::settings, "settings"},
                                                                       {EntryKind::sheet, "sheet"},
                                                                       {EntryKind::readings, "readings"},
                                                                       {EntryKind::history, "history"},
                                                                       {EntryKind::lock, "lock"},
                                                                       {EntryKind::unlock, "unlock"}}};

constexpr std::size_t most_name = 200;
constexpr std::size_t most_why = 2000;

bool has_control(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char sign) {
    auto const byte = static_cast<unsigned char>(sign);
    return byte < 0x20 || byte == 0x7F;
  });
}

/// Year to second in UTC, each figure in its range; the day of a month is not held against the calendar.
bool is_time(std::string_view text) {
  constexpr std::string_view form = "0000-00-00T00:00:00Z";
  if (text.size() != form.size()) {
    return false;
  }
  for (std::size_t i = 0; i < form.size(); ++i) {
    bool const digit = text[i] >= '0' && text[i] <= '9';
    if (form[i] == '0' ? !digit : text[i] != form[i]) {
      return false;
    }
  }
  auto const figure = [&](std::size_t at) { return 10 * (text[at] - '0') + (text[at + 1] - '0'); };
  return figure(5) >= 1 && figure(5) <= 12 && figure(8) >= 1 && figure(8) <= 31 && figure(11) < 24 && figure(14) < 60 &&
         figure(17) <= 60;
}

/// Bytes of the character that begins so; 0 if none does.
std::size_t length_of(unsigned char first) {
  return first < 0x80 ? 1 : first < 0xC2 ? 0 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : first < 0xF5 ? 4 : 0;
}

void line_of_text(Findings& findings, char const* key, std::string const& text, std::size_t most, bool needed) {
  auto const wrong = [&](std::string found, std::string expected) {
    findings.push_back({{"", 0, 0}, key, std::move(found), std::move(expected), ""});
  };
  if (!is_utf8(text)) {
    wrong("a byte that is not UTF-8", "a text in UTF-8");
  } else if (text.size() > most) {
    wrong(fmt::format("{} bytes", text.size()), fmt::format("at most {}", most));
  } else if (has_control(text)) {
    wrong("a line break or another control character", "one line of text");
  } else if (needed && text.find_first_not_of(' ') == std::string::npos) {
    wrong("nothing", "a line of text");
  }
}

}  // namespace

bool Record::operator==(Record const& other) const {
  bool const alike = site == other.site && kind == other.kind && who == other.who && at == other.at &&
                     why == other.why && name == other.name && content == other.content;
  return alike && std::equal(beside.begin(), beside.end(), other.beside.begin(), other.beside.end(),
                             [](Beside const& a, Beside const& b) { return a.name == b.name && a.text == b.text; });
}

std::string_view word(EntryKind kind) {
  auto const* const at = std::find_if(words.begin(), words.end(), [&](auto const& each) { return each.first == kind; });
  return at->second;
}

std::optional<EntryKind> entry_kind(std::string_view word) {
  for (auto const& [kind, known] : words) {
    if (known == word) {
      return kind;
    }
  }
  return std::nullopt;
}

bool of_a_site(EntryKind kind) {
  return kind != EntryKind::lock && kind != EntryKind::unlock;
}

bool is_utf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    auto const byte = [&](std::size_t i) { return static_cast<unsigned char>(text[at + i]); };
    std::size_t const length = length_of(byte(0));
    if (length == 0 || at + length > text.size()) {
      return false;
    }
    for (std::size_t i = 1; i < length; ++i) {
      if (byte(i) < 0x80 || byte(i) > 0xBF) {
        return false;
      }
    }
    // Too long a form, half of a surrogate pair, beyond the last character.
    bool const refused = length > 2 && ((byte(0) == 0xE0 && byte(1) < 0xA0) || (byte(0) == 0xED && byte(1) > 0x9F) ||
                                        (byte(0) == 0xF0 && byte(1) < 0x90) || (byte(0) == 0xF4 && byte(1) > 0x8F));
    if (refused) {
      return false;
    }
    at += length;
  }
  return true;
}

Findings wrong_with(Record const& record) {
  Findings findings;
  line_of_text(findings, "site.name", record.site, most_name, of_a_site(record.kind));
  line_of_text(findings, "who", record.who, most_name, true);
  line_of_text(findings, "why", record.why, most_why, true);
  line_of_text(findings, "name", record.name, most_name, false);
  for (auto const& file : record.beside) {
    line_of_text(findings, "beside", file.name, most_name, true);
  }
  if (!is_time(record.at)) {
    findings.push_back({{"", 0, 0}, "when", "\"" + record.at + "\"", "a time such as 2031-05-14T09:30:00Z", ""});
  }
  return findings;
}

}  // namespace wellproof
