#pragma once
// The pattern of stops: which kinds, at which hours, how long after each other. The same counts are taken of a history
// and of a simulated day.
#include <array>
#include <cstddef>
#include <vector>

#include "explain/history.h"
#include "regulator/settings.h"

namespace wellproof {

inline constexpr std::size_t hour_bins = 8;  // of three hours
/// The first is about the rest between two tries; the others go by length.
inline constexpr std::size_t gap_bins = 13;

/// Counts, or shares of counts where a day stands for many.
struct Pattern {
  double stops = 0;  // in all
  std::array<double, stop_kinds> kinds{};
  std::array<double, hour_bins> hours{};  // of those whose time of day is known
  std::array<double, gap_bins> gaps{};    // between one and the next
};

std::size_t hour_bin(double time_of_day_s);

/// How long after a stop the next one follows when all that happened between was the rest and a try: the rest itself,
/// the filling of a line that has lost its pressure, the guard's delay.
struct RetryGap {
  double from_s = 0;
  double to_s = 0;
};
RetryGap retry_gap(Settings const& settings);

std::size_t gap_bin(double gap_s, RetryGap const& retry);
/// The longest gap of a bin, and in words: "8 to 16 h".
double gap_bin_end_s(std::size_t bin);

Pattern pattern_of(History const& history, RetryGap const& retry);

/// A stop of a simulated day.
struct DayStop {
  double time_s = 0;  // from midnight
  StopCause kind = StopCause::dry_run;
};

/// @param day_share of days on which it happens: the gap over midnight counts the idle days between
Pattern pattern_of(std::vector<DayStop> const& stops, double day_share, RetryGap const& retry);

}  // namespace wellproof
