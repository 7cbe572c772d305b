#include "settings/operating_map.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "settings/study.h"

namespace wellproof {
namespace {

constexpr double first_hz = 30;
constexpr double last_hz = 80;

constexpr double nowhere = std::numeric_limits<double>::quiet_NaN();

/// Over the draws in which the plant can be there at all.
template <class F>
Spread spread(std::vector<Plant> const& plants, F&& f) {
  std::vector<double> values;
  values.reserve(plants.size());
  for (auto const& plant : plants) {
    double const value = f(plant);
    if (!std::isnan(value)) {
      values.push_back(value);
    }
  }
  if (values.empty()) {
    return {nowhere, nowhere, nowhere};
  }
  auto const middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  double const median = *middle;
  return {*std::min_element(values.begin(), values.end()), median, *std::max_element(values.begin(), values.end())};
}

/// A pump that lifts nothing stands against the column; one whose motor breaks down under its flow stands nowhere.
double current_a(OperatingPoint const& point) {
  return point.reached || point.flow_m3_s <= 0 ? point.motor.current_a : nowhere;
}

/// Current at a flow, whatever pressure that gives; against a shut line where the pump cannot reach the flow.
double current_at_flow_a(Plant const& plant, double speed_hz, double flow_m3_s) {
  double const level_m = plant.well.static_level_depth_m;
  auto const shut = shut_point(plant, speed_hz);
  if (point_at_speed(plant, speed_hz, 0, level_m).flow_m3_s <= flow_m3_s) {
    return current_a(point_at_speed(plant, speed_hz, 0, level_m));
  }
  // The pressure at which this flow results: flow falls as pressure rises.
  double low_pa = 0;
  double high_pa = std::max(shut.tee_pressure_pa, 0.0);
  for (int round = 0; round < 20; ++round) {
    double const middle_pa = 0.5 * (low_pa + high_pa);
    (point_at_speed(plant, speed_hz, middle_pa, level_m).flow_m3_s > flow_m3_s ? low_pa : high_pa) = middle_pa;
  }
  return current_a(point_at_speed(plant, speed_hz, 0.5 * (low_pa + high_pa), level_m));
}

/// At the wake pressure, or at the peak draw if that is less.
double most_draw_a(Plant const& plant, Settings const& settings, double speed_hz) {
  double const wake_pa =
      true_pressure_pa(plant, settings, settings.pressure_target_pa - settings.pressure_wake_drop_pa);
  auto const most = point_at_speed(plant, speed_hz, wake_pa, plant.well.static_level_depth_m);
  double const peak_m3_s = plant.site.demand.peak_draw_m3_s;
  return most.flow_m3_s > peak_m3_s ? current_at_flow_a(plant, speed_hz, peak_m3_s) : current_a(most);
}

}  // namespace

OperatingMap operating_map(std::vector<Plant> const& plants, Settings const& settings) {
  auto const target_pa = [&](Plant const& plant) {
    return true_pressure_pa(plant, settings, settings.pressure_target_pa);
  };
  OperatingMap map;
  map.target_pa = settings.pressure_target_pa;
  map.zero_flow_speed_hz = spread(plants, [&](Plant const& plant) {
    return zero_flow_speed_hz(plant, target_pa(plant), plant.well.static_level_depth_m);
  });
  map.least_draw_speed_hz = spread(plants, [&](Plant const& plant) {
    return point_for_flow(plant, plant.site.demand.least_draw_m3_s, target_pa(plant), plant.well.static_level_depth_m)
        .speed_hz;
  });
  double top_hz = last_hz;
  for (auto const& plant : plants) {
    top_hz = std::min(top_hz, plant.site.drive.top_frequency_hz);
  }
  for (int i = 0; first_hz + i <= top_hz; ++i) {
    MapRow row;
    row.speed_hz = first_hz + i;
    double const speed_hz = row.speed_hz;
    row.dry_a = spread(plants, [&](Plant const& plant) { return dry_point(plant, speed_hz).motor.current_a; });
    row.shut_a = spread(plants, [&](Plant const& plant) { return shut_point(plant, speed_hz).motor.current_a; });
    row.least_draw_a = spread(plants, [&](Plant const& plant) {
      return current_at_flow_a(plant, speed_hz, plant.site.demand.least_draw_m3_s);
    });
    row.most_draw_a = spread(plants, [&](Plant const& plant) { return most_draw_a(plant, settings, speed_hz); });
    row.flow_at_target_m3_s = spread(plants, [&](Plant const& plant) {
      return point_at_speed(plant, speed_hz, target_pa(plant), plant.well.static_level_depth_m).flow_m3_s;
    });
    row.shut_head_m = spread(plants, [&](Plant const& plant) { return shut_point(plant, speed_hz).head_m; });
    row.shut_pressure_pa =
        spread(plants, [&](Plant const& plant) { return std::max(shut_point(plant, speed_hz).tee_pressure_pa, 0.0); });
    map.rows.push_back(row);
  }
  return map;
}

}  // namespace wellproof
