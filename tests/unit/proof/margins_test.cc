#include "proof/margins.h"

#include <vector>

#include "plant/pump.h"
#include "unit/simulate/plain_site.h"

namespace wellproof {
namespace {

PlanMargin false_stop(Settings const& settings) {
  return false_stop_margin(std::vector{plain_plant()}, settings, {}, UnitSystem::us);
}

PlanMargin harm(Settings const& settings) {
  return harm_margin(std::vector{plain_plant()}, settings, {}, UnitSystem::us);
}

PlanMargin asleep(Settings const& settings) {
  return sleep_margin(std::vector{plain_plant()}, settings, {}, UnitSystem::us);
}

TEST(Distance, IsInTheCriterionsUnitAndNegativeBeyondIt) {
  EXPECT_DOUBLE_EQ(distance_to_limit(Measure::most_tee_pressure, 400e3, 690e3), 290e3);
  EXPECT_DOUBLE_EQ(distance_to_limit(Measure::least_tee_pressure, 400e3, 690e3), -290e3);
  Outcome outcome{.passed = true, .margin = 0.1, .value = 60 * psi_pa, .limit = 64 * psi_pa};
  EXPECT_EQ(distance_words(Measure::most_tee_pressure, outcome, UnitSystem::us), "4 psi to rating");
  outcome = {.passed = false, .margin = -0.1, .value = 70, .limit = 64};
  EXPECT_EQ(distance_words(Measure::asleep_within, outcome, UnitSystem::us), "6 s beyond");
  outcome = {.passed = false, .margin = -1, .value = 60, .limit = 64};
  EXPECT_EQ(distance_words(Measure::stopped_within, outcome, UnitSystem::us), "not in the run");
  // 30 °C of room are 54 °F of room: a difference has no zero point.
  outcome = {.passed = true, .margin = 0.3, .value = 100, .limit = 130};
  EXPECT_EQ(distance_words(Measure::winding, outcome, UnitSystem::us), "54 °F to harm");
}

TEST(Distance, IsToldWithThreeDigitsRoundedTowardsTheLimit) {
  Outcome const outcome{.passed = true, .margin = 0.1, .value = 60 * psi_pa, .limit = 95.4299 * psi_pa};
  EXPECT_EQ(distance_words(Measure::most_tee_pressure, outcome, UnitSystem::us), "35.4 psi to rating");
}

TEST(FalseStop, ShrinksByWhatTheThresholdRises) {
  auto settings = plain_settings(plain_plant());
  auto const before = false_stop(settings);
  ASSERT_TRUE(before.value);
  EXPECT_GT(*before.value, 0);
  settings.closed_amps_below_a += 0.1;
  EXPECT_NEAR(*false_stop(settings).value, *before.value - 0.1, 1e-12);
  settings.closed_amps_below_a = settings.motor_current_limit_a * 2;
  EXPECT_LT(*false_stop(settings).value, 0);
  settings.closed_amps_below_a = 0;
  settings.dry_run_amps_below_a = 0;
  EXPECT_FALSE(false_stop(settings).value);
}

TEST(Harm, LosesTheSecondsThatADelayGains) {
  auto settings = plain_settings(plain_plant());
  settings.closed_delay_s = 1;
  auto const before = harm(settings);
  ASSERT_TRUE(before.value);
  settings.dry_run_delay_s += 2;
  settings.closed_delay_s += 2;
  EXPECT_NEAR(*harm(settings).value, *before.value - 2, 1e-9);
}

TEST(Harm, FallsToTheRunTimeLimitWhereNoGuardActs) {
  auto settings = plain_settings(plain_plant());
  settings.dry_run_amps_below_a = 0;
  settings.closed_amps_below_a = 0;
  auto const margin = harm(settings);
  ASSERT_TRUE(margin.value);
  EXPECT_LT(*margin.value, 60 - settings.long_run_limit_s);
  settings.long_run_limit_s = 0;
  EXPECT_FALSE(harm(settings).value);
}

TEST(SleepMargin, IsTheDistanceToTheSpeedAtWhichRunsNoLongerSleep) {
  // The run says the same: with a positive margin the leaking house rests, well past it the pump turns on.
  auto site = plain_site();
  site.demand.leak_m3_s = 0.1 * gpm_m3_s;
  site.tank.volume_m3 = 0.017;
  auto const plant = build(site);
  auto settings = plain_settings(plant);
  auto const at = [&](double above_hz) {
    auto set = settings;
    set.sleep_speed_below_hz += above_hz - *sleep_margin(std::vector{plant}, settings, {}, UnitSystem::us).value;
    EXPECT_NEAR(*sleep_margin(std::vector{plant}, set, {}, UnitSystem::us).value, above_hz, 1e-9);
    auto const trial = hazard("quiet_house_with_leak")->make(plant, set);
    RunOptions options;
    options.windows = trial.windows;
    return judge_all(run(plant, set, trial.scenario, options), trial.criteria).passed;
  };
  EXPECT_TRUE(at(0.3));
  EXPECT_FALSE(at(-2));
  EXPECT_LT(*asleep(settings).value, 5);
  EXPECT_FALSE(sleep_margin(std::vector{plant}, settings, {.two_contact_switch = true}, UnitSystem::us).value);
}

TEST(RatingMargin, IsTheLeastRoomOfAllRuns) {
  std::vector<std::vector<Outcome>> outcomes(hazards().size());
  outcomes[0] = {{.draw = 0, .pressure_room_pa = 9 * psi_pa}, {.draw = 1, .pressure_room_pa = 7 * psi_pa}};
  outcomes[2] = {{.draw = 0}, {.draw = 1, .pressure_room_pa = 5 * psi_pa}};
  auto const margin = rating_margin(outcomes, UnitSystem::us);
  EXPECT_DOUBLE_EQ(*margin.value, 5 * psi_pa);
  EXPECT_EQ(margin.draw, 1U);
  EXPECT_EQ(margin.says, "5 psi to the rating, in " + std::string(hazards()[2].name) + " (draw 1).");
  EXPECT_FALSE(rating_margin({}, UnitSystem::us).value);
}

}  // namespace
}  // namespace wellproof
