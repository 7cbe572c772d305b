#include "explain/history_table.h"

#include <algorithm>

#include "explain/stop_words.h"

namespace wellproof {
namespace {

std::vector<std::string> cells(std::string_view line, char separator) {
  std::vector<std::string> out(1);
  bool quoted = false;
  for (char const sign : line) {
    if (sign == '"') {
      quoted = !quoted;
    } else if (sign == separator && !quoted) {
      out.emplace_back();
    } else {
      out.back() += sign;
    }
  }
  return out;
}

HistoryColumn column_named(std::string const& head) {
  auto const is_one_of = [&](std::initializer_list<std::string_view> names) {
    return std::find(names.begin(), names.end(), head) != names.end();
  };
  if (is_one_of({"kind", "stop", "cause", "fault", "what", "stopped by"})) {
    return HistoryColumn::kind;
  }
  if (is_one_of({"ago", "since", "age", "when", "date", "time", "at", "time since"})) {
    return HistoryColumn::when;
  }
  if (is_one_of({"days", "day", "d"})) {
    return HistoryColumn::days;
  }
  if (is_one_of({"hours", "hour", "h"})) {
    return HistoryColumn::hours;
  }
  return is_one_of({"minutes", "minute", "min", "m"}) ? HistoryColumn::minutes : HistoryColumn::passed;
}

}  // namespace

std::optional<HistoryHead> history_head(std::string_view line) {
  for (char const separator : {',', ';', '\t'}) {
    if (line.find(separator) == std::string_view::npos) {
      continue;
    }
    HistoryHead head;
    head.separator = separator;
    for (auto const& cell : cells(line, separator)) {
      head.columns.push_back(column_named(plain_words(cell)));
    }
    auto const has = [&](HistoryColumn column) {
      return std::find(head.columns.begin(), head.columns.end(), column) != head.columns.end();
    };
    bool const has_time = has(HistoryColumn::when) || has(HistoryColumn::days) || has(HistoryColumn::hours) ||
                          has(HistoryColumn::minutes);
    if (has(HistoryColumn::kind) && has_time) {
      return head;
    }
  }
  return std::nullopt;
}

std::pair<std::string, std::string> history_row(HistoryHead const& head, std::string_view line) {
  std::string kind;
  std::string time;
  auto const row = cells(line, head.separator);
  for (std::size_t i = 0; i < std::min(row.size(), head.columns.size()); ++i) {
    bool const blank = row[i].find_first_not_of(" \t") == std::string::npos;
    if (blank) {
      continue;
    }
    switch (head.columns[i]) {
      case HistoryColumn::kind:
        kind += row[i];
        break;
      case HistoryColumn::when:
        time += " " + row[i];
        break;
      case HistoryColumn::days:
        time += " " + row[i] + " d";
        break;
      case HistoryColumn::hours:
        time += " " + row[i] + " h";
        break;
      case HistoryColumn::minutes:
        time += " " + row[i] + " min";
        break;
      case HistoryColumn::passed:
        break;
    }
  }
  return {kind, time};
}

}  // namespace wellproof
