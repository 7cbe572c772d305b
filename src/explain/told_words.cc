#include "explain/told_words.h"

#include <array>
#include <cctype>
#include <utility>

namespace wellproof {
namespace {

template <std::size_t N>
std::optional<int> named(std::array<std::string_view, N> const& names, std::string_view word) {
  constexpr std::size_t least_letters = 3;
  for (std::size_t i = 0; i < N; ++i) {
    if (word.size() >= least_letters && names[i].substr(0, word.size()) == word) {
      return static_cast<int>(i);
    }
  }
  return std::nullopt;
}

bool is_number_sign(char sign) {
  return std::isdigit(static_cast<unsigned char>(sign)) != 0;
}

bool is_letter(char sign) {
  auto const byte = static_cast<unsigned char>(sign);
  return std::isalpha(byte) != 0 || byte >= 0x80 || sign == '_';
}

}  // namespace

std::vector<ToldToken> told_tokens(std::string_view line) {
  std::vector<ToldToken> tokens;
  std::size_t i = 0;
  while (i < line.size()) {
    ToldToken token;
    if (is_number_sign(line[i])) {
      token.kind = ToldToken::Kind::number;
      constexpr int most_digits = 9;  // more are no time
      while (i < line.size() && is_number_sign(line[i])) {
        token.number = token.digits < most_digits ? 10 * token.number + (line[i] - '0') : 1e9;
        ++token.digits;
        token.text += line[i++];
      }
      if (i + 1 < line.size() && line[i] == '.' && is_number_sign(line[i + 1])) {
        token.text += line[i++];
        double part = 0.1;
        while (i < line.size() && is_number_sign(line[i])) {
          token.number += part * (line[i] - '0');
          part *= 0.1;
          token.text += line[i++];
        }
      }
    } else if (is_letter(line[i])) {
      token.kind = ToldToken::Kind::word;
      while (i < line.size() && is_letter(line[i])) {
        token.text += static_cast<char>(std::tolower(static_cast<unsigned char>(line[i++])));
      }
    } else if (std::isspace(static_cast<unsigned char>(line[i])) != 0) {
      ++i;
      continue;
    } else {
      token.text = line[i++];
    }
    tokens.push_back(std::move(token));
  }
  return tokens;
}

std::optional<int> month_named(std::string_view word) {
  static constexpr std::array<std::string_view, 12> names{"january",   "february", "march",    "april",
                                                          "may",       "june",     "july",     "august",
                                                          "september", "october",  "november", "december"};
  auto const place = named(names, word == "sept" ? "sep" : word);
  return place ? std::optional<int>(*place + 1) : std::nullopt;
}

std::optional<int> weekday_named(std::string_view word) {
  static constexpr std::array<std::string_view, 7> names{"monday", "tuesday",  "wednesday", "thursday",
                                                         "friday", "saturday", "sunday"};
  return named(names, word);
}

std::optional<double> span_unit_s(std::string_view word) {
  static constexpr std::pair<std::string_view, double> units[] = {
      {"w", 604800},   {"wk", 604800},  {"wks", 604800}, {"week", 604800}, {"weeks", 604800}, {"d", 86400},
      {"day", 86400},  {"days", 86400}, {"h", 3600},     {"hr", 3600},     {"hrs", 3600},     {"hour", 3600},
      {"hours", 3600}, {"m", 60},       {"mn", 60},      {"min", 60},      {"mins", 60},      {"minute", 60},
      {"minutes", 60}, {"s", 1},        {"sec", 1},      {"secs", 1},      {"second", 1},     {"seconds", 1}};
  for (auto const& [name, size_s] : units) {
    if (name == word) {
      return size_s;
    }
  }
  return std::nullopt;
}

}  // namespace wellproof
