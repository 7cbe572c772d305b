#include "explain/probe.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "plant/operating.h"
#include "quantity/customary.h"
#include "simulate/run.h"

namespace wellproof {
namespace {

// Times from when the tap is opened.
constexpr double opens_s = 0;
constexpr double half_s = opens_s + 5 * minute_s;
constexpr double full_s = half_s + 3 * minute_s;
constexpr double watch_s = full_s + 3 * minute_s;  // asleep by then
constexpr double watched_s = watch_s + 10 * minute_s;
constexpr double again_s = watched_s + 3 * minute_s;
constexpr double end_s = again_s + 10 * minute_s;
constexpr double half_opening = 0.45;
constexpr double swing_span_s = 2 * minute_s;

TracePoint const& point_before(Trace const& trace, double time_s) {
  auto after = std::upper_bound(trace.points.begin(), trace.points.end(), time_s,
                                [](double at_s, TracePoint const& point) { return at_s < point.time_s; });
  return after == trace.points.begin() ? trace.points.front() : *(after - 1);
}

/// How far the tee's pressure falls from its height at the beginning of a wait.
double fall_pa(Trace const& trace, double from_s, double to_s) {
  double const at_first_pa = point_before(trace, from_s).tee_pressure_pa;
  double least_pa = at_first_pa;
  for (auto const& point : trace.points) {
    if (point.time_s > from_s && point.time_s <= to_s) {
      least_pa = std::min(least_pa, point.tee_pressure_pa);
    }
  }
  return std::max(0.0, at_first_pa - least_pa);
}

/// From top to bottom about a straight line through the pressure, where it crosses that line again and again.
double swing_pa(Trace const& trace, double from_s, double to_s) {
  constexpr int least_crossings = 4;
  std::vector<double> pressures_pa;
  for (auto const& point : trace.points) {
    if (point.time_s > from_s && point.time_s < to_s) {
      if (point.speed_hz <= 0) {
        return 0;
      }
      pressures_pa.push_back(point.tee_pressure_pa);
    }
  }
  auto const count = static_cast<double>(pressures_pa.size());
  if (count < 8) {
    return 0;
  }
  double const middle = 0.5 * (count - 1);
  double mean_pa = 0;
  double rise_pa = 0;
  double spread = 0;
  for (std::size_t i = 0; i < pressures_pa.size(); ++i) {
    double const off = static_cast<double>(i) - middle;
    mean_pa += pressures_pa[i] / count;
    rise_pa += off * pressures_pa[i];
    spread += off * off;
  }
  rise_pa /= spread;
  double least_pa = 0;
  double most_pa = 0;
  int crossings = 0;
  double last_pa = 0;
  for (std::size_t i = 0; i < pressures_pa.size(); ++i) {
    double const off_pa = pressures_pa[i] - mean_pa - rise_pa * (static_cast<double>(i) - middle);
    crossings += off_pa * last_pa < 0 ? 1 : 0;
    last_pa = off_pa;
    least_pa = std::min(least_pa, off_pa);
    most_pa = std::max(most_pa, off_pa);
  }
  return crossings < least_crossings ? 0 : most_pa - least_pa;
}

/// What is in force while somebody looks.
double change_now(Faulty const& faulty, Act act, double otherwise) {
  if (!faulty.there_now) {
    return otherwise;
  }
  for (auto const& change : faulty.lasting) {
    if (change.act == act) {
      otherwise = change.value;
    }
  }
  return otherwise;
}

/// When the tap is opened: soon, or when the drive has come to the warmth of its place.
double begin_s(Faulty const& faulty) {
  constexpr double soon_s = 30;
  constexpr double warmed_s = 40 * minute_s;
  auto const warms = [](Change const& change) { return change.act == Act::ambient_rise; };
  bool const warm = std::any_of(faulty.lasting.begin(), faulty.lasting.end(), warms) ||
                    std::any_of(faulty.of_day.begin(), faulty.of_day.end(), warms);
  return warm ? warmed_s : soon_s;
}

Trace looked_at(Faulty const& faulty, Logic const& logic, std::uint64_t seed) {
  double const from_s = begin_s(faulty);
  Scenario scenario;
  scenario.duration_s = from_s + end_s;
  scenario.start = {.tee_pressure_pa = faulty.settings.pressure_target_pa, .after_power_up = false};
  if (faulty.there_now) {
    scenario.script = faulty.lasting;
    // The worst of the day's own changes but for what lasts only moments.
    double rise_k = 0;
    for (auto change : faulty.of_day) {
      rise_k = change.act == Act::ambient_rise ? std::max(rise_k, change.value) : rise_k;
      if (change.act == Act::yard_valve && change.value < 0.5) {
        change.time_s = 0;
        scenario.script.push_back(change);
      }
    }
    if (rise_k > 0) {
      scenario.script.push_back({.act = Act::ambient_rise, .value = rise_k});
    }
  }
  auto const turns = [&](double time_s, double opening) {
    scenario.script.push_back(
        {.time_s = from_s + time_s, .act = Act::outlet_opening, .outlet = outlet::house, .value = opening});
  };
  // A new use belongs to its own hours: what a person opens are the taps.
  double const taps = faulty.plant.site.demand.peak_draw_m3_s / faulty.plant.outlets[outlet::house].nominal_flow_m3_s;
  turns(opens_s, half_opening * std::min(1.0, taps));
  turns(half_s, std::min(1.0, taps));
  turns(full_s, 0);
  scenario.script.push_back({.time_s = from_s + watched_s, .act = Act::house_valve, .value = 0});
  RunOptions options;
  options.logic = logic;
  options.noise_seed = seed + 1;
  options.record = true;
  options.record_every_s = 2;
  return run(faulty.plant, faulty.settings, scenario, options);
}

}  // namespace

Probe probed(Faulty const& faulty, Logic const& logic, std::uint64_t seed) {
  auto const trace = looked_at(faulty, logic, seed);
  Plant const& plant = faulty.plant;
  auto const& settings = faulty.settings;
  double const scale = settings.sensor_full_scale_pa / plant.site.sensor.full_scale_pa;
  double const trim_pa = settings.sensor_trim_pa;
  bool const has_sensor = !logic.two_contact_switch;
  auto const drive_pa = [&](TracePoint const& point) { return std::max(0.0, point.measured_pressure_pa + trim_pa); };

  double const from_s = begin_s(faulty);
  Probe probe;
  auto const show = [&](Show what, double value) { of(probe.shows, what) = value; };
  auto const& half = point_before(trace, from_s + half_s - 1);
  auto const& full = point_before(trace, from_s + full_s - 1);
  auto const& rest = point_before(trace, from_s + watch_s);
  double const zero_pa = change_now(faulty, Act::sensor_zero, 0);
  show(Show::asleep_gauge, rest.tee_pressure_pa);
  show(Show::half_gauge, half.tee_pressure_pa);
  show(Show::full_gauge, full.tee_pressure_pa);
  if (has_sensor) {
    show(Show::asleep_drive, std::max(0.0, (rest.tee_pressure_pa * (1 + plant.site.sensor.gain_error) +
                                            plant.site.sensor.zero_error_pa + zero_pa) *
                                                   scale +
                                               trim_pa));
    show(Show::half_drive, drive_pa(half));
  }
  show(Show::half_speed, half.speed_hz);
  show(Show::half_current, half.current_a);
  show(Show::full_speed, full.speed_hz);
  show(Show::full_current, full.current_a);
  show(Show::full_flow, full.drawn_flow_m3_s);
  show(Show::half_sink, half.sink_c);
  double const loaded = half.input_power_w / plant.site.motor.power_w;
  show(Show::half_volts, plant.site.supply.voltage_v * change_now(faulty, Act::supply_share, 1) *
                             (1 - change_now(faulty, Act::supply_droop, 0) * loaded));
  show(Show::half_level, half.level_depth_m);
  show(Show::fall_all_shut, fall_pa(trace, from_s + watch_s, from_s + watched_s));
  show(Show::fall_valve_shut, fall_pa(trace, from_s + again_s, from_s + end_s));
  double const rest_level_m = plant.well.static_level_depth_m + change_now(faulty, Act::static_shift, 0);
  show(Show::rest_level, rest_level_m);
  show(Show::precharge, std::max(0.0, plant.site.tank.precharge_pa));
  constexpr double current_for_volts = 8;  // NEMA MG 1: 6 to 10 times
  show(Show::unbalance, 0.01 + current_for_volts * change_now(faulty, Act::volts_unbalance, 0));
  double const held_pa = settings.pressure_target_pa - zero_pa;
  double const zero_flow_hz = zero_flow_speed_hz(plant, held_pa, rest_level_m);
  show(Show::shut_speed, zero_flow_hz);
  show(Show::shut_current, shut_point(plant, std::max(1.0, zero_flow_hz)).motor.current_a);
  probe.half_pressure_pa = half.tee_pressure_pa;
  probe.full_pressure_pa = full.tee_pressure_pa;
  probe.swing_pa = swing_pa(trace, from_s + half_s - swing_span_s, from_s + half_s);
  return probe;
}

}  // namespace wellproof
