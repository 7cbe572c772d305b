// Sleep and wake.
#include <gtest/gtest.h>

#include "regulator/sleep.h"
#include "unit/regulator/toy.h"

namespace wellproof {
namespace {

using toy::Kind;
using toy::Plant;
using toy::Rig;
using toy::target_pa;

TEST(Sleep, WhenTheLastTapClosesItSleepsAfterTheHoldAndTheRamp) {
  Rig rig;
  rig.plant.pressure_pa = 0.85 * target_pa;
  rig.plant.tap_m3_s = 0.5e-3;
  rig.run(30);
  rig.plant.tap_m3_s = 0;
  double const closed_s = rig.next_time_s;
  rig.run(60);
  EXPECT_EQ(rig.state.mode, Mode::asleep);
  EXPECT_EQ(rig.state.speed_hz, 0);
  ASSERT_EQ(rig.count(Kind::slept), 1);
  // At least the hold of 8 s; from the floor of 32 to 30 Hz at 2 Hz/s one more.
  EXPECT_GT(rig.time_of(Kind::slept) - closed_s, 8 + 1);
  EXPECT_LT(rig.time_of(Kind::slept) - closed_s, 8 + 1 + 5);
}

TEST(Sleep, PressureAboveTheTargetStillCountsAsHeld) {
  Rig rig;
  rig.feed(0.8 * target_pa, 5, 5);
  rig.feed(1.3 * target_pa, 4, 40);
  EXPECT_EQ(rig.state.mode, Mode::asleep);
}

TEST(Sleep, SpeedMustStayLowWithoutABreak) {
  Rig rig;
  rig.feed(0.8 * target_pa, 5, 5);
  rig.feed(1.3 * target_pa, 4, 7);
  ASSERT_LT(rig.state.speed_hz, 49.5);
  rig.feed(0.8 * target_pa, 5, 8);  // somebody draws
  ASSERT_GT(rig.state.speed_hz, 49.5);
  rig.feed(1.3 * target_pa, 4, 7);
  EXPECT_EQ(rig.state.mode, Mode::holding);
  rig.feed(1.3 * target_pa, 4, 1 + 2 * settled_filter_s);  // what is left of the hold, and the filters' lag
  EXPECT_EQ(rig.state.mode, Mode::easing);
}

TEST(Sleep, LowSpeedWithPressureBelowTheBandIsNoSleep) {
  Rig rig;
  rig.settings.speed_ceiling_hz = 45;  // can go no faster, and sleep.speed_below stands above
  rig.feed(target_pa - 21e3, 5, 60);
  rig.feed(target_pa - 36e3, 5, 60);
  rig.feed(target_pa - 21e3, 5, 60);
  EXPECT_EQ(rig.state.mode, Mode::holding);
  rig.feed(target_pa - 4e3, 5, 19);
  EXPECT_EQ(rig.state.mode, Mode::easing);
}

TEST(Sleep, PressureThatIsStillComingBackIsNoSleep) {
  Rig rig;
  rig.settings.speed_ceiling_hz = 45;
  rig.feed(target_pa - 36e3, 5, 60);
  rig.feed(target_pa - 19e3, 5, 60);  // within the band of 20 kPa, but more than a quarter of it
  EXPECT_EQ(rig.state.mode, Mode::holding);
}

TEST(Sleep, ALeakThatPullsPressureBelowTheBandAbandonsTheRamp) {
  Rig rig;
  rig.plant.pressure_pa = 0.85 * target_pa;
  rig.plant.leak_m3_s = 0.03e-3;
  rig.settings.sleep_speed_below_hz = 50.5;
  rig.settings.sleep_ramp_hz_s = 0.5;
  rig.run(300);
  EXPECT_GE(rig.count(Kind::gave_up_sleep), 3);
  EXPECT_EQ(rig.count(Kind::slept), 0);
  // A faster ramp is through before the tank has lost the band: the same leak, and it sleeps.
  Rig faster;
  faster.plant = rig.plant;
  faster.settings = rig.settings;
  faster.settings.sleep_ramp_hz_s = 10;
  faster.plant.pressure_pa = 0.85 * target_pa;
  faster.run(300);
  EXPECT_GE(faster.count(Kind::slept), 1);
  EXPECT_EQ(faster.count(Kind::gave_up_sleep), 0);
}

TEST(Sleep, ALeakAboveASleepSpeedSetTooLowKeepsThePumpRunning) {
  Rig rig;
  rig.plant.pressure_pa = 0.85 * target_pa;
  rig.plant.leak_m3_s = 0.03e-3;
  rig.settings.sleep_speed_below_hz = 45;  // the zero-flow speed is 48.2 Hz
  ASSERT_GT(Plant::zero_flow_speed_hz(target_pa), 48);
  rig.run(600);
  EXPECT_EQ(rig.state.mode, Mode::holding);
  EXPECT_EQ(rig.count(Kind::slept), 0);
}

TEST(Sleep, AnAbandonedRampGoesOnWithoutABump) {
  Rig rig;
  rig.feed(0.8 * target_pa, 5, 5);
  rig.feed(1.1 * target_pa, 4, 15);
  ASSERT_EQ(rig.state.mode, Mode::asleep);
  Rig abandoned;
  abandoned.settings.speed_floor_hz = 40;
  abandoned.feed(0.8 * target_pa, 5, 5);
  abandoned.feed(1.3 * target_pa, 4, 11);
  ASSERT_EQ(abandoned.state.mode, Mode::easing);
  double before_hz = 0;
  for (int i = 0; i < 100 && abandoned.state.mode == Mode::easing; ++i) {
    before_hz = abandoned.state.speed_hz;
    abandoned.feed(target_pa - 25e3, 4, 0.05);
  }
  ASSERT_EQ(abandoned.state.mode, Mode::holding);
  EXPECT_EQ(abandoned.count(Kind::gave_up_sleep), 1);
  EXPECT_GE(abandoned.state.speed_hz, before_hz);
  EXPECT_LE(abandoned.state.speed_hz, before_hz + 0.5 + 1e-9);
}

/// Noise of one sample: this and its opposite in turn, and now and then three times as much, as a sample may be off.
double noise_pa(int sample, double standard_pa) {
  double const size = sample % 40 < 2 ? 3 : 1;
  return (sample % 2 != 0 ? size : -size) * standard_pa;
}

// Single samples lie below the band and above the sleep speed all the time; the filtered error and speed do not.
TEST(Sleep, NoiseAsLargeAsHalfTheBandDoesNotKeepItAwake) {
  Rig rig;
  rig.feed(0.8 * target_pa, 5, 5);
  for (int i = 0; i < 600; ++i) {
    rig.feed(target_pa + noise_pa(i, 0.5 * rig.settings.sleep_band_pa), 4, 0.05);
    rig.state.integral_hz = rig.settings.sleep_speed_below_hz - 0.3;
  }
  EXPECT_EQ(rig.count(Kind::slept), 1);
  EXPECT_EQ(rig.count(Kind::gave_up_sleep), 0);
}

// While the tank alone feeds a tap that opens on the way down, the pressure falls below the band by no more than the
// filter's lag times its fall, and a sample or two.
TEST(Sleep, ATapThatOpensOnTheWayDownIsNoticedAfterTheFiltersLag) {
  Rig rig;
  rig.settings.sleep_ramp_hz_s = 0.01;
  rig.feed(0.8 * target_pa, 5, 5);
  while (rig.state.mode != Mode::easing) {
    rig.feed(target_pa, 4, 0.05);
    rig.state.integral_hz = rig.settings.sleep_speed_below_hz - 1;
  }
  double const fall_pa_s = 12e3;
  double pressure_pa = target_pa;
  while (rig.state.mode == Mode::easing && pressure_pa > 0) {
    pressure_pa -= fall_pa_s * 0.05;
    rig.feed(pressure_pa, 4, 0.05);
  }
  double const lost_pa = target_pa - pressure_pa;
  EXPECT_GT(lost_pa, rig.settings.sleep_band_pa);
  EXPECT_LT(lost_pa, rig.settings.sleep_band_pa + fall_pa_s * (easing_filter_s + 0.1));
}

TEST(Sleep, ItWakesAtTheWakeDropAndNotBefore) {
  Rig rig;
  rig.feed(target_pa, 0, 1);
  ASSERT_EQ(rig.state.mode, Mode::asleep);
  rig.feed(target_pa - 34e3, 0, 100);
  EXPECT_EQ(rig.state.mode, Mode::asleep);
  rig.feed(target_pa - 35e3, 0, 0.1);
  EXPECT_EQ(rig.state.mode, Mode::holding);
  EXPECT_EQ(rig.count(Kind::woke), 1);
}

TEST(Sleep, AWokenPumpServesASmallDraw) {
  Rig rig;
  rig.run(1);
  rig.plant.tap_m3_s = 0.4e-3;
  rig.run(30);
  EXPECT_EQ(rig.state.mode, Mode::holding);
  EXPECT_NEAR(rig.plant.pressure_pa, target_pa, 0.01 * target_pa);
}

TEST(Sleep, ALostSignalDoesNotWakeThePump) {
  Rig rig;
  rig.feed(target_pa, 0, 1);
  rig.feed(-0.25 * rig.settings.sensor_full_scale_pa, 0, 0.4);
  EXPECT_EQ(rig.state.mode, Mode::asleep);
  rig.feed(target_pa, 0, 1);
  EXPECT_EQ(rig.state.mode, Mode::asleep);
  EXPECT_EQ(rig.count(Kind::woke), 0);
}

}  // namespace
}  // namespace wellproof
