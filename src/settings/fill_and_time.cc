// Line fill, the long-run guard, and the two settings that are a choice.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "settings/study.h"

namespace wellproof {
namespace {

constexpr double fill_flow_share = 0.3;   // of best-efficiency flow: little thrust, yet the motor is cooled
constexpr double over_full_share = 1.15;  // the fill must pass the pressure from which the line counts as full
constexpr double fill_step_hz = 0.5;
constexpr double fill_time_step_s = 10;
constexpr double gate_share = 0.98;     // of the guards' lowest speed: where filling keeps clear of them
constexpr double run_reserve = 1.15;    // on the longest run that is legitimate
constexpr double most_run_reserve = 2;  // where a break would be borne for longer (common practice, no source)
constexpr double long_step_s = 300;
constexpr double tap_left_s = 1800;  // one tap left running, whatever run was stated (common practice, no source)

/// Tee pressure from which the line counts as full, with its reserve.
double full_pa(Study const& study, Plant const& plant) {
  return true_pressure_pa(plant, study.settings,
                          over_full_share * study.logic.full_line_share * study.settings.pressure_target_pa);
}

double longest_run_s(Plant const& plant) {
  double zones_s = 0;
  for (auto const& zone : plant.site.demand.zones) {
    zones_s += zone.time_s;
  }
  return std::max(plant.site.demand.longest_run_s, zones_s);
}

/// The most that runs away in the long run: what the pump passes with the pressure lost, or what the well gives.
double burst_flow_m3_s(Study const& study, Plant const& plant) {
  double const deepest_m = deepest_wet_level_m(plant);
  double const pumped_m3_s =
      point_at_speed(plant, study.settings.speed_ceiling_hz, 0, plant.well.static_level_depth_m).flow_m3_s;
  double const given_m3_s = plant.well.flow_for_level_m3_s(deepest_m);
  return std::min(pumped_m3_s, std::max(given_m3_s, 0.0));
}

/// What has been lost from the casing by then.
double store_m3(Plant const& plant) {
  return plant.well.bore_area_m2 * (deepest_wet_level_m(plant) - plant.well.static_level_depth_m);
}

void derive_fill(Study& study) {
  auto& settings = study.settings;
  auto const asked = extent(study.plants, [&](Plant const& plant) {
    double const flow_m3_s = fill_flow_share * plant.pump.best_flow_m3_s();
    return point_for_flow(plant, flow_m3_s, full_pa(study, plant), plant.well.static_level_depth_m).speed_hz;
  });
  double const gate_hz = study.logic.guard_speed_share * settings.speed_ceiling_hz;
  double const highest_hz = rounded_down(gate_share * gate_hz, fill_step_hz);
  double const wanted_hz = std::max(rounded_up(asked.high, fill_step_hz), study.logic.start_speed_hz);
  settings.fill_speed_hz = std::min(wanted_hz, highest_hz);
  study.because(
      "fill.speed",
      fmt::format("Lifts {:.0f} % of best-efficiency flow to the tee against {} (from half the target the line counts "
                  "as full): {} to {} over the draws. Below {}, from where the amps guards look.",
                  100 * fill_flow_share, study.pressure(full_pa(study, study.plants.front())), study.speed(asked.low),
                  study.speed(asked.high), study.speed(gate_hz)));
  if (wanted_hz > highest_hz) {
    study.conflict("fill.speed",
                   fmt::format("Filling asks for {} in the worst draw, too near the guards' {}.",
                               study.speed(wanted_hz), study.speed(gate_hz)),
                   "A higher ceiling (see speed.ceiling) or a pump with more head.");
  }

  auto const takes = extent(study.plants, [&](Plant const& plant) {
    double const against_pa = full_pa(study, plant);
    auto const open = point_at_speed(plant, settings.fill_speed_hz, 0, plant.well.static_level_depth_m);
    auto const full = point_at_speed(plant, settings.fill_speed_hz, against_pa, plant.well.static_level_depth_m);
    double const least_m3_s = 0.05 * fill_flow_share * plant.pump.best_flow_m3_s();
    double const line_s = plant.line_volume_m3 / std::max(open.flow_m3_s, least_m3_s);
    double const tank_s = stored_m3(plant, against_pa) / std::max(full.flow_m3_s, least_m3_s);
    return line_s + tank_s;
  });
  settings.fill_time_s = rounded_up(fill_reserve * takes.high, fill_time_step_s);
  auto const line = extent(study.plants, [](Plant const& plant) { return plant.line_volume_m3; });
  study.because(
      "fill.time",
      fmt::format("The empty line holds {} to {}; with what the tank takes up to there the fill needs "
                  "{} to {} over the draws, and half as much again is allowed.",
                  study.volume(line.low), study.volume(line.high), study.time(takes.low), study.time(takes.high)));
}

void derive_long_run(Study& study) {
  auto const legitimate = extent(study.plants, longest_run_s);
  auto const flow = extent(study.plants, [&](Plant const& plant) { return burst_flow_m3_s(study, plant); });
  auto const loses = extent(study.plants, [&](Plant const& plant) {
    double const allowed_m3 = plant.site.limits.water_loss_m3;
    double const flow_m3_s = burst_flow_m3_s(study, plant);
    return allowed_m3 > 0 ? std::max(allowed_m3 - store_m3(plant), 0.25 * allowed_m3) / std::max(flow_m3_s, 1e-9) : 1e9;
  });
  bool const limited = loses.low < 1e9;
  double const wanted_s = rounded_up(run_reserve * legitimate.high, long_step_s);
  double const usual_s = std::max(legitimate.high, tap_left_s);
  // Where a break leaves time: as many times over the longest run and its reserve as under what the loss allows.
  double const middle_s = std::min(std::sqrt(run_reserve * usual_s * loses.low), most_run_reserve * usual_s);
  double const longer_s = limited ? std::min(rounded(middle_s, long_step_s), rounded_down(loses.low, long_step_s))
                                  : rounded_up(run_reserve * usual_s, long_step_s);
  bool const longer = longer_s > wanted_s;
  study.settings.long_run_limit_s = std::max(wanted_s, longer_s);
  study.because(
      "long_run.limit",
      fmt::format("The longest legitimate run is {} (stated or the zones one after the other), and a seventh more is "
                  "allowed{}{}. A break loses up to {} in the long run{}.",
                  study.time(legitimate.high), longer ? " at the least" : "",
                  usual_s > legitimate.high
                      ? fmt::format("; a tap may be left running for {} besides (common practice)", study.time(usual_s))
                      : "",
                  study.flow(flow.high),
                  limited ? fmt::format("; {} are allowed to be lost, which takes {} at the least{}",
                                        study.volume(study.plants.front().site.limits.water_loss_m3),
                                        study.time(loses.low), longer ? ", and the limit lies between" : "")
                          : "; no limit to the loss was stated"));
  if (limited && loses.low < wanted_s) {
    study.conflict(
        "long_run.limit",
        fmt::format("By then {} may have run away, more than the {} allowed: a break cannot be told from the longest "
                    "run by time.",
                    study.volume(flow.high * wanted_s), study.volume(study.plants.front().site.limits.water_loss_m3)),
        "Shorter zones or irrigation in two programmes with a pause, a flow switch or leak valve of its own, or "
        "accepting the loss.");
  }
}

}  // namespace

void derive_fill_and_time(Study& study) {
  derive_fill(study);
  derive_long_run(study);
}

void derive_choices(Study& study) {
  study.settings.permissive_sense = ContactSense::unused;
  study.because(permissive_key,
                "Nothing outside is known to be wired. With a level probe or a float set closed_runs: a broken "
                "wire then stops the pump.");
  study.settings.fault_contact_sense = FaultSense::closes_on_stop;
  study.because(fault_contact_key,
                "A lamp or bell in series then acts on a stop. Where loss of supply has to be reported as "
                "well, wire it to open on a stop.");
}

void note_what_does_not_apply(Study& study) {
  for (auto& reason : study.reasons) {
    if (!applies(study.logic, reason.key)) {
      reason = {.key = reason.key,
                .because = "The drive has no such setting.",
                .stands_in_the_way = {},
                .would_change_it = {}};
      study.not_on_drive.push_back(reason.key);
    }
  }
  if (!study.logic.two_contact_switch) {
    return;
  }
  for (auto const key :
       {"sensor.full_scale", "sensor.trim", "regulator.gain", "regulator.reset_time", "sleep.speed_below", "sleep.hold",
        "sleep.band", "sleep.ramp", "pressure.stop_above", "fill.time", "fill.speed"}) {
    study.because(key,
                  "Does not apply while a pressure switch controls the pump; the figure is for a sensor fitted later.");
  }
  study.because("pressure.target", "The switch opens at this pressure.");
  study.because("pressure.wake_drop", "The switch closes this far below the target.");
}

}  // namespace wellproof
