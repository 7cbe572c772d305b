// Current limit and the bounds of speed: what pump, motor, drive and pipe can bear.
#include <algorithm>
#include <cmath>
#include <iterator>

#include <fmt/format.h>

#include "settings/pressure_switch.h"
#include "settings/study.h"

namespace wellproof {
namespace {

constexpr double thrust_bearing_floor_hz = 30;  // common practice, no source
constexpr double ceiling_step_hz = 0.5;
constexpr double slowest_ceiling_hz = 30;
constexpr double floor_share_of_zero_flow = 0.9;  // the floor keeps this far below the zero-flow speed
constexpr double amps_step_a = 0.1;

/// Largest current and shaft power at a speed over all flows from none to what runs out against no pressure.
struct Load {
  double current_a = 0;
  double shaft_power_w = 0;
  bool turns = true;
};

Load worst_load(Plant const& plant, double speed_hz) {
  auto const open = point_at_speed(plant, speed_hz, 0, plant.well.static_level_depth_m);
  auto const shut = shut_point(plant, speed_hz);
  Load load{std::max(open.motor.current_a, shut.motor.current_a),
            std::max(open.motor.shaft_power_w, shut.motor.shaft_power_w), !open.motor.stalled && !shut.motor.stalled};
  double const shut_pa = shut.tee_pressure_pa;
  for (double const share : {0.15, 0.3, 0.45, 0.6, 0.75, 0.9}) {
    auto const between =
        point_at_speed(plant, speed_hz, share * std::max(shut_pa, 0.0), plant.well.static_level_depth_m);
    load.current_a = std::max(load.current_a, between.motor.current_a);
    load.shaft_power_w = std::max(load.shaft_power_w, between.motor.shaft_power_w);
    load.turns = load.turns && !between.motor.stalled;
  }
  return load;
}

/// Highest speed up to `top` at which a condition holds that holds below it.
template <class F>
double highest_speed_hz(double top_hz, F&& holds) {
  if (holds(top_hz)) {
    return top_hz;
  }
  double low = 0.25 * slowest_ceiling_hz;
  double high = top_hz;
  while (high - low > 0.001) {
    double const middle = 0.5 * (low + high);
    (holds(middle) ? low : high) = middle;
  }
  return low;
}

/// Lowest of these speeds over the draws. A draw whose condition holds at the lowest so far does not lower it.
/// @param holds of a draw at a speed
template <class F>
double lowest_speed_hz(std::vector<Plant> const& plants, double top_hz, F&& holds) {
  double lowest_hz = top_hz;
  for (auto const& plant : plants) {
    lowest_hz = highest_speed_hz(lowest_hz, [&](double speed_hz) { return holds(plant, speed_hz); });
  }
  return lowest_hz;
}

/// One reason for a ceiling: the lowest speed it allows over the draws.
struct Bound {
  double speed_hz = 0;
  std::string says;
  std::string would_change_it;
  bool by_rating = false;
};

}  // namespace

void derive_limits(Study& study) {
  auto& settings = study.settings;
  auto const plate_a =
      extent(study.plants, [](Plant const& plant) { return plant.site.motor.service_factor_current_a; });
  auto const drive_a = extent(study.plants, [](Plant const& plant) { return plant.site.drive.rated_current_a; });
  bool const by_drive = drive_a.low < plate_a.low;
  settings.motor_current_limit_a = rounded_down(std::min(plate_a.low, drive_a.low), amps_step_a);
  study.because("motor.current_limit",
                by_drive ? fmt::format("The drive is rated {}, less than the motor's service-factor amperes of {}.",
                                       study.current(drive_a.low), study.current(plate_a.low))
                         : fmt::format("The motor's service-factor amperes, {} at the least over the draws; the drive "
                                       "is rated {}.",
                                       study.current(plate_a.low), study.current(drive_a.low)));

  auto const limit_a = settings.motor_current_limit_a;
  double const top_hz = extent(study.plants, [](Plant const& plant) { return plant.site.drive.top_frequency_hz; }).low;
  std::vector<Bound> bounds;
  bounds.push_back(
      {top_hz, fmt::format("the drive puts out {} at most", study.speed(top_hz)), "a drive that goes higher"});

  auto const within_limit = [&](Plant const& plant, double speed_hz) {
    auto const load = worst_load(plant, speed_hz);
    return load.turns && load.current_a <= limit_a;
  };
  double const least_by_load_hz = lowest_speed_hz(study.plants, top_hz, within_limit);
  double const middle_by_load_hz =
      highest_speed_hz(top_hz, [&](double speed_hz) { return within_limit(study.plants.front(), speed_hz); });
  // The drive's own limit holds a motor that takes more than most do; a ceiling for the worst of all would leave the
  // pump of every draw without the speed for low water. Behind a pressure switch there may be no drive, and no limit.
  double const by_load_hz = study.logic.two_contact_switch ? least_by_load_hz : middle_by_load_hz;
  bounds.push_back({by_load_hz,
                    fmt::format("above {} the motor takes more than {} at the flow that loads it most (the worst "
                                "draw's above {}, the middle one's above {})",
                                study.speed(by_load_hz), study.current(limit_a), study.speed(least_by_load_hz),
                                study.speed(middle_by_load_hz)),
                    "a larger motor and drive, or a smaller pump end"});
  double const by_power_hz = lowest_speed_hz(study.plants, top_hz, [](Plant const& plant, double speed_hz) {
    return worst_load(plant, speed_hz).shaft_power_w <= plant.site.motor.power_w * plant.site.motor.service_factor;
  });
  bounds.push_back({by_power_hz,
                    fmt::format("above {} the pump asks for more than the motor's power with its service "
                                "factor",
                                study.speed(by_power_hz)),
                    "a larger motor"});

  // At a shut line, with the water as high as it stands. A relief valve takes this bound away at the tee, not in the
  // drop pipe below a shut yard valve.
  Rating weakest = weakest_at_tee(study.plants.front());
  double const fitted_relief_pa = study.plants.front().site.limits.relief_pa;
  for (auto const& plant : study.plants) {
    auto const at_tee = weakest_at_tee(plant);
    weakest = at_tee.pressure_pa < weakest.pressure_pa ? at_tee : weakest;
  }
  double const by_rating_hz = lowest_speed_hz(study.plants, top_hz, [](Plant const& plant, double speed_hz) {
    auto const at_tee = weakest_at_tee(plant);
    double const relief_pa = plant.site.limits.relief_pa;
    bool const relieved = relief_pa > 0 && relief_pa <= at_tee.pressure_pa;
    double const raised_pa =
        plant.weight_n_m3 * (plant.well.static_level_depth_m - plant.site.well.static_level_depth_m);
    return relieved || shut_point(plant, speed_hz).tee_pressure_pa + raised_pa <= at_tee.pressure_pa;
  });
  bounds.push_back({by_rating_hz,
                    fmt::format("above {} the pump against a shut line exceeds {} (rated {}), and {}",
                                study.speed(by_rating_hz), weakest.part, study.pressure(weakest.pressure_pa),
                                fitted_relief_pa > 0
                                    ? fmt::format("the relief valve opens at {} only", study.pressure(fitted_relief_pa))
                                    : std::string("no relief valve protects it")),
                    "a relief valve that opens below that rating and passes the pump's whole flow", true});
  double const by_class_hz = lowest_speed_hz(study.plants, top_hz, [](Plant const& plant, double speed_hz) {
    double const rating_pa = weakest_before_tee(plant).pressure_pa;
    double const over_intake_m = plant.site.pump.setting_depth_m - plant.site.well.static_level_depth_m;
    return plant.weight_n_m3 * (shut_point(plant, speed_hz).head_m + over_intake_m) <= rating_pa;
  });
  bounds.push_back(
      {by_class_hz,
       fmt::format("above {} the pump against a shut valve brings more than its class to {}, {} at the pump",
                   study.speed(by_class_hz), weakest_before_tee(study.plants.front()).part,
                   study.pressure(weakest_before_tee(study.plants.front()).pressure_pa)),
       "pipe of a higher class from the pump to the tank", true});
  // Run-out where the household opens everything: the pump must not pass more than its curve goes at the target.
  double const by_runout_hz = lowest_speed_hz(study.plants, top_hz, [&](Plant const& plant, double speed_hz) {
    double const peak_m3_s = plant.site.demand.peak_draw_m3_s;
    double const tee_pa = true_pressure_pa(plant, settings, settings.pressure_target_pa);
    double const base_hz = plant.site.motor.frequency_hz;
    double const passes_m3_s =
        std::min(peak_m3_s, point_at_speed(plant, speed_hz, tee_pa, plant.well.static_level_depth_m).flow_m3_s);
    return passes_m3_s <= plant.pump.runout_flow_m3_s() * std::max(1.0, speed_hz / base_hz);
  });
  bounds.push_back({by_runout_hz,
                    fmt::format("above {} the pump passes more than its curve goes", study.speed(by_runout_hz)),
                    "a pump for more flow"});

  // A rating that leaves the house without its water is named and not obeyed: a ceiling that serves nobody is no
  // answer.
  auto const wanted_hz = extent(study.plants, [&](Plant const& plant) { return peak_speed_hz(plant, settings); });
  auto const in_the_way = [&](Bound const& bound) { return bound.by_rating && bound.speed_hz < wanted_hz.middle; };
  for (auto const& bound : bounds) {
    if (in_the_way(bound)) {
      study.conflict("speed.ceiling",
                     fmt::format("Serving the house asks for {} in the middle draw, but {}.",
                                 study.speed(wanted_hz.middle), bound.says),
                     fmt::format("What would change it: {}.", bound.would_change_it));
    }
  }
  bounds.erase(std::remove_if(bounds.begin(), bounds.end(), in_the_way), bounds.end());
  std::sort(bounds.begin(), bounds.end(), [](Bound const& a, Bound const& b) { return a.speed_hz < b.speed_hz; });
  settings.speed_ceiling_hz = std::max(rounded_down(bounds.front().speed_hz, ceiling_step_hz), ceiling_step_hz);
  study.because("speed.ceiling",
                fmt::format("The least of what all allow: {}. Next comes: {}.", bounds.front().says, bounds[1].says));
  if (bounds.front().speed_hz < slowest_ceiling_hz) {
    study.conflict("speed.ceiling",
                   fmt::format("{}, which is below what a water-lubricated thrust bearing needs.", bounds.front().says),
                   fmt::format("What would change it: {}.", bounds.front().would_change_it));
  }

  if (is_fixed_speed(study)) {
    derive_fixed_speed(study);
    return;
  }

  auto const zero_flow = extent(study.plants, [&](Plant const& plant) {
    double const wake_pa = true_pressure_pa(plant, settings, settings.pressure_target_pa);
    return zero_flow_speed_hz(plant, wake_pa, plant.site.well.static_level_depth_m);
  });
  double const below_flow_hz = floor_share_of_zero_flow * zero_flow.low;
  settings.speed_floor_hz = std::min(std::max(thrust_bearing_floor_hz, rounded_down(below_flow_hz, ceiling_step_hz)),
                                     settings.speed_ceiling_hz);
  study.because(
      "speed.floor",
      fmt::format("Not below {} for the thrust bearing (common practice), and a tenth below the lowest speed at "
                  "which the pump holds the target without flow, {} over the draws: from there it is quickly "
                  "back when a tap opens.",
                  study.speed(thrust_bearing_floor_hz), study.speed(zero_flow.low)));
  if (zero_flow.low < thrust_bearing_floor_hz) {
    study.caution(
        "low_zero_flow_speed",
        fmt::format("This pump already holds the target at {}; at its floor of {} it gives more. It will sleep "
                    "after overshooting, and a smaller pump end would suit better.",
                    study.speed(zero_flow.low), study.speed(settings.speed_floor_hz)));
  }
}

}  // namespace wellproof
