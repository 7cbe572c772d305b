// Pipe, valves, tank.
#include <algorithm>
#include <cmath>

#include "explain/fault_makers.h"
#include "plant/water.h"
#include "quantity/customary.h"

namespace wellproof {
namespace {

/// Opening through which a flow runs under a head, by Torricelli.
double gap_m2(double flow_m3_s, double head_m) {
  return flow_m3_s / std::sqrt(2 * gravity_m_s2 * std::max(1.0, head_m));
}

}  // namespace

void drop_pipe_hole(Faulty& faulty, Chance& chance) {
  auto const& plant = faulty.plant;
  double const flow_m3_s = chance.by_size(0.02, 0.7) * plant.pump.best_flow_m3_s();
  double const depth_m = 0.5 * plant.site.pump.setting_depth_m;
  double const head_m = column_m(faulty) - std::max(0.0, plant.well.static_level_depth_m - depth_m);
  faulty.lasting.push_back({.act = Act::hole, .value = gap_m2(flow_m3_s, head_m)});
  faulty.feel(Symptom::air) = 0.4;
  faulty.severity = {"through the hole run back about", flow_m3_s, Dimension::flow};
}

void check_valve_leaking(Faulty& faulty, Chance& chance) {
  double const flow_m3_s = chance.by_size(0.03, 0.8) * gallon_a_minute_m3_s;
  faulty.lasting.push_back({.act = Act::check_leak, .value = gap_m2(flow_m3_s, column_m(faulty))});
  faulty.severity = {"past the check valve run back about", flow_m3_s, Dimension::flow};
}

void tank_charge_lost(Faulty& faulty, Chance& chance) {
  // Part of the gas is gone, and water has taken the place of some of what is left.
  auto& tank = faulty.plant.tank;
  double const charge = chance.between(0, 0.6);
  double const cushion = chance.by_size(0.08, 0.6);
  tank.precharge_pa *= charge;
  tank.volume_m3 *= cushion;
  faulty.plant.site.tank.volume_m3 = tank.volume_m3;
  faulty.plant.site.tank.precharge_pa = tank.precharge_pa;
  faulty.feel(Symptom::noisy) = 0.2;
  faulty.severity = {"the tank's air stands, with no water in it, at", tank.precharge_pa, Dimension::pressure};
}

void leak_in_house(Faulty& faulty, Chance& chance) {
  double const flow_m3_s = chance.by_size(0.08, 1.5) * gallon_a_minute_m3_s;
  faulty.plant.outlets[outlet::leak].nominal_flow_m3_s = flow_m3_s;
  faulty.plant.site.demand.leak_m3_s = flow_m3_s;
  faulty.feel(Symptom::wet_ground) = 0.15;
  faulty.severity = {"at the target leak", flow_m3_s, Dimension::flow};
}

void line_burst(Faulty& faulty, Chance& chance) {
  double const opening = chance.by_size(0.15, 1);
  faulty.lasting.push_back({.act = Act::outlet_opening, .outlet = outlet::burst, .value = opening});
  faulty.feel(Symptom::wet_ground) = 0.7;
  faulty.severity = {"of the run-out flow of the pump is lost about the share", opening, Dimension::none};
}

void valve_shut(Faulty& faulty, Chance& chance) {
  double const opening = chance.says(0.75) ? 0 : chance.between(0.005, 0.015);
  faulty.lasting.push_back({.act = Act::yard_valve, .value = opening});
  faulty.feel(Symptom::noisy) = 0.1;
  faulty.severity = {"the valve is open by the share", opening, Dimension::none};
}

void line_frozen(Faulty& faulty, Chance& chance) {
  double const thaws_s = hour_s * chance.between(8, 13);
  double const freezes_s = hour_s * chance.between(21, 23.9);
  faulty.of_day.push_back({.time_s = 0, .act = Act::yard_valve, .value = 0});
  faulty.of_day.push_back({.time_s = thaws_s, .act = Act::yard_valve, .value = 1});
  faulty.of_day.push_back({.time_s = freezes_s, .act = Act::yard_valve, .value = 0});
  faulty.day_share = chance.between(0.3, 1);
  faulty.there_now = chance.says(0.3);
  faulty.severity = {"it thaws after midnight in", thaws_s, Dimension::time};
}

}  // namespace wellproof
