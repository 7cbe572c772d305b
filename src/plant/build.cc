// A plant from one drawn site: each part prepared, then what belongs to none of them.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "plant/cable.h"
#include "plant/plant.h"
#include "plant/water.h"

namespace wellproof {
namespace {

// Speed of a pressure wave, between PVC schedule 40 (about 500 m/s) and polyethylene of DR 9 to 11 (310 to 350 m/s); by
// wave_speed_m_s with the moduli of the two. It says how much water the pipes take up by stretching.
constexpr double wave_speed_of_line_m_s = 400;

// Laws of flow are tabulated up to this share of the pump's run-out at the curve's speed: a drive turns it faster.
constexpr double flow_headroom = 1.6;

// A relief valve passes at least the pump's run-out when 10 % above its opening pressure (common practice, no source).
constexpr double relief_share_of_runout = 1.0;

// A pump that fills its casing still has some gap around it.
constexpr double least_gap_m2 = 1e-4;

// A break lets the pump run out against a tenth of an atmosphere: a pipe pulled apart (common practice, no source).
constexpr double burst_pressure_pa = 1e4;

std::vector<PipeRunOf<double>> runs_at(DrawnSite const& site, std::initializer_list<PipePlace> places) {
  std::vector<PipeRunOf<double>> found;
  for (auto const place : places) {
    for (auto const& run : site.pipes) {
      if (run.place == place) {
        found.push_back(run);
      }
    }
  }
  return found;
}

double bore_volume_m3(PipeRunOf<double> const& run) {
  return std::numbers::pi / 4 * run.inside_diameter_m * run.inside_diameter_m * run.length_m;
}

std::vector<Outlet> outlets_of(DrawnSite const& site, Plant const& plant) {
  auto const& demand = site.demand;
  std::vector<Outlet> outlets{
      // in the order of the places in namespace outlet
      {.nominal_flow_m3_s = demand.leak_m3_s, .nominal_pressure_pa = demand.outlet_pressure_pa},
      {.nominal_flow_m3_s = demand.least_draw_m3_s,
       .nominal_pressure_pa = 0.5 * demand.outlet_pressure_pa,
       .regulated = true},
      {.nominal_flow_m3_s = demand.peak_draw_m3_s, .nominal_pressure_pa = demand.outlet_pressure_pa},
      {.nominal_flow_m3_s = plant.pump.runout_flow_m3_s(),
       .nominal_pressure_pa = burst_pressure_pa,
       .place = OutletPlace::tee},
  };
  for (auto const& zone : demand.zones) {
    outlets.push_back({.nominal_flow_m3_s = zone.flow_m3_s, .nominal_pressure_pa = zone.pressure_pa});
  }
  return outlets;
}

double cooling_gap_m2(DrawnSite const& site) {
  double const casing_m = site.well.casing_diameter_m;
  double const shell_m = site.pump.outside_diameter_m;
  return std::numbers::pi / 4 * std::max(casing_m * casing_m - shell_m * shell_m, least_gap_m2);
}

MonotoneCurve cooling_curve(MotorHeat const& heat, double most_velocity_m_s) {
  constexpr int pieces = 128;
  std::vector<double> velocity_m_s;
  std::vector<double> conductance_w_k;
  for (int i = 0; i <= pieces; ++i) {
    velocity_m_s.push_back(most_velocity_m_s * i / pieces);
    conductance_w_k.push_back(shell_to_water_w_k(heat, velocity_m_s.back()));
  }
  return {velocity_m_s, conductance_w_k};
}

}  // namespace

Plant build(DrawnSite const& site) {
  Plant plant;
  plant.site = site;
  plant.well = prepare_well(site);
  plant.pump = Pump(site.pump);
  auto const fit = fit_circuit(site.motor);
  plant.circuit = fit.circuit;
  plant.circuit_misfit = fit.worst_misfit;
  plant.cable_ohm =
      cable_resistance_ohm(site.cable.conductor_diameter_m, site.cable.length_m, site.cable.temperature_c);
  plant.heat = motor_heat(site.motor.power_w, site.motor.power_w * (1 / site.motor.efficiency - 1));

  plant.cooling_gap_m2 = cooling_gap_m2(site);
  plant.shell_to_water_w_k =
      cooling_curve(plant.heat, flow_headroom * plant.pump.runout_flow_m3_s() / plant.cooling_gap_m2);

  double const viscosity_m2_s = water_viscosity_m2_s(site.well.water_temperature_c);
  double const most_flow_m3_s = flow_headroom * plant.pump.runout_flow_m3_s();
  auto const up = runs_at(site, {PipePlace::drop, PipePlace::yard});
  plant.up = Path(up, viscosity_m2_s, most_flow_m3_s);
  plant.house = Path(runs_at(site, {PipePlace::house}), viscosity_m2_s, most_flow_m3_s);

  plant.tank = {.volume_m3 = site.tank.volume_m3,
                .precharge_pa = site.tank.precharge_pa,
                .exponent = site.tank.polytropic_exponent,
                .atmosphere_pa_abs = atmosphere_pa_abs(site.limits.altitude_m)};
  plant.density_kg_m3 = water_density_kg_m3(site.well.water_temperature_c);
  plant.weight_n_m3 = plant.density_kg_m3 * gravity_m_s2;
  plant.tee_elevation_m = site.tank.elevation_m;
  double const dry_share_of_drop = std::clamp(plant.well.static_level_depth_m / site.pump.setting_depth_m, 0.0, 1.0);
  plant.line_volume_m3 = plant.house.volume_m3();
  for (auto const& run : up) {
    if (run.place == PipePlace::yard) {
      plant.line_volume_m3 += bore_volume_m3(run);
    } else {
      plant.line_volume_m3 += dry_share_of_drop * bore_volume_m3(run);
    }
  }
  plant.line_elasticity_m3_pa = (plant.up.volume_m3() + plant.house.volume_m3()) /
                                (plant.density_kg_m3 * wave_speed_of_line_m_s * wave_speed_of_line_m_s);
  plant.relief_flow_m3_s = site.limits.relief_pa > 0 ? relief_share_of_runout * plant.pump.runout_flow_m3_s() : 0;
  plant.outlets = outlets_of(site, plant);
  return plant;
}

Sloped tee_pressure_pa(Tank const& tank, double line_elasticity_m3_pa, double stored_m3) {
  double const elastic_m3 = line_elasticity_m3_pa * tank.precharge_pa;
  if (stored_m3 <= elastic_m3) {
    return {stored_m3 / line_elasticity_m3_pa, 1 / line_elasticity_m3_pa};
  }
  return tank.pressure_pa(stored_m3 - elastic_m3);
}

Sloped tee_pressure_pa(Plant const& plant, double stored_m3) {
  return tee_pressure_pa(plant.tank, plant.line_elasticity_m3_pa, stored_m3);
}

double stored_m3(Plant const& plant, double tee_pressure_pa) {
  return plant.line_elasticity_m3_pa * std::min(tee_pressure_pa, plant.tank.precharge_pa) +
         plant.tank.water_m3(tee_pressure_pa);
}

}  // namespace wellproof
