#include "explain/pattern.h"

#include <algorithm>
#include <cmath>

#include "quantity/customary.h"

namespace wellproof {
namespace {

constexpr double gap_ends_s[gap_bins] = {0,           minute_s,    3 * minute_s, 10 * minute_s, 30 * minute_s,
                                         hour_s,      2 * hour_s,  4 * hour_s,   8 * hour_s,    16 * hour_s,
                                         32 * hour_s, 96 * hour_s, 1e9 * hour_s};

// After the rest it takes a while until a pump that is dry again is stopped: there is some water first.
constexpr double after_rest_s = 3 * minute_s;
constexpr double after_rest_share = 0.1;

}  // namespace

std::size_t hour_bin(double time_of_day_s) {
  auto const bin = static_cast<std::size_t>(std::max(0.0, time_of_day_s) / (3 * hour_s));
  return std::min(bin, hour_bins - 1);
}

RetryGap retry_gap(Settings const& settings) {
  double const delay_s = std::max(settings.dry_run_delay_s, settings.closed_delay_s);
  return {0.97 * settings.dry_run_rest_s - minute_s,
          (1 + after_rest_share) * settings.dry_run_rest_s + settings.fill_time_s + delay_s + after_rest_s};
}

std::size_t gap_bin(double gap_s, RetryGap const& retry) {
  if (gap_s >= retry.from_s && gap_s <= retry.to_s) {
    return 0;
  }
  std::size_t bin = 1;
  while (bin + 1 < gap_bins && gap_s > gap_ends_s[bin]) {
    ++bin;
  }
  return bin;
}

double gap_bin_end_s(std::size_t bin) {
  return gap_ends_s[bin];
}

Pattern pattern_of(History const& history, RetryGap const& retry) {
  Pattern pattern;
  for (std::size_t i = 0; i < history.stops.size(); ++i) {
    auto const& stop = history.stops[i];
    ++pattern.stops;
    ++pattern.kinds[static_cast<std::size_t>(stop.kind)];
    if (stop.time_of_day_s) {
      ++pattern.hours[hour_bin(*stop.time_of_day_s)];
    }
    if (i > 0) {
      ++pattern.gaps[gap_bin(history.stops[i - 1].age_s - stop.age_s, retry)];
    }
  }
  return pattern;
}

Pattern pattern_of(std::vector<DayStop> const& stops, double day_share, RetryGap const& retry) {
  constexpr int most_idle_days = 10;
  Pattern pattern;
  for (std::size_t i = 0; i < stops.size(); ++i) {
    ++pattern.stops;
    ++pattern.kinds[static_cast<std::size_t>(stops[i].kind)];
    ++pattern.hours[hour_bin(stops[i].time_s)];
    if (i > 0) {
      ++pattern.gaps[gap_bin(stops[i].time_s - stops[i - 1].time_s, retry)];
    }
  }
  if (!stops.empty()) {
    double const over_midnight_s = day_long_s - stops.back().time_s + stops.front().time_s;
    double left = 1;
    for (int idle = 0; idle < most_idle_days; ++idle) {
      double const share = idle + 1 < most_idle_days ? left * day_share : left;
      pattern.gaps[gap_bin(over_midnight_s + idle * day_long_s, retry)] += share;
      left -= share;
    }
  }
  return pattern;
}

}  // namespace wellproof
