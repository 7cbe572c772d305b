// Steady operation, held against the plant's own rates: at an operating point nothing changes.
#include "plant/operating.h"

#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "settings_sites.h"

namespace wellproof {
namespace {

Plant middle_plant(SiteText const& entered = {}) {
  return draw_plants(site_of(entered), 1, 1).front();
}

TEST(OperatingPoint, IsWhereTheColumnStandsStill) {
  auto const plant = middle_plant();
  double const level_m = plant.well.static_level_depth_m;
  auto const found = point_at_speed(plant, 52, 3e5, level_m);
  ASSERT_TRUE(found.reached);
  Inputs inputs;
  inputs.speed_hz = 52;
  inputs.openings.assign(plant.outlets.size(), 0);
  Rates rates(plant, inputs);
  State y{};
  y[at::level_depth] = level_m;
  y[at::flow] = found.flow_m3_s;
  y[at::stored] = stored_m3(plant, 3e5);
  Modes const modes{.check_open = true, .line_full = true, .held = false};
  EXPECT_NEAR(rates.of(y, modes)[at::flow], 0, 1e-9);
  EXPECT_NEAR(rates.read(y, modes).motor.current_a, found.motor.current_a, 1e-6);
}

TEST(OperatingPoint, ForAFlowIsTheInverseOfAtASpeed) {
  auto const plant = middle_plant();
  double const level_m = plant.well.static_level_depth_m;
  for (double const speed_hz : {45.0, 52.0, 60.0, 70.0}) {
    auto const there = point_at_speed(plant, speed_hz, 3e5, level_m);
    if (there.flow_m3_s > 0) {
      EXPECT_NEAR(point_for_flow(plant, there.flow_m3_s, 3e5, level_m).speed_hz, speed_hz, 1e-6);
    }
  }
}

TEST(OperatingPoint, PassingAFlowIsAtThePressureThatLeavesThisFlow) {
  auto const plant = middle_plant();
  double const level_m = plant.well.static_level_depth_m;
  for (double const pressure_pa : {0.0, 1e5, 3e5}) {
    auto const there = point_at_speed(plant, 60, pressure_pa, level_m);
    ASSERT_TRUE(there.reached);
    auto const passing = point_passing(plant, 60, there.flow_m3_s, level_m);
    EXPECT_NEAR(passing.tee_pressure_pa, pressure_pa, 1e-3);
    EXPECT_NEAR(passing.motor.current_a, there.motor.current_a, 1e-8);
    EXPECT_FALSE(point_passing(plant, 60, there.flow_m3_s + 0.1, level_m).reached);
  }
}

TEST(OperatingPoint, AtTheZeroFlowSpeedThePumpJustHoldsTheColumn) {
  auto const plant = middle_plant();
  double const level_m = plant.well.static_level_depth_m;
  double const speed_hz = zero_flow_speed_hz(plant, 3e5, level_m);
  EXPECT_NEAR(shut_point(plant, speed_hz).tee_pressure_pa, 3e5, 1);
  EXPECT_EQ(point_at_speed(plant, speed_hz - 0.5, 3e5, level_m).flow_m3_s, 0);
  EXPECT_FALSE(point_at_speed(plant, speed_hz - 0.5, 3e5, level_m).reached);
  EXPECT_GT(point_at_speed(plant, speed_hz + 0.5, 3e5, level_m).flow_m3_s, 0);
}

TEST(OperatingPoint, ADryPumpTakesLessThanAShutOne) {
  auto const plant = middle_plant();
  for (double const speed_hz : {50.0, 60.0, 65.0}) {
    EXPECT_LT(dry_point(plant, speed_hz).motor.current_a, shut_point(plant, speed_hz).motor.current_a);
    EXPECT_EQ(dry_point(plant, speed_hz).head_m, 0);
  }
}

TEST(OperatingPoint, BeyondWhatTheMotorTurnsItIsNotReached) {
  auto const plant = middle_plant();
  EXPECT_FALSE(point_for_flow(plant, 5e-4, 5e6, plant.well.static_level_depth_m).reached);
  EXPECT_FALSE(point_at_speed(plant, 60, 3e6, plant.well.static_level_depth_m).reached);
}

TEST(SnoringPoint, PassesWhatTheWellGivesAndTakesCurrentBetweenDryAndOrdinary) {
  auto const plant = middle_plant();
  double const share = 0.03;  // of a specific capacity of 2 gpm/ft: about 4 gpm with the level at the intake
  auto const found = snoring_point(plant, 60, 1, share);
  EXPECT_NEAR(found.flow_m3_s, plant.well.flow_for_level_m3_s(found.level_depth_m, settled_time_s, 0, share), 1e-9);
  EXPECT_GT(found.wetness, 0);
  EXPECT_LT(found.wetness, 1);
  EXPECT_GT(found.motor.current_a, dry_point(plant, 60).motor.current_a);
  EXPECT_LT(found.motor.current_a, point_at_speed(plant, 60, 0, plant.well.static_level_depth_m).motor.current_a);
}

TEST(SnoringPoint, AWellThatGivesEnoughLetsThePumpStayWet) {
  auto const plant = middle_plant();
  EXPECT_EQ(snoring_point(plant, 60, 1, 1).wetness, 1);
}

}  // namespace
}  // namespace wellproof
