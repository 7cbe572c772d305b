#pragma once
// A plan made by hand: plausible figures, nothing computed, so that the sheet can be looked at by itself.
#include <cmath>
#include <string>

#include "sheet/plan.h"

namespace wellproof {

inline OperatingMap made_map() {
  OperatingMap map;
  map.target_pa = 344738;
  map.zero_flow_speed_hz = {42, 44, 47};
  map.least_draw_speed_hz = {44, 46, 49};
  for (double speed_hz = 30; speed_hz <= 80; ++speed_hz) {
    double const share = speed_hz / 60;
    auto const amps = [&](double at_60_a) {
      double const current_a = 2 + (at_60_a - 2) * share * share;
      return Spread{0.95 * current_a, current_a, 1.05 * current_a};
    };
    MapRow row;
    row.speed_hz = speed_hz;
    row.dry_a = amps(3);
    row.shut_a = amps(4);
    row.least_draw_a = amps(4.2);
    row.most_draw_a = amps(5.6);
    auto const watts = [&](double at_60_w) {
      double const power_w = at_60_w * share * share * share;
      return Spread{0.95 * power_w, power_w, 1.05 * power_w};
    };
    row.dry_w = watts(400);
    row.shut_w = watts(700);
    row.least_draw_w = watts(750);
    row.most_draw_w = watts(1200);
    double const flow_m3_s = std::max(0.0, 6.3e-4 * (share - 0.7) / 0.3);
    row.flow_at_target_m3_s = {0.9 * flow_m3_s, flow_m3_s, 1.1 * flow_m3_s};
    row.shut_head_m = {90 * share * share, 95 * share * share, 99 * share * share};
    row.shut_pressure_pa = {6e5 * share, 6.2e5 * share, 6.4e5 * share};
    map.rows.push_back(row);
  }
  return map;
}

inline HeadCurves made_curves() {
  HeadCurves curves;
  curves.least_draw_m3_s = 1.9e-5;
  curves.peak_draw_m3_s = 6e-4;
  for (double const speed_hz : {30.0, 40.0, 50.0, 62.0}) {
    PumpLine line{speed_hz, {}};
    double const share = speed_hz / 60;
    for (int i = 0; i <= 20; ++i) {
      double const flow_m3_s = 1.1e-3 * share * i / 20;
      double const part = flow_m3_s / (1.1e-3 * share);
      line.points.push_back({flow_m3_s, 95 * share * share * (1 - part * part)});
    }
    curves.pump.push_back(line);
  }
  for (int i = 0; i <= 20; ++i) {
    double const flow_m3_s = 1.1e-3 * i / 20;
    double const head_m = 47 + 8e6 * flow_m3_s * flow_m3_s;
    curves.water_at_rest.push_back({flow_m3_s, head_m});
    if (i < 15) {
      curves.drawn_down.push_back({flow_m3_s, head_m + 9000 * flow_m3_s});
    }
  }
  return curves;
}

inline Trace made_trace(double duration_s) {
  Trace trace;
  for (double time_s = 0; time_s <= duration_s; time_s += 0.5) {
    TracePoint point;
    point.time_s = time_s;
    double const wave = std::sin(time_s / 40);
    bool const running = time_s > duration_s * 0.1 && time_s < duration_s * 0.7;
    point.tee_pressure_pa = running ? 344738 + 20000 * wave : 330000;
    point.outlet_pressure_pa = point.tee_pressure_pa - (running ? 60000 : 30000);
    point.speed_hz = running ? 52 + 5 * wave : 0;
    point.current_a = running ? 4.1 + 0.4 * wave : 0;
    point.level_depth_m = 12 + (running ? 3 * (1 - std::exp(-(time_s - duration_s * 0.1) / 200)) : 0);
    trace.points.push_back(point);
  }
  trace.events = {{duration_s * 0.1, {RegulatorEvent::Kind::woke, Mode::holding, {}}},
                  {duration_s * 0.66, {RegulatorEvent::Kind::mode, Mode::easing, {}}},
                  {duration_s * 0.7, {RegulatorEvent::Kind::slept, Mode::asleep, {}}},
                  {duration_s * 0.9, {RegulatorEvent::Kind::stopped, Mode::resting, StopCause::dry_run}}};
  Tally tally;
  tally.pumped_m3 = 0.4;
  tally.running_s = 300;
  tally.starts = 1;
  trace.tallies = {tally};
  return trace;
}

inline Plan made_plan() {
  Plan plan;
  auto& site = plan.site.site;
  site.name = "Made Hollow 1";
  site.well.static_level_depth_m = Normal{12.2, 0.9};
  site.pump.setting_depth_m = Fixed{30.48};
  site.pump.rated_flow_m3_s = Fixed{6.309e-4};
  site.motor.power_w = Fixed{1118.5};
  site.tank.volume_m3 = Fixed{0.01};
  plan.site.assumptions = {
      {"pump.wear", Even{0, 0.1}, Dimension::none, "nobody measured it; a new pump leaks little inside"},
      {"well.season_drop", Triangular{0, 1, 5}, Dimension::length,
       "shallow wells follow the season; the log names no month, so that the dry end has to be held too"}};
  auto& s = plan.derived.settings;
  s.pressure_target_pa = 344738;
  s.pressure_wake_drop_pa = 34474;
  s.motor_current_limit_a = 5.9;
  s.speed_floor_hz = 30;
  s.speed_ceiling_hz = 62;
  s.sleep_speed_below_hz = 48;
  s.dry_run_amps_below_a = 3.5;
  s.closed_amps_below_a = 4.4;
  s.long_run_limit_s = 10800;
  each_setting(s, [&](SettingField const& field, double) {
    plan.derived.reasons.push_back({std::string(field.key),
                                    "Because the figures of this site say so, as one may read in "
                                    "the map: between 42 and 47 Hz the pump holds the target with no flow.",
                                    true, "", "", false});
  });
  plan.derived.not_on_drive = {"dry_run.power_below", "closed.power_below"};
  plan.derived.reasons[1].imposed = true;
  plan.derived.reasons[18].feasible = false;
  plan.derived.reasons[18].stands_in_the_way = "shut and least draw differ by less than the meter can tell.";
  plan.derived.reasons[18].would_change_it = "a smaller pump, or a lower target.";
  plan.derived.cautions = {{"relief_valve", "Shut at 62 Hz the pump makes 145 psi; the tank bears 100 psi."}};
  plan.map = made_map();
  plan.curves = made_curves();
  plan.proof.proven = false;
  plan.proof.seed = 1;
  plan.proof.draws = 128;
  for (char const* const name : {"ordinary_day", "quiet_house_with_leak", "well_runs_low"}) {
    ScenarioProof scenario;
    scenario.name = name;
    scenario.title = std::string("A scenario called ") + name;
    scenario.runs = 128;
    scenario.fail_upper95 = 0.0231;
    scenario.worst = {7, true, 0.31, 0, 290000, 275790, Ending::finished};
    scenario.worst_says = "draw 7: keeps 40 psi at the highest outlet: 42.1 psi against 40 psi with pump.wear 0.09";
    plan.proof.scenarios.push_back(scenario);
    plan.worst_runs.push_back({name, made_trace(600)});
  }
  auto& last = plan.proof.scenarios.back();
  last.failed = 3;
  last.fail_upper95 = 0.0596;
  last.worst.passed = false;
  last.worst.margin = -0.004;
  return plan;
}

}  // namespace wellproof
