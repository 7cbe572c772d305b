#include "fit/read_pumping_test.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <optional>

#include <fmt/format.h>

#include "fit/level_table.h"
#include "fit/pumping_rates.h"
#include "quantity/quantity.h"

namespace wellproof {
namespace {

constexpr double assumed_bore_radius_m = 0.1;  // common practice, no source
constexpr double most_level_m = 1000;
constexpr double most_time_s = 1e9;

class TestReader {
 public:
  explicit TestReader(PumpingTestText const& text) : text_(text) {}

  Result<PumpingTest> read() {
    options();
    for (std::size_t i = 0; i < text_.records.size(); ++i) {
      record(text_.records[i], i == 0);
    }
    if (text_.records.empty()) {
      option("FILE", "no table", "a table of times and levels");
    }
    if (!findings_.empty()) {
      return tl::unexpected(findings_);
    }
    return test_;
  }

 private:
  void option(std::string key, std::string found, std::string expected, std::string nearest = "") {
    findings_.push_back({{"", 0, 0}, std::move(key), std::move(found), std::move(expected), std::move(nearest)});
  }

  std::optional<double> quantity(char const* key, std::string const& text, Dimension dimension, double least,
                                 double most) {
    if (text.empty()) {
      return std::nullopt;
    }
    auto const value = read_quantity(text, dimension);
    if (!value) {
      option(key, "\"" + text + "\"", value.error().expected, value.error().nearest);
      return std::nullopt;
    }
    if (!(*value >= least) || !(*value <= most)) {
      option(key, "\"" + text + "\"",
             fmt::format("{} to {}", write_quantity(least, dimension, UnitSystem::metric),
                         write_quantity(most, dimension, UnitSystem::metric)));
      return std::nullopt;
    }
    return *value;
  }

  void options() {
    auto const step_s = quantity("--step", text_.step, Dimension::time, 1, most_time_s);
    auto const stop_at_s = quantity("--stop", text_.stop, Dimension::time, 1, most_time_s);
    test_.rates = read_rates(text_.rates, step_s, stop_at_s, findings_);
    if (auto const casing_m = quantity("--casing", text_.casing, Dimension::diameter, 0.02, 10)) {
      test_.casing_radius_m = *casing_m / 2;
    }
    if (auto const bore_m = quantity("--bore", text_.bore, Dimension::diameter, 0.02, 10)) {
      test_.well_radius_m = *bore_m / 2;
    } else {
      test_.well_radius_m = test_.casing_radius_m;
    }
    test_.storativity = quantity("--storativity", text_.storativity, Dimension::none, 1e-9, 0.5);
    static_level_m_ = quantity("--static-level", text_.static_level, Dimension::length, -100, most_level_m);
    bool const time_sound = unit("--time-unit", text_.time_unit, Dimension::time);
    bool const level_sound = unit("--level-unit", text_.level_unit, Dimension::length);
    units_ = time_sound && level_sound ? ColumnUnits{text_.time_unit, text_.level_unit} : ColumnUnits{};
  }

  bool unit(char const* key, std::string const& spelling, Dimension dimension) {
    if (spelling.empty()) {
      return true;
    }
    auto const one = read_quantity("1 " + spelling, dimension);
    if (!one) {
      option(key, "\"" + spelling + "\"", one.error().expected, one.error().nearest);
    }
    return one.has_value();
  }

