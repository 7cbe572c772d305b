#include "settings/study.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "quantity/quantity.h"

namespace wellproof {
namespace {

SettingReason& reason_of(std::vector<SettingReason>& reasons, std::string_view key) {
  auto const found =
      std::find_if(reasons.begin(), reasons.end(), [&](SettingReason const& reason) { return reason.key == key; });
  if (found != reasons.end()) {
    return *found;
  }
  reasons.push_back({});
  reasons.back().key = key;
  return reasons.back();
}

void append(std::string& text, std::string const& more) {
  text += text.empty() ? more : " " + more;
}

}  // namespace

void Study::because(std::string_view key, std::string const& text) {
  append(reason_of(reasons, key).because, text);
}

void Study::conflict(std::string_view key, std::string const& in_the_way, std::string const& would_change_it) {
  auto& reason = reason_of(reasons, key);
  reason.feasible = false;
  append(reason.stands_in_the_way, in_the_way);
  append(reason.would_change_it, would_change_it);
}

void Study::caution(std::string_view key, std::string says) {
  cautions.push_back({std::string(key), std::move(says)});
}

std::string Study::pressure(double pressure_pa) const {
  return write_quantity(pressure_pa, Dimension::pressure, units);
}
std::string Study::speed(double speed_hz) const {
  return write_quantity(rounded(speed_hz, 0.1), Dimension::frequency, units);
}
std::string Study::current(double current_a) const {
  return write_quantity(rounded(current_a, 0.01), Dimension::current, units);
}
std::string Study::flow(double flow_m3_s) const {
  return write_quantity(flow_m3_s, Dimension::flow, units);
}
std::string Study::time(double time_s) const {
  constexpr double ten_minutes_s = 600;
  constexpr double two_minutes_s = 120;
  double const step_s = time_s >= ten_minutes_s ? 60 : time_s >= two_minutes_s ? 10 : time_s >= 10 ? 1 : 0.1;
  return write_quantity(rounded(time_s, step_s), Dimension::time, units);
}
std::string Study::length(double length_m) const {
  return write_quantity(length_m, Dimension::length, units);
}
std::string Study::volume(double volume_m3) const {
  return write_quantity(volume_m3, Dimension::volume, units);
}

// The small share keeps a value that already stands on a step, but for rounding, where it is.
double rounded_up(double value, double step) {
  return step * std::ceil(value / step - 1e-9);
}
double rounded_down(double value, double step) {
  return step * std::floor(value / step + 1e-9);
}
double rounded(double value, double step) {
  return step * std::round(value / step);
}

double pressure_step_pa(UnitSystem units) {
  return units == UnitSystem::us ? customary_unit(Dimension::pressure, UnitSystem::us).factor : 1e4;
}

double true_pressure_pa(Plant const& plant, Settings const& settings, double shown_pa) {
  auto const& sensor = plant.site.sensor;
  return (shown_pa - settings.sensor_trim_pa - sensor.zero_error_pa) / (1 + sensor.gain_error);
}

double shown_pressure_pa(Plant const& plant, Settings const& settings, double true_pa) {
  auto const& sensor = plant.site.sensor;
  return true_pa * (1 + sensor.gain_error) + sensor.zero_error_pa + settings.sensor_trim_pa;
}

double deepest_wet_level_m(Plant const& plant) {
  double const least_m = plant.well.static_level_depth_m;
  return std::max(least_m, plant.site.pump.setting_depth_m - plant.site.pump.least_submergence_m);
}

double drawn_level_depth_m(Plant const& plant, double flow_m3_s, double time_s) {
  auto bore = bore_at_rest(plant.well);
  pump_evenly(plant.well, bore, flow_m3_s, time_s);
  return std::min(bore.level_depth_m, deepest_wet_level_m(plant));
}

double served_peak_m3_s(Plant const& plant) {
  return std::min(plant.site.demand.peak_draw_m3_s, plant.pump.best_flow_m3_s());
}

double outlet_pressure_pa(Plant const& plant, double tee_pressure_pa, double flow_m3_s) {
  double const rise_m = plant.site.demand.outlet_rise_m;
  return tee_pressure_pa - plant.weight_n_m3 * (rise_m + plant.house.loss_m(flow_m3_s).value);
}

double leak_flow_m3_s(Plant const& plant, double tee_pressure_pa) {
  return outlet_flow_m3_s(plant.outlets[outlet::leak], 1, outlet_pressure_pa(plant, tee_pressure_pa, 0)).value;
}

double tank_gives_m3(Plant const& plant, double from_pa, double to_pa) {
  return stored_m3(plant, from_pa) - stored_m3(plant, to_pa);
}

Rating weakest_at_tee(Plant const& plant) {
  Rating weakest{plant.site.limits.fittings_rating_pa, "the fittings"};
  auto const take = [&](double pressure_pa, std::string_view part) {
    if (pressure_pa < weakest.pressure_pa) {
      weakest = {pressure_pa, part};
    }
  };
  take(plant.site.tank.rating_pa, "the tank");
  for (auto const& run : plant.site.pipes) {
    if (run.place != PipePlace::drop) {
      take(run.rating_pa, run.place == PipePlace::yard ? "the yard pipe" : "the house pipe");
    }
  }
  return weakest;
}

Rating weakest_before_tee(Plant const& plant) {
  Rating weakest{std::numeric_limits<double>::infinity(), "the drop pipe"};
  // The yard pipe lies a column of the setting's height over the pump.
  double const column_pa = plant.weight_n_m3 * plant.site.pump.setting_depth_m;
  for (auto const& run : plant.site.pipes) {
    double const at_pump_pa = run.rating_pa + (run.place == PipePlace::yard ? column_pa : 0);
    if (run.place != PipePlace::house && at_pump_pa < weakest.pressure_pa) {
      weakest = {at_pump_pa, run.place == PipePlace::drop ? "the drop pipe" : "the yard pipe"};
    }
  }
  return weakest;
}

}  // namespace wellproof
