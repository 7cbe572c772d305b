#include "settings/linear.h"

#include <cmath>

#include <gtest/gtest.h>

#include "plant/operating.h"
#include "settings_sites.h"

namespace wellproof {
namespace {

/// Tee pressure at which the pump's flow is that of an opening that passes flow_m3_s at at_pa at the outlet.
double steady_pressure_pa(Plant const& plant, double speed_hz, double flow_m3_s, double at_pa, double level_m) {
  double low_pa = 1e4;
  double high_pa = 1e6;
  for (int round = 0; round < 80; ++round) {
    double const tee_pa = 0.5 * (low_pa + high_pa);
    double const pumped_m3_s = point_at_speed(plant, speed_hz, tee_pa, level_m).flow_m3_s;
    double const outlet_pa =
        tee_pa - plant.weight_n_m3 * (plant.site.demand.outlet_rise_m + plant.house.loss_m(pumped_m3_s).value);
    double const passes_m3_s = flow_m3_s * std::sqrt(std::max(outlet_pa, 0.0) / at_pa);
    (pumped_m3_s > passes_m3_s ? low_pa : high_pa) = tee_pa;
  }
  return 0.5 * (low_pa + high_pa);
}

TEST(LinearPlant, MovesInTheEndAsTheOperatingPointsDo) {
  auto const plant = draw_plants(site_of({}), 1, 1).front();
  double const flow_m3_s = 4e-4;
  double const tee_pa = 3.5e5;
  double const level_m = plant.well.static_level_depth_m;
  auto const linear = linear_plant(plant, flow_m3_s, false, tee_pa, level_m);
  ASSERT_TRUE(linear.reached);
  double const at_pa =
      tee_pa - plant.weight_n_m3 * (plant.site.demand.outlet_rise_m + plant.house.loss_m(flow_m3_s).value);
  double const speed_hz = point_for_flow(plant, flow_m3_s, tee_pa, level_m).speed_hz;
  double const by_points_pa_hz = (steady_pressure_pa(plant, speed_hz + 0.2, flow_m3_s, at_pa, level_m) -
                                  steady_pressure_pa(plant, speed_hz - 0.2, flow_m3_s, at_pa, level_m)) /
                                 0.4;
  EXPECT_NEAR(linear.steady_pa_hz() / by_points_pa_hz, 1, 0.01);
  EXPECT_NEAR(std::abs(linear.response_pa_hz(1e-5)) / linear.steady_pa_hz(), 1, 1e-3);
}

TEST(LinearPlant, FallsOffAboveItsTimeConstants) {
  auto const plant = draw_plants(site_of({}), 1, 1).front();
  auto const linear = linear_plant(plant, 4e-4, false, 3.5e5, plant.well.static_level_depth_m);
  auto const times = linear.time_constants_s();
  ASSERT_EQ(times.size(), 3U);
  EXPECT_GE(times[0], times[1]);
  EXPECT_LT(std::abs(linear.response_pa_hz(100 / times[2])), 0.01 * linear.steady_pa_hz());
}

TEST(LinearPlant, SaysWhereThePlantCannotBe) {
  auto const plant = draw_plants(site_of({}), 1, 1).front();
  EXPECT_FALSE(linear_plant(plant, 4e-4, false, 3.5e5, plant.site.pump.setting_depth_m + 1).reached);
}

}  // namespace
}  // namespace wellproof
