// Pump, tank, motor and drive: worn, broken, hot.
#include <algorithm>
#include <cmath>

#include "plant/water.h"
#include "proof/hazard_makers.h"

namespace wellproof {
namespace {

/// Opening through which a flow runs under a head, by Torricelli.
double gap_m2(double flow_m3_s, double head_m) {
  return flow_m3_s / std::sqrt(2 * gravity_m_s2 * head_m);
}

/// From the water at rest to the tee, and the pressure there.
double column_m(Plant const& plant, Settings const& settings) {
  return plant.well.static_level_depth_m + plant.tee_elevation_m + settings.pressure_target_pa / plant.weight_n_m3;
}

}  // namespace

Trial worn_pump(Plant const& plant, Settings const& settings) {
  // Inner leakage of 15 % of the best flow on top of the site's: years of sand.
  TrialDraft d(plant, settings, "worn_pump", 15 * minute_s);
  d.asleep_at_target()
      .change(0, Act::wear, 0.15)
      .draw(outlet::house, 0.5, 20, 6 * minute_s)
      .draw(outlet::least, 1, 7 * minute_s, 10 * minute_s)
      .no_stop()
      .keeps_outlet(20 + waking_s, 6 * minute_s, felt_share, waking_s)
      .harms_nothing();
  return d.done();
}

Trial check_valve_leaks(Plant const& plant, Settings const& settings) {
  // Grit under the seat lets a third of a litre a minute back into the well. Nothing in the drive knows it from a tap
  // that drips; what tells is that the pump starts all night.
  constexpr double leak_m3_s = 5e-6;
  double const night_s = 2 * hour_s;
  TrialDraft d(plant, settings, "check_valve_leaks", night_s);
  d.asleep_at_target()
      .change(0, Act::check_leak, gap_m2(leak_m3_s, column_m(plant, settings)))
      .draw(outlet::house, 0.3, 30, 5 * minute_s)
      .no_stop()
      .sleeps_within(5 * minute_s, 2 * asleep_limit_s)
      .runs_at_most(10 * minute_s, night_s, 1.0 / 3)
      .starts_at_most(10 * minute_s, night_s, starts_per_hour)
      .harms_nothing();
  return d.done();
}

Trial tank_lost_charge(Plant const& plant, Settings const& settings) {
  // Seven tenths of the gas are gone, or as much as leaves the water in the tank under some pressure: the gas does not
  // go faster than water can take its place.
  double const atmosphere_pa = plant.tank.atmosphere_pa_abs;
  double const share = std::max(0.3, 1.2 * atmosphere_pa / (settings.pressure_target_pa + atmosphere_pa));
  TrialDraft d(plant, settings, "tank_lost_charge", 40 * minute_s);
  d.asleep_at_target()
      .change(1, Act::tank_charge, share)
      .draw(outlet::house, 0.4, 5 * minute_s, 10 * minute_s)
      .draw(outlet::least, 1, 12 * minute_s, 20 * minute_s)
      .no_stop()
      .starts_at_most(0, 40 * minute_s, starts_per_hour)
      .harms_nothing();
  return d.done();
}

Trial drop_pipe_holed(Plant const& plant, Settings const& settings) {
  // A twentieth of the pump's best flow runs back through a hole halfway down. Whether the pump can sleep is not asked:
  // it must not wear itself out, and if it never sleeps the limit on long runs makes it known.
  double const night_s = hour_s;
  double const head_m = column_m(plant, settings) - plant.well.static_level_depth_m +
                        std::min(plant.well.static_level_depth_m, 0.5 * plant.site.pump.setting_depth_m);
  TrialDraft d(plant, settings, "drop_pipe_holed", night_s);
  d.asleep_at_target()
      .change(minute_s, Act::hole, gap_m2(0.05 * plant.pump.best_flow_m3_s(), head_m))
      .draw(outlet::house, 0.3, 2 * minute_s, 6 * minute_s)
      .starts_at_most(10 * minute_s, night_s, starts_per_hour)
      .harms_nothing();
  return d.done();
}

Trial uneven_volts(Plant const& plant, Settings const& settings) {
  // A splice that corrodes: the volts at the motor differ by 3 %, which by NEMA MG 1 heats it by 18 % more. The current
  // limit may take speed away, so pressure is not asked for.
  double const draw_s = std::min(30 * minute_s, 0.8 * plant.site.demand.longest_run_s);
  TrialDraft d(plant, settings, "uneven_volts", draw_s + 5 * minute_s);
  d.asleep_at_target()
      .change(0, Act::volts_unbalance, 0.03)
      .draw(outlet::house, 0.5, 20, draw_s)
      .no_stop()
      .harms_nothing();
  return d.done();
}

Trial hot_day_at_drive(Plant const& plant, Settings const& settings) {
  // The sink follows in ten minutes; nobody draws for longer than was said to be legitimate.
  double const draw_s = std::min(40 * minute_s, 0.8 * plant.site.demand.longest_run_s);
  TrialDraft d(plant, settings, "hot_day_at_drive", draw_s + 5 * minute_s);
  d.asleep_at_target()
      .change(0, Act::ambient_rise, 15)
      .draw(outlet::house, 0.5, 20, draw_s)
      .no_stop()
      .keeps_outlet(20 + waking_s, draw_s, felt_share, waking_s)
      .harms_nothing();
  return d.done();
}

}  // namespace wellproof
