// The sensor and the target: what the house wants, and whether the pump can give it at its ceiling.
#include <algorithm>

#include <fmt/format.h>

#include "settings/pressure_switch.h"
#include "settings/study.h"

namespace wellproof {
namespace {

// Share of the pressure wanted at the highest outlet below which people notice (common practice, no source).
constexpr double felt_share = 0.8;

double wanted_at_tee_pa(Plant const& plant) {
  double const flow_m3_s = served_peak_m3_s(plant);
  double const wanted_pa = plant.site.demand.outlet_pressure_pa;
  return wanted_pa + (0 - outlet_pressure_pa(plant, 0, flow_m3_s));
}

/// Pressure at the highest outlet under the served peak at the ceiling, no more than the target allows.
double sagged_outlet_pa(Plant const& plant, Settings const& settings) {
  double const flow_m3_s = served_peak_m3_s(plant);
  double const level_m = plant.well.static_level_depth_m;
  double low_pa = 0;
  double high_pa = true_pressure_pa(plant, settings, settings.pressure_target_pa);
  for (int round = 0; round < 30; ++round) {
    double const middle_pa = 0.5 * (low_pa + high_pa);
    bool const given = point_at_speed(plant, settings.speed_ceiling_hz, middle_pa, level_m).flow_m3_s >= flow_m3_s;
    (given ? low_pa : high_pa) = middle_pa;
  }
  return outlet_pressure_pa(plant, low_pa, flow_m3_s);
}

}  // namespace

double peak_speed_hz(Plant const& plant, Settings const& settings) {
  double const flow_m3_s = served_peak_m3_s(plant);
  double const tee_pa = true_pressure_pa(plant, settings, settings.pressure_target_pa);
  auto const found = point_for_flow(plant, flow_m3_s, tee_pa, plant.well.static_level_depth_m);
  return found.reached ? found.speed_hz : 2 * plant.site.drive.top_frequency_hz;
}

void derive_sensor(Study& study) {
  auto const& sensor = study.site.sensor;
  auto& settings = study.settings;
  settings.sensor_full_scale_pa = middle(sensor.full_scale_pa);
  study.because("sensor.full_scale", fmt::format("The sensor fitted spans 0 to {}; another figure would falsify every "
                                                 "pressure in proportion.",
                                                 study.pressure(settings.sensor_full_scale_pa)));
  if (is_fixed(sensor.zero_error_pa) && middle(sensor.zero_error_pa) != 0) {
    settings.sensor_trim_pa = -middle(sensor.zero_error_pa);
    study.because("sensor.trim", fmt::format("With no pressure the sensor reads {}; the trim takes that away.",
                                             study.pressure(middle(sensor.zero_error_pa))));
  } else if (is_fixed(sensor.zero_error_pa)) {
    study.because("sensor.trim", "The sensor reads nothing at no pressure: nothing to take away.");
  } else {
    study.because(
        "sensor.trim",
        fmt::format("The zero error is known only as {} to {}, about which nothing can be set. Read the "
                    "display with the line open to the air, and set the trim to that reading with its sign "
                    "turned.",
                    study.pressure(lowest(sensor.zero_error_pa)), study.pressure(highest(sensor.zero_error_pa))));
  }
}

void derive_target(Study& study) {
  if (study.logic.two_contact_switch) {
    derive_switch_pressures(study);
    return;
  }
  auto& settings = study.settings;
  auto const shown = extent(
      study.plants, [&](Plant const& plant) { return shown_pressure_pa(plant, settings, wanted_at_tee_pa(plant)); });
  double const step_pa = pressure_step_pa(study.units);
  settings.pressure_target_pa = std::max(rounded_up(shown.high, step_pa), step_pa);
  Plant const& middle_plant = study.plants.front();
  double const rise_pa = -outlet_pressure_pa(middle_plant, 0, 0);
  double const friction_pa = wanted_at_tee_pa(middle_plant) - middle_plant.site.demand.outlet_pressure_pa - rise_pa;
  study.because("pressure.target",
                fmt::format("{} wanted at the highest outlet, {} for its height over the tee, {} for house friction at "
                            "{}; with the sensor's errors and all draws {} to {}, rounded up.",
                            study.pressure(middle_plant.site.demand.outlet_pressure_pa), study.pressure(rise_pa),
                            study.pressure(friction_pa), study.flow(served_peak_m3_s(middle_plant)),
                            study.pressure(shown.low), study.pressure(shown.high)));
}

void check_target(Study& study) {
  auto const& settings = study.settings;
  double const ceiling_hz = settings.speed_ceiling_hz;
  auto const given_at = [&](auto const& level_depth_m) {
    return extent(study.plants, [&](Plant const& plant) {
      double const tee_pa = true_pressure_pa(plant, settings, settings.pressure_target_pa);
      return point_at_speed(plant, ceiling_hz, tee_pa, level_depth_m(plant)).flow_m3_s;
    });
  };
  auto const at_rest = given_at([](Plant const& plant) { return plant.well.static_level_depth_m; });
  auto const drawn =
      given_at([](Plant const& plant) { return drawn_level_depth_m(plant, served_peak_m3_s(plant), peak_time_s); });
  study.because(
      "speed.ceiling",
      fmt::format("At the target the pump then gives {} to {} from the water at rest, {} to {} after {} of the "
                  "most it is built for.",
                  study.flow(at_rest.low), study.flow(at_rest.high), study.flow(drawn.low), study.flow(drawn.high),
                  study.time(peak_time_s)));

  // Where the ceiling does not reach the target the pressure sags; it is wrong where a person at the highest outlet
  // notices.
  auto const outlet_share = extent(study.plants, [&](Plant const& plant) {
    return sagged_outlet_pa(plant, settings) / plant.site.demand.outlet_pressure_pa;
  });
  auto const cannot = std::count_if(study.plants.begin(), study.plants.end(),
                                    [&](Plant const& plant) { return peak_speed_hz(plant, settings) > ceiling_hz; });
  auto const served = extent(study.plants, served_peak_m3_s);
  if (cannot > 0) {
    study.because(
        "pressure.target",
        fmt::format("At the ceiling of {} it sags under {} in {} of {} draws, to {:.0f} % of what is wanted at the "
                    "highest outlet in the worst.",
                    study.speed(ceiling_hz), study.flow(served.middle), cannot, study.plants.size(),
                    100 * std::max(outlet_share.low, 0.0)));
  }
  if (outlet_share.low < felt_share) {
    study.conflict(
        "pressure.target",
        fmt::format("Under {} the highest outlet keeps {:.0f} % of what is wanted there in the worst draw, {:.0f} % "
                    "in the middle one.",
                    study.flow(served.middle), 100 * std::max(outlet_share.low, 0.0),
                    100 * std::max(outlet_share.middle, 0.0)),
        "A pump with more head or a higher ceiling (see speed.ceiling), less wanted at the highest outlet, or a "
        "smaller peak draw.");
  }
  double const peak_m3_s = study.plants.front().site.demand.peak_draw_m3_s;
  if (peak_m3_s > served.middle) {
    study.caution(
        "peak_beyond_pump",
        fmt::format("The peak draw of {} is more than this pump is built for ({}): while it lasts the pressure sags, "
                    "whatever is set.",
                    study.flow(peak_m3_s), study.flow(served.middle)));
  }
  auto const rating = extent(study.plants, [](Plant const& plant) { return weakest_at_tee(plant).pressure_pa; });
  auto const true_pa = extent(
      study.plants, [&](Plant const& plant) { return true_pressure_pa(plant, settings, settings.pressure_target_pa); });
  if (true_pa.high >= rating.low) {
    study.conflict(
        "pressure.target",
        fmt::format("The target of {} is not below the rating of {}, {}.", study.pressure(settings.pressure_target_pa),
                    weakest_at_tee(study.plants.front()).part, study.pressure(rating.low)),
        "Parts of a higher class, or less pressure at the highest outlet.");
  }
}

}  // namespace wellproof
