// The well and what it gives.
#include <algorithm>
#include <cmath>

#include "explain/fault_makers.h"
#include "plant/water.h"
#include "quantity/customary.h"

namespace wellproof {
namespace {

double over_intake_m(Faulty const& faulty) {
  return std::max(1.0, faulty.plant.site.pump.setting_depth_m - faulty.plant.well.static_level_depth_m);
}

}  // namespace

double column_m(Faulty const& faulty) {
  return faulty.plant.well.static_level_depth_m + faulty.plant.tee_elevation_m +
         faulty.settings.pressure_target_pa / faulty.plant.weight_n_m3;
}

double most_inflow_m3_s(Faulty const& faulty) {
  return std::max(1e-9, faulty.plant.well.flow_for_level_m3_s(faulty.plant.site.pump.setting_depth_m));
}

void hold_inflow_to(Faulty& faulty, double flow_m3_s) {
  double const share = std::min(0.95, flow_m3_s / most_inflow_m3_s(faulty));
  faulty.lasting.push_back({.act = Act::inflow_share, .value = share});
}

void level_fallen(Faulty& faulty, Chance& chance) {
  // From half of what stood over the intake to a little below it.
  double const fall_m = chance.between(0.5, 1.02) * over_intake_m(faulty);
  faulty.lasting.push_back({.act = Act::static_shift, .value = fall_m});
  faulty.feel(Symptom::sand) = 0.1;
  faulty.severity = {"the water at rest stands deeper by", fall_m, Dimension::length};
}

void yield_fallen(Faulty& faulty, Chance& chance) {
  // From a trickle to a third of what the house draws at its peak.
  double const flow_m3_s = chance.by_size(0.008, 0.3) * faulty.plant.site.demand.peak_draw_m3_s;
  hold_inflow_to(faulty, flow_m3_s);
  faulty.feel(Symptom::sand) = 0.1;
  faulty.severity = {"the well gives, with the water at the pump,", std::min(flow_m3_s, most_inflow_m3_s(faulty)),
                     Dimension::flow};
}

void intake_clogged(Faulty& faulty, Chance& chance) {
  // The loss that leaves a share of the best flow under most of the pump's head.
  auto const& plant = faulty.plant;
  double const share = chance.by_size(0.05, 0.8);
  double const area_m2 = plant.up.volume_m3() / plant.up.length_m();
  double const velocity_m_s = share * plant.pump.best_flow_m3_s() / area_m2;
  double const lost_m = std::max(5.0, plant.pump.shutoff_head_m() - 0.8 * column_m(faulty));
  faulty.lasting.push_back(
      {.act = Act::intake_loss, .value = 2 * gravity_m_s2 * lost_m / (velocity_m_s * velocity_m_s)});
  faulty.feel(Symptom::noisy) = 0.3;
  faulty.feel(Symptom::sand) = 0.2;
  faulty.severity = {"at full speed the screen passes about", share * plant.pump.best_flow_m3_s(), Dimension::flow};
}

void more_demand(Faulty& faulty, Chance& chance) {
  // A use that runs for hours, often by a clock, of half to twice the pump's best flow together with the house.
  auto& plant = faulty.plant;
  double const flow_m3_s = chance.by_size(0.4, 1.3) * plant.pump.best_flow_m3_s();
  constexpr double starts_h[] = {2, 4, 5, 9, 13, 18, 20, 22};
  double const starts_s = hour_s * (starts_h[chance.one_of(8)] + chance.between(0, 1));
  double const lasts_s = hour_s * chance.by_size(1, 6);
  faulty.uses.push_back({.fixture = Fixture::hose, .start_s = starts_s, .duration_s = lasts_s, .flow_m3_s = flow_m3_s});
  plant.outlets[outlet::house].nominal_flow_m3_s += flow_m3_s;
  faulty.household_share = chance.between(1, 1.6);
  faulty.day_share = chance.between(0.3, 1);
  faulty.severity = {"for hours a day is drawn besides", flow_m3_s, Dimension::flow};
}

}  // namespace wellproof
