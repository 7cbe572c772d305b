// Sensor, contact and settings.
#include <algorithm>
#include <cmath>

#include "explain/fault_makers.h"
#include "plant/operating.h"
#include "quantity/customary.h"

namespace wellproof {
namespace {

/// For so long, at times by lot.
void now_and_then(Faulty& faulty, Chance& chance, int count, Act act, double value, double usual, double least_s,
                  double most_s) {
  for (int i = 0; i < count; ++i) {
    double const at_s = chance.between(0, day_s - minute_s);
    double const lasts_s = chance.by_size(least_s, most_s);
    faulty.of_day.push_back({.time_s = at_s, .act = act, .value = value});
    faulty.of_day.push_back({.time_s = std::min(at_s + lasts_s, day_s - 1), .act = act, .value = usual});
  }
}

}  // namespace

void sensor_plugged(Faulty& faulty, Chance& chance) {
  double const lag_s = chance.by_size(15, 250);
  faulty.lasting.push_back({.act = Act::sensor_lag, .value = lag_s});
  faulty.severity = {"the sensor follows only after", lag_s, Dimension::time};
}

void sensor_drifted(Faulty& faulty, Chance& chance) {
  double const share = chance.between(0.06, 0.3) * (chance.says(0.5) ? 1 : -1);
  double const drift_pa = share * faulty.settings.pressure_target_pa * 1.5;
  faulty.lasting.push_back({.act = Act::sensor_zero, .value = drift_pa});
  faulty.severity = {"the sensor reads too much by", drift_pa, Dimension::pressure};
}

void sensor_wire(Faulty& faulty, Chance& chance) {
  int const count = 1 + static_cast<int>(chance.one_of(8));
  auto const fault = chance.says(0.8) ? SensorFault::open : SensorFault::shorted;
  now_and_then(faulty, chance, count, Act::sensor_fault, static_cast<double>(fault),
               static_cast<double>(SensorFault::none), 2, 5 * minute_s);
  faulty.day_share = chance.by_size(0.15, 1);
  faulty.there_now = false;
  faulty.severity = {"on a day that it happens the signal breaks so often:", static_cast<double>(count),
                     Dimension::none};
}

void contact_says_no(Faulty& faulty, Chance& chance) {
  faulty.contact_wired = true;
  if (faulty.settings.permissive_sense == ContactSense::unused) {
    faulty.settings.permissive_sense = ContactSense::closed_runs;
  }
  double const runs = faulty.settings.permissive_sense == ContactSense::closed_runs ? 1 : 0;
  int const count = 1 + static_cast<int>(chance.one_of(6));
  now_and_then(faulty, chance, count, Act::permissive, 1 - runs, runs, 20, 90 * minute_s);
  faulty.lasting.push_back({.act = Act::permissive, .value = runs});
  faulty.day_share = chance.by_size(0.2, 1);
  faulty.there_now = false;
  faulty.severity = {"on a day that it happens the contact opens so often:", static_cast<double>(count),
                     Dimension::none};
}

void current_limit_wrong(Faulty& faulty, Chance& chance) {
  double const share = chance.between(0.35, 0.82);
  faulty.settings.motor_current_limit_a *= share;
  faulty.severity = {"the limit is set at", faulty.settings.motor_current_limit_a, Dimension::current};
}

void sleep_speed_low(Faulty& faulty, Chance& chance) {
  auto const& plant = faulty.plant;
  double const zero_flow_hz =
      zero_flow_speed_hz(plant, faulty.settings.pressure_target_pa, plant.well.static_level_depth_m);
  double const set_hz = std::max(faulty.settings.speed_floor_hz, chance.between(0.7, 0.97) * zero_flow_hz);
  faulty.settings.sleep_speed_below_hz = std::min(faulty.settings.sleep_speed_below_hz, set_hz);
  // Any house drips: it is this that shows whether the pump can sleep.
  double const drip_m3_s = chance.by_size(0.02, 0.15) * gallon_a_minute_m3_s;
  auto& leak = faulty.plant.outlets[outlet::leak];
  leak.nominal_flow_m3_s = std::max(leak.nominal_flow_m3_s, drip_m3_s);
  faulty.severity = {"the sleep speed is set at", faulty.settings.sleep_speed_below_hz, Dimension::frequency};
}

void thresholds_wrong(Faulty& faulty, Chance& chance) {
  // A ceiling at which a larger draw already takes all the speed there is, and thresholds as high as what the motor
  // takes there; delays short.
  auto const& plant = faulty.plant;
  auto& settings = faulty.settings;
  double const level_m = plant.well.static_level_depth_m;
  double const flow_m3_s = chance.between(0.25, 0.8) * plant.site.demand.peak_draw_m3_s;
  auto const held = point_for_flow(plant, flow_m3_s, settings.pressure_target_pa, level_m);
  if (held.reached) {
    settings.speed_ceiling_hz = std::min(settings.speed_ceiling_hz, held.speed_hz);
  }
  auto const full = point_at_speed(plant, settings.speed_ceiling_hz, 0.9 * settings.pressure_target_pa, level_m);
  // A drive that guards by power has no thresholds in amperes.
  bool const by_power = settings.dry_run_amps_below_a <= 0 && settings.dry_run_power_below_w > 0;
  double const ordinary_a = full.reached ? full.motor.current_a : settings.motor_current_limit_a;
  double const ordinary_w = full.reached ? full.motor.input_power_w : plant.site.motor.power_w;
  double const set = (by_power ? ordinary_w : ordinary_a) * chance.between(0.97, 1.25);
  bool const dry = chance.says(0.75);
  double& dry_below = by_power ? settings.dry_run_power_below_w : settings.dry_run_amps_below_a;
  double& closed_below = by_power ? settings.closed_power_below_w : settings.closed_amps_below_a;
  if (dry) {
    dry_below = std::max(dry_below, set);
  }
  closed_below = std::max(closed_below, set);
  double const delay_s = chance.by_size(1, 8);
  settings.dry_run_delay_s = std::min(settings.dry_run_delay_s, dry ? delay_s : settings.dry_run_delay_s);
  settings.closed_delay_s = std::min(settings.closed_delay_s, dry ? 3 * delay_s : delay_s);
  faulty.severity = {"the threshold is set at", set, by_power ? Dimension::power : Dimension::current};
}

void rest_short(Faulty& faulty, Chance& chance) {
  // It shows where the well is drawn empty now and then.
  faulty.settings.dry_run_rest_s = std::min(faulty.settings.dry_run_rest_s, chance.by_size(1, 10) * minute_s);
  hold_inflow_to(faulty, chance.by_size(0.008, 0.12) * faulty.plant.site.demand.peak_draw_m3_s);
  faulty.severity = {"the rest is set at", faulty.settings.dry_run_rest_s, Dimension::time};
}

void regulator_hot(Faulty& faulty, Chance& chance) {
  double const times = chance.by_size(4, 40);
  faulty.settings.regulator_gain_hz_pa *= times;
  faulty.settings.regulator_reset_time_s /= chance.by_size(1, 12);
  faulty.feel(Symptom::noisy) = 0.3;
  faulty.severity = {"the gain is so many times what it should be:", times, Dimension::none};
}

}  // namespace wellproof
