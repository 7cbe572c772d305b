// The pressure at which the drive stops at once: above what the pressure swings to when the last taps close, below what
// the weakest part bears.
#include <algorithm>
#include <vector>

#include <fmt/format.h>

#include "settings/study.h"
#include "simulate/run.h"

namespace wellproof {
namespace {

constexpr std::size_t most_draws_run = 24;
constexpr double close_time_s = 0.5;  // a quick lever tap (common practice, no source)
constexpr double settle_time_s = 20;
constexpr double after_time_s = 10;
constexpr double share_of_gap = 0.5;  // where between swing and rating the stop lies
constexpr double noise_deviations = 4;

/// Highest tee pressure after the peak draw has been shut off.
double swing_pa(Study const& study, Plant const& plant) {
  Settings settings = study.settings;
  settings.pressure_stop_above_pa = 1e9;
  settings.dry_run_amps_below_a = 0;
  settings.closed_amps_below_a = 0;
  settings.long_run_limit_s = 1e9;
  Scenario scenario;
  scenario.name = "last_taps_close";
  scenario.duration_s = settle_time_s + close_time_s + after_time_s;
  scenario.start = {.tee_pressure_pa = true_pressure_pa(plant, settings, settings.pressure_target_pa),
                    .level_drop_m = 0,
                    .line_empty = false,
                    .after_power_up = false};
  scenario.script = ramp(Act::outlet_opening, outlet::house, 0, 1, 0, 1);
  auto const closing = ramp(Act::outlet_opening, outlet::house, settle_time_s, settle_time_s + close_time_s, 1, 0);
  scenario.script.insert(scenario.script.end(), closing.begin(), closing.end());
  RunOptions options;
  options.logic = study.logic;
  options.logic.two_contact_switch = false;
  options.windows = {{settle_time_s, scenario.duration_s}};
  options.sampling = Sampling::ahead;  // hardly a second of it is calm
  auto const trace = run(plant, settings, scenario, options);
  return trace.tallies.size() > 1 ? trace.tallies[1].most_tee_pressure_pa : scenario.start.tee_pressure_pa;
}

double seen_noise_pa(Plant const& plant) {
  return noise_deviations * plant.site.sensor.noise_pa + plant.site.sensor.resolution_pa;
}

/// What bounds the stop from above, as the drive is shown it.
struct ShownBound {
  double shown_pa = 0;
  std::string_view by;
};

ShownBound shown_bound(Study const& study, bool below_relief) {
  ShownBound bound{0.98 * study.settings.sensor_full_scale_pa, "the full scale of the sensor"};
  for (auto const& plant : study.plants) {
    auto const weakest = weakest_at_tee(plant);
    double const relief_pa = plant.site.limits.relief_pa;
    bool const relieved = below_relief && relief_pa > 0 && relief_pa < weakest.pressure_pa;
    double const shown_pa =
        shown_pressure_pa(plant, study.settings, relieved ? relief_pa : weakest.pressure_pa) - seen_noise_pa(plant);
    if (shown_pa < bound.shown_pa) {
      bound = {shown_pa, relieved ? "the relief valve" : weakest.part};
    }
  }
  return bound;
}

}  // namespace

void derive_stop_above(Study& study) {
  auto& settings = study.settings;
  std::vector<Plant> const some(study.plants.begin(), study.plants.begin() + static_cast<std::ptrdiff_t>(std::min(
                                                                                 study.plants.size(), most_draws_run)));
  double highest_pa = 0;
  double lowest_pa = 1e12;
  double shown_pa = 0;
  for (auto const& plant : some) {
    double const swing = swing_pa(study, plant);
    highest_pa = std::max(highest_pa, swing);
    lowest_pa = std::min(lowest_pa, swing);
    shown_pa = std::max(shown_pa, shown_pressure_pa(plant, settings, swing) + seen_noise_pa(plant));
  }
  // Rather below the relief valve, so that it need not lift; else below what the parts bear.
  double const step_pa = pressure_step_pa(study.units);
  auto bound = shown_bound(study, true);
  if (bound.shown_pa - shown_pa < 2 * step_pa) {
    bound = shown_bound(study, false);
  }
  double const bound_pa = bound.shown_pa;
  auto const bound_by = bound.by;
  bool const room = bound_pa - shown_pa >= 2 * step_pa;
  double const chosen_pa = room ? shown_pa + share_of_gap * (bound_pa - shown_pa) : bound_pa;
  settings.pressure_stop_above_pa = rounded_down(chosen_pa, step_pa);
  study.because(
      "pressure.stop_above",
      fmt::format(
          "When {} is shut off within {} the tee swings to {} to {} over {} draws, shown as up to {}; {} bounds "
          "it at {} as shown, with the sensor's errors. The middle is taken.",
          study.flow(study.plants.front().site.demand.peak_draw_m3_s), study.time(close_time_s),
          study.pressure(lowest_pa), study.pressure(highest_pa), some.size(), study.pressure(shown_pa), bound_by,
          study.pressure(bound_pa)));
  if (!room) {
    study.conflict("pressure.stop_above",
                   fmt::format("An ordinary swing to {} leaves no room below {}.", study.pressure(shown_pa),
                               study.pressure(bound_pa)),
                   "A larger tank, a sensor of a larger span, parts of a higher rating, or a lower target.");
  }
}

}  // namespace wellproof