  void record(LevelText const& from, bool first) {
    LevelRecord record;
    record.file = from.file;
    if (!from.distance.empty()) {
      auto const distance_m =
          quantity(first ? "--distance" : "--observed", from.distance, Dimension::length, 0.05, 100e3);
      record.distance_m = distance_m.value_or(1);
    } else if (first && !test_.well_radius_m) {
      test_.well_radius_m = assumed_bore_radius_m;
      test_.well_radius_assumed = true;
    }
    if (test_.casing_radius_m && record.distance_m > 0 && test_.well_radius_m &&
        record.distance_m < *test_.well_radius_m) {
      option(first ? "--distance" : "--observed", "\"" + from.distance + "\", inside the well",
             "a distance beyond its bore");
    }
    auto const table = read_level_table(from.text, from.file, units_);
    Findings own = table.findings;
    bool const named_right = order(table, from.file, own);
    if (table.has_rate && first) {
      rates_of(table, from.file, own);
    } else if (first && text_.rates.empty()) {
      option("--rate", "no rate", "what was pumped, as in: --rate \"20 gpm\"; or a column of rates, as q_gpm");
    }
    if (named_right) {
      levels(table, from.file, record, own);
    }
    std::stable_sort(own.begin(), own.end(), [](Finding const& a, Finding const& b) {
      return a.place.line != b.place.line ? a.place.line < b.place.line : a.place.column < b.place.column;
    });
    own = first_of_many(std::move(own), from.file);
    findings_.insert(findings_.end(), own.begin(), own.end());
    test_.records.push_back(std::move(record));
  }

  /// Finds where time does not go on. False where the two columns were swapped: then nothing else can be said of them.
  bool order(LevelTable const& table, std::string const& file, Findings& own) {
    auto const& rows = table.rows;
    if (swapped(table)) {
      auto const& row = rows.front();
      own.push_back(
          {{file, row.line, row.time_column},
           "",
           fmt::format("times from \"{}\" to \"{}\" and levels from \"{}\" to \"{}\": the columns look swapped",
                       row.time_text, rows.back().time_text, row.level_text, rows.back().level_text),
           "times under the head of time, levels under theirs",
           ""});
      return false;
    }
    for (std::size_t i = 0; i < rows.size(); ++i) {
      auto const& row = rows[i];
      if (row.time_s > most_time_s) {
        own.push_back(
            {{file, row.line, row.time_column}, "", "\"" + row.time_text + "\"", "a time of at most 30 years", ""});
      }
      if (i > 0 && row.time_s < rows[i - 1].time_s) {
        own.push_back({{file, row.line, row.time_column},
                       "",
                       fmt::format("\"{}\" after \"{}\"", row.time_text, rows[i - 1].time_text),
                       "a time no earlier than the one before",
                       ""});
      }
    }
    return true;
  }

  static bool swapped(LevelTable const& table) {
    std::vector<LevelRow> rows;
    std::copy_if(table.rows.begin(), table.rows.end(), std::back_inserter(rows),
                 [](LevelRow const& row) { return row.complete; });
    constexpr std::size_t least = 4;
    if (rows.size() < least) {
      return false;
    }
    std::size_t time_back = 0;
    std::size_t level_back = 0;
    for (std::size_t i = 1; i < rows.size(); ++i) {
      time_back += rows[i].time_s < rows[i - 1].time_s ? 1U : 0U;
      level_back += rows[i].level_m <= rows[i - 1].level_m ? 1U : 0U;
    }
    if (level_back > 0) {
      return false;
    }
    constexpr std::size_t slips = 2;  // of a pen, in a column that is time
    if (time_back > slips) {
      return true;
    }
    // Drawdown bends down over the logarithm of time; even at its first rise it gains no more than about the third
    // power of time over the later half of a test.
    auto const& last = rows.back();
    auto const& mid = rows[rows.size() / 2];
    bool const sound = mid.time_s > 0 && last.time_s > mid.time_s && mid.level_m > 0 && last.level_m > mid.level_m;
    constexpr double most_power = 3;
    return sound && std::log(last.level_m / mid.level_m) > most_power * std::log(last.time_s / mid.time_s) &&
           last.level_m > 3 * mid.level_m;
  }

