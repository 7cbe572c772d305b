// How long the pump rests after a guard has acted: until the well has come back far enough for a run worth the start.
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "settings/study.h"

namespace wellproof {
namespace {

constexpr double starts_a_day = 100;  // retries for a whole day must not start the motor oftener, and a small one …
constexpr double small_starts_a_day = 300;
constexpr double small_motor_w = 0.75 * 745.7;  // … of up to ¾ hp bears more (common practice, no source)
constexpr double longest_rest_s = 4 * 3600.0;
constexpr double overdraw_limit_s = 86400;  // a draw that a day does not overcome does not run the pump dry
constexpr double run_limit_s = 3600;        // beyond it a run counts as that long

// The rests at which the run gained is worked out: closer together than any drive's steps need.
constexpr std::array<double, 17> rests_s{60,   120,  180,  300,  480,  600,  900,   1200, 1800,
                                         2400, 3600, 4800, 6000, 7200, 9000, 10800, 14400};

/// The least time from one retry to the next.
double retry_s(Plant const& plant) {
  return 86400 / (plant.site.motor.power_w <= 1.001 * small_motor_w ? small_starts_a_day : starts_a_day);
}

/// Run time at the served peak after each rest, when the well was overdrawn just before: from rest drawn at the peak
/// until the pump lost its water. Empty if a day at the peak does not do that.
std::vector<double> runs_gained_s(Plant const& plant) {
  auto const& well = plant.well;
  double const peak_m3_s = served_peak_m3_s(plant);
  double const wet_m = deepest_wet_level_m(plant);
  auto bore = bore_at_rest(well);
  double const lasts_s = time_to_level_s(well, bore, peak_m3_s, wet_m, overdraw_limit_s);
  if (lasts_s >= overdraw_limit_s) {
    return {};
  }
  pump_evenly(well, bore, peak_m3_s, lasts_s);
  std::vector<double> runs_s;
  double rested_s = 0;
  for (double const rest_s : rests_s) {
    pump_evenly(well, bore, 0, rest_s - rested_s);
    rested_s = rest_s;
    runs_s.push_back(time_to_level_s(well, bore, peak_m3_s, wet_m, run_limit_s));
  }
  return runs_s;
}

/// The rest at which a run first is long enough; infinite if none of them is.
double rest_for_s(std::vector<double> const& runs_s, double wanted_s) {
  if (runs_s.empty() || runs_s.front() >= wanted_s) {
    return runs_s.empty() ? 0 : rests_s.front();
  }
  for (std::size_t i = 1; i < runs_s.size(); ++i) {
    if (runs_s[i] >= wanted_s) {
      double const part = (wanted_s - runs_s[i - 1]) / (runs_s[i] - runs_s[i - 1]);
      return rests_s[i - 1] + part * (rests_s[i] - rests_s[i - 1]);
    }
  }
  return std::numeric_limits<double>::infinity();
}

}  // namespace

void derive_rest(Study& study) {
  std::vector<std::vector<double>> runs_s;
  std::vector<double> needed_s;
  std::size_t overdrawn = 0;
  for (auto const& plant : study.plants) {
    runs_s.push_back(runs_gained_s(plant));
    needed_s.push_back(rest_for_s(runs_s.back(), plant.site.demand.run_after_rest_s));
    overdrawn += runs_s.back().empty() ? 0U : 1U;
  }
  double const wanted_s = quantiles(needed_s).high;
  bool const comes_back = wanted_s <= longest_rest_s;
  double const shortest_s = extent(study.plants, retry_s).high;
  double const step_s = study.plants.front().site.drive.rest_step_s;
  study.settings.dry_run_rest_s = rounded_up(std::clamp(wanted_s, shortest_s, longest_rest_s), step_s);
  if (study.logic.rest_growth > 1) {
    study.because("dry_run.rest",
                  fmt::format("This is the first rest; each further one before the pump has slept is {:.3g} times as "
                              "long, up to {}.",
                              study.logic.rest_growth, study.time(study.logic.longest_rest_s)));
  }

  if (overdrawn == 0) {
    study.because(
        "dry_run.rest",
        fmt::format("A day at the peak draw of {} does not draw the level down to the pump in any draw; what "
                    "stops it then lies elsewhere. {} keeps a day of retries within the starts that the motor "
                    "bears.",
                    study.flow(served_peak_m3_s(study.plants.front())), study.time(shortest_s)));
    return;
  }
  auto const run = extent(study.plants, [](Plant const& plant) { return plant.site.demand.run_after_rest_s; });
  auto const time_text = [&](double time_s) {
    return std::isfinite(time_s) ? study.time(time_s) : std::string("no rest looked at");
  };
  study.because(
      "dry_run.rest",
      fmt::format(
          "Overdrawn at the peak until the pump loses its water (possible in {} of {} draws), the well gives the "
          "peak for {} again after a rest of {} in the middle draw and {} in 95 % of draws. At least {}, so "
          "that a day of retries starts the motor no oftener than it bears; to whole steps of {}.",
          overdrawn, study.plants.size(), study.time(run.middle), time_text(needed_s.front()), time_text(wanted_s),
          study.time(shortest_s), study.time(step_s)));
  for (std::size_t i = 0; i < rests_s.size(); ++i) {
    std::vector<double> at_s;
    at_s.reserve(runs_s.size());
    for (auto const& runs : runs_s) {
      at_s.push_back(runs.empty() ? run_limit_s : runs[i]);
    }
    study.rest_curve.push_back({rests_s[i], quantiles(std::move(at_s))});
  }
  study.rest_run_wanted_s = run.high;
  if (!comes_back) {
    study.conflict(
        "dry_run.rest",
        fmt::format("Within {} the well does not come back so far in 95 % of draws.", study.time(longest_rest_s)),
        "A pump set deeper, where the casing holds more, a storage tank, or knowing the yield better.");
  }
}

}  // namespace wellproof
