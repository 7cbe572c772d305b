#include "proof/swing.h"

#include <algorithm>
#include <vector>

#include "simulate/run.h"

namespace wellproof {
namespace {

constexpr double opens_s = 10;
constexpr double duration_s = 480;
constexpr double watched_from_s = 240;
constexpr int least_crossings = 5;       // of the middle: two whole swings
constexpr double wide_part = 0.25;       // of the swing, that a crossing must leave the middle by
constexpr double settled_share = 0.002;  // of the target: what noise and samples ahead of the plant make of a held one

}  // namespace

Swing swing_while_drawing(Plant const& plant, Settings const& settings, Logic const& logic, double opening,
                          std::uint64_t noise) {
  Scenario scenario;
  scenario.name = "even_draw";
  scenario.duration_s = duration_s;
  scenario.start = {.tee_pressure_pa = settings.pressure_target_pa, .after_power_up = false};
  scenario.script = ramp(Act::outlet_opening, outlet::house, opens_s, opens_s + 0.5, 0, opening);
  RunOptions options;
  options.logic = logic;
  options.record = true;
  options.record_every_s = 0.05;
  options.sampling = Sampling::ahead;  // what is passed over as calm is what is asked here
  options.noise_seed = noise;
  auto const trace = run(plant, settings, scenario, options);
  std::vector<TracePoint> watched;
  for (auto const& point : trace.points) {
    if (point.time_s >= watched_from_s) {
      if (point.mode != Mode::holding) {
        return {};
      }
      watched.push_back(point);
    }
  }
  if (trace.ending != Ending::finished || watched.size() < 2) {
    return {};
  }
  auto const [least, most] = std::minmax_element(
      watched.begin(), watched.end(),
      [](TracePoint const& a, TracePoint const& b) { return a.tee_pressure_pa < b.tee_pressure_pa; });
  double const swing_pa = most->tee_pressure_pa - least->tee_pressure_pa;
  double const middle_pa = 0.5 * (most->tee_pressure_pa + least->tee_pressure_pa);
  int side = 0;
  int crossings = 0;
  double first_s = 0;
  double last_s = 0;
  for (auto const& point : watched) {
    double const off_pa = point.tee_pressure_pa - middle_pa;
    int const now = off_pa > wide_part * swing_pa ? 1 : off_pa < -wide_part * swing_pa ? -1 : side;
    if (now != side && side != 0) {
      first_s = crossings == 0 ? point.time_s : first_s;
      last_s = point.time_s;
      ++crossings;
    }
    side = now;
  }
  if (crossings < least_crossings || swing_pa < settled_share * settings.pressure_target_pa) {
    return {};
  }
  return {swing_pa, 2 * (last_s - first_s) / (crossings - 1)};
}

SwingsOfDraw swings_while_drawing(Plant const& plant, Settings const& settings, Logic const& logic,
                                  std::uint64_t noise) {
  SwingsOfDraw swings;
  for (std::size_t k = 0; k < swing_openings.size(); ++k) {
    swings[k] = swing_while_drawing(plant, settings, logic, swing_openings[k], noise);
  }
  return swings;
}

}  // namespace wellproof
