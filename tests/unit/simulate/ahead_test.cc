#include "simulate/ahead.h"

#include <cstdint>

#include "unit/simulate/plain_site.h"

namespace wellproof {
namespace {

// The controller sees a pressure at rest and turns the pump on; within the samples looked at its check valve opens.
TEST(SamplesAhead, LeaveNothingWhereItCameOutOtherwise) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  double const period_s = 1 / plant.site.drive.sample_rate_hz;
  auto const scenario = draw_scenario(settings, outlet::house, 0.5, 5, 10, 20);
  RunOptions const options;
  Stage stage(plant, settings, scenario, options);
  RegulatorState state;
  state.powered_up = true;
  state.speed_hz = state.integral_hz = 55;
  stage.turn(state.speed_hz);
  auto const sampled = stage.measure(Stage::Noise::with, 0);
  auto const before = stage.carrier().moment();
  double const current_a = stage.carrier().read().motor.current_a;
  bool noted = false;
  SamplesAhead ahead(stage, settings, options.logic, period_s);
  EXPECT_EQ(ahead.go(state, sampled, 1, 5, [&](double, Measured const&) { noted = true; }), 0U);
  EXPECT_GT(stage.carrier().steps(), 0U);
  EXPECT_GT(stage.carrier().flips(), 0U);
  EXPECT_FALSE(noted);
  EXPECT_EQ(stage.carrier().moment().y, before.y);
  EXPECT_EQ(stage.carrier().moment().modes, before.modes);
  EXPECT_EQ(stage.time_s(), 0);
  EXPECT_EQ(stage.speed_hz(), 55);
  EXPECT_NEAR(stage.carrier().read().motor.current_a, current_a, 1e-6);  // the slip is looked for from the last found
  EXPECT_EQ(state.integral_hz, 55);
  EXPECT_EQ(state.filtered_error_pa, 0);
}

}  // namespace
}  // namespace wellproof
