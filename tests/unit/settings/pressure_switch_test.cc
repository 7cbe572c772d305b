#include "settings/pressure_switch.h"

#include <gtest/gtest.h>

#include "unit/settings/settings_sites.h"

namespace wellproof {
namespace {

constexpr double psi_pa = 6894.757293168;

Answer switched(std::string const& tank, std::string const& more = "", double top_hz = 80) {
  SiteText entered;
  entered.tank = tank;
  entered.more = more;
  auto text = entered.text();
  text.insert(text.find("[site]\n") + 7, "control = \"pressure_switch\"\n");
  text.insert(text.find("[drive]\n") + 8, "top_frequency = \"" + std::to_string(top_hz) + " Hz\"\n");
  auto const read = read_site(text, "test.toml");
  EXPECT_TRUE(read);
  Answer a;
  a.site = read->site;
  a.plants = draw_plants(a.site, 1, 12);
  a.derived = derive(a.site, a.plants, UnitSystem::us);
  return a;
}

TEST(pressure_switch, cuts_in_where_the_highest_outlet_still_has_nine_tenths_and_out_twenty_psi_above) {
  auto const a = switched("86 gal");
  auto const& s = a.derived.settings;
  double const cut_in_pa = s.pressure_target_pa - s.pressure_wake_drop_pa;
  for (auto const& plant : a.plants) {
    double const tee_pa = true_pressure_pa(plant, s, cut_in_pa);
    double const outlet_pa = outlet_pressure_pa(plant, tee_pa, served_peak_m3_s(plant));
    EXPECT_GE(outlet_pa, 0.9 * plant.site.demand.outlet_pressure_pa - 1);
  }
  EXPECT_GE(s.pressure_wake_drop_pa, 20 * psi_pa - 1);
  EXPECT_LE(s.pressure_wake_drop_pa, 30 * psi_pa + 1);
  EXPECT_TRUE(a.reason("pressure.wake_drop").feasible);
}

// pelikan_2006: an 85 gal tank at 30/50 with 28 psi in it gives 25.1 gal, two and a half minutes of 10 gpm; one of 20
// gal gives 5.9 gal, which is less than a minute.
TEST(pressure_switch, calls_a_tank_too_small_for_a_minute_s_run) {
  auto const a = switched("20 gal");
  EXPECT_FALSE(a.reason("pressure.wake_drop").feasible);
  EXPECT_NE(a.reason("pressure.wake_drop").would_change_it.find("times as large"), std::string::npos);
}

TEST(pressure_switch, asks_for_a_precharge_two_psi_below_cut_in_where_the_site_has_another) {
  auto const a = switched("86 gal");  // 30 psi
  auto const& s = a.derived.settings;
  bool asked = false;
  for (auto const& caution : a.derived.cautions) {
    asked = asked || (caution.key == "precharge" && caution.says.find("2 psi below cut-in") != std::string::npos);
  }
  EXPECT_EQ(asked, std::abs(s.pressure_target_pa - s.pressure_wake_drop_pa - 32 * psi_pa) > 3 * psi_pa);
}

TEST(pressure_switch, without_a_drive_turns_with_the_supply_and_says_what_speaks_against_it) {
  auto const fixed = switched("86 gal", "", 60);
  EXPECT_EQ(fixed.derived.settings.speed_ceiling_hz, 60);
  EXPECT_EQ(fixed.derived.settings.speed_floor_hz, 60);
  auto const with_drive = switched("86 gal", "", 80);
  bool const slower = with_drive.derived.settings.speed_ceiling_hz < 59.75;
  EXPECT_EQ(fixed.reason("speed.ceiling").feasible, !slower);
}

}  // namespace
}  // namespace wellproof
