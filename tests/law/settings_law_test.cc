// What must hold of settings whatever the site: properties over random levels, motors and tanks.
#include <algorithm>
#include <string>

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "plant/operating.h"
#include "settings/study.h"
#include "settings/tuning.h"
#include "unit/settings/settings_sites.h"

namespace wellproof {
namespace {

double in(int low, int high) {
  return *rc::gen::inRange(low, high);
}

std::string feet(double length_ft) {
  return std::to_string(static_cast<int>(length_ft)) + " ft";
}

RC_GTEST_PROP(SettingsLaw, ADeeperLevelNeverLowersTheZeroFlowSpeed, ()) {
  static Plant const plant = draw_plants(site_of({}), 1, 1).front();
  double const level_m = in(0, 40);
  double const deeper_m = level_m + in(0, 30);
  double const pressure_pa = 1e4 * in(0, 60);
  RC_ASSERT(zero_flow_speed_hz(plant, pressure_pa, deeper_m) >= zero_flow_speed_hz(plant, pressure_pa, level_m));
}

RC_GTEST_PROP(SettingsLaw, MorePressureAsksForMoreSpeedAndGivesLessFlow, ()) {
  static Plant const plant = draw_plants(site_of({}), 1, 1).front();
  double const level_m = in(5, 30);
  double const low_pa = 1e4 * in(0, 40);
  double const high_pa = low_pa + 1e3 * in(1, 100);
  double const speed_hz = in(40, 66);
  RC_ASSERT(zero_flow_speed_hz(plant, high_pa, level_m) > zero_flow_speed_hz(plant, low_pa, level_m));
  RC_ASSERT(point_at_speed(plant, speed_hz, high_pa, level_m).flow_m3_s <=
            point_at_speed(plant, speed_hz, low_pa, level_m).flow_m3_s + 1e-12);
}

RC_GTEST_PROP(SettingsLaw, DrawdownGrowsWithTimeAndFlow, ()) {
  static Plant const plant = draw_plants(site_of({}), 1, 1).front();
  double const flow_m3_s = 1e-5 * in(1, 60);
  double const time_s = in(1, 3000);
  double const level_m = drawn_level_depth_m(plant, flow_m3_s, time_s);
  RC_ASSERT(level_m >= plant.well.static_level_depth_m);
  RC_ASSERT(drawn_level_depth_m(plant, flow_m3_s, 2 * time_s) >= level_m);
  RC_ASSERT(drawn_level_depth_m(plant, 1.5 * flow_m3_s, time_s) >= level_m);
}

RC_GTEST_PROP(SettingsLaw, RoundedValuesKeepTheirSide, ()) {
  double const value = 1e-3 * in(-100000, 100000);
  double const step = 0.05 * in(1, 40);
  RC_ASSERT(rounded_up(value, step) >= value - 1e-8 * step);
  RC_ASSERT(rounded_up(value, step) < value + step);
  RC_ASSERT(rounded_down(value, step) <= value + 1e-8 * step);
  RC_ASSERT(rounded_down(value, step) > value - step);
}

RC_GTEST_PROP(SettingsLaw, ASlowerClosedLoopIsNeverLessRobust, ()) {
  DelayedLag const plant{1e-1 * in(1, 50), 1e-1 * in(1, 100), 1e-1 * in(1, 20)};
  auto const sensitivity = [&](double closed_loop_time_s) {
    auto const rule = simc(plant, closed_loop_time_s);
    return loop_margins([&](double w) { return response(plant, w) * response(rule, w); }, 1e-3 / plant.delay_s,
                        10 / plant.delay_s)
        .largest_sensitivity;
  };
  RC_ASSERT(sensitivity(2 * plant.delay_s) <= sensitivity(plant.delay_s) + 1e-6);
}

// The whole derivation takes a while: a few sites each, told from one another by hand.
TEST(SettingsLaw, ADeeperWellMovesTheSleepSpeedUp) {
  double before_hz = 0;
  for (double const depth_ft : {20.0, 50.0, 80.0}) {
    SiteText entered;
    entered.static_level = feet(depth_ft);
    double const here_hz = answer(entered).derived.settings.sleep_speed_below_hz;
    EXPECT_GT(here_hz, before_hz);
    before_hz = here_hz;
  }
}

TEST(SettingsLaw, AnotherMotorMovesLimitAndThresholds) {
  auto const small = answer({}).derived.settings;
  SiteText entered;
  entered.motor_power = "2 hp";
  entered.motor_amps = "8.1 A";
  auto const large = answer(entered).derived.settings;
  EXPECT_NEAR(small.motor_current_limit_a, 5.9, 0.051);
  EXPECT_NEAR(large.motor_current_limit_a, 8.1, 0.051);
  EXPECT_GT(large.dry_run_amps_below_a, small.dry_run_amps_below_a);
  EXPECT_GT(large.closed_amps_below_a, small.closed_amps_below_a);
}

TEST(SettingsLaw, ALargerTankNeverShrinksTheSleepWindow) {
  double fastest_hz_s = 1e9;
  bool opened = false;
  for (auto const* tank : {"2 gal", "10 gal", "40 gal"}) {
    SiteText entered;
    entered.tank = tank;
    auto const a = answer(entered);
    bool const feasible = a.reason("sleep.ramp").feasible;
    EXPECT_TRUE(feasible || !opened) << tank;
    EXPECT_LE(a.derived.settings.sleep_ramp_hz_s, fastest_hz_s + 1e-9) << tank;
    opened = opened || feasible;
    fastest_hz_s = a.derived.settings.sleep_ramp_hz_s;
  }
}

TEST(SettingsLaw, MoreWantedAtTheOutletNeverLowersTheTarget) {
  double before_pa = 0;
  for (auto const* wanted : {"36 psi", "42 psi", "48 psi"}) {
    SiteText entered;
    entered.outlet_pressure = wanted;
    double const here_pa = answer(entered).derived.settings.pressure_target_pa;
    EXPECT_GT(here_pa, before_pa);
    before_pa = here_pa;
  }
}

}  // namespace
}  // namespace wellproof
