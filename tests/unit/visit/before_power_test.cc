#include "visit/before_power.h"

#include <gtest/gtest.h>

#include "plant/operating.h"
#include "unit/settings/settings_sites.h"

namespace wellproof {
namespace {

constexpr double psi_pa = 6894.757293168;

TEST(three_phase_drop_share, is_that_of_the_worked_formula) {
  // 100 ft of 12 AWG copper at 1.93 Ω per 1000 ft (nec_2020, chapter 9, table 8, uncoated, stranded is 1.98): 5.9 A
  // drop √3 · 5.9 A · 0.193 Ω = 1.972 V, 0.86 % of 230 V.
  EXPECT_NEAR(three_phase_drop_share(5.9, 0.193, 230), 1.972 / 230, 1e-5);
}

TEST(before_power, keeps_a_precharge_that_is_told_and_lies_below_the_wake_pressure) {
  auto const a = answer({});  // 30 psi
  auto const told = before_power(a.site, a.plants, a.derived.settings, false, UnitSystem::us);
  EXPECT_TRUE(told.precharge_told);
  EXPECT_NEAR(told.precharge_pa, 30 * psi_pa, 1);
  auto site = a.site;
  site.tank.precharge_pa = Even{20 * psi_pa, 40 * psi_pa};
  auto const ruled = before_power(site, a.plants, a.derived.settings, false, UnitSystem::us);
  EXPECT_FALSE(ruled.precharge_told);
  EXPECT_LT(ruled.precharge_pa, a.derived.settings.pressure_target_pa - a.derived.settings.pressure_wake_drop_pa);
}

TEST(before_power, sets_a_switched_tank_two_psi_below_cut_in) {
  // pelikan_2006: a 30/50 switch wants 28 psi.
  auto const a = answer({});
  auto settings = a.derived.settings;
  settings.pressure_target_pa = 50 * psi_pa;
  settings.pressure_wake_drop_pa = 20 * psi_pa;
  EXPECT_NEAR(before_power(a.site, a.plants, settings, true, UnitSystem::us).precharge_pa, 28 * psi_pa, 1);
}

TEST(before_power, takes_the_weakest_part_of_all_draws_and_stays_a_tenth_below) {
  auto const a = answer({});
  auto const found = before_power(a.site, a.plants, a.derived.settings, false, UnitSystem::us);
  double weakest_pa = 1e9;
  for (auto const& plant : a.plants) {
    weakest_pa = std::min({weakest_pa, plant.site.tank.rating_pa, plant.site.limits.fittings_rating_pa});
  }
  EXPECT_LE(found.weakest_pa, weakest_pa);
  EXPECT_LE(found.relief_most_pa, 0.9 * found.weakest_pa + 1);
  EXPECT_GT(found.relief_most_pa, 0.88 * found.weakest_pa);
  EXPECT_NEAR(found.relief_told_pa, 100 * psi_pa, 1);
}

// A deep well's pump does not come to what the fittings bear; a valve that may pass nothing would be no valve.
TEST(before_power, wants_a_relief_valve_for_the_pump_s_flow_even_where_it_does_not_come_to_that_pressure) {
  SiteText entered;
  entered.static_level = "95 ft";
  auto const a = answer(entered);
  auto settings = a.derived.settings;
  auto const deep = before_power(a.site, a.plants, settings, false, UnitSystem::us);
  for (auto const& plant : a.plants) {
    EXPECT_GE(deep.relief_flow_m3_s,
              point_at_speed(plant, plant.site.motor.frequency_hz, deep.relief_most_pa, plant.well.static_level_depth_m)
                  .flow_m3_s);
  }
  EXPECT_GT(deep.relief_flow_m3_s, 0);
  settings.speed_ceiling_hz = 40;  // one that somebody may raise
  EXPECT_EQ(before_power(a.site, a.plants, settings, false, UnitSystem::us).relief_flow_m3_s, deep.relief_flow_m3_s);
  auto weak = a.plants;
  for (auto& plant : weak) {
    plant.well.static_level_depth_m = 400;
  }
  EXPECT_EQ(before_power(a.site, weak, settings, false, UnitSystem::us).relief_flow_m3_s,
            weak.front().pump.best_flow_m3_s());
}

}  // namespace
}  // namespace wellproof
