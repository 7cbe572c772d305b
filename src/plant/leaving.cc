// What leaves the plant at the house and at the tee.
#include <algorithm>
#include <cmath>
#include <limits>

#include "plant/plant.h"

namespace wellproof {

double Rates::outlet_pressure_pa(double tee_pressure_pa, double flow_m3_s) const {
  double const rise_m = plant_->site.demand.outlet_rise_m;
  return tee_pressure_pa - plant_->weight_n_m3 * (rise_m + plant_->house.loss_m(flow_m3_s).value);
}

// The house path's friction and the outlets' law meet at one flow: what leaves falls as friction rises, so the root is
// single and lies between nothing and what would leave without friction.
Sloped Rates::solve_house_flow_m3_s(double tee_pressure_pa) {
  auto const leaving = [this](double pressure_pa) {
    Sloped sum;
    for (std::size_t i = 0; i < plant_->outlets.size(); ++i) {
      if (plant_->outlets[i].place == OutletPlace::house && inputs_.openings[i] > 0) {
        auto const one = outlet_flow_m3_s(plant_->outlets[i], inputs_.openings[i] * inputs_.house_valve, pressure_pa);
        sum.value += one.value;
        sum.slope += one.slope;
      }
    }
    return sum;
  };
  double const no_flow_pa = outlet_pressure_pa(tee_pressure_pa, 0);
  if (no_flow_pa <= 0) {
    return {};
  }
  double low = 0;
  double high = std::numeric_limits<double>::infinity();
  // Along the last slope to where the root must lie: a step of the integrator moves the pressure little.
  double flow = std::max(house_flow_.value + house_flow_.slope * (tee_pressure_pa - house_pressure_pa_), 0.0);
  Sloped out;
  double friction_slope = 0;
  for (int round = 0; round < 60; ++round) {
    auto const friction = plant_->house.loss_m(flow);
    out = leaving(no_flow_pa - plant_->weight_n_m3 * friction.value);
    friction_slope = plant_->weight_n_m3 * friction.slope;
    double const excess = out.value - flow;
    (excess > 0 ? low : high) = flow;
    double next = flow + excess / (1 + out.slope * friction_slope);
    if (!(next >= low && next <= high)) {
      high = std::min(high, leaving(no_flow_pa).value);
      next = 0.5 * (low + high);
    }
    double const moved = std::abs(next - flow);
    flow = next;
    if (moved <= 1e-14 + 3e-5 * flow) {  // the error left is its square
      break;
    }
  }
  return {flow, out.slope / (1 + out.slope * friction_slope)};
}

Sloped Rates::house_flow_m3_s(double tee_pressure_pa) {
  if (!house_open_) {
    return {};
  }
  if (!house_seen_ || tee_pressure_pa != house_pressure_pa_) {
    house_flow_ = solve_house_flow_m3_s(tee_pressure_pa);
    house_pressure_pa_ = tee_pressure_pa;
    house_seen_ = true;
  }
  return house_flow_;
}

Sloped Rates::tee_outflow_m3_s(double tee_pressure_pa) const {
  Sloped sum;
  double const burst = inputs_.openings[outlet::burst];
  if (burst > 0) {
    sum = outlet_flow_m3_s(plant_->outlets[outlet::burst], burst, tee_pressure_pa);
  }
  if (plant_->relief_flow_m3_s > 0) {
    auto const relief = relief_flow_m3_s(plant_->site.limits.relief_pa, plant_->relief_flow_m3_s, tee_pressure_pa);
    sum.value += relief.value;
    sum.slope += relief.slope;
  }
  return sum;
}

}  // namespace wellproof
