#include "fit/column_head.h"

#include <algorithm>
#include <cctype>
#include <vector>

#include "contract/nearest.h"
#include "quantity/quantity.h"

namespace wellproof {
namespace {

struct Name {
  std::string_view name;
  ColumnKind kind;
};

// Without what is no letter or digit, in small letters.
constexpr Name names[] = {{"t", ColumnKind::time},
                          {"time", ColumnKind::time},
                          {"elapsed", ColumnKind::time},
                          {"elapsedtime", ColumnKind::time},
                          {"timesincepumpingbegan", ColumnKind::time},
                          {"tprime", ColumnKind::time_stopped},
                          {"t'", ColumnKind::time_stopped},
                          {"tsincestop", ColumnKind::time_stopped},
                          {"timesincestop", ColumnKind::time_stopped},
                          {"timesincepumpingstopped", ColumnKind::time_stopped},
                          {"trecovery", ColumnKind::time_stopped},
                          {"recoverytime", ColumnKind::time_stopped},
                          {"s", ColumnKind::drawdown},
                          {"sw", ColumnKind::drawdown},
                          {"s'", ColumnKind::drawdown},
                          {"sprime", ColumnKind::drawdown},
                          {"drawdown", ColumnKind::drawdown},
                          {"dd", ColumnKind::drawdown},
                          {"residual", ColumnKind::drawdown},
                          {"residualdrawdown", ColumnKind::drawdown},
                          {"recov", ColumnKind::recovered},
                          {"recovered", ColumnKind::recovered},
                          {"recovery", ColumnKind::recovered},
                          {"recovereddrawdown", ColumnKind::recovered},
                          {"depth", ColumnKind::depth},
                          {"level", ColumnKind::depth},
                          {"depthtowater", ColumnKind::depth},
                          {"waterlevel", ColumnKind::depth},
                          {"waterdepth", ColumnKind::depth},
                          {"leveldepth", ColumnKind::depth},
                          {"dtw", ColumnKind::depth},
                          {"q", ColumnKind::rate},
                          {"rate", ColumnKind::rate},
                          {"flow", ColumnKind::rate},
                          {"discharge", ColumnKind::rate},
                          {"pumpingrate", ColumnKind::rate},
                          {"pumped", ColumnKind::rate}};

std::string plain(std::string_view text) {
  std::string out;
  for (char const c : text) {
    if (std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '\'') {
      out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
  }
  return out;
}

std::optional<ColumnKind> kind_of(std::string_view name) {
  std::string const wanted = plain(name);
  for (auto const& each : names) {
    if (each.name == wanted) {
      return each.kind;
    }
  }
  return std::nullopt;
}

}  // namespace

std::string bare(std::string_view text) {
  auto const begin = text.find_first_not_of(" \t\r\"");
  if (begin == std::string_view::npos) {
    return "";
  }
  auto const end = text.find_last_not_of(" \t\r\"");
  return std::string(text.substr(begin, end - begin + 1));
}

bool is_time(ColumnKind kind) {
  return kind == ColumnKind::time || kind == ColumnKind::time_stopped;
}
bool is_level(ColumnKind kind) {
  return kind == ColumnKind::drawdown || kind == ColumnKind::recovered || kind == ColumnKind::depth;
}

Dimension dimension_of(ColumnKind kind) {
  switch (kind) {
    case ColumnKind::time:
    case ColumnKind::time_stopped:
      return Dimension::time;
    case ColumnKind::rate:
      return Dimension::flow;
    case ColumnKind::drawdown:
    case ColumnKind::recovered:
    case ColumnKind::depth:
      break;
  }
  return Dimension::length;
}

std::optional<double> factor_of(std::string unit, Dimension dimension) {
  for (std::string const word : {"_per_", " per "}) {
    auto const at = unit.find(word);
    if (at != std::string::npos) {
      unit = unit.substr(0, at) + "/" + unit.substr(at + word.size());
    }
  }
  auto read = read_quantity("1 " + unit, dimension);
  if (!read) {
    std::replace(unit.begin(), unit.end(), '_', '/');
    read = read_quantity("1 " + unit, dimension);
  }
  return read && !unit.empty() ? std::optional(*read) : std::nullopt;
}

std::optional<Head> head_of(std::string const& text) {
  if (auto const kind = kind_of(text)) {
    return Head{*kind, 0, 0};
  }
  for (std::size_t at = text.size(); at-- > 1;) {
    if (std::string_view("_ ([,").find(text[at]) == std::string_view::npos) {
      continue;
    }
    auto const kind = kind_of(std::string_view(text).substr(0, at));
    if (!kind) {
      continue;
    }
    std::string unit = text.substr(at + 1);
    unit.erase(std::remove_if(unit.begin(), unit.end(), [](char c) { return c == ')' || c == ']' || c == '('; }),
               unit.end());
    if (auto const factor = factor_of(bare(unit), dimension_of(*kind))) {
      return Head{*kind, *factor, 0};
    }
  }
  return std::nullopt;
}

std::string nearest_head_name(std::string const& text) {
  std::vector<std::string_view> known;
  for (auto const& each : names) {
    known.push_back(each.name);
  }
  return nearest_word(plain(text.substr(0, text.find_first_of("_ ([,"))), known);
}

}  // namespace wellproof
