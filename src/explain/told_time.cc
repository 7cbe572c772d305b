#include "explain/told_time.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <utility>
#include <vector>

#include "explain/told_words.h"
#include "quantity/customary.h"

namespace wellproof {
namespace {

/// A time on the clock as it was said.
struct Clock {
  double time_s = 0;        // since midnight
  bool half_known = false;  // said with am or pm, or beyond 12
};

/// Walks a line's tokens and gathers what speaks of time.
class TimeFinder {
 public:
  TimeFinder(std::string_view line, std::optional<WallClock> now)
      : line_(line), now_(now), tokens_(told_tokens(line)) {}

  tl::expected<ToldTime, TextError> find() {
    while (at_ < tokens_.size()) {
      if (!(date() || colons() || on_the_clock() || span() || word_of_time())) {
        others_ += (others_.empty() ? "" : " ") + tokens_[at_].text;
        ++at_;
      }
    }
    return put_together();
  }

  std::optional<Date> date_found() const { return date_; }

 private:
  using Kind = ToldToken::Kind;

  ToldToken const* look(std::size_t ahead) const {
    return at_ + ahead < tokens_.size() ? &tokens_[at_ + ahead] : nullptr;
  }
  bool is(std::size_t ahead, Kind kind) const { return look(ahead) != nullptr && look(ahead)->kind == kind; }
  bool is(std::size_t ahead, std::string_view text) const {
    return look(ahead) != nullptr && look(ahead)->text == text;
  }
  double number(std::size_t ahead) const { return look(ahead)->number; }
  int whole(std::size_t ahead) const { return static_cast<int>(std::min(number(ahead), 1e6)); }

  TextError wrong(std::string expected) const { return {0, "\"" + std::string(line_) + "\"", std::move(expected), ""}; }
  void fail(std::string expected) {
    if (!error_) {
      error_ = wrong(std::move(expected));
    }
  }

  // 2026-08-12, 8/12, 8/12/2026, Aug 12, 12 August 2026.
  bool date() {
    std::size_t used = 0;
    Date found;
    bool year_said = false;
    if (is(0, Kind::number) && look(0)->digits == 4 && is(1, "-") && is(2, Kind::number) && is(3, "-") &&
        is(4, Kind::number)) {
      found = {whole(0), whole(2), whole(4)};
      year_said = true;
      used = 5;
    } else if (is(0, Kind::number) && is(1, "/") && is(2, Kind::number) && !is(1, ":")) {
      bool const day_first = number(0) > 12;
      found = day_first ? Date{0, whole(2), whole(0)} : Date{0, whole(0), whole(2)};
      used = 3;
      if (is(3, "/") && is(4, Kind::number)) {
        found.year = whole(4) < 100 ? 2000 + whole(4) : whole(4);
        year_said = true;
        used = 5;
      }
    } else if (is(0, Kind::word) && month_named(look(0)->text) && is(1, Kind::number)) {
      found = {0, *month_named(look(0)->text), whole(1)};
      used = 2;
    } else if (is(0, Kind::number) && is(1, Kind::word) && month_named(look(1)->text)) {
      found = {0, *month_named(look(1)->text), whole(0)};
      used = 2;
    } else {
      return false;
    }
    if (used == 2 && is(2, Kind::number) && look(2)->digits == 4) {
      found.year = whole(2);
      year_said = true;
      used = 3;
    }
    at_ += used;
    if (is(0, "t") || is(0, ",")) {
      ++at_;
    }
    if (!year_said) {
      if (!now_) {
        fail("a date with its year, or the time now (\"now: 2026-08-14 18:30\")");
        return true;
      }
      found.year = date_of(*now_).year;
      if (exists(found) && wall_clock(found, 0).since_1970_s > now_->since_1970_s) {
        --found.year;
      }
    }
    if (!exists(found)) {
      fail("a day that the calendar has");
    } else {
      date_ = found;
    }
    return true;
  }

  // 51:15, 2:03:15, 7:30 pm.
  bool colons() {
    if (!(is(0, Kind::number) && is(1, ":") && is(2, Kind::number))) {
      return false;
    }
    std::vector<double> parts{number(0), number(2)};
    at_ += 3;
    if (is(0, ":") && is(1, Kind::number)) {
      parts.push_back(number(1));
      at_ += 2;
    }
    if (parts[1] >= 60 && parts.size() == 2) {
      fail("minutes below 60");
    }
    colons_ = parts;
    half_of_day();
    return true;
  }

  void half_of_day() {
    bool const dotted = is(1, ".") || is(1, "m");
    if (is(0, "am") || is(0, "pm") || ((is(0, "a") || is(0, "p")) && dotted)) {
      afternoon_ = look(0)->text.front() == 'p';
      while (is(0, "am") || is(0, "pm") || is(0, "a") || is(0, "p") || is(0, "m") || is(0, ".")) {
        ++at_;
      }
    }
  }

