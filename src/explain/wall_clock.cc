#include "explain/wall_clock.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "contract/require.h"

namespace wellproof {
namespace {

constexpr int days_per_era = 146097;  // 400 years
constexpr int days_to_1970 = 719468;  // from 1 March of year 0

bool is_leap(int year) {
  return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

// Counted from 1 March, so that the day that some years have more comes last.
int days_from_1970(Date date) {
  int const year = date.month <= 2 ? date.year - 1 : date.year;
  int const era = (year >= 0 ? year : year - 399) / 400;
  int const year_of_era = year - era * 400;
  int const month = (date.month + 9) % 12;
  int const day_of_year = (153 * month + 2) / 5 + date.day - 1;
  int const day_of_era = year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + day_of_year;
  return era * days_per_era + day_of_era - days_to_1970;
}

double whole_days(WallClock clock) {
  return std::floor(clock.since_1970_s / day_long_s);
}

}  // namespace

double WallClock::time_of_day_s() const {
  return since_1970_s - day_long_s * whole_days(*this);
}

int WallClock::weekday() const {
  constexpr int thursday = 3;  // 1 January 1970
  int const day = static_cast<int>(std::fmod(whole_days(*this) + thursday, 7.0));
  return day < 0 ? day + 7 : day;
}

WallClock WallClock::midnight() const {
  return {day_long_s * whole_days(*this)};
}

bool exists(Date date) {
  constexpr int lengths[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  if (date.month < 1 || date.month > 12 || date.day < 1 || date.year < 1900 || date.year > 2999) {
    return false;
  }
  int const length = lengths[date.month - 1] + (date.month == 2 && is_leap(date.year) ? 1 : 0);
  return date.day <= length;
}

WallClock wall_clock(Date date, double time_of_day_s) {
  require(exists(date), "the calendar has the day");
  return {day_long_s * days_from_1970(date) + time_of_day_s};
}

Date date_of(WallClock clock) {
  int const days = static_cast<int>(whole_days(clock)) + days_to_1970;
  int const era = (days >= 0 ? days : days - days_per_era + 1) / days_per_era;
  int const day_of_era = days - era * days_per_era;
  int const year_of_era = (day_of_era - day_of_era / 1460 + day_of_era / 36524 - day_of_era / 146096) / 365;
  int const day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
  int const month = (5 * day_of_year + 2) / 153;
  Date date;
  date.day = day_of_year - (153 * month + 2) / 5 + 1;
  date.month = month < 10 ? month + 3 : month - 9;
  date.year = era * 400 + year_of_era + (date.month <= 2 ? 1 : 0);
  return date;
}

std::string hour_text(double time_of_day_s) {
  int const minutes = static_cast<int>(std::floor(time_of_day_s / 60 + 1e-6)) % (24 * 60);
  return fmt::format("{:02}:{:02}", minutes / 60, minutes % 60);
}

std::string text(WallClock clock) {
  Date const date = date_of(clock);
  return fmt::format("{:04}-{:02}-{:02} {}", date.year, date.month, date.day, hour_text(clock.time_of_day_s()));
}

std::string span_text(double span_s) {
  if (span_s < 59.5) {
    return fmt::format("{:.0f} s", span_s);
  }
  auto const minutes = static_cast<long long>(std::llround(span_s / 60));
  constexpr long long minutes_a_day = 1440;
  long long const days = minutes / minutes_a_day;
  long long const hours = minutes / 60 % 24;
  std::string out;
  auto const part = [&](long long count, char const* unit) {
    if (count > 0) {
      out += fmt::format("{}{} {}", out.empty() ? "" : " ", count, unit);
    }
  };
  part(days, "d");
  part(hours, "h");
  part(days > 9 ? 0 : minutes % 60, "min");
  return out;
}

}  // namespace wellproof
