// What the guards' figures mean on this site, in words; and which of them a drive works by.
#include "settings/guard_load.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace wellproof {
namespace {

constexpr double slow_speed_hz = 45;  // at which the figures are shown for comparison

}  // namespace

std::string load_text(Study const& study, double load) {
  return study.logic.guard_by == GuardBy::power ? fmt::format("{:.0f} W", load) : study.current(load);
}

double slow_work_load(Plant const& plant, Settings const& settings, Logic const& logic) {
  double least = 1e9;
  if (logic.sleep_test == SleepTest::slow_speed) {
    double const tee_pa = true_pressure_pa(plant, settings, settings.pressure_target_pa);
    double const speed_hz =
        std::max(settings.sleep_speed_below_hz, zero_flow_speed_hz(plant, tee_pa, plant.well.static_level_depth_m));
    least = guard_load(logic, shut_point(plant, std::min(speed_hz, settings.speed_ceiling_hz)).motor);
  }
  if (logic.line_fill) {
    double const full_pa = true_pressure_pa(plant, settings, logic.full_line_share * settings.pressure_target_pa);
    double const speed_hz = zero_flow_speed_hz(plant, full_pa, plant.well.static_level_depth_m);
    double const fill_hz = std::min(std::max(speed_hz, settings.speed_floor_hz), settings.speed_ceiling_hz);
    least = std::min(least, guard_load(logic, shut_point(plant, fill_hz).motor));
  }
  return least;
}

std::string_view dry_key(Logic const& logic) {
  return logic.guard_by == GuardBy::power ? "dry_run.power_below" : "dry_run.amps_below";
}
std::string_view closed_key(Logic const& logic) {
  return logic.guard_by == GuardBy::power ? "closed.power_below" : "closed.amps_below";
}

double& dry_below(Study& study) {
  return study.logic.guard_by == GuardBy::power ? study.settings.dry_run_power_below_w
                                                : study.settings.dry_run_amps_below_a;
}
double& closed_below(Study& study) {
  return study.logic.guard_by == GuardBy::power ? study.settings.closed_power_below_w
                                                : study.settings.closed_amps_below_a;
}

void explain_where_guards_look(Study& study) {
  auto const& middle_plant = study.plants.front();
  auto const& settings = study.settings;
  double const slow_hz = std::min(slow_speed_hz, 0.8 * settings.speed_ceiling_hz);
  auto const seen = [&](OperatingPoint const& point) { return guard_load(study.logic, point.motor); };
  double const dry = seen(dry_point(middle_plant, slow_hz));
  double const shut = seen(shut_point(middle_plant, slow_hz));
  double const open = seen(point_at_speed(middle_plant, slow_hz, 0, middle_plant.well.static_level_depth_m));
  if (study.logic.guard_where == GuardWhere::any_speed) {
    study.because(
        dry_key(study.logic),
        fmt::format("This drive's guards look at any speed by one threshold. At {} dry, shut and freely flowing "
                    "take {}, {} and {}: what is dry at {} may be a shower there, so the threshold has to keep "
                    "below work at low speed.",
                    study.speed(slow_hz), load_text(study, dry), load_text(study, shut), load_text(study, open),
                    study.speed(settings.speed_ceiling_hz)));
    return;
  }
  study.because(
      dry_key(study.logic),
      fmt::format("Both guards look only from {} up and below {}: at {} dry, shut and freely flowing differ by "
                  "{} in all ({}, {}, {}), and a threshold would mean nothing.",
                  study.speed(study.logic.guard_speed_share * settings.speed_ceiling_hz),
                  study.pressure(study.logic.guard_pressure_share * settings.pressure_target_pa), study.speed(slow_hz),
                  load_text(study, std::max({dry, shut, open}) - std::min({dry, shut, open})), load_text(study, dry),
                  load_text(study, shut), load_text(study, open)));
}

void explain_snoring(Study& study) {
  double const top_hz = study.settings.speed_ceiling_hz;
  bool const by_power = study.logic.guard_by == GuardBy::power;
  std::size_t overdrawn = 0;
  std::size_t seen_dry = 0;
  std::size_t seen_closed = 0;
  Extent unseen_flow;
  std::size_t unseen = 0;
  for (auto const& plant : study.plants) {
    auto const snoring = snoring_point(plant, top_hz);
    if (snoring.wetness >= 1) {
      continue;
    }
    ++overdrawn;
    double const seen = guard_load(study.logic, snoring.motor);
    if (seen < dry_below(study)) {
      ++seen_dry;
    } else if (seen < closed_below(study)) {
      ++seen_closed;
    } else {
      double const flow_m3_s = snoring.flow_m3_s;
      unseen_flow =
          unseen == 0 ? Extent{flow_m3_s, flow_m3_s, flow_m3_s}
                      : Extent{std::min(unseen_flow.low, flow_m3_s), flow_m3_s, std::max(unseen_flow.high, flow_m3_s)};
      ++unseen;
    }
  }
  if (overdrawn == 0) {
    return;
  }
  study.caution(
      "snoring_well",
      fmt::format("In {} of {} draws the pump at {} can draw the well down to its intake and then passes what the "
                  "well gives, mixed with air. Its {} then lies under the dry-run threshold in {}, between it "
                  "and the closed-discharge threshold in {} of them: the stop is then called closed discharge.",
                  overdrawn, study.plants.size(), study.speed(top_hz), by_power ? "power" : "current", seen_dry,
                  seen_closed));
  if (unseen > 0) {
    study.caution(
        "overdrawn_well",
        fmt::format("In {} of {} draws an overdrawn well still gives {} to {}, and the {} stays above both "
                    "thresholds: the household can be held at low pressure for hours without a guard acting. What "
                    "catches it: a level probe on the permissive contact, or watching for pressure below the target "
                    "at the ceiling for longer than a few minutes.",
                    unseen, study.plants.size(), study.flow(unseen_flow.low), study.flow(unseen_flow.high),
                    by_power ? "power" : "current"));
  }
}

}  // namespace wellproof
