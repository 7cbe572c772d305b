#pragma once
// The time on the wall where the drive hangs, without zones: what "yesterday 7pm" is said against. Whoever calls brings
// the time now along; nothing here reads a clock.
#include <string>

namespace wellproof {

inline constexpr double day_long_s = 86400;

/// A date and a time of day, by the Gregorian calendar.
struct WallClock {
  double since_1970_s = 0;  // counted as if every day had 24 h
  bool operator==(WallClock const&) const = default;

  double time_of_day_s() const;
  int weekday() const;  // 0 Monday … 6 Sunday
  /// The midnight that this day began with.
  WallClock midnight() const;
};

struct Date {
  int year = 1970;
  int month = 1;
  int day = 1;
  bool operator==(Date const&) const = default;
};

/// Whether the calendar has that day.
bool exists(Date date);
/// @param date must exist
/// Checked: tests/unit/explain/wall_clock_test.cc
WallClock wall_clock(Date date, double time_of_day_s);
Date date_of(WallClock clock);

/// "2026-08-14 18:30".
std::string text(WallClock clock);
/// A span as a person says it: "2 d 3 h 15 min".
std::string span_text(double span_s);
/// A time of day: "18:30".
std::string hour_text(double time_of_day_s);

}  // namespace wellproof
