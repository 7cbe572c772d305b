#include "settings/hunting_advice.h"

#include <gtest/gtest.h>

namespace wellproof {
namespace {

constexpr double psi_pa = 6894.757293168;
using Kind = HuntingAdvice::Kind;

Settings settings() {
  Settings s;
  s.pressure_target_pa = 50 * psi_pa;
  s.pressure_wake_drop_pa = 6 * psi_pa;
  s.regulator_gain_hz_pa = 0.25 / psi_pa;
  s.regulator_reset_time_s = 3;
  s.speed_floor_hz = 30;
  s.sleep_speed_below_hz = 44;
  s.sleep_hold_s = 8;
  s.sleep_ramp_hz_s = 0.5;
  return s;
}

HuntingAdvice advised(double swing_psi, double period_s) {
  return hunting_advice(settings(), {swing_psi * psi_pa, period_s}, 0.05 * psi_pa, UnitSystem::us);
}

TEST(HuntingAdvice, FollowsTheRuleForSlowOscillations) {
  // Skogestad 2003: the product of gain and reset time is to grow by 0.1·(P0/tauI0)². 18 s against 3 s: 3.6-fold.
  auto const advice = advised(4, 18);
  EXPECT_EQ(advice.kind, Kind::slow);
  EXPECT_NEAR(advice.reset_time_s, 3 * 3.6, 0.05);
  EXPECT_DOUBLE_EQ(advice.gain_hz_pa, settings().regulator_gain_hz_pa);
  EXPECT_NE(advice.says.find("10.8 s"), std::string::npos) << advice.says;
}

TEST(HuntingAdvice, LowersTheGainWhereSwingsAreQuick) {
  auto const advice = advised(4, 2);
  EXPECT_EQ(advice.kind, Kind::quick);
  EXPECT_NEAR(advice.gain_hz_pa, 0.125 / psi_pa, 0.006 / psi_pa);
  EXPECT_DOUBLE_EQ(advice.reset_time_s, 3);
}

TEST(HuntingAdvice, ChangesNothingForNoiseAndForSleepAndWake) {
  EXPECT_EQ(advised(0.2, 18).kind, Kind::noise);
  auto const cycling = advised(7, 90);
  EXPECT_EQ(cycling.kind, Kind::cycling);
  for (auto const& each : {advised(0.2, 18), cycling}) {
    EXPECT_DOUBLE_EQ(each.gain_hz_pa, settings().regulator_gain_hz_pa);
    EXPECT_DOUBLE_EQ(each.reset_time_s, 3);
  }
}

TEST(HuntingAdvice, AsksForNoMoreThanTenfoldAtOnce) {
  EXPECT_NEAR(advised(4, 60).reset_time_s, 30, 0.05);
  EXPECT_NE(advised(4, 60).says.find("look again"), std::string::npos);
}

}  // namespace
}  // namespace wellproof
