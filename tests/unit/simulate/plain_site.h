#pragma once
// A site of plain numbers and settings that suit it, for runs whose outcome can be worked out beside them.
#include <algorithm>
#include <vector>

#include <gtest/gtest.h>

#include "plant/operating.h"
#include "plant/plant.h"
#include "regulator/settings.h"
#include "simulate/run.h"
#include "site/draw.h"
#include "site/read.h"

namespace wellproof {

inline constexpr double psi_pa = 6894.757293168;
inline constexpr double gpm_m3_s = 6.30901964e-5;

inline DrawnSite plain_site() {
  static DrawnSite const site = [] {
    char const* const text = R"(
[site]
name = "Plain"
[well]
static_level = "60 ft"
season_drop = "0 ft"
specific_capacity = "1 gpm/ft"
casing = "6 in"
depth = "140 ft"
[pump]
setting = "110 ft"
rated_flow = "10 gpm"
wear = 0
[motor]
power = "1.5 hp"
voltage = "230 V"
service_factor_current = "5.9 A"
[supply]
voltage = "240 V"
[tank]
volume = "10 gal"
precharge = "30 psi"
[sensor]
full_scale = "100 psi"
noise = "0 psi"
resolution = "0 psi"
gain_error = 0
zero_error = "0 psi"
[demand]
outlet_pressure = "38 psi"
outlet_rise = "10 ft"
least_draw = "1 gpm"
peak_draw = "9 gpm"
leak = "0.02 gpm"
)";
    auto read = read_site(text, "plain.toml");
    if (!read) {
      for (auto const& finding : read.error()) {
        ADD_FAILURE() << wellproof::text(finding);
      }
      return DrawnSite{};
    }
    return draw(read->site, 1, 0);
  }();
  return site;
}

inline Plant plain_plant() {
  return build(plain_site());
}

/// Settings that follow from this one plant alone.
inline Settings plain_settings(Plant const& plant) {
  Settings s;
  s.pressure_target_pa = 50 * psi_pa;
  s.pressure_wake_drop_pa = 6 * psi_pa;
  s.pressure_stop_above_pa = 90 * psi_pa;
  s.sensor_full_scale_pa = plant.site.sensor.full_scale_pa;
  s.motor_current_limit_a = plant.site.motor.service_factor_current_a;
  s.speed_floor_hz = 30;
  s.speed_ceiling_hz = 60;
  s.speed_ramp_up_hz_s = 10;
  s.speed_ramp_down_hz_s = 10;
  s.regulator_gain_hz_pa = 0.25 / psi_pa;
  s.regulator_reset_time_s = 3;
  double const level_m = plant.well.static_level_depth_m;
  s.sleep_speed_below_hz = zero_flow_speed_hz(plant, s.pressure_target_pa, level_m) + 0.5;
  s.sleep_hold_s = 8;
  s.sleep_band_pa = 2 * psi_pa;
  s.sleep_ramp_hz_s = 0.5;
  double const dry_a = dry_point(plant, 60).motor.current_a;
  double const shut_a = shut_point(plant, 60).motor.current_a;
  double const ordinary_a = point_at_speed(plant, 60, s.pressure_target_pa, level_m).motor.current_a;
  s.dry_run_amps_below_a = 0.5 * (dry_a + shut_a);
  s.dry_run_delay_s = 6;
  s.dry_run_rest_s = 600;
  s.closed_amps_below_a = 0.5 * (shut_a + ordinary_a);
  s.closed_delay_s = 10;
  s.long_run_limit_s = 4 * 3600;
  s.fill_time_s = 300;
  s.fill_speed_hz = 45;
  return s;
}

/// A day's beginning: asleep at the target, then a draw on one outlet for a while.
inline Scenario draw_scenario(Settings const& settings, std::size_t place, double opening, double from_s, double to_s,
                              double duration_s) {
  Scenario s;
  s.name = "draw";
  s.duration_s = duration_s;
  s.start = {.tee_pressure_pa = settings.pressure_target_pa, .after_power_up = false};
  s.script = ramp(Act::outlet_opening, place, from_s, from_s + 0.5, 0, opening);
  auto const shut = ramp(Act::outlet_opening, place, to_s, to_s + 0.5, opening, 0);
  s.script.insert(s.script.end(), shut.begin(), shut.end());
  return s;
}

/// The scenario with one more change, in its place.
inline Scenario with(Scenario scenario, Change const& change) {
  scenario.script.push_back(change);
  std::stable_sort(scenario.script.begin(), scenario.script.end(),
                   [](Change const& a, Change const& b) { return a.time_s < b.time_s; });
  return scenario;
}

inline bool has_stop(Trace const& trace, StopCause cause) {
  return std::any_of(trace.events.begin(), trace.events.end(), [&](TraceEvent const& event) {
    return event.what.kind == RegulatorEvent::Kind::stopped && event.what.cause == cause;
  });
}

inline bool has(Trace const& trace, RegulatorEvent::Kind kind) {
  return std::any_of(trace.events.begin(), trace.events.end(),
                     [&](TraceEvent const& event) { return event.what.kind == kind; });
}

}  // namespace wellproof
