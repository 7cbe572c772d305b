// Readings from TOML or CSV: both become rows of texts with their places, which one reader understands.
#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "contract/nearest.h"
#include "fit/readings.h"
#include "quantity/customary.h"
#include "quantity/range.h"
#include "site/document.h"

namespace wellproof {
namespace {

constexpr std::size_t most_readings = 200;
constexpr double usual_run_s = 600;  // how long one lets it run before reading (common practice, no source)
constexpr std::array<std::string_view, 11> keys{"condition", "gauge", "drive_pressure", "speed", "current", "volts",
                                                "flow",      "level", "gauge_later",    "after", "note"};
constexpr std::array<std::string_view, 6> conditions{"rest", "asleep", "shut", "least", "open", "flow"};

/// A key with its value as text.
/// inside  of the first character of the text; 0: not on one line
struct Cell {
  std::string key;
  std::string text;
  bool is_text = true;
  Place place;
  int inside = 0;
  Place of_key{};
};

struct Row {
  Place place;
  std::vector<Cell> cells;
};

void unknown_key(Findings& findings, Place const& place, std::string const& key) {
  findings.push_back({place, key, "unknown key \"" + key + "\"", fmt::format("one of {}", fmt::join(keys, ", ")),
                      nearest_word(key, keys)});
}

std::vector<Row> rows_of_toml(std::string_view text, std::string const& file, Findings& findings) {
  auto const document = read_document(text, file);
  findings.insert(findings.end(), document.findings.begin(), document.findings.end());
  std::vector<Row> rows;
  for (auto const& node : document.root.items) {
    Place const place{file, node.key_line, node.key_column};
    if (node.key == "note") {
      continue;
    }
    if (node.key != "reading") {
      static constexpr std::array<std::string_view, 2> known{"reading", "note"};
      findings.push_back(
          {place, node.key, "\"" + node.key + "\"", "[[reading]], one for each", nearest_word(node.key, known)});
      continue;
    }
    if (node.kind != Node::Kind::array) {
      findings.push_back({place, "reading", in_words(node), "[[reading]], one for each", ""});
      continue;
    }
    for (auto const& item : node.items) {
      if (item.kind != Node::Kind::table) {
        findings.push_back(
            {{file, item.line, item.column}, "reading", in_words(item), "[[reading]], one for each", ""});
        continue;
      }
      Row row{{file, item.line, item.column}, {}};
      for (auto const& each : item.items) {
        row.cells.push_back({each.key,
                             each.kind == Node::Kind::text ? each.text : in_words(each),
                             each.kind == Node::Kind::text,
                             {file, each.line, each.column},
                             each.text_column,
                             {file, each.key_line, each.key_column}});
      }
      rows.push_back(std::move(row));
    }
  }
  return rows;
}

/// The cells of a line with the column where each begins, in characters.
std::vector<std::pair<std::string, int>> split(std::string_view line, char between) {
  std::vector<std::pair<std::string, int>> cells;
  std::string cell;
  int column = 1;
  int begin = 1;
  bool quoted = false;
  auto const put = [&] {
    auto const first = cell.find_first_not_of(" \t");
    auto const last = cell.find_last_not_of(" \t");
    cells.emplace_back(first == std::string::npos ? "" : cell.substr(first, last - first + 1),
                       begin + static_cast<int>(first == std::string::npos ? 0 : first));
    cell.clear();
  };
  for (char const c : line) {
    column += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1 : 0;
    if (c == '"') {
      quoted = !quoted;
      cell += ' ';
    } else if (c == between && !quoted) {
      put();
      begin = column;
    } else {
      cell += c;
    }
  }
  put();
  return cells;
}

std::vector<Row> rows_of_csv(std::string_view text, std::string const& file, Findings& findings) {
  std::vector<Row> rows;
  std::vector<std::string> head;
  char between = ',';
  int number = 0;
  while (!text.empty()) {
    auto const end = std::min(text.find('\n'), text.size());
    auto line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    line = line.substr(0, line.find('\r'));
    ++number;
    auto const first = line.find_first_not_of(" \t,;");
    if (first == std::string_view::npos || line[first] == '#') {
      continue;
    }
    if (head.empty()) {
      between = line.find(';') != std::string_view::npos ? ';' : line.find('\t') != std::string_view::npos ? '\t' : ',';
      for (auto const& [name, column] : split(line, between)) {
        head.push_back(name);
        if (std::find(keys.begin(), keys.end(), name) == keys.end()) {
          unknown_key(findings, {file, number, column}, name);
        }
      }
      continue;
    }
    Row row{{file, number, 1}, {}};
    auto const cells = split(line, between);
    if (cells.size() > head.size()) {
      findings.push_back({{file, number, cells[head.size()].second},
                          "",
                          fmt::format("{} cells", cells.size()),
                          fmt::format("at most {}, as many as the head names", head.size()),
                          ""});
    }
    for (std::size_t i = 0; i < std::min(cells.size(), head.size()); ++i) {
      bool const known = std::find(keys.begin(), keys.end(), head[i]) != keys.end();
      if (known && !cells[i].first.empty()) {
        row.cells.push_back({head[i], cells[i].first, true, {file, number, cells[i].second}, cells[i].second, {}});
      }
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

struct Span {
  double least = 0;
  double most = 0;
  std::string_view says;
};

class ReadingsReader {
 public:
  ReadingsReader(std::string file, Site const& site, Findings findings)
      : file_(std::move(file)), site_(site), findings_(std::move(findings)) {}

  Result<SiteReadings> read(std::vector<Row> const& rows) {
    SiteReadings read{file_, {}};
    for (auto const& row : rows) {
      read.readings.push_back(one(row));
    }
    if (rows.empty() && findings_.empty()) {
      findings_.push_back(
          {{file_, 1, 1}, "reading", "no reading", "[[reading]] with a condition and what was read", ""});
    }
    if (rows.size() > most_readings) {
      findings_.push_back({rows[most_readings].place, "reading", fmt::format("{} readings", rows.size()),
                           fmt::format("at most {}", most_readings), ""});
    }
    if (!findings_.empty()) {
      std::stable_sort(findings_.begin(), findings_.end(), [](Finding const& a, Finding const& b) {
        return std::pair(a.place.line, a.place.column) < std::pair(b.place.line, b.place.column);
      });
      return tl::unexpected(findings_);
    }
    return read;
  }

 private:
  void fault(Place const& place, std::string key, std::string found, std::string expected, std::string nearest = "") {
    findings_.push_back({place, std::move(key), std::move(found), std::move(expected), std::move(nearest)});
  }

  SiteReading one(Row const& row) {
    SiteReading reading;
    reading.place = row.place;
    bool has_condition = false;
    Cell const* after = nullptr;
    std::size_t const faults = findings_.size();
    for (auto const& cell : row.cells) {
      if (cell.key == "condition") {
        has_condition = true;
        condition(cell, reading);
      } else if (cell.key == "after") {
        after = &cell;
      } else if (cell.key == "note") {
        reading.note = cell.text;
      } else if (std::find(keys.begin(), keys.end(), cell.key) == keys.end()) {
        unknown_key(findings_, cell.of_key, cell.key);
      } else {
        value(cell, reading);
      }
    }
    if (!has_condition) {
      fault(row.place, "condition", "nothing", fmt::format("one of {}", fmt::join(conditions, ", ")));
    }
    reading.after_s = is_running(reading.condition) ? usual_run_s : 0;
    if (after != nullptr) {
      constexpr double longest_s = 30 * 86400.0;
      if (auto const range = range_of(*after, Dimension::time, {1, longest_s, "how long it had run"})) {
        reading.after_s = middle(*range);
      }
    }
    if (findings_.size() == faults) {
      together(reading, row, after != nullptr);
    }
    return reading;
  }

  void condition(Cell const& cell, SiteReading& reading) {
    auto const found = std::find(conditions.begin(), conditions.end(), cell.text);
    if (found == conditions.end() || !cell.is_text) {
      fault(cell.place, "condition", cell.is_text ? "\"" + cell.text + "\"" : cell.text,
            fmt::format("one of {}", fmt::join(conditions, ", ")), nearest_word(cell.text, conditions));
    } else {
      reading.condition = static_cast<Condition>(found - conditions.begin());
    }
  }

  /// What an instrument can show on this site.
  Span span(Instrument instrument) const {
    constexpr double most_current_a = 300;
    constexpr double least_v = 80;
    constexpr double most_v = 700;
    constexpr double most_flow_m3_s = 0.2;
    switch (instrument) {
      case Instrument::gauge:
      case Instrument::gauge_later:
        return {0, highest(site_.tank.rating_pa), "no more than the tank's rating"};
      case Instrument::drive_pressure:
        return {0, 1.02 * highest(site_.sensor.full_scale_pa), "no more than the sensor's span"};
      case Instrument::speed:
        return {0, highest(site_.drive.top_frequency_hz), "no more than the drive's highest"};
      case Instrument::current:
        return {0, most_current_a, "of one conductor"};
      case Instrument::volts:
        return {least_v, most_v, "line to line"};
      case Instrument::flow:
        return {0, most_flow_m3_s, "what the taps gave"};
      case Instrument::level:
        return {0, highest(site_.pump.setting_depth_m), "above the pump's intake"};
    }
    return {};
  }

  std::optional<Range> range_of(Cell const& cell, Dimension dimension, Span const& span) {
    if (!cell.is_text) {
      fault(cell.place, cell.key, cell.text,
            fmt::format("{} with its unit, in quotes, such as \"{}\"", name(dimension), example(dimension)));
      return std::nullopt;
    }
    auto const range = read_range(cell.text, dimension);
    if (!range) {
      auto const& error = range.error();
      constexpr std::size_t far = 100000;
      Place const place =
          cell.inside == 0 ? cell.place
                           : Place{file_, cell.place.line, cell.inside + static_cast<int>(std::min(error.offset, far))};
      fault(place, cell.key, error.found, error.expected, error.nearest);
      return std::nullopt;
    }
    double const at = middle(*range);
    bool const finite = std::isfinite(lowest(*range)) && std::isfinite(highest(*range));
    if (!finite || at < span.least || at > span.most) {
      fault(cell.place, cell.key, finite ? write_quantity(at, dimension, UnitSystem::us) : "no number",
            fmt::format("between {} and {}, {}", write_quantity(span.least, dimension, UnitSystem::us),
                        write_quantity(span.most, dimension, UnitSystem::us), span.says));
      return std::nullopt;
    }
    return *range;
  }

  void value(Cell const& cell, SiteReading& reading) {
    Instrument instrument = Instrument::gauge;
    for (std::size_t i = 0; i < instruments; ++i) {
      instrument = wellproof::key(static_cast<Instrument>(i)) == cell.key ? static_cast<Instrument>(i) : instrument;
    }
    auto const range = range_of(cell, dimension_of(instrument), span(instrument));
    if (!range) {
      return;
    }
    ReadValue read{instrument, middle(*range), 0, !is_fixed(*range), cell.place};
    constexpr double one_sigma = 0.8413447460685429;  // of the normal distribution
    read.sigma = read.sigma_stated ? 0.5 * (quantile(*range, one_sigma) - quantile(*range, 1 - one_sigma))
                                   : usual_error(instrument, read.value, site_) / sigmas_of_95;
    reading.values.push_back(read);
  }

  /// What cannot be read at one moment.
  void together(SiteReading const& reading, Row const& row, bool has_after) {
    bool const running = is_running(reading.condition);
    auto const* const speed = reading.read(Instrument::speed);
    auto const* const current = reading.read(Instrument::current);
    auto const* const flow = reading.read(Instrument::flow);
    auto const* const later = reading.read(Instrument::gauge_later);
    auto const what = fmt::format("\"{}\"", word(reading.condition));
    if (reading.values.empty()) {
      fault(row.place, "reading", "nothing read",
            "at least one of gauge, drive_pressure, speed, current, volts, flow, level");
    }
    if (speed != nullptr && speed->value <= 0 && current != nullptr && current->value > 0) {
      fault(speed->place, "speed", "0 Hz with a current", "the speed at which the current was read");
    } else if (running && speed != nullptr && speed->value <= 0) {
      fault(speed->place, "speed", "0 Hz while running", "a speed, or condition \"rest\" or \"asleep\"");
    } else if (!running && speed != nullptr && speed->value > 0) {
      fault(speed->place, "speed", "a speed at condition " + what, "none: the pump is off");
    } else if (!running && current != nullptr && current->value > 0) {
      fault(current->place, "current", "a current at condition " + what, "none: the pump is off");
    }
    bool const draws = running && reading.condition != Condition::shut;
    if (flow != nullptr && !draws) {
      fault(flow->place, "flow", "a flow at condition " + what, "none: nothing is drawn");
    } else if (flow != nullptr && flow->value <= 0) {
      fault(flow->place, "flow", "no flow", "more than 0, or condition \"shut\"");
    }
    if (later != nullptr) {
      bool const before = reading.read(Instrument::gauge) != nullptr;
      if (reading.condition != Condition::asleep || !before || !has_after) {
        fault(later->place, "gauge_later", "gauge_later alone", "condition \"asleep\", the gauge before, and after");
      }
    }
  }

  std::string file_;
  Site const& site_;
  Findings findings_;
};

}  // namespace

Result<SiteReadings> read_readings(std::string_view text, std::string const& file, Site const& site) {
  Findings findings;
  bool const csv = file.size() >= 4 && file.compare(file.size() - 4, 4, ".csv") == 0;
  auto const rows = csv ? rows_of_csv(text, file, findings) : rows_of_toml(text, file, findings);
  return ReadingsReader(file, site, std::move(findings)).read(rows);
}

}  // namespace wellproof
