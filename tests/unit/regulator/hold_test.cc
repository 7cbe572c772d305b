// How the speed moves and how the pressure is held.
#include <gtest/gtest.h>

#include <deque>

#include "regulator/speed.h"
#include "unit/regulator/toy.h"

namespace wellproof {
namespace {

using toy::Rig;
using toy::target_pa;

TEST(Speed, FromOffItPassesTheLowSpeedsInTheStartTimeThenTakesTheRamp) {
  Settings settings = toy::settings();
  Logic const logic;  // 30 Hz in 1 s
  EXPECT_DOUBLE_EQ(risen_speed_hz(settings, logic, 0, 0.5), 15);
  EXPECT_DOUBLE_EQ(risen_speed_hz(settings, logic, 0, 1), 30);
  EXPECT_DOUBLE_EQ(risen_speed_hz(settings, logic, 0, 2), 40);
  EXPECT_DOUBLE_EQ(risen_speed_hz(settings, logic, 20, 1.0 / 3), 30);
  settings.speed_ramp_up_hz_s = 60;  // a ramp faster than the start is not held back by it
  EXPECT_DOUBLE_EQ(risen_speed_hz(settings, logic, 0, 1), 60);
}

TEST(Speed, TheSampleThatWakesPutsOutNothingHoweverLongTheSleepWas) {
  Rig rig;
  rig.feed(target_pa, 0, 1);
  ASSERT_EQ(rig.state.mode, Mode::asleep);
  rig.next_time_s += 3 * 3600;
  rig.measured.pressure_pa = 0.8 * target_pa;
  EXPECT_EQ(rig.once().speed_hz, 0);
  EXPECT_EQ(rig.state.mode, Mode::holding);
  EXPECT_NEAR(rig.once().speed_hz, 30 * 0.05, 1e-9);
}

TEST(Speed, NoSampleMovesItFasterThanItsRamps) {
  Rig rig;
  rig.plant.tap_m3_s = 0.5e-3;
  rig.run(20);
  rig.plant.tap_m3_s = 0.9e-3;
  rig.run(20);
  rig.plant.tap_m3_s = 0.1e-3;
  rig.run(5);
  for (std::size_t i = 1; i < rig.speeds_hz.size(); ++i) {
    double const before_hz = rig.speeds_hz[i - 1];
    double const change_hz = rig.speeds_hz[i] - before_hz;
    EXPECT_LE(change_hz, (before_hz < 30 ? 30 : 10) * 0.05 + 1e-9);
    EXPECT_GE(change_hz, -10 * 0.05 - 1e-9);
  }
}

// With no delay and the reset time equal to the plant's lag, zero cancels pole and the loop is a first-order lag of
// time constant lag / (gain · plant gain): Skogestad 2003, J. Process Control 13:291, section 3 (direct synthesis).
TEST(Holding, ALagMatchedByTheResetTimeAnswersAsAFirstOrderLag) {
  Rig rig;
  rig.period_s = 0.002;
  rig.settings.speed_ramp_up_hz_s = rig.settings.speed_ramp_down_hz_s = 1e6;
  rig.settings.regulator_gain_hz_pa = 2e-4;
  rig.settings.regulator_reset_time_s = 2;
  rig.settings.speed_floor_hz = 5;
  rig.settings.sleep_speed_below_hz = 0;
  double const plant_gain_pa_hz = 10e3;
  double const lag_s = 2;
  double pressure_pa = target_pa - 5e3;
  rig.state.mode = Mode::holding;
  rig.state.powered_up = true;
  rig.state.speed_hz = pressure_pa / plant_gain_pa_hz;
  rig.state.integral_hz = rig.state.speed_hz;  // at rest where it is; the error of 5 kPa is a step of the target
  double const loop_lag_s = lag_s / (2e-4 * plant_gain_pa_hz);
  double worst_pa = 0;
  for (double time_s = 0; time_s < 5; time_s += rig.period_s) {
    double const exact_pa = target_pa - 5e3 * std::exp(-time_s / loop_lag_s);
    worst_pa = std::max(worst_pa, std::abs(pressure_pa - exact_pa));
    rig.measured.pressure_pa = pressure_pa;
    rig.once();
    pressure_pa += (plant_gain_pa_hz * rig.state.speed_hz - pressure_pa) * (rig.period_s / lag_s);
  }
  EXPECT_LT(worst_pa, 0.003 * 5e3);  // first order in the sample period of 2 ms
}

// e^-s/(s+1) with Kc 0.5 and reset time 1: gain margin pi (notes of Skogestad and Grimholt 2012, table 5.1: GM 3.14).
TEST(Holding, TheGainMarginOfThePublishedExampleIsMet) {
  auto const grows = [](double times) {
    Rig rig;
    rig.period_s = 0.01;
    rig.settings.speed_ramp_up_hz_s = rig.settings.speed_ramp_down_hz_s = 1e6;
    rig.settings.regulator_gain_hz_pa = 0.5e-4 * times;
    rig.settings.regulator_reset_time_s = 1;
    rig.settings.speed_floor_hz = 1;
    rig.settings.sleep_speed_below_hz = 0;
    rig.state.powered_up = true;
    rig.state.speed_hz = rig.state.integral_hz = 34.5;
    double pressure_pa = target_pa - 100;
    std::deque<double> way_hz(100, 34.5);  // 1 s
    double early_pa = 0;
    double late_pa = 0;
    for (int i = 0; i < 12000; ++i) {
      rig.measured.pressure_pa = pressure_pa;
      rig.once();
      way_hz.push_back(rig.state.speed_hz);
      pressure_pa += (1e4 * way_hz.front() - pressure_pa) * 0.01;
      way_hz.pop_front();
      double const off_pa = std::abs(pressure_pa - target_pa);
      (i < 3000 ? early_pa : late_pa) = std::max(i < 3000 ? early_pa : i < 9000 ? 0.0 : late_pa, off_pa);
    }
    return late_pa > early_pa;
  };
  EXPECT_FALSE(grows(3.14159 * 0.95));
  EXPECT_TRUE(grows(3.14159 * 1.05));
}

TEST(Holding, ASteadyDrawIsServedAtTheTarget) {
  Rig rig;
  rig.plant.pressure_pa = 0.85 * target_pa;
  rig.plant.tap_m3_s = 0.5e-3;
  rig.run(60);
  EXPECT_EQ(rig.state.mode, Mode::holding);
  EXPECT_NEAR(rig.plant.pressure_pa, target_pa, 0.001 * target_pa);
  EXPECT_NEAR(rig.plant.flow_m3_s(rig.state.speed_hz), 0.5e-3, 1e-6);
}

// A draw beyond the pump keeps it at its ceiling. However long that was, the recovery is the same, and the speed leaves
// the ceiling before the pressure is back at the target.
TEST(Holding, NoWindupAtTheCeiling) {
  auto const overshoot_pa = [](double held_s) {
    Rig rig;
    rig.plant.pressure_pa = 0.85 * target_pa;
    rig.plant.tap_m3_s = 1.5e-3;
    rig.run(held_s);
    EXPECT_EQ(rig.state.speed_hz, 60);
    rig.forget_extremes();
    rig.plant.tap_m3_s = 0.5e-3;
    while (rig.plant.pressure_pa < target_pa) {
      rig.run(0.05);
    }
    EXPECT_LT(rig.state.speed_hz, 60);
    rig.run(20);
    EXPECT_NEAR(rig.plant.pressure_pa, target_pa, 0.02 * target_pa);
    return rig.most_pressure_pa - target_pa;
  };
  EXPECT_NEAR(overshoot_pa(3600), overshoot_pa(60), 1);
}

TEST(Holding, AtOnceHalfRecoveredTheSpeedLeavesTheCeiling) {
  Rig rig;
  rig.feed(target_pa - 100e3, 5, 600);
  ASSERT_EQ(rig.state.speed_hz, 60);
  Rig less = rig;
  rig.feed(target_pa - 30e3, 5, 0.05);
  EXPECT_LT(rig.state.speed_hz, 60);
  less.feed(target_pa - 55e3, 5, 0.05);
  EXPECT_EQ(less.state.speed_hz, 60);
}

TEST(Holding, NoiseDoesNotPullTheSpeedOffTheCeiling) {
  Rig rig;
  rig.feed(0.8 * target_pa, 5, 30);
  ASSERT_EQ(rig.state.speed_hz, 60);
  for (int i = 0; i < 200; ++i) {
    rig.feed((0.8 + (i % 2 != 0 ? 0.02 : -0.02)) * target_pa, 5, 0.05);
    EXPECT_EQ(rig.state.speed_hz, 60);
  }
}

TEST(Holding, NeverBelowTheFloorHoweverFarAboveTheTarget) {
  Rig rig;
  rig.settings.sleep_hold_s = 1e6;
  rig.feed(0.8 * target_pa, 5, 10);
  rig.feed(1.3 * target_pa, 4, 60);
  EXPECT_EQ(rig.state.mode, Mode::holding);
  EXPECT_EQ(rig.state.speed_hz, 32);
}

TEST(Holding, AMinuteAtTheFloorDoesNotDelayTheAnswer) {
  Rig rig;
  rig.settings.sleep_hold_s = 1e6;
  rig.feed(0.8 * target_pa, 5, 10);
  rig.feed(1.1 * target_pa, 4, 60);
  ASSERT_EQ(rig.state.speed_hz, 32);
  rig.feed(0.99 * target_pa, 4, 0.1);
  EXPECT_GT(rig.state.speed_hz, 32);
}

TEST(Holding, HalfTheSamplesChangeLittle) {
  auto const pressure_pa = [](double period_s) {
    Rig rig;
    rig.period_s = period_s;
    rig.plant.pressure_pa = 0.85 * target_pa;
    rig.plant.tap_m3_s = 0.5e-3;
    rig.run(6);
    return rig.plant.pressure_pa;
  };
  EXPECT_NEAR(pressure_pa(0.05), pressure_pa(0.025), 0.01 * target_pa);
}

TEST(CurrentLimit, OverItTheSpeedFallsByTheRampAndDoesNotRise) {
  Rig rig = toy::at_ceiling_with_pressure_lost();
  ASSERT_EQ(rig.state.speed_hz, 60);
  rig.feed(0.7 * target_pa, 7, 1);
  EXPECT_NEAR(rig.state.speed_hz, 50, 1e-6);
  rig.feed(0.7 * target_pa, 7, 10);
  EXPECT_EQ(rig.state.speed_hz, 32);  // not below the floor
}

TEST(CurrentLimit, SpeedSettlesAtItWithoutHunting) {
  Rig rig;
  rig.settings.motor_current_limit_a = 5;
  rig.plant.pressure_pa = 0.85 * target_pa;
  rig.plant.tap_m3_s = 1.2e-3;
  rig.run(40);
  rig.speeds_hz.clear();
  rig.run(20);
  auto const [least, most] = std::minmax_element(rig.speeds_hz.begin(), rig.speeds_hz.end());
  EXPECT_LT(*most - *least, 0.1);
  EXPECT_LT(*most, 59);
  EXPECT_NEAR(rig.measured.current_a, 5, 0.05);
}

TEST(CurrentLimit, WhatItHeldBackIsNotWoundUp) {
  Rig rig;
  rig.settings.motor_current_limit_a = 5;
  rig.plant.pressure_pa = 0.85 * target_pa;
  rig.plant.tap_m3_s = 1.2e-3;
  rig.run(600);
  rig.forget_extremes();
  rig.plant.tap_m3_s = 0.4e-3;
  rig.run(20);
  EXPECT_LT(rig.most_pressure_pa, 1.15 * target_pa);
  EXPECT_NEAR(rig.plant.pressure_pa, target_pa, 0.02 * target_pa);
}

TEST(CurrentLimit, AfterAFoldBackTheSpeedDoesNotReturnOnceThePressureIsThere) {
  Rig rig = toy::at_ceiling_with_pressure_lost();
  rig.feed(0.7 * target_pa, 7, 10);
  ASSERT_EQ(rig.state.speed_hz, 32);
  rig.feed(1.01 * target_pa, 3, 5);
  EXPECT_LT(rig.state.speed_hz, 35);
}

TEST(Holding, AnIntegralLeftFarBelowTheFloorIsDropped) {
  Rig rig;
  rig.settings.regulator_gain_hz_pa = 3e-4;
  rig.feed(0, 4, 301);  // the fill ends by its time, with an error worth 100 Hz
  ASSERT_LT(rig.state.integral_hz, 0);
  rig.feed(1.05 * target_pa, 4, 3);
  rig.feed(0.999 * target_pa, 4, 0.1);
  EXPECT_GT(rig.state.speed_hz, 32 + 3e-4 * 0.001 * target_pa - 1e-9);  // the proportional part, in full
}

TEST(Holding, TheTrimIsAddedToTheSignal) {
  Rig rig;
  rig.settings.sensor_trim_pa = 20e3;
  rig.plant.pressure_pa = 0.8 * target_pa;
  rig.plant.tap_m3_s = 0.5e-3;
  rig.run(60);
  EXPECT_NEAR(rig.plant.pressure_pa, target_pa - 20e3, 0.001 * target_pa);
}

}  // namespace
}  // namespace wellproof
