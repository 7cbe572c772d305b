// What the tests of a visit are set up with: speeds, flows and times that all draws looked at can do without harm.
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "contract/require.h"
#include "plant/operating.h"
#include "plant/pump.h"
#include "proof/trial.h"
#include "quantity/customary.h"
#include "settings/study.h"
#include "visit/full_draw.h"
#include "visit/one_visit.h"

namespace wellproof {
namespace {

constexpr std::uint32_t most_looked_at = 32;
constexpr double litre_m3 = 1e-3;
constexpr double under_limit_share = 0.9;  // of what stops the pump or of the weakest rating, in a test
constexpr double backwards_share = 0.7;    // of its head that a pump turned backwards gives at most (common practice)
constexpr double hot_c = 50;               // of water in a pump that passes none (from memory, ASTM D1785)
constexpr double speed_step_hz = 0.5;
constexpr double sagged_share = 0.93;  // of the target, below which the guards look beyond doubt
constexpr double over_intake_m = 0.3;

std::vector<Plant> some_plants(Site const& site, VisitOptions const& options) {
  std::vector<Plant> plants;
  for (std::uint32_t i = 0; i < std::min(options.draws, most_looked_at); ++i) {
    plants.push_back(visited_plant(site, options.seed, i, visit_point(options.seed, i, 0)[0]));
  }
  return plants;
}

double held_pa(Plant const& plant, Settings const& settings) {
  return true_pressure_pa(plant, settings, settings.pressure_target_pa);
}

/// The speed by hand against the shut line, how long, and from which pressure.
void plan_rotation(VisitPlan& plan, std::vector<Plant> const& plants, Settings const& settings, UnitSystem units) {
  auto const shut_pa = [](Plant const& plant, double speed_hz) { return shut_point(plant, speed_hz).tee_pressure_pa; };
  auto const bears_pa = extent(plants, [&](Plant const& plant) {
    double const stops_pa = true_pressure_pa(plant, settings, settings.pressure_stop_above_pa);
    double const relief_pa = plant.site.limits.relief_pa;
    double const weakest_pa = weakest_at_tee(plant).pressure_pa;
    return under_limit_share * std::min({stops_pa, weakest_pa, relief_pa > 0 ? relief_pa : weakest_pa});
  });
  double const top_hz = std::min(settings.speed_ceiling_hz, plants.front().site.motor.frequency_hz);
  double speed_hz = rounded_down(top_hz, speed_step_hz);
  auto const most_pa = [&] { return extent(plants, [&](Plant const& p) { return shut_pa(p, speed_hz); }).high; };
  double const slowest_hz = std::max(settings.speed_floor_hz, 20.0);
  while (speed_hz > slowest_hz && most_pa() > bears_pa.low) {
    speed_hz -= speed_step_hz;
  }
  auto const reaches_pa = extent(plants, [&](Plant const& plant) { return shut_pa(plant, speed_hz); });
  if (most_pa() > bears_pa.low || reaches_pa.low <= 0.2 * settings.pressure_target_pa) {
    return;
  }
  plan.hand_speed_hz = speed_hz;
  plan.hand_start_pa = rounded_down(0.5 * reaches_pa.low, pressure_step_pa(units));
  auto const heats_s = extent(plants, [&](Plant const& plant) {
    double const shaft_w = shut_point(plant, speed_hz).motor.shaft_power_w;
    return (hot_c - plant.site.well.water_temperature_c) / churning_rate_k_s(shaft_w, plant.site.pump.water_held_m3);
  });
  plan.hand_time_s = std::clamp(rounded_down(0.5 * heats_s.low, 10), 30.0, 120.0);
  plan.backwards_most_pa =
      std::max(0.0, extent(plants, [&](Plant const& plant) {
                      double const lift_m = plant.well.static_level_depth_m + plant.tee_elevation_m;
                      return plant.weight_n_m3 * (backwards_share * shut_point(plant, speed_hz).head_m - lift_m);
                    }).high);
}

/// Whether the water stays over the intake in every draw.
bool stands(std::vector<Plant> const& plants, VisitPlan const& plan, Settings const& settings) {
  return std::all_of(plants.begin(), plants.end(), [&](Plant const& plant) {
    bool const fixed = plan.two_contacts;
    double const speed_hz = fixed ? settings.speed_ceiling_hz : plan.full_speed_hz;
    double const tee_pa = fixed ? plan.full_pressure_pa : held_pa(plant, settings);
    double const flow_m3_s = flow_at_m3_s(plant, speed_hz, tee_pa, plan.full_time_s);
    return drawn_level_depth_m(plant, flow_m3_s, plan.full_time_s) < deepest_wet_level_m(plant) - over_intake_m;
  });
}

/// Taps are opened until the drive shows this speed: about the peak in the middle draw, with some flow in every draw.
void plan_full_draw(VisitPlan& plan, std::vector<Plant> const& plants, Settings const& settings, UnitSystem units) {
  constexpr std::array<double, 3> times_s{600, 300, 120};
  auto const& middle = plants.front();
  if (plan.two_contacts) {
    double const in_pa = settings.pressure_target_pa - settings.pressure_wake_drop_pa;
    plan.full_pressure_pa = rounded(in_pa + 0.4 * settings.pressure_wake_drop_pa, pressure_step_pa(units));
    for (double const time_s : times_s) {
      plan.full_time_s = time_s;
      if (stands(plants, plan, settings)) {
        return;
      }
    }
    return;
  }
  auto const idle_hz = extent(plants, [&](Plant const& plant) {
    return zero_flow_speed_hz(plant, held_pa(plant, settings), plant.well.static_level_depth_m);
  });
  double const wanted_hz = peak_speed_hz(middle, settings);
  double const least_hz = rounded_up(1.02 * idle_hz.high, speed_step_hz);
  double const most_hz = std::max(least_hz, rounded_down(settings.speed_ceiling_hz - 1, speed_step_hz));
  plan.full_speed_hz = std::clamp(rounded(wanted_hz, speed_step_hz), least_hz, most_hz);
  for (;;) {
    for (double const time_s : times_s) {
      plan.full_time_s = time_s;
      if (stands(plants, plan, settings)) {
        return;
      }
    }
    if (plan.full_speed_hz <= least_hz) {
      return;
    }
    plan.full_speed_hz -= speed_step_hz;
  }
}

/// A ceiling at which the same taps take the pressure below where the guards look, in every draw.
void plan_low_water(VisitPlan& plan, std::vector<Plant> const& plants, Settings const& settings) {
  constexpr std::array<double, 7> lower_by_hz{2, 3, 4, 5, 6, 8, 10};
  for (double const by_hz : lower_by_hz) {
    double const ceiling_hz = plan.full_speed_hz - by_hz;
    if (ceiling_hz < 25) {
      return;
    }
    bool const sags = std::all_of(plants.begin(), plants.end(), [&](Plant const& plant) {
      double const at_pa = held_pa(plant, settings);
      double const flow_m3_s = flow_at_m3_s(plant, plan.full_speed_hz, at_pa, plan.full_time_s);
      return sagged_pressure_pa(plant, ceiling_hz, flow_m3_s, at_pa, plan.full_time_s) < sagged_share * at_pa;
    });
    if (sags) {
      plan.lower_ceiling_hz = ceiling_hz;
      return;
    }
  }
}

bool valve_may_be_shut(std::vector<Plant> const& plants, Settings const& settings) {
  return std::all_of(plants.begin(), plants.end(), [&](Plant const& plant) {
    double const over_m = plant.site.pump.setting_depth_m - plant.site.well.static_level_depth_m;
    double const at_pump_pa = plant.weight_n_m3 * (shut_point(plant, settings.speed_ceiling_hz).head_m + over_m);
    return at_pump_pa <= weakest_before_tee(plant).pressure_pa;
  });
}

}  // namespace

VisitPlan visit_plan(Site const& site, Settings const& settings, VisitOptions const& options) {
  auto const plants = some_plants(site, options);
  bool const us = options.units == UnitSystem::us;
  VisitPlan plan;
  plan.two_contacts = options.logic.two_contact_switch;
  plan.leak_wait_s = 600;
  plan.bucket_m3 = us ? 5 * gallon_m3 : 20 * litre_m3;
  plan.jug_m3 = us ? 0.25 * gallon_m3 : litre_m3;
  plan.small_draw_m3_s = middle(site.demand.least_draw_m3_s);
  plan_full_draw(plan, plants, settings, options.units);
  if (!plan.two_contacts) {
    plan_rotation(plan, plants, settings, options.units);
    plan_low_water(plan, plants, settings);
    plan.valve_test_safe = valve_may_be_shut(plants, settings);
  }
  return plan;
}

}  // namespace wellproof
