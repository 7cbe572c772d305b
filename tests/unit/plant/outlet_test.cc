// Outlets: full, partly open, regulated, near no pressure; the relief valve.
#include "plant/outlet.h"

#include <gtest/gtest.h>

namespace wellproof {
namespace {

Outlet const tap{2e-4, 3e5, false, OutletPlace::house};
Outlet const shower{1.5e-4, 2e5, true, OutletPlace::house};

TEST(Outlet, gives_its_nominal_flow_at_its_nominal_pressure) {
  EXPECT_NEAR(outlet_flow_m3_s(tap, 1, 3e5).value, 2e-4, 1e-16);
  EXPECT_NEAR(outlet_flow_m3_s(shower, 1, 2e5).value, 1.5e-4, 1e-16);
}

TEST(Outlet, gives_twice_at_four_times_the_pressure) {
  EXPECT_NEAR(outlet_flow_m3_s(tap, 1, 12e5).value, 4e-4, 1e-16);
}

TEST(Outlet, half_open_gives_half) {
  EXPECT_DOUBLE_EQ(outlet_flow_m3_s(tap, 0.5, 2e5).value, 0.5 * outlet_flow_m3_s(tap, 1, 2e5).value);
}

TEST(Outlet, regulated_never_gives_more_than_its_nominal_flow) {
  EXPECT_DOUBLE_EQ(outlet_flow_m3_s(shower, 1, 9e5).value, 1.5e-4);
  EXPECT_EQ(outlet_flow_m3_s(shower, 1, 9e5).slope, 0);
  EXPECT_LT(outlet_flow_m3_s(shower, 1, 1e5).value, 1.5e-4);
}

TEST(Outlet, meets_the_cubic_in_value_and_slope_at_2_kPa) {
  auto const below = outlet_flow_m3_s(tap, 1, 2000 - 1e-7);
  auto const above = outlet_flow_m3_s(tap, 1, 2000);
  EXPECT_NEAR(below.value, above.value, 1e-9 * above.value);
  EXPECT_NEAR(below.slope, above.slope, 1e-9 * above.slope);
}

TEST(Outlet, has_a_finite_slope_at_no_pressure_and_draws_nothing_in) {
  EXPECT_GT(outlet_flow_m3_s(tap, 1, 1e-9).slope, 0);
  EXPECT_LT(outlet_flow_m3_s(tap, 1, 1e-9).slope, 2 * outlet_flow_m3_s(tap, 1, 1000).slope);
  EXPECT_EQ(outlet_flow_m3_s(tap, 1, 0).value, 0);
  EXPECT_EQ(outlet_flow_m3_s(tap, 1, -5e4).value, 0);
}

TEST(Hole, below_no_pressure_passes_nothing) {
  EXPECT_EQ(hole_flow_m3_s(0.003, -1, 998, 0.61), 0);
}

TEST(Relief, is_shut_up_to_its_opening_pressure) {
  EXPECT_EQ(relief_flow_m3_s(5e5, 1e-3, 5e5).value, 0);
  EXPECT_EQ(relief_flow_m3_s(5e5, 1e-3, 1e5).value, 0);
}

TEST(Relief, passes_half_at_105_percent_and_its_rated_flow_at_110) {
  EXPECT_NEAR(relief_flow_m3_s(5e5, 1e-3, 5.25e5).value, 5e-4, 1e-12);
  EXPECT_NEAR(relief_flow_m3_s(5e5, 1e-3, 5.5e5).value, 1e-3, 1e-12);
}

TEST(Relief, stands_open_above_that_and_flows_as_the_root) {
  EXPECT_NEAR(relief_flow_m3_s(5e5, 1e-3, 22e5).value, 2e-3, 1e-12);
}

TEST(Relief, that_is_not_there_passes_nothing) {
  EXPECT_EQ(relief_flow_m3_s(0, 1e-3, 9e5).value, 0);
}

}  // namespace
}  // namespace wellproof