  // 7 pm, 7pm, at 7.
  bool on_the_clock() {
    if (is(0, Kind::number) && (is(1, "am") || is(1, "pm"))) {
      hour_ = number(0);
      ++at_;
      half_of_day();
      return true;
    }
    if (is(0, "at") && is(1, Kind::number)) {
      said_at_ = true;
      ++at_;
      if (is(1, ":") || is(1, "am") || is(1, "pm") || is(1, "/") || is(1, "-")) {
        return true;
      }
      hour_ = number(0);
      ++at_;
      return true;
    }
    if (is(0, "noon") || is(0, "midnight")) {
      hour_ = is(0, "noon") ? 12 : 0;
      afternoon_ = is(0, "noon") ? std::optional<bool>(true) : std::nullopt;
      midnight_ = is(0, "midnight");
      ++at_;
      return true;
    }
    return false;
  }

  // 2d 3h 15m, an hour, half an hour.
  bool span() {
    double count = 1;
    std::size_t used = 0;
    if (is(0, "half") && (is(1, "a") || is(1, "an"))) {
      count = 0.5;
      used = 2;
    } else if (is(0, "a") || is(0, "an") || is(0, "one")) {
      used = 1;
    } else if (is(0, Kind::number)) {
      count = number(0);
      used = 1;
    } else {
      return false;
    }
    if (look(used) == nullptr || !is(used, Kind::word)) {
      return false;
    }
    auto const unit_s = span_unit_s(look(used)->text);
    if (!unit_s) {
      return false;
    }
    span_s_ = span_s_.value_or(0) + count * *unit_s;
    at_ += used + 1;
    if (is(0, ",") || is(0, "and")) {
      at_ += is(1, Kind::number) && look(2) != nullptr && span_unit_s(look(2)->text) ? 1U : 0U;
    }
    return true;
  }

  bool word_of_time() {
    static constexpr std::array<std::string_view, 13> passed{"ago", "since", "back", "earlier", "about", "around", "at",
                                                             "on",  "@",     "~",    "approx",  "ca",    "hours"};
    std::string const& text = look(0)->text;
    if (text == "today" || text == "tonight" || text == "yesterday") {
      days_back_ = text == "yesterday" ? days_back_.value_or(0) + 1 : 0;
      part_of_day_ = text == "tonight" ? 'n' : part_of_day_;
    } else if (text == "last" && is(1, "night")) {
      last_night_ = true;
      ++at_;
    } else if (text == "this" && (is(1, "morning") || is(1, "afternoon") || is(1, "evening"))) {
      days_back_ = 0;
    } else if (text == "the" && is(1, "day") && is(2, "before")) {
      days_back_ = 1;
      at_ += 2;
    } else if (text == "day" && is(1, "before")) {
      days_back_ = 1;
      ++at_;
    } else if (text == "morning" || text == "afternoon" || text == "evening" || text == "night") {
      part_of_day_ = text.front();
    } else if (text == "now" || (text == "just" && is(1, "now"))) {
      span_s_ = 0;
      at_ += text == "just" ? 1U : 0U;
    } else if (auto const day = weekday_named(text)) {
      weekday_ = *day;
    } else if (std::find(passed.begin(), passed.end(), text) == passed.end()) {
      return false;
    }
    said_at_ = said_at_ || text == "at" || text == "@";
    ++at_;
    return true;
  }

  bool has_day() const { return date_ || days_back_ || last_night_ || weekday_; }
  bool is_clock() const { return has_day() || afternoon_ || said_at_ || part_of_day_ != 0; }

  /// The time of day, where one was said.
  std::optional<Clock> clock() {
    double hours = 0;
    double minutes = 0;
    double seconds = 0;
    if (colons_ && is_clock()) {
      hours = (*colons_)[0];
      minutes = (*colons_)[1];
      seconds = colons_->size() > 2 ? (*colons_)[2] : 0;
    } else if (hour_) {
      hours = *hour_;
    } else {
      return std::nullopt;
    }
    bool const by_twelve = afternoon_.has_value();
    if ((by_twelve && (hours < 1 || hours > 12)) || hours >= 24 || minutes >= 60 || seconds >= 60) {
      fail(by_twelve ? "an hour from 1 to 12 before am or pm" : "a time on the clock, 0:00 to 23:59");
      return std::nullopt;
    }
    bool const late = part_of_day_ == 'a' || part_of_day_ == 'e' || (part_of_day_ == 'n' && hours >= 5) ||
                      (last_night_ && hours >= 5);
    if (by_twelve) {
      hours = std::fmod(hours, 12.0) + (*afternoon_ ? 12 : 0);
    } else if (late && hours < 12) {
      hours += 12;
    }
    return Clock{hours * hour_s + minutes * minute_s + seconds, by_twelve || hours > 12};
  }

