#include "fit/level_table.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>

#include <fast_float/fast_float.h>
#include <fmt/format.h>

#include "fit/column_head.h"

namespace wellproof {
namespace {

constexpr std::size_t most_rows = 200'000;
constexpr std::string_view head_example = "a head that names time and level with their units, as in: t_min,s_m";

struct Cell {
  std::string text;
  int column = 1;
};

struct Line {
  int number = 0;
  std::vector<Cell> cells;
};

/// Characters, not bytes.
int characters(std::string_view text) {
  return static_cast<int>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::vector<Cell> cells_of(std::string_view line, char between) {
  std::vector<Cell> cells;
  std::size_t begin = 0;
  for (;;) {
    std::size_t const end = std::min(line.find(between, begin), line.size());
    std::string_view const raw = line.substr(begin, end - begin);
    auto const blanks = std::min(raw.find_first_not_of(" \t\""), raw.size());
    cells.push_back({bare(raw), characters(line.substr(0, begin + blanks)) + 1});
    if (end == line.size()) {
      return cells;
    }
    begin = end + 1;
  }
}

std::string quoted(std::string const& text) {
  constexpr std::size_t most = 40;
  std::string shown;
  for (char const c : text.substr(0, most)) {
    shown += static_cast<unsigned char>(c) < 0x20 || c == 0x7F ? ' ' : c;
  }
  while (text.size() > most && !shown.empty() && (static_cast<unsigned char>(shown.back()) & 0x80U) != 0) {
    shown.pop_back();  // not half a character
  }
  return "\"" + shown + (text.size() > most ? "…\"" : "\"");
}

std::optional<double> number(std::string const& text) {
  double value = 0;
  char const* const end = text.data() + text.size();
  char const* const begin = !text.empty() && text.front() == '+' ? text.data() + 1 : text.data();
  auto const read = fast_float::from_chars(begin, end, value);
  if (read.ec != std::errc() || read.ptr != end || !std::isfinite(value)) {
    return std::nullopt;
  }
  return value;
}

class TableReader {
 public:
  TableReader(std::string const& file, ColumnUnits const& units) : file_(file), units_(units) {}

  LevelTable read(std::string_view text) {
    split(text);
    if (lines_.empty()) {
      fault(0, 0, "no line of figures", std::string(head_example));
    } else if (heads()) {
      rows();
    }
    table_.findings = std::move(findings_);
    return std::move(table_);
  }

 private:
  void fault(int line, int column, std::string found, std::string expected, std::string nearest = "") {
    findings_.push_back({{file_, line, column}, "", std::move(found), std::move(expected), std::move(nearest)});
  }

  void split(std::string_view text) {
    constexpr std::string_view mark = "\xEF\xBB\xBF";
    if (text.substr(0, mark.size()) == mark) {
      text.remove_prefix(mark.size());
    }
    char between = 0;
    int number_of_line = 0;
    while (!text.empty()) {
      std::size_t const end = std::min(text.find('\n'), text.size());
      std::string_view const line = text.substr(0, end);
      text.remove_prefix(std::min(end + 1, text.size()));
      ++number_of_line;
      auto const first = line.find_first_not_of(" \t\r");
      if (first == std::string_view::npos || line[first] == '#') {
        continue;
      }
      if (between == 0) {
        between = line.find(';') != std::string_view::npos    ? ';'
                  : line.find('\t') != std::string_view::npos ? '\t'
                                                              : ',';
      }
      lines_.push_back({number_of_line, cells_of(line, between)});
    }
  }

  /// Takes the head apart; false where the rest cannot be read without it.
  bool heads() {
    Line const& head = lines_.front();
    bool const figures = std::all_of(head.cells.begin(), head.cells.end(),
                                     [](Cell const& cell) { return number(cell.text).has_value(); });
    if (figures) {
      return without_head(head);
    }
    first_row_ = 1;
    for (std::size_t i = 0; i < head.cells.size(); ++i) {
      auto column = head_of(head.cells[i].text);
      if (!column) {
        unknown_.push_back(i);
        continue;
      }
      column->index = i;
      take(*column, head.cells[i], head.number);
    }
    missing(head);
    return findings_.empty();
  }

  bool without_head(Line const& first) {
    auto const time = factor_of(units_.time, Dimension::time);
    auto const level = factor_of(units_.level, Dimension::length);
    if (first.cells.size() < 2 || !time || !level) {
      fault(first.number, 1, "figures without a head", std::string(head_example) + "; or --time-unit and --level-unit");
      return false;
    }
    time_ = Head{ColumnKind::time, *time, 0};
    level_ = Head{ColumnKind::drawdown, *level, 1};
    return true;
  }

  void take(Head column, Cell const& cell, int line) {
    std::optional<Head>& into = is_time(column.kind) ? time_ : is_level(column.kind) ? level_ : rate_;
    if (into) {
      fault(line, cell.column, quoted(cell.text),
            is_time(column.kind)    ? "one column of time"
            : is_level(column.kind) ? "one column of levels"
                                    : "one column of rates");
      return;
    }
    if (column.factor == 0) {
      std::string const& unit = is_time(column.kind) ? units_.time : is_level(column.kind) ? units_.level : no_unit_;
      auto const factor = factor_of(unit, dimension_of(column.kind));
      if (!factor) {
        char const* const with = is_time(column.kind)    ? "its unit, as in t_min; or --time-unit"
                                 : is_level(column.kind) ? "its unit, as in s_m or s_ft; or --level-unit"
                                                         : "its unit, as in q_gpm or q_m3_per_d";
        fault(line, cell.column, quoted(cell.text), with);
      }
      column.factor = factor.value_or(1);
    }
    into = column;
  }

  void missing(Line const& head) {
    if (time_ && level_) {
      return;
    }
    if (!time_ && !level_) {
      std::string all;
      for (auto const& cell : head.cells) {
        all += (all.empty() ? "" : ",") + cell.text;
      }
      fault(head.number, 1, quoted(all), std::string(head_example));
      return;
    }
    std::string const what = time_ ? "a column of levels: s_m, drawdown_ft, depth_ft, recov_m …"
                                   : "a column of time: t_min, t_s, time_h, tprime_s …";
    if (unknown_.empty()) {
      fault(head.number, 0, "no such column", what);
    }
    for (std::size_t const i : unknown_) {
      auto const& cell = head.cells[i];
      fault(head.number, cell.column, quoted(cell.text), what, nearest_head_name(cell.text));
    }
  }

  std::optional<double> figure(Line const& line, Head const& head, char const* what) {
    if (head.index >= line.cells.size()) {
      fault(line.number, 0, fmt::format("{} of {} columns", line.cells.size(), lines_.front().cells.size()), what);
      return std::nullopt;
    }
    Cell const& cell = line.cells[head.index];
    auto const value = number(cell.text);
    if (!value) {
      bool const comma = cell.text.find(',') != std::string::npos;
      fault(line.number, cell.column, cell.text.empty() ? "nothing" : quoted(cell.text),
            comma ? std::string(what) + " with a decimal point" : what);
      return std::nullopt;
    }
    return *value * head.factor;
  }

  /// The cell under a head; an empty one where the line is too short.
  static Cell cell_of(Line const& line, Head const& head) {
    return head.index < line.cells.size() ? line.cells[head.index] : Cell{"", 0};
  }

  void rows() {
    table_.since_stop = time_->kind == ColumnKind::time_stopped;
    table_.level = level_->kind;
    table_.has_rate = rate_.has_value();
    if (lines_.size() > most_rows) {
      fault(lines_[most_rows].number, 0, fmt::format("{} lines", lines_.size()), fmt::format("at most {}", most_rows));
      return;
    }
    for (std::size_t i = first_row_; i < lines_.size(); ++i) {
      Line const& line = lines_[i];
      LevelRow row;
      row.line = line.number;
      auto const time_s = figure(line, *time_, "a time as a number");
      auto const level_m = figure(line, *level_, "a level as a number");
      if (rate_) {
        row.flow_m3_s = figure(line, *rate_, "a rate as a number");
        row.flow_column = cell_of(line, *rate_).column;
        row.flow_text = cell_of(line, *rate_).text;
      }
      if (!time_s) {
        continue;
      }
      row.complete = level_m && (!rate_ || row.flow_m3_s);
      row.time_s = *time_s;
      row.level_m = level_m.value_or(0);
      row.time_column = cell_of(line, *time_).column;
      row.time_text = cell_of(line, *time_).text;
      row.level_column = cell_of(line, *level_).column;
      row.level_text = cell_of(line, *level_).text;
      table_.rows.push_back(std::move(row));
    }
    if (table_.rows.empty() && findings_.empty()) {
      fault(lines_.front().number, 0, "a head without figures under it", "readings");
    }
  }

  std::string const& file_;
  ColumnUnits const& units_;
  std::string no_unit_;
  std::vector<Line> lines_;
  std::size_t first_row_ = 0;
  std::vector<std::size_t> unknown_;
  std::optional<Head> time_;
  std::optional<Head> level_;
  std::optional<Head> rate_;
  LevelTable table_;
  Findings findings_;
};

}  // namespace

LevelTable read_level_table(std::string_view text, std::string const& file, ColumnUnits const& units) {
  return TableReader(file, units).read(text);
}

Findings first_of_many(Findings findings, std::string const& file) {
  constexpr std::size_t most_alike = 8;
  std::map<std::string, std::size_t> seen;
  Findings kept;
  for (auto& finding : findings) {
    if (++seen[finding.expected] <= most_alike) {
      kept.push_back(std::move(finding));
    }
  }
  for (auto const& [expected, count] : seen) {
    if (count > most_alike) {
      kept.push_back({{file, 0, 0}, "", fmt::format("{} more lines like these", count - most_alike), expected, ""});
    }
  }
  return kept;
}

}  // namespace wellproof
