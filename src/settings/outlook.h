#pragma once
// What the owner may draw from the well: for good, over the longest run, on the site's own day, and what a storage tank
// would have to hold where the well does not keep up. From the bore and formation alone; the pump only says where its
// intake hangs.
#include <cstddef>
#include <vector>

#include "plant/plant.h"
#include "settings/quantiles.h"

namespace wellproof {

/// A draw of water from the well over a part of the day.
struct DayDraw {
  double from_s = 0;  // since midnight
  double to_s = 0;
  double flow_m3_s = 0;
};

/// The site's own day: a third of the house's water in a morning hour and a third in an evening one, half of each at
/// the peak draw at once and half over the hour, the rest from seven to ten at night; zones one after another from four
/// in the morning (common practice, no source). Parts do not overlap.
/// Checked: tests/unit/settings/outlook_test.cc
std::vector<DayDraw> own_day(DrawnSite const& site);

struct WellOutlook {
  /// Even draw that a hundred days without recharge leave the pump its water (common practice, no source) [m³/s].
  Quantiles safe_yield_m3_s;
  Quantiles day_use_m3;  // the site's own day

  double long_run_flow_m3_s = 0;      // of the middle draw: the largest zone, or half the peak
  double long_run_wanted_s = 0;       // the longest legitimate run
  Quantiles long_run_s;               // until the pump would lose its water, three times the wanted at most
  std::size_t long_run_too_long = 0;  // draws in which it does before the run is over

  struct Level {
    double time_s = 0;  // since midnight
    Quantiles depth_m;
  };
  double intake_depth_m = 0;
  std::vector<Level> day;        // the third day in a row, from rest
  Quantiles deepest_m;           // on that day
  std::size_t day_runs_dry = 0;  // draws in which the pump loses its water on it

  Quantiles storage_m3;       // a tank fed evenly at the safe yield that evens out the day; over the draws that need it
  std::size_t overdrawn = 0;  // draws in which the day uses more than the well gives for good: no tank helps
  std::size_t draws = 0;
};

/// @param plants draws of the site, the first the middle one
/// Checked: tests/unit/settings/outlook_test.cc
WellOutlook outlook(std::vector<Plant> const& plants);

}  // namespace wellproof
