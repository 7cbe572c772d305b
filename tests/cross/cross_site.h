#pragma once
// The plant that both write, its settings and what happens to it.
#include <cmath>

#include "cross/second_run.h"
#include "plant/water.h"
#include "site/draw.h"
#include "unit/settings/settings_sites.h"

namespace wellproof::cross {

inline constexpr double psi_pa = 6894.757;

// H = 92 m − b·Q² with its run-out at 1.25 l/s; P rises straight.
inline second::PumpLaw pump_law() {
  constexpr double runout_m3_s = 1.25e-3;
  return {.shutoff_head_m = 92,
          .bend_s2_m5 = 92 / (runout_m3_s * runout_m3_s),
          .idle_power_w = 480,
          .power_by_flow_w_s_m3 = 6.5e5,
          .speed_rad_s = 361.3};
}

inline Plant made_plant() {
  SiteText entered;
  entered.more =
      "altitude = \"300 m\"\n[[pipe]]\nplace = \"drop\"\nkind = \"sch80_pvc\"\nsize = \"1-1/4 in\"\n"
      "[[pipe]]\nplace = \"yard\"\nkind = \"dr11_pe\"\nsize = \"1 in\"\nlength = \"90 ft\"\nrise = \"6 ft\"\n"
      "[[pipe]]\nplace = \"house\"\nkind = \"copper_l\"\nsize = \"3/4 in\"\nlength = \"60 ft\"\nrise = \"10 ft\"\n";
  auto site = draw(site_of(entered), 1, 0);
  auto const law = pump_law();
  double const runout_m3_s = std::sqrt(law.shutoff_head_m / law.bend_s2_m5);
  constexpr int pieces = 32;
  site.pump.curve.clear();
  for (int i = 0; i <= pieces; ++i) {
    double const q_m3_s = runout_m3_s * i / pieces;
    double const head_m = i == pieces ? 0 : law.shutoff_head_m - law.bend_s2_m5 * q_m3_s * q_m3_s;
    site.pump.curve.push_back({q_m3_s, head_m, law.idle_power_w + law.power_by_flow_w_s_m3 * q_m3_s});
  }
  site.pump.curve_speed_rad_s = law.speed_rad_s;
  site.pump.flow_factor = site.pump.head_factor = site.pump.power_factor = 1;
  site.pump.wear = 0;
  site.tank.polytropic_exponent = 1.2;
  site.sensor.noise_pa = site.sensor.resolution_pa = 0;
  site.sensor.gain_error = 0.003;
  site.sensor.zero_error_pa = 400;
  site.sensor.lag_s = 0.1;
  site.demand.leak_m3_s = 2e-6;
  // A formation that a run of minutes feels only as far as the second plant's rings reach.
  site.well.storativity = 0.004;
  site.well.linear_loss_s_m2 = 300;
  site.well.quadratic_loss_s2_m5 = 2e5;
  return build(site);
}

inline Settings made_settings(Plant const& plant) {
  Settings s;
  s.pressure_target_pa = 50 * psi_pa;
  s.pressure_wake_drop_pa = 6 * psi_pa;
  s.pressure_stop_above_pa = 90 * psi_pa;
  s.sensor_full_scale_pa = plant.site.sensor.full_scale_pa;
  s.motor_current_limit_a = 5.9;
  s.speed_floor_hz = 30;
  s.speed_ceiling_hz = 60;
  s.speed_ramp_up_hz_s = 15;
  s.speed_ramp_down_hz_s = 15;
  s.regulator_gain_hz_pa = 2e-4;
  s.regulator_reset_time_s = 4;
  s.sleep_speed_below_hz = 45.2;
  s.sleep_hold_s = 4;
  s.sleep_band_pa = 3 * psi_pa;
  s.sleep_ramp_hz_s = 0.5;
  s.long_run_limit_s = 7200;
  s.fill_time_s = 300;
  s.fill_speed_hz = 50;
  s.dry_run_delay_s = s.closed_delay_s = 5;
  s.dry_run_rest_s = 60;
  return s;
}

// Two taps one after the other and the sleep between them; the second one opens between two samples.
inline Scenario taps() {
  Scenario s;
  s.name = "taps";
  s.duration_s = 240;
  s.start = {.tee_pressure_pa = 50 * psi_pa, .after_power_up = false};
  auto const add = [&](std::vector<Change> const& changes) {
    s.script.insert(s.script.end(), changes.begin(), changes.end());
  };
  add(ramp(Act::outlet_opening, outlet::house, 5, 5.5, 0, 0.7));
  add(ramp(Act::outlet_opening, outlet::house, 130, 130.5, 0.7, 0));
  add(ramp(Act::outlet_opening, outlet::least, 180.02, 180.52, 0, 1));
  add(ramp(Act::outlet_opening, outlet::house, 190, 190.5, 0, 1));
  return s;
}

// A weak well drawn down until the pump takes in air, on low volts.
inline Scenario air() {
  Scenario s;
  s.name = "air";
  s.duration_s = 120;
  s.start = {.tee_pressure_pa = 40 * psi_pa, .level_drop_m = 19.8, .after_power_up = true};
  s.script = {{.time_s = 0, .act = Act::inflow_share, .value = 0.04},
              {.time_s = 2, .act = Act::outlet_opening, .outlet = outlet::house, .value = 0.9},
              {.time_s = 3, .act = Act::supply_share, .value = 0.9}};
  return s;
}

// All pipe above the water is drained.
inline Scenario empty_line() {
  Scenario s;
  s.name = "empty_line";
  s.duration_s = 150;
  s.start = {.line_empty = true};
  return s;
}

inline second::SecondRun second_of(Plant const& plant, Scenario const& scenario, double tolerance = 1e-10) {
  second::Plant2 const plant2(plant, pump_law(), water_viscosity_m2_s(plant.site.well.water_temperature_c));
  return second::second_run(plant, plant2, made_settings(plant), scenario, {}, tolerance);
}

}  // namespace wellproof::cross
