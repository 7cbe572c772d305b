#pragma once
// The one list of what a site is made of. Reading, checking, drawing, fitting, the page's form and docs/site.md walk
// it, so a new quantity is a line in site.h and a line here.
#include <string>
#include <string_view>

#include "quantity/dimension.h"
#include "site/site.h"

namespace wellproof {

/// A quantity of the site. Limits are hard: a value outside is a finding.
struct Field {
  std::string key;  // as in the file: "well.static_level", "pipe.2.length"
  Dimension dimension;
  std::string_view meaning;  // one line, for the starter file, the page and the docs
  double least;              // SI
  double most;               // SI
};

namespace fields {

template <class W, class F>
void well(W& w, F&& f) {
  f(Field{"well.static_level", Dimension::length, "depth to water at rest, from the top of the casing", 0, 600},
    w.static_level_depth_m);
  f(Field{"well.season_drop", Dimension::length, "how much deeper the water stands in the dry season", 0, 100},
    w.season_drop_m);
  f(Field{"well.depth", Dimension::length, "bottom of the well, from the top of the casing", 2, 800}, w.depth_m);
  f(Field{"well.casing", Dimension::diameter, "inside diameter of the casing", 0.05, 2}, w.casing_diameter_m);
  f(Field{"well.transmissivity", Dimension::transmissivity, "what the formation passes, from a pumping test", 0, 1},
    w.transmissivity_m2_s);
  f(Field{"well.specific_capacity", Dimension::specific_capacity, "flow for each length of drawdown", 0, 1},
    w.specific_capacity_m2_s);
  f(Field{"well.test_flow", Dimension::flow, "flow pumped in the driller's test", 0, 0.2}, w.test_flow_m3_s);
  f(Field{"well.test_time", Dimension::time, "how long was pumped for the test, the yield or the capacity", 60, 1e7},
    w.test_time_s);
  f(Field{"well.test_level", Dimension::length, "depth to water at the end of the test", 0, 800}, w.test_level_depth_m);
  f(Field{"well.yield", Dimension::flow, "inflow with the level drawn down to the pump", 0, 0.2}, w.yield_m3_s);
  f(Field{"well.storativity", Dimension::none, "what the formation stores: volume for area and drawdown", 1e-7, 0.5},
    w.storativity);
  f(Field{"well.linear_loss", Dimension::linear_loss, "B of the well's own loss B·q + C·q²", 0, 1e6},
    w.linear_loss_s_m2);
  f(Field{"well.quadratic_loss", Dimension::quadratic_loss, "C of the well's own loss B·q + C·q²", 0, 1e9},
    w.quadratic_loss_s2_m5);
  f(Field{"well.fracture", Dimension::length, "depth of the one fracture that gives the water; 0: it comes all along",
          0, 800},
    w.fracture_depth_m);
  f(Field{"well.boundary_distance", Dimension::length, "from the well to the border named", 0, 1e5},
    w.boundary_distance_m);
  f(Field{"well.water_temperature", Dimension::temperature, "temperature of the well's water", 0, 40},
    w.water_temperature_c);
}

template <class P, class F>
void pump(P& p, F&& f) {
  f(Field{"pump.rated_flow", Dimension::flow, "flow the pump is built for", 1e-5, 0.05}, p.rated_flow_m3_s);
  f(Field{"pump.rated_power", Dimension::power, "shaft power the pump end needs at most", 50, 50e3}, p.rated_power_w);
  f(Field{"pump.rated_head", Dimension::length, "head at rated flow and curve speed", 2, 1000}, p.rated_head_m);
  f(Field{"pump.curve_speed", Dimension::rotation, "rotor speed of the curve", 100, 800}, p.curve_speed_rad_s);
  f(Field{"pump.stages", Dimension::none, "number of stages", 1, 100}, p.stages);
  f(Field{"pump.setting", Dimension::length, "depth of the intake, from the top of the casing", 1, 800},
    p.setting_depth_m);
  f(Field{"pump.flow_factor", Dimension::none, "this pump's flow against its curve", 0.7, 1.3}, p.flow_factor);
  f(Field{"pump.head_factor", Dimension::none, "this pump's head against its curve", 0.7, 1.3}, p.head_factor);
  f(Field{"pump.power_factor", Dimension::none, "this pump's shaft power against its curve", 0.7, 1.3}, p.power_factor);
  f(Field{"pump.wear", Dimension::none, "inner leakage, as a fraction of best-efficiency flow", 0, 0.6}, p.wear);
  f(Field{"pump.dry_power", Dimension::none, "power without water, as a fraction of rated power", 0.01, 0.5},
    p.dry_power_fraction);
  f(Field{"pump.least_submergence", Dimension::length, "water over the intake below which air is drawn", 0.05, 5},
    p.least_submergence_m);
  f(Field{"pump.water_held", Dimension::volume, "water inside the pump", 1e-4, 0.1}, p.water_held_m3);
  f(Field{"pump.diameter", Dimension::diameter, "outside diameter of pump and motor", 0.05, 0.4}, p.outside_diameter_m);
}

template <class M, class F>
void motor(M& m, F&& f) {
  f(Field{"motor.power", Dimension::power, "rated shaft power", 100, 50e3}, m.power_w);
  f(Field{"motor.service_factor", Dimension::none, "service factor", 1, 2}, m.service_factor);
  f(Field{"motor.voltage", Dimension::voltage, "rated voltage, line to line", 100, 700}, m.voltage_v);
  f(Field{"motor.frequency", Dimension::frequency, "rated frequency", 40, 120}, m.frequency_hz);
  f(Field{"motor.full_load_current", Dimension::current, "current at rated power", 0.2, 200}, m.full_load_current_a);
  f(Field{"motor.service_factor_current", Dimension::current, "current at service-factor load", 0.2, 250},
    m.service_factor_current_a);
  f(Field{"motor.efficiency", Dimension::none, "efficiency at rated power", 0.3, 0.97}, m.efficiency);
  f(Field{"motor.power_factor", Dimension::none, "power factor at rated power", 0.4, 0.97}, m.power_factor);
  f(Field{"motor.speed", Dimension::rotation, "rotor speed at rated power", 80, 800}, m.speed_rad_s);
  f(Field{"motor.no_load_current", Dimension::current, "current with nothing coupled", 0.05, 150}, m.no_load_current_a);
  f(Field{"motor.locked_rotor_current", Dimension::current, "current at standstill and full voltage", 0.5, 2000},
    m.locked_rotor_current_a);
  f(Field{"motor.winding_limit", Dimension::temperature, "limit of the winding's insulation", 80, 220},
    m.winding_limit_c);
}

template <class S, class F>
void electrics(S& s, F&& f) {
  f(Field{"drive.rated_current", Dimension::current, "rated output current", 0.5, 300}, s.drive.rated_current_a);
  f(Field{"drive.top_frequency", Dimension::frequency, "highest output frequency", 40, 120}, s.drive.top_frequency_hz);
  f(Field{"drive.efficiency", Dimension::none, "efficiency at rated output", 0.7, 0.995}, s.drive.efficiency);
  f(Field{"drive.sample_rate", Dimension::frequency, "how often its controller acts", 2, 200}, s.drive.sample_rate_hz);
  f(Field{"drive.rest_step", Dimension::time, "in which it takes the rest before a retry", 1, 7200},
    s.drive.rest_step_s);
  f(Field{"drive.ambient", Dimension::temperature, "air around the drive", -40, 60}, s.drive.ambient_c);
  f(Field{"cable.size", Dimension::diameter, "conductor, as AWG or diameter of the solid wire", 5e-4, 0.03},
    s.cable.conductor_diameter_m);
  f(Field{"cable.length", Dimension::length, "drive to motor, one way", 0, 2000}, s.cable.length_m);
  f(Field{"cable.temperature", Dimension::temperature, "mean temperature of the conductor", -20, 90},
    s.cable.temperature_c);
  f(Field{"supply.voltage", Dimension::voltage, "at the drive, line to line", 80, 700}, s.supply.voltage_v);
  f(Field{"supply.frequency", Dimension::frequency, "of the supply", 40, 70}, s.supply.frequency_hz);
}

template <class P, class F>
void pipe(P& p, std::string const& at, F&& f) {
  f(Field{at + "inside_diameter", Dimension::diameter, "inside diameter", 0.005, 0.5}, p.inside_diameter_m);
  f(Field{at + "length", Dimension::length, "length of the run", 0, 10e3}, p.length_m);
  f(Field{at + "rise", Dimension::length, "rise from its start to its end", -500, 500}, p.rise_m);
  f(Field{at + "roughness", Dimension::diameter, "roughness of the wall", 0, 0.005}, p.roughness_m);
  f(Field{at + "minor_loss", Dimension::none, "sum of the loss factors K of its fittings", 0, 500}, p.minor_loss);
  f(Field{at + "rating", Dimension::pressure, "pressure class", 1e5, 1e7}, p.rating_pa);
}

template <class S, class F>
void tank_and_sensor(S& s, F&& f) {
  f(Field{"tank.volume", Dimension::volume, "gas and water together", 0.0005, 10}, s.tank.volume_m3);
  f(Field{"tank.precharge", Dimension::pressure, "gas pressure with no water in it", 0, 2e6}, s.tank.precharge_pa);
  f(Field{"tank.polytropic", Dimension::none, "polytropic exponent of its gas", 1, 1.4}, s.tank.polytropic_exponent);
  f(Field{"tank.rating", Dimension::pressure, "pressure rating", 1e5, 1e7}, s.tank.rating_pa);
  f(Field{"tank.elevation", Dimension::length, "tank's tee above the top of the casing", -100, 300},
    s.tank.elevation_m);
  f(Field{"sensor.full_scale", Dimension::pressure, "upper end of its span", 1e5, 1e7}, s.sensor.full_scale_pa);
  f(Field{"sensor.gain_error", Dimension::none, "error as a fraction of the reading", -0.1, 0.1}, s.sensor.gain_error);
  f(Field{"sensor.zero_error", Dimension::pressure, "reading at no pressure", -2e5, 2e5}, s.sensor.zero_error_pa);
  f(Field{"sensor.lag", Dimension::time, "time constant", 0, 10}, s.sensor.lag_s);
  f(Field{"sensor.noise", Dimension::pressure, "standard deviation of one sample", 0, 5e4}, s.sensor.noise_pa);
  f(Field{"sensor.resolution", Dimension::pressure, "smallest step of the reading", 0, 5e4}, s.sensor.resolution_pa);
}

template <class S, class F>
void demand_and_limits(S& s, F&& f) {
  auto& d = s.demand;
  f(Field{"demand.outlet_pressure", Dimension::pressure, "pressure wanted at the highest outlet", 2e4, 1e6},
    d.outlet_pressure_pa);
  f(Field{"demand.outlet_rise", Dimension::length, "highest outlet above the tank's tee", -100, 100}, d.outlet_rise_m);
  f(Field{"demand.least_draw", Dimension::flow, "smallest draw that must be kept served", 0, 0.01}, d.least_draw_m3_s);
  f(Field{"demand.peak_draw", Dimension::flow, "most that is drawn at once", 1e-5, 0.1}, d.peak_draw_m3_s);
  f(Field{"demand.fixture_units", Dimension::none, "water supply fixture units of the house", 0, 500}, d.fixture_units);
  f(Field{"demand.longest_run", Dimension::time, "longest legitimate continuous use", 60, 1e6}, d.longest_run_s);
  f(Field{"demand.run_after_rest", Dimension::time, "how long the peak is to be had again after a dry-run rest", 10,
          7200},
    d.run_after_rest_s);
  f(Field{"demand.daily_use", Dimension::volume, "water used in the house in a day, without the zones", 0, 1000},
    d.daily_use_m3);
  f(Field{"demand.leak", Dimension::flow, "what drips with all taps shut", 0, 0.005}, d.leak_m3_s);
  for (std::size_t i = 0; i < d.zones.size(); ++i) {
    auto& z = d.zones[i];
    auto const at = "zone." + std::to_string(i + 1) + ".";
    f(Field{at + "flow", Dimension::flow, "flow of the zone", 1e-5, 0.1}, z.flow_m3_s);
    f(Field{at + "pressure", Dimension::pressure, "pressure at which it takes that flow", 2e4, 1e6}, z.pressure_pa);
    f(Field{at + "time", Dimension::time, "how long it runs", 10, 1e6}, z.time_s);
  }
  auto& l = s.limits;
  f(Field{"limits.fittings_rating", Dimension::pressure, "weakest part not listed elsewhere", 1e5, 1e7},
    l.fittings_rating_pa);
  f(Field{"limits.relief", Dimension::pressure, "opening pressure of the relief valve; 0 if there is none", 0, 1e7},
    l.relief_pa);
  f(Field{"limits.water_loss", Dimension::volume, "what may run away before the drive must have stopped", 0, 1000},
    l.water_loss_m3);
  f(Field{"limits.altitude", Dimension::length, "above the sea", -400, 5000}, l.altitude_m);
}

}  // namespace fields

/// Calls f(Field, quantity) for each quantity, always in the same order.
template <class S, class F>
void each_field(S& site, F&& f) {
  fields::well(site.well, f);
  fields::pump(site.pump, f);
  fields::motor(site.motor, f);
  fields::electrics(site, f);
  for (std::size_t i = 0; i < site.pipes.size(); ++i) {
    fields::pipe(site.pipes[i], "pipe." + std::to_string(i + 1) + ".", f);
  }
  fields::tank_and_sensor(site, f);
  fields::demand_and_limits(site, f);
}

}  // namespace wellproof
