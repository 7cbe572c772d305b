// Controllers that work otherwise: what a drive card may say.
#include <gtest/gtest.h>

#include "unit/regulator/toy.h"

namespace wellproof {
namespace {

using toy::Kind;
using toy::Rig;
using toy::target_pa;

constexpr double lost_pa = 0.7 * target_pa;

TEST(GuardsAtAnySpeed, StopAPumpThatIsDryAtLowSpeed) {
  Rig rig;
  rig.settings.fill_speed_hz = 45;
  rig.feed(0.2 * target_pa, 5, 10);
  ASSERT_EQ(rig.state.mode, Mode::filling);
  rig.logic.guard_where = GuardWhere::any_speed;
  rig.feed(0.2 * target_pa, 3.1, 10);
  EXPECT_EQ(rig.state.mode, Mode::resting);
  EXPECT_EQ(rig.state.cause, StopCause::dry_run);
}

TEST(GuardsAtAnySpeed, TakeAShowerAtLowSpeedForADryPump) {
  Rig rig = toy::at_ceiling_with_pressure_lost();
  rig.settings.sleep_speed_below_hz = 10;
  rig.feed(target_pa, 3.1, 20);
  EXPECT_EQ(rig.count(Kind::stopped), 0);  // near the ceiling only, it goes on
  rig.logic.guard_where = GuardWhere::any_speed;
  rig.feed(target_pa, 3.1, 20);
  EXPECT_EQ(rig.state.cause, StopCause::dry_run);
}

TEST(GuardsByPower, LookAtPowerAndNotAtCurrent) {
  Rig rig;
  rig.logic.guard_by = GuardBy::power;
  rig.settings.dry_run_power_below_w = 300;
  rig.settings.closed_power_below_w = 500;
  rig.measured.power_w = 1200;
  rig.feed(lost_pa, 3.1, 60);  // amps that would be dry
  EXPECT_EQ(rig.count(Kind::stopped), 0);
  double const from_s = rig.next_time_s;
  rig.measured.power_w = 200;
  rig.feed(lost_pa, 5.3, 20);
  EXPECT_EQ(rig.state.cause, StopCause::dry_run);
  // The filter falls from 1200 to 300 W on its way to 200 W in ln(1000 / 100) = 2.30 s; then 5 s.
  EXPECT_NEAR(rig.time_of(Kind::stopped) - from_s, 2.30 + 5, 0.15);
}

TEST(GuardsByPower, ClosedDischargeLiesBetween) {
  Rig rig;
  rig.logic.guard_by = GuardBy::power;
  rig.settings.dry_run_power_below_w = 300;
  rig.settings.closed_power_below_w = 500;
  rig.measured.power_w = 1200;
  rig.feed(lost_pa, 5, 10);
  rig.measured.power_w = 400;
  rig.feed(lost_pa, 5, 60);
  EXPECT_EQ(rig.state.cause, StopCause::closed_discharge);
}

TEST(GuardsByPower, StartingUpNeverLooksDry) {
  Rig rig;
  rig.logic.guard_by = GuardBy::power;
  rig.logic.current_filter_s = 10;
  rig.settings.dry_run_power_below_w = 300;
  rig.settings.dry_run_delay_s = 0.5;
  rig.measured.power_w = 1200;
  rig.feed(lost_pa, 5.3, 60);
  EXPECT_EQ(rig.count(Kind::stopped), 0);
}

Rig nudging() {
  Rig rig;
  rig.logic.sleep_test = SleepTest::nudge;
  rig.settings.sleep_speed_below_hz = rig.settings.speed_floor_hz;
  rig.plant.pressure_pa = 0.85 * target_pa;
  return rig;
}

TEST(Nudge, SleepsWhereNobodyDrawsWhateverTheSpeed) {
  Rig rig = nudging();
  rig.plant.tap_m3_s = 0.5e-3;
  rig.run(60);
  rig.plant.tap_m3_s = 0;
  rig.run(60);
  EXPECT_EQ(rig.state.mode, Mode::asleep);
}

TEST(Nudge, TriesAgainAndAgainUnderADrawAndLosesNoMoreThanItsBand) {
  Rig rig = nudging();
  rig.plant.tap_m3_s = 0.5e-3;
  rig.run(60);
  rig.forget_extremes();
  int const before = rig.count(Kind::gave_up_sleep);
  rig.run(120);
  // Eight seconds between nudges, and some for each dip.
  EXPECT_GE(rig.count(Kind::gave_up_sleep) - before, 5);
  EXPECT_LE(rig.count(Kind::gave_up_sleep) - before, 15);
  EXPECT_EQ(rig.count(Kind::slept), 0);
  EXPECT_GT(rig.least_pressure_pa, target_pa - 2 * rig.settings.sleep_band_pa);
}

TEST(Nudge, FallsQuicklyWhereTheLastTapClosesOnTheWayDown) {
  Rig rig = nudging();
  rig.settings.sleep_ramp_hz_s = 0.2;
  rig.plant.tap_m3_s = 0.5e-3;
  rig.run(60);
  while (rig.state.mode != Mode::easing) {
    rig.run(0.05);
  }
  rig.plant.tap_m3_s = 0;
  rig.forget_extremes();
  rig.run(30);  // at 0.2 Hz/s alone it would take 90 s
  EXPECT_EQ(rig.state.mode, Mode::asleep);
  EXPECT_LT(rig.most_pressure_pa, 1.3 * target_pa);
}

TEST(Nudge, WakesAtTheSpeedAtWhichItWentToSleep) {
  Rig rig = nudging();
  rig.run(60);
  ASSERT_EQ(rig.state.mode, Mode::asleep);
  double const eased_hz = rig.state.eased_from_hz;
  rig.plant.tap_m3_s = 0.5e-3;
  while (rig.state.mode == Mode::asleep) {
    rig.run(0.05);
  }
  EXPECT_NEAR(rig.state.integral_hz, std::max(eased_hz, rig.settings.speed_floor_hz), 1e-9);
}

TEST(GrowingRests, DoubleUpToTheLongestAndBeginAnewAfterSleep) {
  Rig rig = toy::at_ceiling_with_pressure_lost();
  rig.logic.rest_growth = 2;
  rig.logic.longest_rest_s = 2000;
  std::vector<double> rests_s;
  for (int i = 0; i < 4; ++i) {
    rig.feed(lost_pa, 3.1, 12);
    ASSERT_EQ(rig.state.mode, Mode::resting);
    double const from_s = rig.state.mode_since_s;
    while (rig.state.mode == Mode::resting) {
      rig.feed(lost_pa, 0, 1);
    }
    rests_s.push_back(rig.happened.back().time_s - from_s);
    rig.feed(lost_pa, 5.3, 8);
  }
  EXPECT_NEAR(rests_s[0], 600, 0.1);
  EXPECT_NEAR(rests_s[1], 1200, 0.1);
  EXPECT_NEAR(rests_s[2], 2000, 0.1);
  EXPECT_NEAR(rests_s[3], 2000, 0.1);
  rig.feed(1.1 * target_pa, 4, 60);
  ASSERT_EQ(rig.state.mode, Mode::asleep);
  EXPECT_EQ(rig.state.tries, 0U);
}

TEST(NoLongRunGuard, RunsForEver) {
  Rig rig;
  rig.logic.long_run_guard = false;
  rig.settings.long_run_limit_s = 100;
  rig.feed(lost_pa, 5, 1000);
  EXPECT_EQ(rig.count(Kind::stopped), 0);
}

TEST(NoLineFill, AnEmptyLineIsHeldAtOnce) {
  Rig rig;
  rig.logic.line_fill = false;
  rig.feed(0, 5, 10);
  EXPECT_EQ(rig.state.mode, Mode::holding);
}

TEST(SecondGain, TakesOverWithoutAJumpOfTheSpeed) {
  for (auto const when : {SecondGain::below_speed, SecondGain::large_error}) {
    Rig rig;
    rig.logic.second_gain = when;
    rig.logic.second_gain_below_hz = 49.5;
    rig.logic.second_gain_error_pa = 2e3;
    rig.logic.second_gain_share = 3;
    rig.settings.speed_ramp_up_hz_s = 1000;
    rig.settings.speed_ramp_down_hz_s = 1000;
    rig.settings.sleep_speed_below_hz = 33;
    rig.plant.pressure_pa = 0.85 * target_pa;
    rig.plant.tap_m3_s = 0.5e-3;
    rig.run(20);
    int changes = 0;
    double jump_hz = 0;
    for (int i = 0; i < 4000; ++i) {
      rig.plant.tap_m3_s = i % 400 < 200 ? 0.5e-3 : 0.15e-3;
      bool const second = rig.state.second_gain;
      double const speed_hz = rig.state.speed_hz;
      double const pressure_pa = rig.plant.pressure_pa;
      rig.run(0.05);
      if (rig.state.second_gain != second) {
        ++changes;
        // What the error moved by times the stronger gain, and what the integral adds in a sample.
        double const error_pa = std::abs(target_pa - pressure_pa);
        double const most_hz = 3 * rig.settings.regulator_gain_hz_pa * (3e3 + error_pa * 0.05 / 0.6);
        jump_hz = std::max(jump_hz, std::abs(rig.state.speed_hz - speed_hz) - most_hz);
      }
    }
    EXPECT_GT(changes, 2);
    EXPECT_LE(jump_hz, 0);
  }
}

TEST(SecondGain, OfShareOneChangesNothing) {
  Rig one;
  Rig two;
  two.logic.second_gain = SecondGain::below_speed;
  two.logic.second_gain_below_hz = 50;
  for (Rig* rig : {&one, &two}) {
    rig->plant.pressure_pa = 0.85 * target_pa;
    rig->plant.tap_m3_s = 0.3e-3;
    rig->run(60);
  }
  EXPECT_EQ(one.speeds_hz, two.speeds_hz);
}

TEST(Applies, NamesWhatAControllerHasAUseFor) {
  Logic logic;
  EXPECT_TRUE(applies(logic, "dry_run.amps_below"));
  EXPECT_FALSE(applies(logic, "dry_run.power_below"));
  EXPECT_TRUE(applies(logic, "fill.speed"));
  logic.guard_by = GuardBy::power;
  logic.sleep_test = SleepTest::nudge;
  logic.line_fill = false;
  logic.long_run_guard = false;
  EXPECT_FALSE(applies(logic, "closed.amps_below"));
  EXPECT_TRUE(applies(logic, "closed.power_below"));
  for (auto const key : {"sleep.speed_below", "fill.time", "fill.speed", "long_run.limit"}) {
    EXPECT_FALSE(applies(logic, key)) << key;
  }
  EXPECT_TRUE(applies(logic, "sleep.hold"));
}

}  // namespace
}  // namespace wellproof
