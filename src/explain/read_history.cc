// From a person's text to a history.
#include <algorithm>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "contract/nearest.h"
#include "explain/history.h"
#include "explain/history_table.h"
#include "explain/told_time.h"
#include "quantity/quantity.h"

namespace wellproof {
namespace {

constexpr std::size_t most_stops = 1000;
constexpr std::size_t longest_line = 300;
constexpr double still_to_come_s = -60;  // a clock that is off by less is no contradiction

std::string_view trimmed(std::string_view text) {
  auto const first = text.find_first_not_of(" \t\r");
  if (first == std::string_view::npos) {
    return {};
  }
  return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

class HistoryReader {
 public:
  HistoryReader(std::string_view text, std::string const& file, std::optional<WallClock> now,
                std::vector<StopLabel> const& own)
      : text_(text), own_(own) {
    history_.file = file;
    history_.now = now;
  }

  Result<History> read() {
    // The time now may stand anywhere; the others are said against it.
    each_line([&](std::string_view line, Place const& place) {
      if (auto const value = value_of(line, "now")) {
        now(*value, place);
      }
    });
    each_line([&](std::string_view line, Place const& place) { take(line, place); });
    if (!findings_.empty()) {
      return tl::unexpected(findings_);
    }
    settle();
    return history_;
  }

 private:
  template <class F>
  void each_line(F&& f) {
    int number = 0;
    std::size_t from = 0;
    while (from < text_.size()) {
      auto const end = std::min(text_.find('\n', from), text_.size());
      ++number;
      auto const whole = text_.substr(from, end - from);
      auto line = whole.substr(0, whole.find('#') == 0 ? 0 : whole.find(" #"));
      line = trimmed(line);
      if (!line.empty()) {
        f(line, Place{history_.file, number, static_cast<int>(whole.find_first_not_of(" \t\r")) + 1});
      }
      from = end + 1;
    }
  }

  void find_fault(Place place, std::string key, std::string_view found, std::string expected,
                  std::string nearest = "") {
    findings_.push_back(
        {std::move(place), std::move(key), fmt::format("\"{}\"", found), std::move(expected), std::move(nearest)});
  }

  /// What stands behind "key:" or "key =".
  static std::optional<std::string_view> value_of(std::string_view line, std::string_view key) {
    std::string const plain = plain_words(line.substr(0, std::min(line.find_first_of(":="), line.size())));
    auto const sign = line.find_first_of(":=");
    if (sign == std::string_view::npos || plain != key) {
      return std::nullopt;
    }
    return trimmed(line.substr(sign + 1));
  }

  void now(std::string_view value, Place const& place) {
    if (auto const clock = read_wall_clock(value)) {
      history_.now = *clock;
    } else {
      find_fault(place, "now", value, clock.error().expected);
    }
  }

  void take(std::string_view line, Place const& place) {
    if (line.size() > longest_line) {
      find_fault(place, "", line.substr(0, 40), fmt::format("lines of at most {} characters", longest_line));
      return;
    }
    if (value_of(line, "now")) {
      return;
    }
    for (auto const* const key : {"symptom", "symptoms"}) {
      if (auto const value = value_of(line, key)) {
        return symptoms(*value, place);
      }
    }
    for (auto const* const key : {"changed", "change"}) {
      if (auto const value = value_of(line, key)) {
        history_.changed.emplace_back(*value);
        return;
      }
    }
    for (auto const* const key : {"setting", "set"}) {
      if (auto const value = value_of(line, key)) {
        return setting(*value, place);
      }
    }
    for (auto const* const key : {"display", "reading", "shows"}) {
      if (auto const value = value_of(line, key)) {
        return display(*value, place);
      }
    }
    for (auto const* const key : {"keeps", "drive keeps"}) {
      if (auto const value = value_of(line, key)) {
        return keeps(*value, place);
      }
    }
    if (!table_ && !stops_seen_) {
      table_ = history_head(line);
      if (table_) {
        return;
      }
    }
    stop(line, place);
  }

  void symptoms(std::string_view value, Place const& place) {
    while (!value.empty()) {
      auto const end = std::min(value.find_first_of(",;"), value.size());
      if (auto const told = read_symptom(trimmed(value.substr(0, end)), place)) {
        history_.symptoms.push_back(*told);
      } else {
        findings_.insert(findings_.end(), told.error().begin(), told.error().end());
      }
      value = end < value.size() ? trimmed(value.substr(end + 1)) : std::string_view{};
    }
  }

  void setting(std::string_view value, Place const& place) {
    auto const sign = value.find('=');
    if (sign == std::string_view::npos) {
      find_fault(place, "setting", value, "KEY = VALUE, as \"dry_run.rest = 10 min\"");
      return;
    }
    auto quoted = trimmed(value.substr(sign + 1));
    if (quoted.size() >= 2 && quoted.front() == '"' && quoted.back() == '"') {
      quoted = quoted.substr(1, quoted.size() - 2);
    }
    history_.settings.push_back(std::string(trimmed(value.substr(0, sign))) + "=" + std::string(quoted));
  }

  void keeps(std::string_view value, Place const& place) {
    auto const number = read_quantity(value, Dimension::none);
    if (number && *number >= 1 && *number <= static_cast<double>(most_stops)) {
      history_.keeps = static_cast<std::size_t>(*number);
    } else {
      find_fault(place, "keeps", value, fmt::format("how many stops the drive keeps, 1 to {}", most_stops));
    }
  }

  void display(std::string_view value, Place const& place) {
    DisplayReading reading;
    reading.place = place;
    while (!value.empty()) {
      auto const end = std::min(value.find_first_of(",;"), value.size());
      auto const part = trimmed(value.substr(0, end));
      if (!part.empty() && !shown(part, reading)) {
        find_fault(place, "display", part, "a pressure, Hz, A, V or °C, or \"tap open\" or \"taps shut\"");
      }
      value = end < value.size() ? trimmed(value.substr(end + 1)) : std::string_view{};
    }
    history_.display.push_back(reading);
  }

  static bool shown(std::string_view part, DisplayReading& reading) {
    for (auto const& [dimension, into] : {std::pair{Dimension::pressure, &DisplayReading::pressure_pa},
                                          std::pair{Dimension::frequency, &DisplayReading::speed_hz},
                                          std::pair{Dimension::current, &DisplayReading::current_a},
                                          std::pair{Dimension::voltage, &DisplayReading::supply_v},
                                          std::pair{Dimension::temperature, &DisplayReading::sink_c}}) {
      if (auto const read = read_quantity(part, dimension)) {
        reading.*into = *read;
        return true;
      }
    }
    std::string const plain = " " + plain_words(part) + " ";
    for (auto const* const words : {" open ", " running ", " drawing "}) {
      if (plain.find(words) != std::string::npos) {
        reading.drawing = true;
        return true;
      }
    }
    for (auto const* const words : {" shut ", " closed ", " off ", " asleep "}) {
      if (plain.find(words) != std::string::npos) {
        reading.drawing = false;
        return true;
      }
    }
    return false;
  }

  void stop(std::string_view line, Place const& place) {
    stops_seen_ = true;
    std::string kind_text;
    std::string time_text(line);
    if (table_) {
      std::tie(kind_text, time_text) = history_row(*table_, line);
    } else {
      time_text = without_number_in_list(line);
    }
    auto kind = take_label(table_ ? kind_text : time_text, own_);
    auto const told = read_told_time(time_text, history_.now);
    auto const& named = table_ ? kind_text : told ? told->other_words : time_text;
    kind = kind ? kind : stop_kind(named);
    if (!kind) {
      find_fault(place, "stop", table_ ? kind_text : line,
                 "the kind of stop: dry run, closed discharge, long run, too much current, low volts, drive too hot, "
                 "sensor lost, outside contact, high pressure",
                 nearest_stop_word(named, own_));
    }
    if (!told) {
      find_fault(place, "time", table_ ? std::string_view(time_text) : line, told.error().expected);
    }
    if (!kind || !told) {
      return;
    }
    if (told->age_s < still_to_come_s) {
      find_fault(place, "time", line, fmt::format("a time before now, which is {}", text(*history_.now)));
      return;
    }
    if (history_.stops.size() >= most_stops) {
      if (history_.stops.size() == most_stops && findings_.empty()) {
        find_fault(place, "", line, fmt::format("at most {} stops", most_stops));
      }
      return;
    }
    history_.stops.push_back({*kind, std::max(0.0, told->age_s), told->time_of_day_s, place, std::string(line)});
  }

  /// "3. dry run …", "#3 …", "3) …": the drive's own numbering.
  static std::string without_number_in_list(std::string_view line) {
    std::size_t i = line.front() == '#' || line.front() == '-' || line.front() == '*' ? 1 : 0;
    std::size_t const digits = i;
    while (i < line.size() && line[i] >= '0' && line[i] <= '9') {
      ++i;
    }
    bool const numbered = i > digits && i - digits <= 3 && i + 1 < line.size() &&
                          (line[i] == ')' || (line[i] == '.' && line[i + 1] == ' ') || line.front() == '#');
    return std::string(line.substr(numbered ? i + 1 : digits));
  }

  void settle() {
    auto& stops = history_.stops;
    auto const older = [](Stop const& a, Stop const& b) { return a.age_s > b.age_s; };
    auto const newer = [](Stop const& a, Stop const& b) { return a.age_s < b.age_s; };
    bool const in_order =
        std::is_sorted(stops.begin(), stops.end(), older) || std::is_sorted(stops.begin(), stops.end(), newer);
    std::stable_sort(stops.begin(), stops.end(), older);
    if (!in_order) {
      history_.notes.emplace_back("The stops were not in the order of time; they have been put in order.");
    }
    auto const same = [](Stop const& a, Stop const& b) { return a.age_s == b.age_s && a.kind == b.kind; };
    auto const doubled = std::unique(stops.begin(), stops.end(), same);
    if (doubled != stops.end()) {
      history_.notes.push_back(fmt::format("{} stood there twice and count once.",
                                           std::distance(doubled, stops.end()) == 1 ? "One stop" : "Some stops"));
      stops.erase(doubled, stops.end());
    }
    auto const open = std::count_if(stops.begin(), stops.end(), [](Stop const& stop) { return !stop.time_of_day_s; });
    if (open > 0) {
      history_.notes.push_back(fmt::format("Of {} of {} stops the time of day is not known; {}.", open, stops.size(),
                                           history_.now ? "when in the day they came does not count for these"
                                                        : "say what the time is now: \"now: …\""));
    }
  }

  std::string_view text_;
  std::vector<StopLabel> const& own_;
  History history_;
  Findings findings_;
  std::optional<HistoryHead> table_;
  bool stops_seen_ = false;
};

}  // namespace

Result<History> read_history(std::string_view text, std::string const& file, std::optional<WallClock> now,
                             std::vector<StopLabel> const& own) {
  return HistoryReader(text, file, now, own).read();
}

}  // namespace wellproof
