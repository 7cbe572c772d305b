#include "proof/hunting.h"

#include <vector>

#include "settings/hunting_advice.h"
#include "unit/simulate/plain_site.h"

namespace wellproof {
namespace {

/// A small tank and a slow sensor: what a strong answer makes swing.
Plant lively_plant() {
  auto site = plain_site();
  site.tank.volume_m3 = 0.003;
  site.sensor.lag_s = 0.3;
  return build(site);
}

Swing swing(Plant const& plant, Settings const& settings) {
  return swing_while_drawing(plant, settings, {}, 0.5, 0);
}

TEST(Hunting, SettlesWithARegulatorThatSuits) {
  auto const plant = lively_plant();
  auto const settings = plain_settings(plant);
  EXPECT_LT(swing(plant, settings).swing_pa, 0.2 * psi_pa);
  auto const margin = hunting_margin(std::vector{plant}, settings, {});
  ASSERT_TRUE(margin.value);
  EXPECT_GT(*margin.value, 1.5 * psi_pa);
}

TEST(Hunting, OfTooStrongAnAnswerIsQuickAndTheAdviceCalmsIt) {
  auto const plant = lively_plant();
  auto settings = plain_settings(plant);
  settings.regulator_gain_hz_pa *= 40;
  auto seen = swing(plant, settings);
  ASSERT_GT(seen.swing_pa, hunting_share * settings.pressure_target_pa);
  EXPECT_LT(*hunting_margin(std::vector{plant}, settings, {}).value, 0);
  for (int round = 0; round < 6 && seen.swing_pa > 0.2 * psi_pa; ++round) {
    auto const advice = hunting_advice(settings, {seen.swing_pa, seen.period_s}, 0, UnitSystem::us);
    EXPECT_EQ(advice.kind, HuntingAdvice::Kind::quick) << advice.says;
    settings.regulator_gain_hz_pa = advice.gain_hz_pa;
    settings.regulator_reset_time_s = advice.reset_time_s;
    seen = swing(plant, settings);
  }
  EXPECT_LE(seen.swing_pa, 0.2 * psi_pa);
}

TEST(Hunting, OfTooShortAResetTimeIsSlowAndTheAdviceCalmsIt) {
  auto const plant = lively_plant();
  auto settings = plain_settings(plant);
  settings.regulator_gain_hz_pa *= 10;
  settings.regulator_reset_time_s = 0.3;
  auto seen = swing(plant, settings);
  ASSERT_GT(seen.swing_pa, hunting_share * settings.pressure_target_pa);
  for (int round = 0; round < 4 && seen.swing_pa > 0.2 * psi_pa; ++round) {
    auto const advice = hunting_advice(settings, {seen.swing_pa, seen.period_s}, 0, UnitSystem::us);
    EXPECT_EQ(advice.kind, HuntingAdvice::Kind::slow) << advice.says;
    settings.regulator_reset_time_s = advice.reset_time_s;
    seen = swing(plant, settings);
  }
  EXPECT_LE(seen.swing_pa, 0.2 * psi_pa);
}

}  // namespace
}  // namespace wellproof
