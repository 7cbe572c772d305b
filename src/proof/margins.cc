#include "proof/margins.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include <fmt/format.h>

#include "plant/operating.h"
#include "plant/pump.h"
#include "settings/guard_load.h"
#include "settings/study.h"

namespace wellproof {
namespace {

constexpr double dry_bearing_s = 10;  // a bearing lubricated by water, without it (common practice, no source)
constexpr double hot_c = 50;          // PVC has lost half its strength (ASTM D1785, from memory)
constexpr double infinity = std::numeric_limits<double>::infinity();

std::string quantity(double value, double step, Dimension dimension, UnitSystem units) {
  return write_quantity(rounded(value, step), dimension, units);
}

std::string amps(double current_a, UnitSystem units) {
  return quantity(current_a, 0.01, Dimension::current, units);
}
std::string seconds(double time_s, UnitSystem units) {
  return quantity(time_s, 0.1, Dimension::time, units);
}
std::string hertz(double speed_hz, UnitSystem units) {
  return quantity(speed_hz, 0.01, Dimension::frequency, units);
}

/// A difference of temperatures has no zero point.
std::string kelvins(double difference_k, UnitSystem units) {
  return units == UnitSystem::us ? fmt::format("{:.0f} °F", 1.8 * difference_k)
                                 : fmt::format("{:.1f} °C", difference_k);
}

std::string_view past(Measure measure) {
  switch (measure) {
    case Measure::most_tee_pressure:
    case Measure::most_pump_pressure:
      return "to rating";
    case Measure::winding:
    case Measure::pump_water:
      return "to harm";
    default:
      return "to spare";
  }
}

/// Three digits: more would be read as more than it is.
double three_digits(double value) {
  if (value <= 0) {
    return 0;
  }
  double const digit = std::pow(10, std::floor(std::log10(value)) - 2);
  return digit * std::floor(value / digit + 1e-9);
}

bool acts(double threshold, double delay_s, double load) {
  return threshold > load && delay_s > 0;
}

/// When a guard acts on a pump that loads its motor so: what is filtered has to come down first, from the limit of
/// current, or from twice the larger threshold of power (regulator.cc).
double guard_time_s(Settings const& settings, Logic const& logic, double threshold, double delay_s, double load) {
  if (!acts(threshold, delay_s, load)) {
    return infinity;
  }
  bool const by_power = logic.guard_by == GuardBy::power;
  double const from = by_power ? 2 * std::max(dry_below(settings, logic), closed_below(settings, logic))
                               : std::max(settings.motor_current_limit_a, threshold);
  return delay_s + logic.current_filter_s * std::log((from - load) / (threshold - load));
}

double stop_time_s(Settings const& settings, Logic const& logic, double load) {
  double run_s = infinity;
  if (settings.long_run_limit_s > 0 && logic.long_run_guard) {
    run_s = settings.long_run_limit_s;
  }
  return std::min({guard_time_s(settings, logic, dry_below(settings, logic), settings.dry_run_delay_s, load),
                   guard_time_s(settings, logic, closed_below(settings, logic), settings.closed_delay_s, load), run_s});
}

std::string load_words(double load, Logic const& logic, UnitSystem units) {
  return logic.guard_by == GuardBy::power ? fmt::format("{:.0f} W", load) : amps(load, units);
}

/// Least load of a pump at work while the guards look: pressure lost, water at rest or drawn down by the peak.
/// Empty where no flow is to be had there at all.
std::optional<double> least_at_work(Plant const& plant, Settings const& settings, Logic const& logic) {
  double const top_hz = settings.speed_ceiling_hz;
  double const gate_hz = logic.two_contact_switch ? top_hz : logic.guard_speed_share * top_hz;
  double const gate_pa = true_pressure_pa(plant, settings, logic.guard_pressure_share * settings.pressure_target_pa);
  double const drawn_m = drawn_level_depth_m(plant, served_peak_m3_s(plant), peak_time_s);
  std::optional<double> least;
  if (logic.guard_where == GuardWhere::any_speed) {
    least = slow_work_load(plant, settings, logic);
  }
  for (double const speed_hz : {gate_hz, top_hz}) {
    for (double const depth_m : {plant.well.static_level_depth_m, drawn_m}) {
      for (double const share : {1.0, 0.8, 0.5}) {
        auto const here = point_at_speed(plant, speed_hz, share * gate_pa, depth_m);
        double const load = guard_load(logic, here.motor);
        if (here.flow_m3_s > 0 && std::isfinite(load)) {
          least = std::min(least.value_or(infinity), load);
        }
      }
    }
  }
  return least;
}

}  // namespace

double distance_to_limit(Measure measure, double value, double limit) {
  bool const least = measure == Measure::least_tee_pressure || measure == Measure::least_outlet_pressure;
  return least ? value - limit : limit - value;
}

std::string distance_words(Measure measure, Outcome const& outcome, UnitSystem units) {
  if (outcome.ending != Ending::finished) {
    return "not computed";
  }
  double const distance = distance_to_limit(measure, outcome.value, outcome.limit);
  if (measure == Measure::no_stop) {
    return distance < 0 ? fmt::format("{:.0f} too many", -distance) : "no stop";
  }
  if (measure == Measure::starts) {
    return distance < 0 ? fmt::format("{:.0f} starts too many", -distance)
                        : fmt::format("{:.0f} starts to spare", distance);
  }
  if (outcome.margin < 0 && distance >= 0) {
    return "not in the run";
  }
  auto const dimension = wellproof::dimension(measure);
  auto const text = [&](double size) {
    if (dimension == Dimension::temperature) {
      return kelvins(size, units);
    }
    double const unit = customary_unit(dimension, units).factor;
    return write_quantity(unit * three_digits(size / unit), dimension, units);
  };
  return distance < 0 ? text(-distance) + " beyond" : fmt::format("{} {}", text(distance), past(measure));
}

PlanMargin false_stop_margin(std::span<Plant const> plants, Settings const& settings, Logic const& logic,
                             UnitSystem units) {
  bool const by_power = logic.guard_by == GuardBy::power;
  PlanMargin margin{
      .key = "false_stop", .dimension = by_power ? Dimension::power : Dimension::current, .value = {}, .says = {}};
  double const dry = dry_below(settings, logic);
  double const closed = closed_below(settings, logic);
  double const threshold = std::max(dry, closed);
  std::string_view const guards = by_power ? "power" : "amps";
  if (threshold <= 0) {
    margin.says =
        fmt::format("No false stop for low {}: both {} guards are off.", by_power ? "power" : "current", guards);
    return margin;
  }
  double least = infinity;
  for (std::size_t i = 0; i < plants.size(); ++i) {
    auto const load = least_at_work(plants[i], settings, logic);
    if (load && *load < least) {
      least = *load;
      margin.draw = static_cast<std::uint32_t>(i);
    }
  }
  if (!std::isfinite(least)) {
    margin.says = fmt::format("No false stop to measure: nowhere that the {} guards look does water flow.", guards);
    return margin;
  }
  margin.value = least - threshold;
  margin.says =
      fmt::format("{} {} the nearest false stop: {} a pump at work takes {} at the least (draw {}); {}.{}_below is {}.",
                  load_words(std::abs(*margin.value), logic, units), *margin.value < 0 ? "past" : "to",
                  logic.guard_where == GuardWhere::any_speed ? "at its slowest" : "with its pressure lost",
                  load_words(least, logic, units), margin.draw, dry > closed ? "dry_run" : "closed", guards,
                  load_words(threshold, logic, units));
  return margin;
}

PlanMargin harm_margin(std::span<Plant const> plants, Settings const& settings, Logic const& logic, UnitSystem units) {
  PlanMargin margin{.key = "harm", .dimension = Dimension::time, .value = {}, .says = {}};
  double const top_hz = settings.speed_ceiling_hz;
  double least_s = infinity;
  double least_harm_s = 0;
  double least_stop_s = 0;
  bool least_is_dry = false;
  auto const take = [&](std::size_t draw, bool dry, double harm_s, double stop_s) {
    if (harm_s - stop_s < least_s) {
      least_s = harm_s - stop_s;
      least_harm_s = harm_s;
      least_stop_s = stop_s;
      least_is_dry = dry;
      margin.draw = static_cast<std::uint32_t>(draw);
    }
  };
  for (std::size_t i = 0; i < plants.size(); ++i) {
    auto const& plant = plants[i];
    take(i, true, dry_bearing_s, stop_time_s(settings, logic, guard_load(logic, dry_point(plant, top_hz).motor)));
    auto const shut = shut_point(plant, top_hz).motor;
    double const rate_k_s = churning_rate_k_s(shut.shaft_power_w, plant.site.pump.water_held_m3);
    if (rate_k_s > 0) {
      take(i, false, (hot_c - plant.site.well.water_temperature_c) / rate_k_s,
           stop_time_s(settings, logic, guard_load(logic, shut)));
    }
  }
  auto const harmed =
      least_is_dry
          ? fmt::format("a bearing without water is taken to bear {} (common practice)", seconds(least_harm_s, units))
          : fmt::format("against a shut line the water in the pump comes to {} in {}",
                        write_quantity(hot_c, Dimension::temperature, units), seconds(least_harm_s, units));
  if (!std::isfinite(least_s)) {
    margin.says =
        fmt::format("Nothing stops the pump before harm: {}, and no guard acts (draw {}).", harmed, margin.draw);
    return margin;
  }
  margin.value = least_s;
  margin.says = fmt::format("{} {} harm: {}; it is stopped {} after the guards begin to look (draw {}).",
                            seconds(std::abs(least_s), units), least_s < 0 ? "past" : "to", harmed,
                            seconds(least_stop_s, units), margin.draw);
  return margin;
}

PlanMargin sleep_margin(std::span<Plant const> plants, Settings const& settings, Logic const& logic, UnitSystem units) {
  PlanMargin margin{.key = "sleep", .dimension = Dimension::frequency, .value = {}, .says = {}};
  if (logic.two_contact_switch) {
    margin.says = "A pressure switch does not sleep by speed.";
    return margin;
  }
  if (logic.sleep_test == SleepTest::nudge) {
    margin.says = "This drive does not sleep by speed: it nudges the pressure, whatever the speed.";
    return margin;
  }
  double settled_hz = -infinity;
  for (std::size_t i = 0; i < plants.size(); ++i) {
    auto const& plant = plants[i];
    double const tee_pa = true_pressure_pa(plant, settings, settings.pressure_target_pa);
    double const level_m = drawn_level_depth_m(plant, served_peak_m3_s(plant), peak_time_s);
    auto const held = point_for_flow(plant, leak_flow_m3_s(plant, tee_pa), tee_pa, level_m);
    // A plant that cannot hold the target against its leak stays at the ceiling.
    double const speed_hz =
        held.reached ? std::min(held.speed_hz, settings.speed_ceiling_hz) : settings.speed_ceiling_hz;
    if (speed_hz > settled_hz) {
      settled_hz = speed_hz;
      margin.draw = static_cast<std::uint32_t>(i);
    }
  }
  settled_hz = std::max(settled_hz, settings.speed_floor_hz);
  margin.value = settings.sleep_speed_below_hz - settled_hz;
  margin.says = fmt::format(
      "{} {} the speed at which it will not sleep: soon after a peak the leak is held at up to {} (draw {}); "
      "sleep.speed_below is {}.",
      hertz(std::abs(*margin.value), units), *margin.value < 0 ? "past" : "to", hertz(settled_hz, units), margin.draw,
      hertz(settings.sleep_speed_below_hz, units));
  return margin;
}

PlanMargin rating_margin(std::vector<std::vector<Outcome>> const& outcomes, UnitSystem units) {
  PlanMargin margin{.key = "rating", .dimension = Dimension::pressure, .value = {}, .says = {}};
  std::size_t of = 0;
  for (std::size_t h = 0; h < outcomes.size(); ++h) {
    for (auto const& outcome : outcomes[h]) {
      if (outcome.pressure_room_pa && *outcome.pressure_room_pa < margin.value.value_or(infinity)) {
        margin.value = outcome.pressure_room_pa;
        margin.draw = outcome.draw;
        of = h;
      }
    }
  }
  if (!margin.value) {
    margin.says = "No run was judged by a pressure rating.";
    return margin;
  }
  margin.says = fmt::format("{} {} the rating, in {} (draw {}).",
                            write_quantity(std::abs(*margin.value), Dimension::pressure, units),
                            *margin.value < 0 ? "past" : "to", hazards()[of].name, margin.draw);
  return margin;
}

}  // namespace wellproof
