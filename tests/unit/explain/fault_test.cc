#include "explain/fault.h"

#include <set>

#include <gtest/gtest.h>

#include "explain/probe.h"
#include "explain/world.h"
#include "settings/derive.h"
#include "unit/settings/settings_sites.h"

namespace wellproof {
namespace {

TEST(faults, are_many_and_each_has_its_name_and_share) {
  std::set<std::string_view> keys;
  double sum = 0;
  for (auto const& fault : faults()) {
    keys.insert(fault.key);
    sum += fault.share;
    EXPECT_GT(fault.share, 0) << fault.key;
    EXPECT_FALSE(fault.todo.empty()) << fault.key;
  }
  EXPECT_GE(keys.size(), 20U);
  EXPECT_EQ(keys.size(), faults().size());
  EXPECT_NEAR(sum, 1, 0.25);  // shares are scaled when they are used
}

/// A site's first draw and the settings derived for it.
struct Standing {
  std::vector<Plant> plants;
  Settings settings;
};

Standing const& standing() {
  static Standing const one = [] {
    auto const site = site_of(SiteText{});
    auto plants = draw_plants(site, 1, 8);
    auto const settings = derive(site, plants, UnitSystem::us).settings;
    return Standing{plants, settings};
  }();
  return one;
}

std::set<StopCause> kinds_of(std::string_view fault, int draws) {
  std::set<StopCause> kinds;
  std::size_t const place = fault_place(fault);
  for (int draw = 0; draw < draws; ++draw) {
    auto const seed = seed_of(1, place, static_cast<std::uint64_t>(draw));
    auto const& plant = standing().plants[static_cast<std::size_t>(draw)];
    for (auto const& stop : stops_of_day(put_fault(plant, standing().settings, place, seed), {}, seed)) {
      kinds.insert(stop.kind);
    }
  }
  return kinds;
}

TEST(faults, stop_the_pump_in_their_own_way) {
  EXPECT_EQ(kinds_of("sensor_wire", 4), std::set<StopCause>{StopCause::sensor_lost});
  EXPECT_EQ(kinds_of("power_outages", 4), std::set<StopCause>{StopCause::low_volts});
  EXPECT_EQ(kinds_of("outside_contact", 4), std::set<StopCause>{StopCause::outside_contact});
  EXPECT_EQ(kinds_of("valve_shut", 4).count(StopCause::closed_discharge), 1U);
  EXPECT_EQ(kinds_of("level_fallen", 8).count(StopCause::dry_run), 1U);
  EXPECT_EQ(kinds_of("sleep_speed_low", 4).count(StopCause::long_run), 1U);
}

TEST(faults, show_on_the_instrument_that_looks_for_them) {
  auto const shown = [&](std::string_view fault, Show show) {
    std::size_t const place = fault.empty() ? faults().size() : fault_place(fault);
    std::uint64_t seed = 7;
    auto faulty = put_fault(standing().plants[0], standing().settings, place, seed);
    while (!faulty.there_now) {  // a day on which it does not happen
      faulty = put_fault(standing().plants[0], standing().settings, place, ++seed);
    }
    return *of(probed(faulty, {}, seed).shows, show);
  };
  EXPECT_GT(shown("level_fallen", Show::rest_level), shown("", Show::rest_level) + 5);
  EXPECT_GT(shown("leak_in_house", Show::fall_all_shut), shown("", Show::fall_all_shut) + 5000);
  EXPECT_LT(shown("leak_in_house", Show::fall_valve_shut), 1000);
  EXPECT_GT(shown("check_valve_leaks", Show::fall_valve_shut), 5000);
  EXPECT_LT(shown("volts_low", Show::half_volts), shown("", Show::half_volts) - 8);
  EXPECT_LT(shown("tank_charge_lost", Show::precharge), 0.7 * shown("", Show::precharge));
  EXPECT_GT(shown("pump_dragging", Show::half_current), 1.1 * shown("", Show::half_current));
  EXPECT_GT(shown("volts_uneven", Show::unbalance), 0.1);
}

}  // namespace
}  // namespace wellproof
