#include "visit/full_draw.h"

#include <cmath>

#include "plant/operating.h"
#include "settings/study.h"

namespace wellproof {

double flow_at_m3_s(Plant const& plant, double speed_hz, double tee_pressure_pa, double lasts_s) {
  double const rest_m = plant.well.static_level_depth_m;
  double flow_m3_s = point_at_speed(plant, speed_hz, tee_pressure_pa, rest_m).flow_m3_s;
  // The level answers slowly: half steps settle within a few rounds.
  for (int round = 0; round < 6 && flow_m3_s > 0; ++round) {
    double const level_m = drawn_level_depth_m(plant, flow_m3_s, lasts_s);
    flow_m3_s = 0.5 * (flow_m3_s + point_at_speed(plant, speed_hz, tee_pressure_pa, level_m).flow_m3_s);
  }
  return flow_m3_s;
}

double sagged_pressure_pa(Plant const& plant, double speed_hz, double flow_m3_s, double at_pressure_pa,
                          double lasts_s) {
  double const level_m = drawn_level_depth_m(plant, flow_m3_s, lasts_s);
  double low_pa = 0;
  double high_pa = at_pressure_pa;
  for (int round = 0; round < 24; ++round) {
    double const middle_pa = 0.5 * (low_pa + high_pa);
    double const drawn_m3_s = flow_m3_s * std::sqrt(middle_pa / at_pressure_pa);
    bool const given = point_at_speed(plant, speed_hz, middle_pa, level_m).flow_m3_s >= drawn_m3_s;
    (given ? low_pa : high_pa) = middle_pa;
  }
  return low_pa;
}

}  // namespace wellproof
