#include "fit/steady_reading.h"

#include <algorithm>

#include "plant/operating.h"

namespace wellproof {
namespace {

double level_depth_m(Plant const& plant, SiteReading const& reading, double flow_m3_s) {
  bool const draws = is_running(reading.condition) && reading.condition != Condition::shut;
  if (!draws) {
    return plant.well.static_level_depth_m;
  }
  auto bore = bore_at_rest(plant.well);
  pump_evenly(plant.well, bore, flow_m3_s, reading.after_s);
  return std::min(bore.level_depth_m, plant.site.pump.setting_depth_m);
}

}  // namespace

double fallen_pressure_pa(Plant const& plant, double tee_pressure_pa, double wait_s) {
  constexpr int steps = 40;
  auto const& leak = plant.outlets[outlet::leak];
  double const rise_pa = plant.weight_n_m3 * plant.site.demand.outlet_rise_m;
  auto const leaks_m3_s = [&](double stored) {
    return outlet_flow_m3_s(leak, 1, wellproof::tee_pressure_pa(plant, stored).value - rise_pa).value;
  };
  double const step_s = wait_s / steps;
  double left_m3 = stored_m3(plant, tee_pressure_pa);
  for (int i = 0; i < steps; ++i) {
    double const half_m3 = std::max(left_m3 - 0.5 * step_s * leaks_m3_s(left_m3), 0.0);
    left_m3 = std::max(left_m3 - step_s * leaks_m3_s(half_m3), 0.0);
  }
  return wellproof::tee_pressure_pa(plant, left_m3).value;
}

std::vector<double> shown(Plant const& plant, SiteReading const& reading, Standing const& standing, double trim_pa) {
  auto const& sensor = plant.site.sensor;
  double const flow_m3_s = reading.condition == Condition::shut ? 0 : standing.flow_m3_s;
  bool const wants_level = std::any_of(reading.values.begin(), reading.values.end(), [](ReadValue const& value) {
    return value.instrument == Instrument::level || value.instrument == Instrument::speed ||
           value.instrument == Instrument::current;
  });
  double const depth_m = wants_level ? level_depth_m(plant, reading, flow_m3_s) : 0;
  OperatingPoint point;
  if (wants_level && is_running(reading.condition)) {
    point = point_for_flow(plant, flow_m3_s, standing.tee_pressure_pa, depth_m);
  }
  std::vector<double> out;
  out.reserve(reading.values.size());
  for (auto const& value : reading.values) {
    switch (value.instrument) {
      case Instrument::gauge:
        out.push_back(standing.tee_pressure_pa);
        break;
      case Instrument::drive_pressure:
        out.push_back(standing.tee_pressure_pa * (1 + sensor.gain_error) + sensor.zero_error_pa + trim_pa);
        break;
      case Instrument::speed:
        out.push_back(point.speed_hz);
        break;
      case Instrument::current:
        out.push_back(point.motor.current_a);
        break;
      case Instrument::volts:
        out.push_back(plant.site.supply.voltage_v);
        break;
      case Instrument::flow:
        out.push_back(flow_m3_s);
        break;
      case Instrument::level:
        out.push_back(depth_m);
        break;
      case Instrument::gauge_later:
        out.push_back(fallen_pressure_pa(plant, standing.tee_pressure_pa, reading.after_s));
        break;
    }
  }
  return out;
}

}  // namespace wellproof
