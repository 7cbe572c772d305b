// The well: how its formation follows from what was told of it, and how its level goes.
#include "plant/well.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "plant/driller_test.h"

namespace wellproof {
namespace {

DrawnSite site() {
  DrawnSite drawn;
  drawn.well.static_level_depth_m = 20;
  drawn.well.season_drop_m = 3;
  drawn.well.depth_m = 90;
  drawn.well.casing_diameter_m = 0.154;
  drawn.well.storativity = 2e-4;
  drawn.well.test_time_s = 4 * 3600;
  drawn.pump.setting_depth_m = 80;
  PipeRunOf<double> drop;
  drop.place = PipePlace::drop;
  drop.inside_diameter_m = 0.0351;
  drop.length_m = 80;
  drawn.pipes = {drop};
  return drawn;
}

DrawnSite site_with_yield() {
  auto drawn = site();
  drawn.well.yield_m3_s = 3e-4;
  return drawn;
}

TEST(Well, gives_nothing_at_its_static_level_in_the_dry_season) {
  auto const well = prepare_well(site_with_yield());
  EXPECT_DOUBLE_EQ(well.static_level_depth_m, 23);
  EXPECT_NEAR(well.inflow({}, 23, 60, 0, 1).flow_m3_s(23), 0, 1e-15);
  EXPECT_GT(well.inflow({}, 23, 60, 0, 1).flow_m3_s(24), 0);
}

TEST(Well, known_by_its_yield_gives_that_with_the_level_at_the_intake) {
  auto drawn = site_with_yield();
  drawn.well.season_drop_m = 0;
  EXPECT_NEAR(prepare_well(drawn).flow_for_level_m3_s(80, drawn.well.test_time_s), 3e-4, 3e-7);
}

TEST(Well, known_by_its_capacity_has_it_after_the_time_told) {
  auto drawn = site();
  drawn.well.season_drop_m = 0;
  drawn.well.inflow_known = InflowKnown::specific_capacity;
  drawn.well.specific_capacity_m2_s = 1e-5;
  auto const well = prepare_well(drawn);
  EXPECT_NEAR(well.level_for_flow_m(1e-5, drawn.well.test_time_s), 21, 1e-3);
}

TEST(Well, known_by_a_drillers_test_repeats_it) {
  auto drawn = site();
  drawn.well.season_drop_m = 0;
  drawn.well.inflow_known = InflowKnown::test;
  drawn.well.test_flow_m3_s = 4e-4;
  drawn.well.test_level_depth_m = 65;
  drawn.well.quadratic_loss_s2_m5 = 1e7;
  auto const well = prepare_well(drawn);
  auto bore = bore_at_rest(well);
  pump_evenly(well, bore, 4e-4, drawn.well.test_time_s);
  EXPECT_NEAR(bore.level_depth_m, 65, 0.01 * 45);
}

TEST(Well, takes_water_back_when_it_stands_above_its_static_level) {
  auto const well = prepare_well(site_with_yield());
  EXPECT_LT(well.inflow({}, 10, 60, 0, 1).flow_m3_s(10), 0);
  EXPECT_LT(well.flow_for_level_m3_s(10), 0);
}

TEST(Well, gives_less_in_a_drought_and_where_less_of_the_formation_is_left) {
  auto const well = prepare_well(site_with_yield());
  EXPECT_NEAR(well.flow_for_level_m3_s(60, 3600, 10), well.flow_for_level_m3_s(50, 3600), 1e-15);
  EXPECT_NEAR(well.flow_for_level_m3_s(60, 3600, 0, 0.4), 0.4 * well.flow_for_level_m3_s(60, 3600), 1e-15);
  EXPECT_NEAR(well.level_for_flow_m(0.4 * 2e-4, 3600, 0, 0.4), well.level_for_flow_m(2e-4, 3600), 1e-12);
}

TEST(Well, fed_by_one_fracture_gives_no_more_below_it) {
  auto drawn = site_with_yield();
  drawn.well.fracture_depth_m = 50;
  auto const well = prepare_well(drawn);
  EXPECT_EQ(well.flow_for_level_m3_s(75), well.flow_for_level_m3_s(50));
  EXPECT_LT(well.flow_for_level_m3_s(45), well.flow_for_level_m3_s(50));
  EXPECT_EQ(well.inflow({}, 75, 60, 0, 1).flow_m3_s(75), well.inflow({}, 50, 60, 0, 1).flow_m3_s(50));
  EXPECT_EQ(well.inflow({}, 75, 60, 0, 1).slope_m2_s(75), 0);
  EXPECT_EQ(well.level_for_flow_m(1.1 * well.flow_for_level_m3_s(50)), drawn.well.depth_m);
}

TEST(Well, loses_with_the_square_of_what_flows_in) {
  auto drawn = site_with_yield();
  auto const smooth = prepare_well(drawn);
  auto rough = smooth;
  rough.quadratic_loss_s2_m5 = 5e6;
  rough.linear_loss_s_m2 = 1e4;
  double const flow_m3_s = 2e-4;
  EXPECT_NEAR(rough.level_for_flow_m(flow_m3_s) - smooth.level_for_flow_m(flow_m3_s), 5e6 * 4e-8 + 1e4 * 2e-4, 1e-9);
  EXPECT_NEAR(rough.flow_for_level_m3_s(rough.level_for_flow_m(flow_m3_s)), flow_m3_s, 1e-12);
}

TEST(Well, has_the_annulus_between_casing_and_drop_pipe_for_its_storage) {
  double const casing_m2 = std::numbers::pi / 4 * 0.154 * 0.154;
  auto const well = prepare_well(site_with_yield());
  EXPECT_LT(well.bore_area_m2, casing_m2);
  // 1¼ in schedule 40: outside 1.660 in (ASME B36.10)
  EXPECT_NEAR(well.bore_area_m2, casing_m2 - std::numbers::pi / 4 * 0.04216 * 0.04216, 0.002 * casing_m2);
}

TEST(Well, whose_casing_alone_could_have_fed_the_test_gives_nothing) {
  auto drawn = site();
  drawn.well.inflow_known = InflowKnown::test;
  drawn.well.test_flow_m3_s = 6e-4;
  drawn.well.test_time_s = 600;
  drawn.well.test_level_depth_m = 60;
  auto const well = prepare_well(drawn);
  EXPECT_FALSE(well.formation.gives());
  EXPECT_EQ(well.flow_for_level_m3_s(60), 0);
  auto bore = bore_at_rest(well);
  pump_evenly(well, bore, 1e-4, 1000);
  EXPECT_NEAR(bore.level_depth_m, 23 + 0.1 / well.bore_area_m2, 1e-6);
}

TEST(Well, with_a_test_level_above_the_static_one_stays_finite) {
  auto drawn = site();
  drawn.well.inflow_known = InflowKnown::test;
  drawn.well.test_flow_m3_s = 3e-4;
  drawn.well.test_time_s = 3600;
  drawn.well.test_level_depth_m = 19;
  double const found_m2_s = prepare_well(drawn).formation.transmissivity_m2_s();
  EXPECT_TRUE(std::isfinite(found_m2_s));
  EXPECT_GT(found_m2_s, 0);
}

TEST(Bore, keeps_its_water) {
  auto const well = prepare_well(site_with_yield());
  auto bore = bore_at_rest(well);
  double pumped_m3 = 0;
  for (int round = 0; round < 50; ++round) {
    pump_evenly(well, bore, round % 3 == 0 ? 5e-4 : 0, 700);
    pumped_m3 += round % 3 == 0 ? 5e-4 * 700 : 0;
  }
  double const from_casing_m3 = well.bore_area_m2 * (bore.level_depth_m - well.static_level_depth_m);
  EXPECT_NEAR(bore.came_in_m3 + from_casing_m3, pumped_m3, 1e-9 * pumped_m3);
  auto course = bore.course;
  course.renew(well, bore.time_s, bore.came_in_m3, bore.level_depth_m, 0, 1);
  EXPECT_NEAR(well.formation.given_m3(course.drawn()), bore.came_in_m3, 1e-9 * bore.came_in_m3);
}

TEST(Bore, comes_to_a_level_in_the_time_it_says) {
  auto const well = prepare_well(site_with_yield());
  double const time_s = time_to_level_s(well, bore_at_rest(well), 6e-4, 60, 1e6);
  auto bore = bore_at_rest(well);
  pump_evenly(well, bore, 6e-4, time_s);
  EXPECT_NEAR(bore.level_depth_m, 60, 0.02);
  EXPECT_EQ(time_to_level_s(well, bore_at_rest(well), 1e-6, 60, 5000), 5000);
}

}  // namespace
}  // namespace wellproof