  void rates_of(LevelTable const& table, std::string const& file, Findings& own) {
    if (!text_.rates.empty()) {
      own.push_back({{file, 0, 0}, "", "a column of rates, and --rate", "one of the two", ""});
      return;
    }
    bool pumped = false;
    bool sound = true;
    for (auto const& row : table.rows) {
      pumped = pumped || row.flow_m3_s.value_or(0) > 0;
      if (row.flow_m3_s.value_or(0) < 0) {
        own.push_back({{file, row.line, row.flow_column}, "", "\"" + row.flow_text + "\"", "a rate of 0 or more", ""});
        sound = false;
      }
    }
    if (!pumped && !table.rows.empty()) {
      auto const& row = table.rows.front();
      own.push_back({{file, row.line, row.flow_column}, "", "rates of zero only", "what was pumped, above zero", ""});
      sound = false;
    }
    if (!sound) {
      return;
    }
    double before_s = 0;
    double last_m3_s = -1;
    for (auto const& row : table.rows) {
      double const flow_m3_s = row.flow_m3_s.value_or(0);
      if (row.time_s > 0 && flow_m3_s != last_m3_s) {
        bool const start = test_.rates.empty();
        test_.rates.push_back({start ? 0 : before_s, flow_m3_s});
        test_.rates_from_their_rows.push_back({start ? 0 : row.time_s, flow_m3_s});
        last_m3_s = flow_m3_s;
      }
      before_s = std::max(row.time_s, 0.0);
    }
  }

  void levels(LevelTable const& table, std::string const& file, LevelRecord& record, Findings& own) {
    record.recovered = table.level == ColumnKind::recovered;
    auto const stopped_s = stop_s(test_.rates);
    if ((record.recovered || table.since_stop) && !stopped_s) {
      own.push_back({{file, 0, 0},
                     "",
                     record.recovered ? "recovered drawdown, but no end of pumping" : "times since pumping stopped",
                     "when pumping stopped, as in: --stop \"240 min\"",
                     ""});
      return;
    }
    double const offset_s = table.since_stop ? stopped_s.value_or(0) : 0;
    std::optional<double> rest_m = static_level_m_;
    if (table.level == ColumnKind::depth && !rest_m) {
      for (auto const& row : table.rows) {
        rest_m = row.complete && row.time_s + offset_s <= 0 ? std::optional(row.level_m) : rest_m;
      }
      if (!rest_m) {
        own.push_back({{file, 0, 0},
                       "",
                       "depths to water, but none from before pumping",
                       "the depth at rest, as in: --static-level \"40 ft\"; or a reading at time 0",
                       ""});
        return;
      }
    }
    double most_m = 0;
    for (auto const& row : table.rows) {
      most_m = std::max(most_m, row.level_m);
    }
    // A little above rest is how a reading errs, more is another thing.
    double const reading_error_m = std::max(0.02, 0.02 * most_m);
    for (auto const& row : table.rows) {
      Place const place{file, row.line, row.level_column};
      if (!row.complete) {
        continue;
      }
      if (table.level == ColumnKind::depth && row.level_m < 0) {
        own.push_back({place, "", fmt::format("\"{}\": the water stands above ground", row.level_text),
                       "a depth below the top of the casing, 0 or more", ""});
        continue;
      }
      double const drawdown_m = table.level == ColumnKind::depth ? row.level_m - *rest_m : row.level_m;
      double const time_s = row.time_s + offset_s;
      if (std::abs(drawdown_m) > most_level_m) {
        own.push_back({place, "", "\"" + row.level_text + "\"", "a level within 1000 m", ""});
      } else if (drawdown_m < -reading_error_m && time_s > 0) {
        own.push_back({place, "", fmt::format("\"{}\": the water stands above its level at rest", row.level_text),
                       "a drawdown of 0 or more", ""});
      } else if (time_s > 0 && (!record.recovered || time_s > *stopped_s)) {
        record.readings.push_back({time_s, drawdown_m});
      }
    }
    constexpr std::size_t least = 3;
    if (own.empty() && record.readings.size() < least) {
      own.push_back({{file, 0, 0},
                     "",
                     fmt::format("{} readings after pumping began", record.readings.size()),
                     "three or more",
                     ""});
    }
  }

  PumpingTestText const& text_;
  PumpingTest test_;
  ColumnUnits units_;
  std::optional<double> static_level_m_;
  Findings findings_;
};

}  // namespace

Result<PumpingTest> read_pumping_test(PumpingTestText const& text) {
  return TestReader(text).read();
}

}  // namespace wellproof
