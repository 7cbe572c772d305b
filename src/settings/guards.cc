// Amperes or watts that tell a pump without water, or against a shut line, from one at work. Amperes tell it near the
// ceiling only: at constant volts for each hertz the magnetising current stays and the load's part falls about with the
// square of speed. Watts part dry from shut more widely, since the magnetising current carries none; they fall with the
// cube.
#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <fmt/format.h>

#include "plant/pump.h"
#include "settings/guard_load.h"
#include "settings/study.h"

namespace wellproof {
namespace {

constexpr double amps_step_a = 0.05;
constexpr double least_gap_share = 0.015;  // of the current limit: a narrower gap is none
constexpr double dry_harm_s = 10;          // a water-lubricated bearing without water (common practice, no source)
constexpr double air_slug_s = 1;           // air that passes after a start, besides what is filtered
constexpr double hot_c = 50;       // water in the pump: PVC has lost half its strength (from memory, ASTM D1785)
constexpr double patience_s = 30;  // longest wait for what a person at the tap would have noticed long before
constexpr double power_step_w = 5;
constexpr double below_work_share = 0.97;  // of ordinary work's least load, where nothing parts it from a dry pump
constexpr double after_hold_s = 3;         // by which a guard at any speed waits longer than the way to sleep

/// Lowest load of a pump at work at the ceiling or a little below, the pressure lost.
double ordinary(Study const& study, Plant const& plant, double speed_hz) {
  auto const& settings = study.settings;
  double const gate_pa =
      true_pressure_pa(plant, settings, study.logic.guard_pressure_share * settings.pressure_target_pa);
  double const level_m = drawn_level_depth_m(plant, served_peak_m3_s(plant), peak_time_s);
  double least = 1e9;
  for (double const share : {1.0, 0.8, 0.5}) {
    for (double const depth_m : {plant.well.static_level_depth_m, level_m}) {
      auto const here = point_at_speed(plant, speed_hz, share * gate_pa, depth_m);
      if (here.flow_m3_s > 0) {
        least = std::min(least, guard_load(study.logic, here.motor));
      }
    }
  }
  return least < 1e9 ? least : guard_load(study.logic, shut_point(plant, speed_hz).motor);
}

/// Loads of one draw where the guards look: near the ceiling the spread from the gate's lowest speed is in them.
struct Loads {
  double dry_most = 0;
  double shut_least = 0;
  double shut_most = 0;
  double ordinary_least = 0;
};

Loads loads(Study const& study, Plant const& plant) {
  bool const any_speed = study.logic.guard_where == GuardWhere::any_speed;
  double const top_hz = study.settings.speed_ceiling_hz;
  double const gate_hz = study.logic.two_contact_switch || any_speed ? top_hz : study.logic.guard_speed_share * top_hz;
  auto const seen = [&](OperatingPoint const& point) { return guard_load(study.logic, point.motor); };
  Loads found;
  found.dry_most = std::max(seen(dry_point(plant, top_hz)), seen(dry_point(plant, gate_hz)));
  double const shut_top = seen(shut_point(plant, top_hz));
  double const shut_gate = seen(shut_point(plant, gate_hz));
  found.shut_least = std::min(shut_top, shut_gate);
  found.shut_most = std::max(shut_top, shut_gate);
  found.ordinary_least = std::min(ordinary(study, plant, top_hz), ordinary(study, plant, gate_hz));
  if (any_speed) {
    found.ordinary_least = std::min(found.ordinary_least, slow_work_load(plant, study.settings, study.logic));
    found.shut_least = std::min(found.shut_least, found.ordinary_least);
  }
  return found;
}

double most(std::vector<Loads> const& all, double Loads::*member) {
  double found = all.front().*member;
  for (auto const& c : all) {
    found = std::max(found, c.*member);
  }
  return found;
}

double least(std::vector<Loads> const& all, double Loads::*member) {
  double found = all.front().*member;
  for (auto const& c : all) {
    found = std::min(found, c.*member);
  }
  return found;
}

/// The load against which a gap is wide or narrow: the limit of current, or the motor's plate.
double scale_of(Study const& study) {
  return study.logic.guard_by == GuardBy::power ? study.plants.front().site.motor.power_w
                                                : study.settings.motor_current_limit_a;
}

/// A threshold between two kinds of load, and whether it parts them in every draw.
struct Threshold {
  double set = 0;
  double lower_most = 0;  // of the lower kind over the draws
  double upper_least = 0;
  bool parts_all = false;
  bool parts_each = false;
  std::size_t misjudged = 0;  // draws in which one of the two lies on the wrong side
};

std::size_t misjudged(std::vector<Loads> const& all, double Loads::*lower, double Loads::*upper, double set) {
  auto const wrong =
      std::count_if(all.begin(), all.end(), [&](Loads const& c) { return c.*lower >= set || c.*upper < set; });
  return static_cast<std::size_t>(wrong);
}

// Where the two overlap: what misjudges the fewest draws, and of such the lowest, for ordinary work goes on then.
double fewest_misjudged(std::vector<Loads> const& all, double Loads::*lower, double Loads::*upper, Threshold const& t,
                        double step) {
  double const lowest = rounded_down(t.upper_least, step);
  double found = lowest;
  for (int steps = 1; lowest + (steps - 1) * step < t.lower_most; ++steps) {
    double const set = lowest + steps * step;
    if (misjudged(all, lower, upper, set) < misjudged(all, lower, upper, found)) {
      found = set;
    }
  }
  return found;
}

Threshold between(std::vector<Loads> const& all, double Loads::*lower, double Loads::*upper, double scale,
                  double step) {
  Threshold t;
  t.lower_most = most(all, lower);
  t.upper_least = least(all, upper);
  t.parts_all = t.upper_least - t.lower_most >= least_gap_share * scale;
  t.parts_each = std::all_of(all.begin(), all.end(),
                             [&](Loads const& c) { return c.*upper - c.*lower >= least_gap_share * scale; });
  t.set = t.upper_least > t.lower_most ? rounded(0.5 * (t.lower_most + t.upper_least), step)
                                       : fewest_misjudged(all, lower, upper, t, step);
  t.misjudged = misjudged(all, lower, upper, t.set);
  return t;
}

std::string where_it_lies(Study const& study, Threshold const& t) {
  double const gap = t.upper_least - t.lower_most;
  if (t.set < t.lower_most && !t.parts_all && study.logic.guard_where == GuardWhere::any_speed) {
    return "below both";
  }
  return gap > 0 ? fmt::format("in the middle, {} from either", load_text(study, 0.5 * gap))
                 : fmt::format("where it misjudges the fewest draws, {} of {}", t.misjudged, study.plants.size());
}

void explain(Study& study, std::string_view key, Threshold const& t, std::string_view lower, std::string_view upper,
             std::string_view measure) {
  study.because(
      key, fmt::format("At {} {} takes {} at the most and {} {} at the least over the draws; the threshold lies {}.",
                       study.speed(study.settings.speed_ceiling_hz), lower, load_text(study, t.lower_most), upper,
                       load_text(study, t.upper_least), where_it_lies(study, t)));
  if (t.parts_all) {
    return;
  }
  bool const by_power = study.logic.guard_by == GuardBy::power;
  study.conflict(key,
                 t.parts_each
                     ? fmt::format("In each draw the two are apart, but not by one figure for all: {} {} of one "
                                   "reaches {} of another.",
                                   lower, load_text(study, t.lower_most), load_text(study, t.upper_least))
                     : fmt::format("{} and {} take the same {} within {}, or the other way round.", lower, upper,
                                   by_power ? "power" : "current", load_text(study, least_gap_share * scale_of(study))),
                 std::string(measure));
}

// A threshold that would stop ordinary work stops it every day; one that misses a dry pump fails when it is dry. Where
// nothing parts the two, ordinary work goes on.
void keep_below_work(Study const& study, Threshold& t, double step) {
  if (study.logic.guard_where == GuardWhere::any_speed && !t.parts_all) {
    t.set = rounded_down(below_work_share * t.upper_least, step);
  }
}

}  // namespace

void derive_guards(Study& study) {
  auto& settings = study.settings;
  bool const any_speed = study.logic.guard_where == GuardWhere::any_speed;
  double const step = study.logic.guard_by == GuardBy::power ? power_step_w : amps_step_a;
  std::vector<Loads> all;
  all.reserve(study.plants.size());
  for (auto const& plant : study.plants) {
    all.push_back(loads(study, plant));
  }
  auto dry =
      between(all, &Loads::dry_most, any_speed ? &Loads::ordinary_least : &Loads::shut_least, scale_of(study), step);
  auto shut = between(all, &Loads::shut_most, &Loads::ordinary_least, scale_of(study), step);
  keep_below_work(study, dry, step);
  keep_below_work(study, shut, step);
  dry_below(study) = dry.set;
  closed_below(study) = shut.set;
  explain(study, dry_key(study.logic), dry, "a pump without water",
          any_speed ? "the slowest ordinary work" : "one against a shut line",
          any_speed
              ? "A drive whose guards look only near full speed, or a float or level probe on the permissive contact."
              : "Reading it on site at the ceiling against a shut valve for a few seconds, and setting 0.8 of "
                "it; a plate and a pump curve in place of typical ones narrow it as well.");
  explain(study, closed_key(study.logic), shut, "a pump against a shut line",
          any_speed ? "the slowest ordinary work" : "one at work with its pressure lost",
          any_speed ? "A drive whose guards look only near full speed, or a temperature switch at the well head."
                    : "Reading it on site at the ceiling, shut and with a tap wide open, and setting the middle; more "
                      "head in the pump moves ordinary work further from shut.");
  explain_where_guards_look(study);
  bool const by_power = study.logic.guard_by == GuardBy::power;
  for (auto const key : by_power ? std::array{"dry_run.amps_below", "closed.amps_below"}
                                 : std::array{"dry_run.power_below", "closed.power_below"}) {
    study.because(key, "");
  }

  double const settle_s = 3 * study.logic.current_filter_s + air_slug_s;
  double const asleep_s = settings.sleep_hold_s + settle_s + after_hold_s;
  settings.dry_run_delay_s =
      any_speed ? rounded_up(asleep_s, 1) : std::max(rounded(std::sqrt(settle_s * dry_harm_s), 1), 1.0);
  study.because(
      "dry_run.delay",
      any_speed ? fmt::format("Longer than an idle pump takes to sleep ({}), which loads its motor no more than a dry "
                              "one; a bearing without water is harmed in {} (common practice).",
                              study.time(asleep_s), study.time(dry_harm_s))
                : fmt::format("Longer than the filtered {} takes to settle after a start ({}), shorter than a bearing "
                              "without water is harmed ({}, common practice).",
                              by_power ? "power" : "current", study.time(settle_s), study.time(dry_harm_s)));
  if (any_speed && settings.dry_run_delay_s > dry_harm_s) {
    study.conflict("dry_run.delay", "A dry bearing is harmed before this delay is over.",
                   "A drive whose guards look only near full speed.");
  }

  auto const heats = extent(study.plants, [&](Plant const& plant) {
    double const shaft_w = shut_point(plant, settings.speed_ceiling_hz).motor.shaft_power_w;
    return (hot_c - plant.site.well.water_temperature_c) / churning_rate_k_s(shaft_w, plant.site.pump.water_held_m3);
  });
  double const upper_s = std::min(0.5 * heats.low, patience_s);
  double const closed_s = std::sqrt(settle_s * std::max(upper_s, settle_s));
  settings.closed_delay_s = std::max(rounded(any_speed ? std::max(closed_s, asleep_s) : closed_s, 1), 1.0);
  study.because(
      "closed.delay",
      fmt::format("Longer than the filtered {} takes to settle ({}); against a shut line the water in the pump "
                  "comes to {} in {} to {}, of which no more than half, and no more than {}.",
                  by_power ? "power" : "current", study.time(any_speed ? asleep_s : settle_s),
                  write_quantity(hot_c, Dimension::temperature, study.units), study.time(heats.low),
                  study.time(heats.high), study.time(patience_s)));
  explain_snoring(study);
}

}  // namespace wellproof
