#pragma once
// When something happened, as people say and drives show it: "2d 3h 15m" ago, "51:15" hours and minutes since,
// "yesterday 7pm", "Mon 19:00", "2026-08-12 06:40". Other words may stand around the time; they are handed back.
#include <optional>
#include <string>
#include <string_view>

#include <tl/expected.hpp>

#include "explain/wall_clock.h"
#include "quantity/quantity.h"

namespace wellproof {

/// A moment before now.
/// age_s       how long before now; may be negative: then it is said to be still to come
/// clock_known the time of day is known, not only about which day it was
struct ToldTime {
  double age_s = 0;
  std::optional<double> time_of_day_s;
  std::string other_words;  // what stood around it, in plain words
};

/// Finds the time in a line. Without a stated now only spans ("3 h ago") can be read.
///   H:MM alone is a span of hours and minutes, D:HH:MM one of days too, as drives show it; with a day, am or pm, or
///   "at" before it, it is a time on the clock. A day without a time leaves the time of day open. What has a day but
///   no date is the latest such day before now.
tl::expected<ToldTime, TextError> read_told_time(std::string_view line, std::optional<WallClock> now);

/// A date with a time of day, for the time now: "2026-08-14 18:30", "Aug 14 2026 6:30 pm".
tl::expected<WallClock, TextError> read_wall_clock(std::string_view text);

}  // namespace wellproof
