#include "sheet/curves.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "plant/drive.h"
#include "plant/operating.h"

namespace wellproof {
namespace {

constexpr int points_on_a_line = 48;
constexpr double between_lines_hz = 10;

/// Head at a flow with the drive at one frequency: the rotor turns where motor and pump agree.
double pump_head_m(Plant const& plant, FedMotor const& fed, double flow_m3_s) {
  auto const load = [&](double rotor_speed_rad_s) { return plant.pump.torque_n_m(flow_m3_s, rotor_speed_rad_s, 1); };
  double const slip = fed.slip_under(load, 0.04);
  return plant.pump.head_m(flow_m3_s, fed.synchronous_speed_rad_s() * (1 - slip), 1).value;
}

PumpLine pump_line(Plant const& plant, double speed_hz) {
  auto const& site = plant.site;
  double const volts_v = drive_voltage_v(speed_hz, site.motor.frequency_hz, site.motor.voltage_v,
                                         drive_available_v(site.supply.voltage_v));
  FedMotor const fed(plant.circuit, speed_hz, volts_v, plant.cable_ohm);
  double const most_flow_m3_s =
      plant.pump.runout_flow_m3_s() * fed.synchronous_speed_rad_s() / plant.pump.curve_speed_rad_s();
  PumpLine line{speed_hz, {}};
  for (int i = 0; i <= points_on_a_line; ++i) {
    double const flow_m3_s = most_flow_m3_s * i / points_on_a_line;
    double const head_m = pump_head_m(plant, fed, flow_m3_s);
    if (!std::isfinite(head_m) || head_m < 0) {
      break;
    }
    line.points.push_back({flow_m3_s, head_m});
  }
  return line;
}

/// Round figures between floor and ceiling, and these two.
std::vector<double> speeds_hz(Settings const& settings) {
  double const floor_hz = settings.speed_floor_hz;
  double const ceiling_hz = settings.speed_ceiling_hz;
  std::vector<double> speeds;
  if (floor_hz > 0) {
    speeds.push_back(floor_hz);
  }
  auto const lines = static_cast<int>(std::ceil(ceiling_hz / between_lines_hz));
  for (int i = 1; i < lines; ++i) {
    double const speed_hz = i * between_lines_hz;
    bool const apart = speed_hz > floor_hz + between_lines_hz / 3 && speed_hz < ceiling_hz - between_lines_hz / 3;
    if (apart) {
      speeds.push_back(speed_hz);
    }
  }
  if (ceiling_hz > floor_hz) {
    speeds.push_back(ceiling_hz);
  }
  return speeds;
}

}  // namespace

HeadCurves head_curves(Plant const& plant, Settings const& settings) {
  HeadCurves curves;
  curves.least_draw_m3_s = plant.site.demand.least_draw_m3_s;
  curves.peak_draw_m3_s = plant.site.demand.peak_draw_m3_s;
  double most_flow_m3_s = curves.peak_draw_m3_s;
  for (double const speed_hz : speeds_hz(settings)) {
    curves.pump.push_back(pump_line(plant, speed_hz));
    if (!curves.pump.back().points.empty()) {
      most_flow_m3_s = std::max(most_flow_m3_s, curves.pump.back().points.back().flow_m3_s);
    }
  }
  double const lift_less_level_m = plant.tee_elevation_m + settings.pressure_target_pa / plant.weight_n_m3;
  bool well_gives = true;
  for (int i = 0; i <= points_on_a_line; ++i) {
    double const flow_m3_s = most_flow_m3_s * i / points_on_a_line;
    double const above_water_m = lift_less_level_m + plant.up.loss_m(flow_m3_s).value;
    curves.water_at_rest.push_back({flow_m3_s, plant.well.static_level_depth_m + above_water_m});
    double const level_depth_m = plant.well.level_for_flow_m(flow_m3_s);
    well_gives = well_gives && std::isfinite(level_depth_m) && level_depth_m < plant.site.pump.setting_depth_m;
    if (well_gives) {
      curves.drawn_down.push_back({flow_m3_s, level_depth_m + above_water_m});
    }
  }
  return curves;
}

}  // namespace wellproof
