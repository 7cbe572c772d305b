#include "settings/loops.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "settings/study.h"

namespace wellproof {
namespace {

constexpr double lowest_1_s = 1e-3;
constexpr double any_gain_hz_pa = 1e9;

}  // namespace

std::complex<double> RegulatorLoop::response_pa_hz(double angular_1_s) const {
  return plant.response_pa_hz(angular_1_s) * std::exp(std::complex<double>(0, -angular_1_s * delay_s()));
}

std::vector<RegulatorLoop> loops_of(std::vector<Plant> const& plants, Settings const& settings) {
  std::vector<RegulatorLoop> loops;
  for (std::size_t draw = 0; draw < plants.size(); ++draw) {
    auto const& plant = plants[draw];
    double const target_pa = true_pressure_pa(plant, settings, settings.pressure_target_pa);
    double const peak_m3_s = served_peak_m3_s(plant);
    double const least_m3_s = std::max(plant.site.demand.least_draw_m3_s, 0.02 * peak_m3_s);
    for (double const level_m : {plant.well.static_level_depth_m, drawn_level_depth_m(plant, peak_m3_s, peak_time_s)}) {
      for (auto const& [flow_m3_s, regulated] :
           {std::pair{least_m3_s, true}, std::pair{0.5 * peak_m3_s, false}, std::pair{peak_m3_s, false}}) {
        auto const linear = linear_plant(plant, flow_m3_s, regulated, target_pa, level_m);
        if (linear.reached && linear.steady_pa_hz() > 0) {
          loops.push_back({linear, plant.site.drive.sample_rate_hz, draw, flow_m3_s, level_m});
        }
      }
    }
  }
  return loops;
}

double most_gain_for_noise_hz_pa(std::vector<Plant> const& plants) {
  double const noise_pa = extent(plants, [](Plant const& plant) { return plant.site.sensor.noise_pa; }).high;
  return noise_pa > 0 ? noise_may_move_speed_hz / (3 * noise_pa) : any_gain_hz_pa;
}

LoopMargins margins_with(RegulatorLoop const& loop, Settings const& settings) {
  PiRule const rule{settings.regulator_gain_hz_pa, settings.regulator_reset_time_s};
  return loop_margins(
      [&](double angular_1_s) { return loop.response_pa_hz(angular_1_s) * response(rule, angular_1_s); }, lowest_1_s,
      std::numbers::pi * loop.sample_rate_hz);
}

NearestLoops nearest_loops(std::vector<RegulatorLoop> const& loops, Settings const& settings) {
  NearestLoops nearest;
  nearest.margins.reserve(loops.size());
  for (auto const& loop : loops) {
    nearest.margins.push_back(margins_with(loop, settings));
  }
  auto const least = [&](double LoopMargins::*member) {
    auto const at = std::min_element(nearest.margins.begin(), nearest.margins.end(),
                                     [&](LoopMargins const& a, LoopMargins const& b) { return a.*member < b.*member; });
    return static_cast<std::size_t>(at - nearest.margins.begin());
  };
  nearest.by_gain = least(&LoopMargins::gain_margin);
  nearest.by_phase = least(&LoopMargins::phase_margin_deg);
  nearest.by_delay = least(&LoopMargins::delay_margin_s);
  auto const largest = std::max_element(
      nearest.margins.begin(), nearest.margins.end(),
      [](LoopMargins const& a, LoopMargins const& b) { return a.largest_sensitivity < b.largest_sensitivity; });
  nearest.by_sensitivity = static_cast<std::size_t>(largest - nearest.margins.begin());
  return nearest;
}

}  // namespace wellproof