  tl::expected<ToldTime, TextError> put_together() {
    auto const clock_said = clock();
    ToldTime told;
    told.other_words = others_;
    if (error_) {
      return tl::unexpected(*error_);
    }
    bool const colon_span = colons_ && !is_clock();
    if (span_s_ || colon_span) {
      if (has_day() || clock_said) {
        return tl::unexpected(wrong("one time: so long ago, or on the clock"));
      }
      told.age_s = span_s_.value_or(0) + (colon_span ? colons_span_s() : 0);
      if (now_) {
        told.time_of_day_s = WallClock{now_->since_1970_s - told.age_s}.time_of_day_s();
      }
      return told;
    }
    if (!has_day() && !clock_said) {
      return tl::unexpected(wrong("when: \"2d 3h 15m\", \"51:15\", \"yesterday 7pm\", \"2026-08-12 06:40\""));
    }
    if (!now_) {
      return tl::unexpected(wrong("the time now, as \"now: 2026-08-14 18:30\", where a clock is spoken of"));
    }
    return against_now(told, clock_said);
  }

  double colons_span_s() const {
    auto const& parts = *colons_;
    return parts.size() == 2 ? parts[0] * hour_s + parts[1] * minute_s
                             : parts[0] * day_long_s + parts[1] * hour_s + parts[2] * minute_s;
  }

  // Without a time the middle of what was said stands for it, and the time of day stays open.
  ToldTime against_now(ToldTime told, std::optional<Clock> const& clock_said) const {
    double const middle_s = part_of_day_ == 'm'   ? 8 * hour_s
                            : part_of_day_ == 'a' ? 15 * hour_s
                            : part_of_day_ == 'e' ? 20 * hour_s
                                                  : 12 * hour_s;
    double const time_s = clock_said ? clock_said->time_s : middle_s;
    WallClock const today = now_->midnight();
    WallClock day = today;
    if (date_) {
      day = wall_clock(*date_, 0);
    } else if (last_night_) {
      bool const before_dawn = clock_said && time_s < 12 * hour_s;
      day = {today.since_1970_s - (before_dawn ? 0 : day_long_s)};
    } else if (days_back_) {
      day = {today.since_1970_s - *days_back_ * day_long_s};
    } else if (weekday_) {
      int const back = (now_->weekday() - *weekday_ + 7) % 7;
      day = {today.since_1970_s - back * day_long_s};
      if (day.since_1970_s + time_s > now_->since_1970_s) {
        day.since_1970_s -= 7 * day_long_s;
      }
    } else if (today.since_1970_s + time_s > now_->since_1970_s) {
      day.since_1970_s -= day_long_s;
    }
    if (midnight_ && !date_ && days_back_ && *days_back_ == 0) {
      told.age_s = now_->since_1970_s - today.since_1970_s;
    } else {
      told.age_s = now_->since_1970_s - (day.since_1970_s + (last_night_ && !clock_said ? 23 * hour_s : time_s));
    }
    if (clock_said) {
      told.time_of_day_s = time_s;
    } else if (told.age_s < 0) {
      told.age_s = 0;  // "today", without a time
    }
    return told;
  }

  std::string_view line_;
  std::optional<WallClock> now_;
  std::vector<ToldToken> tokens_;
  std::size_t at_ = 0;
  std::string others_;
  std::optional<TextError> error_;
  std::optional<Date> date_;
  std::optional<std::vector<double>> colons_;
  std::optional<double> hour_;
  std::optional<bool> afternoon_;
  std::optional<double> span_s_;
  std::optional<int> days_back_;
  std::optional<int> weekday_;
  bool last_night_ = false;
  bool midnight_ = false;
  bool said_at_ = false;
  char part_of_day_ = 0;
};

}  // namespace

tl::expected<ToldTime, TextError> read_told_time(std::string_view line, std::optional<WallClock> now) {
  return TimeFinder(line, now).find();
}

tl::expected<WallClock, TextError> read_wall_clock(std::string_view text) {
  // Said against a time far ahead, so that nothing lies beyond it.
  WallClock const far = wall_clock({2999, 12, 31}, 0);
  TimeFinder finder(text, far);
  auto const told = finder.find();
  if (!told) {
    return tl::unexpected(told.error());
  }
  if (!finder.date_found() || !told->time_of_day_s || date_of({far.since_1970_s - told->age_s}).year > 2900) {
    return tl::unexpected(
        TextError{0, "\"" + std::string(text) + "\"", "a date with its year and a time, as \"2026-08-14 18:30\"", ""});
  }
  return WallClock{far.since_1970_s - told->age_s};
}

}  // namespace wellproof
