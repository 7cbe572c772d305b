#include "simulate/live.h"

#include <cmath>

#include "unit/simulate/plain_site.h"

namespace wellproof {
namespace {

constexpr std::uint64_t noise = 7;

Trace sampled(Plant const& plant, Settings const& settings, Scenario const& scenario) {
  RunOptions options;
  options.sampling = Sampling::each;
  options.noise_seed = noise;
  return run(plant, settings, scenario, options);
}

TEST(LiveRun, GoesAsTheRunOfTheSameScriptDoes) {
  // The time loop of run.cc is the standard: a script that is written while it goes ends where the finished one does.
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  Scenario scenario = draw_scenario(settings, outlet::house, 0.5, 20, 200, 400);
  auto const trace = sampled(plant, settings, scenario);
  auto start = scenario;
  start.script.clear();
  LiveRun live(plant, settings, {}, start, noise);
  for (auto const& change : scenario.script) {
    live.advance(change.time_s - live.time_s(), 1);
    live.act(change.act, change.outlet, change.value, change.lasts_s);
  }
  live.advance(scenario.duration_s - live.time_s(), 1);
  auto const now = live.now();
  EXPECT_NEAR(now.tee_pressure_pa, trace.last.tee_pressure_pa, 100);
  EXPECT_NEAR(now.level_depth_m, trace.last.level_depth_m, 1e-3);
  auto const events = live.take_events();
  ASSERT_EQ(events.size(), trace.events.size());
  for (std::size_t i = 0; i < events.size(); ++i) {
    EXPECT_EQ(events[i].what.kind, trace.events[i].what.kind);
    EXPECT_NEAR(events[i].time_s, trace.events[i].time_s, 0.2);
  }
  EXPECT_GT(events.size(), 2U);
}

TEST(LiveRun, FollowsAScriptThatWasThereFromTheOutset) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  auto const scenario = draw_scenario(settings, outlet::house, 0.5, 20, 200, 300);
  LiveRun live(plant, settings, {}, scenario, noise);
  live.advance(100, 1);
  EXPECT_GT(live.now().drawn_flow_m3_s, 1e-5);
  live.act(Act::house_valve, 0, 0);
  live.advance(5, 1);
  EXPECT_LT(live.now().drawn_flow_m3_s, 1e-9);
}

TEST(LiveRun, ADraggedLevelIsWhereItWasDraggedTo) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  LiveRun live(plant, settings, {}, draw_scenario(settings, outlet::house, 0.5, 1e4, 2e4, 0), noise);
  live.advance(5, 1);
  double const before_m = live.now().level_depth_m;
  live.sink(3);
  EXPECT_NEAR(live.now().level_depth_m, before_m + 3, 1e-6);
  live.sink(1e6);
  EXPECT_LE(live.now().level_depth_m, plant.site.well.depth_m);
  live.sink(-1e6);
  EXPECT_GE(live.now().level_depth_m, 0);
  live.advance(60, 1);
  EXPECT_EQ(live.ending(), Ending::finished);
}

TEST(LiveRun, SaysHowLongItStillRests) {
  auto const plant = plain_plant();
  auto settings = plain_settings(plant);
  settings.closed_amps_below_a = 0;
  settings.dry_run_rest_s = 600;
  LiveRun live(plant, settings, {}, draw_scenario(settings, outlet::house, 1, 5, 1e6, 0), noise);
  live.advance(30, 1);
  live.act(Act::inflow_share, 0, 0);
  live.sink(1e6);  // to the bottom, below the pump
  for (int i = 0; i < 600 && live.words().mode != Mode::resting; ++i) {
    live.advance(1, 1);
  }
  ASSERT_EQ(live.words().mode, Mode::resting);
  EXPECT_EQ(live.words().cause, StopCause::dry_run);
  double const left_s = live.words().rest_left_s;
  EXPECT_GT(left_s, 590);
  live.advance(100, 1);
  EXPECT_NEAR(live.words().rest_left_s, left_s - 100, 0.1);
  live.reset();
  live.advance(2, 1);
  EXPECT_NE(live.words().mode, Mode::resting);
}

TEST(LiveRun, TheSameAgainUnderTheSameSettingsIsTheSame) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  LiveRun live(plant, settings, {}, draw_scenario(settings, outlet::house, 0.5, 20, 200, 0), noise);
  auto const expect_the_same = [&] {
    auto const now = live.now();
    auto const again = live.again(settings, 1);
    ASSERT_FALSE(again.empty());
    EXPECT_NEAR(again.back().time_s, live.time_s(), 1.01);
    EXPECT_NEAR(now.tee_pressure_pa, again.back().tee_pressure_pa, 500);
    EXPECT_NEAR(now.level_depth_m, again.back().level_depth_m, 0.01);
  };
  live.advance(60, 1);
  expect_the_same();  // by run(), as nothing was done that a script cannot hold
  live.sink(2);
  live.advance(200, 1);
  expect_the_same();

  auto other = settings;
  other.pressure_target_pa -= 5 * psi_pa;
  auto const lower = live.again(other, 1);
  ASSERT_GT(lower.size(), 150U);
  EXPECT_NEAR(lower[150].tee_pressure_pa, other.pressure_target_pa, 2 * psi_pa);
}

}  // namespace
}  // namespace wellproof
