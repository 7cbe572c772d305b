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
template <class One, class F>
Spread spread(std::vector<One> const& draws, F&& f) {
  std::vector<double> values;
  values.reserve(draws.size());
  for (auto const& draw : draws) {
    double const value = f(draw);
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

/// What the motor takes.
struct Load {
  double current_a = nowhere;
  double power_w = nowhere;
};

Load load_of(MotorPoint const& motor) {
  return {motor.current_a, motor.input_power_w};
}

/// A pump that lifts nothing stands against the column; one whose motor breaks down under its flow stands nowhere.
Load load_at(OperatingPoint const& point) {
  return point.reached || point.flow_m3_s <= 0 ? load_of(point.motor) : Load{};
}

/// Load at a flow, whatever pressure that gives; where the pump cannot pass that flow, at the most that it can.
Load load_at_flow(Plant const& plant, double speed_hz, double flow_m3_s) {
  double const level_m = plant.well.static_level_depth_m;
  auto const passing = point_passing(plant, speed_hz, flow_m3_s, level_m);
  return passing.reached ? load_of(passing.motor) : load_at(point_at_speed(plant, speed_hz, 0, level_m));
}

/// At the wake pressure, or at the peak draw if that is less.
Load at_most_draw(Plant const& plant, Settings const& settings, double speed_hz) {
  double const wake_pa =
      true_pressure_pa(plant, settings, settings.pressure_target_pa - settings.pressure_wake_drop_pa);
  auto const most = point_at_speed(plant, speed_hz, wake_pa, plant.well.static_level_depth_m);
  double const peak_m3_s = plant.site.demand.peak_draw_m3_s;
  return most.flow_m3_s > peak_m3_s ? load_at_flow(plant, speed_hz, peak_m3_s) : load_at(most);
}

template <class F>
void put_spreads(std::vector<Plant> const& plants, F&& load, Spread& current_a, Spread& power_w) {
  std::vector<Load> loads;
  loads.reserve(plants.size());
  for (auto const& plant : plants) {
    loads.push_back(load(plant));
  }
  current_a = spread(loads, [](Load const& one) { return one.current_a; });
  power_w = spread(loads, [](Load const& one) { return one.power_w; });
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
    put_spreads(
        plants, [&](Plant const& plant) { return load_of(dry_point(plant, speed_hz).motor); }, row.dry_a, row.dry_w);
    put_spreads(
        plants, [&](Plant const& plant) { return load_of(shut_point(plant, speed_hz).motor); }, row.shut_a, row.shut_w);
    put_spreads(
        plants, [&](Plant const& plant) { return load_at_flow(plant, speed_hz, plant.site.demand.least_draw_m3_s); },
        row.least_draw_a, row.least_draw_w);
    put_spreads(
        plants, [&](Plant const& plant) { return at_most_draw(plant, settings, speed_hz); }, row.most_draw_a,
        row.most_draw_w);
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
