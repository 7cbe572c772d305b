// What stops a pump.
#include <gtest/gtest.h>

#include "unit/regulator/toy.h"

namespace wellproof {
namespace {

using toy::Kind;
using toy::Rig;
using toy::target_pa;

constexpr double lost_pa = 0.7 * target_pa;

void expect_stopped(Rig const& rig, Mode mode, StopCause cause) {
  EXPECT_EQ(rig.state.mode, mode);
  EXPECT_EQ(rig.state.cause, cause);
  EXPECT_EQ(rig.state.speed_hz, 0);
  EXPECT_EQ(rig.count(Kind::stopped), 1);
  EXPECT_TRUE(rig.fault_contact_closed);
}

TEST(DryRun, AtFullSpeedWithPressureLostItRestsAfterItsDelay) {
  Rig rig = toy::at_ceiling_with_pressure_lost();
  double const dry_from_s = rig.next_time_s;
  rig.feed(lost_pa, 3.1, 20);
  expect_stopped(rig, Mode::resting, StopCause::dry_run);
  // The filter falls from 5.3 to 3.6 on its way to 3.1 in ln(2.2 / 0.5) = 1.48 s; then 5 s.
  EXPECT_NEAR(rig.time_of(Kind::stopped) - dry_from_s, 1.48 + 5, 0.15);
}

TEST(DryRun, DryCurrentAt45HzDoesNotTrip) {
  Rig rig;
  rig.settings.speed_ceiling_hz = 60;
  rig.settings.fill_speed_hz = 45;
  rig.feed(0.2 * target_pa, 3.1, 200);
  ASSERT_EQ(rig.state.mode, Mode::filling);
  EXPECT_EQ(rig.state.speed_hz, 45);
  EXPECT_EQ(rig.count(Kind::stopped), 0);
}

TEST(DryRun, LowCurrentWithThePressureHeldDoesNotTrip) {
  Rig rig = toy::at_ceiling_with_pressure_lost();
  rig.feed(0.98 * target_pa, 3.1, 60);
  EXPECT_EQ(rig.state.mode, Mode::holding);
}

TEST(DryRun, FilteredCurrentJitterDoesNotRestartTheDelay) {
  Rig rig = toy::at_ceiling_with_pressure_lost();
  // Every other sample is above the threshold of 3.6 A; the mean is below.
  for (int i = 0; i < 400; ++i) {
    rig.feed(lost_pa, i % 2 != 0 ? 3.9 : 2.9, 0.05);
  }
  expect_stopped(rig, Mode::resting, StopCause::dry_run);
  // Without the filter the same jitter never ends the delay: the check that the claim above can fail.
  Rig raw = toy::at_ceiling_with_pressure_lost();
  raw.logic.current_filter_s = 0;
  raw.settings.closed_delay_s = 1e6;
  for (int i = 0; i < 400; ++i) {
    raw.feed(lost_pa, i % 2 != 0 ? 3.9 : 2.9, 0.05);
  }
  EXPECT_EQ(raw.count(Kind::stopped), 0);
}

TEST(DryRun, AGateThatClosesRestartsTheDelay) {
  Rig rig = toy::at_ceiling_with_pressure_lost();
  rig.feed(lost_pa, 3.1, 5);
  rig.feed(0.98 * target_pa, 3.1, 0.1);
  rig.feed(lost_pa, 3.1, 4.5);
  EXPECT_EQ(rig.state.mode, Mode::holding);
  rig.feed(lost_pa, 3.1, 2);
  EXPECT_EQ(rig.state.cause, StopCause::dry_run);
}

TEST(DryRun, AfterTheRestItTriesAgainAndCounts) {
  Rig rig = toy::at_ceiling_with_pressure_lost();
  rig.feed(lost_pa, 3.1, 10);
  ASSERT_EQ(rig.state.mode, Mode::resting);
  double const stopped_s = rig.time_of(Kind::stopped);
  rig.feed(lost_pa, 0, 603);
  EXPECT_EQ(rig.count(Kind::retried), 1);
  EXPECT_NEAR(rig.time_of(Kind::retried) - stopped_s, 600, 0.06);
  EXPECT_EQ(rig.state.tries, 1U);
  rig.feed(lost_pa, 3.1, 12);
  ASSERT_EQ(rig.state.mode, Mode::resting);
  rig.feed(lost_pa, 0, 595);
  EXPECT_EQ(rig.state.tries, 2U);
  rig.feed(1.1 * target_pa, 4, 60);
  ASSERT_EQ(rig.state.mode, Mode::asleep);
  EXPECT_EQ(rig.state.tries, 0U);
}

TEST(DryRun, ARetryOnAnEmptiedLineFillsIt) {
  Rig rig = toy::at_ceiling_with_pressure_lost();
  rig.feed(lost_pa, 3.1, 10);
  rig.feed(0.1 * target_pa, 0, 600);
  EXPECT_EQ(rig.state.mode, Mode::filling);
  EXPECT_EQ(rig.count(Kind::retried), 1);
}

TEST(DryRun, ARetryThatFindsThePressureHeldSleepsAndForgetsTheTries) {
  Rig rig = toy::at_ceiling_with_pressure_lost();
  rig.state.tries = 2;
  rig.feed(lost_pa, 3.1, 10);
  rig.feed(target_pa, 0, 600);
  EXPECT_EQ(rig.state.mode, Mode::asleep);
  EXPECT_EQ(rig.count(Kind::retried), 0);
  EXPECT_EQ(rig.state.tries, 0U);
}

TEST(DryRun, StartingUpNeverLooksDry) {
  // Full speed is reached in 4 s; the filter, begun at nothing with 2 s of lag, would look dry for the first of them.
  Rig rig;
  rig.logic.current_filter_s = 10;
  rig.settings.dry_run_delay_s = 0.5;
  rig.settings.closed_delay_s = 0.5;
  rig.feed(lost_pa, 5.3, 60);
  EXPECT_EQ(rig.count(Kind::stopped), 0);
}

TEST(ClosedDischarge, TakesItsOwnDelay) {
  Rig rig = toy::at_ceiling_with_pressure_lost();
  double const shut_from_s = rig.next_time_s;
  rig.feed(lost_pa, 4.1, 40);
  expect_stopped(rig, Mode::resting, StopCause::closed_discharge);
  // ln(1.2 / 0.3) = 1.39 s for the filter, then 20 s.
  EXPECT_NEAR(rig.time_of(Kind::stopped) - shut_from_s, 1.39 + 20, 0.15);
}

TEST(ClosedDischarge, WhicheverDelayEndsFirstActs) {
  Rig rig = toy::at_ceiling_with_pressure_lost();
  rig.settings.closed_delay_s = 3;  // shorter than that of dry run, and 3.1 A is under both
  rig.feed(lost_pa, 3.1, 20);
  EXPECT_EQ(rig.state.cause, StopCause::closed_discharge);
}

TEST(OverCurrent, AMotorThatDoesNotTurnStopsForGood) {
  Rig rig;
  rig.feed(lost_pa, 25, 3600 * 5);
  expect_stopped(rig, Mode::stopped, StopCause::over_current);
  // Start 1 s, its current 2 s, the delay 3 s.
  EXPECT_NEAR(rig.time_of(Kind::stopped), 6, 0.11);
}

TEST(OverCurrent, TheFirstSecondsOfAStartDoNotCount) {
  Rig rig;
  rig.feed(lost_pa, 25, 2.9);
  rig.feed(lost_pa, 5, 60);
  EXPECT_EQ(rig.count(Kind::stopped), 0);
}

TEST(LongRun, RunningWithoutSleepItStopsForGood) {
  Rig rig;
  rig.settings.long_run_limit_s = 100;
  rig.feed(lost_pa, 5, 1000);
  expect_stopped(rig, Mode::stopped, StopCause::long_run);
  EXPECT_NEAR(rig.time_of(Kind::stopped), 100, 0.06);
}

TEST(LongRun, SleepBeginsItAnew) {
  Rig rig;
  rig.settings.long_run_limit_s = 100;
  for (int i = 0; i < 5; ++i) {
    rig.feed(lost_pa, 5, 60);
    rig.feed(1.1 * target_pa, 4, 30);
    ASSERT_EQ(rig.state.mode, Mode::asleep);
  }
  EXPECT_EQ(rig.count(Kind::stopped), 0);
}

TEST(HighPressure, StopsAtOnceAndStartsAgainAtTheWakePressure) {
  Rig rig;
  rig.feed(lost_pa, 5, 10);
  rig.feed(621e3, 5, 0.05);
  expect_stopped(rig, Mode::resting, StopCause::high_pressure);
  rig.feed(target_pa - 34e3, 0, 10000);  // no rest ends it
  EXPECT_EQ(rig.state.mode, Mode::resting);
  rig.feed(target_pa - 36e3, 0, 0.1);
  EXPECT_EQ(rig.state.mode, Mode::holding);
}

TEST(HighPressure, AnAsleepPumpIsNotStopped) {
  Rig rig;
  rig.feed(target_pa, 0, 1);
  rig.feed(640e3, 0, 100);
  EXPECT_EQ(rig.state.mode, Mode::asleep);
}

TEST(Sensor, AnOpenOrShortedOneStopsAfterItsDelayByThatName) {
  for (double share : {-0.25, 1.25}) {
    Rig rig;
    rig.feed(lost_pa, 5, 10);
    double const lost_s = rig.next_time_s;
    rig.feed(share * rig.settings.sensor_full_scale_pa, 5, 5);
    expect_stopped(rig, Mode::waiting, StopCause::sensor_lost);
    EXPECT_NEAR(rig.time_of(Kind::stopped) - lost_s, 0.5, 0.06);
  }
}

TEST(Sensor, ABlinkOfTheSignalNeitherStopsNorMovesTheSpeed) {
  Rig rig;
  rig.plant.pressure_pa = 0.85 * target_pa;
  rig.plant.tap_m3_s = 0.5e-3;
  rig.run(60);
  double const before_hz = rig.state.speed_hz;
  rig.feed(-0.25 * rig.settings.sensor_full_scale_pa, 5, 0.45);
  EXPECT_EQ(rig.state.speed_hz, before_hz);
  rig.run(10);
  EXPECT_EQ(rig.count(Kind::stopped), 0);
}

TEST(Sensor, ItStartsByItselfWhenTheSignalHasBeenGoodForTheDelay) {
  Rig rig;
  rig.feed(lost_pa, 5, 10);
  rig.feed(-200e3, 5, 5);
  rig.feed(lost_pa, 0, 9);
  rig.feed(-200e3, 0, 0.05);  // once more
  rig.feed(lost_pa, 0, 9.9);
  EXPECT_EQ(rig.state.mode, Mode::waiting);
  rig.feed(lost_pa, 0, 0.3);
  EXPECT_EQ(rig.state.mode, Mode::holding);
  EXPECT_EQ(rig.count(Kind::started), 2);
}

TEST(Sensor, TheTrimDoesNotMoveWhatCountsAsASignal) {
  Rig rig;
  rig.settings.sensor_trim_pa = -60e3;
  rig.feed(0, 5, 10);  // reads −60 kPa, which is no fault of the signal
  EXPECT_EQ(rig.count(Kind::stopped), 0);
}

TEST(Supply, LowVoltsStopAtOnceAndSteadyOnesStartAgain) {
  Rig rig;
  rig.feed(lost_pa, 5, 10);
  rig.measured.supply_share = 0.74;
  rig.feed(lost_pa, 5, 0.05);
  expect_stopped(rig, Mode::waiting, StopCause::low_volts);
  rig.measured.supply_share = 0.78;  // above the limit, not above the return
  rig.feed(lost_pa, 0, 100);
  EXPECT_EQ(rig.state.mode, Mode::waiting);
  rig.measured.supply_share = 0.9;
  rig.feed(lost_pa, 0, 9.9);
  EXPECT_EQ(rig.state.mode, Mode::waiting);
  rig.feed(lost_pa, 0, 0.3);
  EXPECT_EQ(rig.state.mode, Mode::holding);
}

TEST(DriveHeat, ItWaitsUntilTheSinkHasCooledBy15K) {
  Rig rig;
  rig.feed(lost_pa, 5, 10);
  rig.measured.sink_c = 90.5;
  rig.feed(lost_pa, 5, 0.05);
  expect_stopped(rig, Mode::waiting, StopCause::drive_hot);
  rig.measured.sink_c = 76;
  rig.feed(lost_pa, 0, 100);
  EXPECT_EQ(rig.state.mode, Mode::waiting);
  rig.measured.sink_c = 74;
  rig.feed(lost_pa, 0, 0.1);
  EXPECT_EQ(rig.state.mode, Mode::holding);
}

}  // namespace
}  // namespace wellproof
