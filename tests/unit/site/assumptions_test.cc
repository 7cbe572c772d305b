#include "site/assumptions.h"

#include <gtest/gtest.h>

#include <set>

#include "site/entered.h"
#include "unit/site/site_text.h"

namespace wellproof {
namespace {

using namespace site_text;

Dimension dimension_of(std::string_view key) {
  Site site;
  site.pipes.resize(1);
  site.demand.zones.resize(1);
  auto found = Dimension::none;
  each_field(site, [&](Field const& field, Range const&) {
    found = without_number(field.key) == key ? field.dimension : found;
  });
  return found;
}

TEST(assumptions, can_be_read_as_they_stand_in_the_table) {
  auto const keys = known_keys();
  for (auto const& one : plain_assumptions()) {
    EXPECT_NE(std::find(keys.begin(), keys.end(), one.key), keys.end()) << one.key;
    EXPECT_TRUE(read_range(one.range, dimension_of(one.key))) << one.key << " = " << one.range;
  }
}

TEST(assumptions, cover_every_quantity_that_may_be_left_out) {
  std::set<std::string_view> told{"well.static_level",      "well.test_flow",      "well.test_level", "well.yield",
                                  "well.specific_capacity", "well.transmissivity", "pump.setting",    "zone.flow",
                                  "demand.outlet_pressure", "demand.fixture_units"};
  for (auto const& one : plain_assumptions()) {
    told.insert(one.key);
  }
  for (auto const& one : following_assumptions()) {
    told.insert(one.key);
  }
  Site site;
  site.pipes.resize(1);
  site.demand.zones.resize(1);
  each_field(site, [&](Field const& field, Range const&) {
    EXPECT_EQ(told.count(without_number(field.key)), 1U) << field.key;
  });
}

struct Knowledge {
  std::string_view table;
  std::string_view line;
  std::string_view narrowed;
};

class Knowing : public testing::TestWithParam<Knowledge> {};

TEST_P(Knowing, more_narrows) {
  auto const& one = GetParam();
  auto const before = read_site(least(), "a.toml");
  auto const after = read_site(with(one.table, std::string(one.line)), "a.toml");
  ASSERT_TRUE(before);
  ASSERT_TRUE(after) << text(after.error().front());
  EXPECT_LT(width(range_of(after->site, one.narrowed)), width(range_of(before->site, one.narrowed)));
  EXPECT_LE(after->assumptions.size(), before->assumptions.size());
}

INSTANTIATE_TEST_SUITE_P(
    of_one_entry, Knowing,
    testing::Values(Knowledge{"well", "casing = \"6 in\"", "well.casing"},
                    Knowledge{"well", "season_drop = \"4 .. 6 ft\"", "well.season_drop"},
                    Knowledge{"pump", "stages = 10", "pump.head_factor"},
                    Knowledge{"pump", "rated_head = \"210 ft\"", "pump.head_factor"},
                    Knowledge{"pump", "rated_power = \"1.05 hp\"", "pump.rated_power"},
                    Knowledge{"motor", "service_factor_current = \"5 A\"", "motor.full_load_current"},
                    Knowledge{"motor", "service_factor_current = \"5 A\"", "motor.no_load_current"},
                    Knowledge{"motor", "full_load_current = \"3.9 A\"", "motor.service_factor_current"},
                    Knowledge{"motor", "power_factor = 0.78\nfull_load_current = \"3.7 A\"", "motor.efficiency"},
                    Knowledge{"demand", "fixture_units = 10", "demand.peak_draw"},
                    Knowledge{"cable", "size = \"12 AWG\"", "cable.size"},
                    Knowledge{"tank", "precharge = \"30 psi\"", "tank.precharge"}));

TEST(assumptions, of_a_given_curve_are_narrower_than_of_a_class) {
  auto const typical = read_site(least(), "a.toml");
  auto const given = read_site(with("pump",
                                    "curve = [[\"0 gpm\",\"330 ft\",\"0.7 hp\"],[\"10 gpm\",\"250 ft\",\"1.1 hp\"],"
                                    "[\"15 gpm\",\"130 ft\",\"1.2 hp\"]]"),
                               "a.toml");
  ASSERT_TRUE(typical);
  ASSERT_TRUE(given);
  // Spread by standard deviation: a normal with 95 % within w has w/1.96, an even range its half width/√3.
  auto const deviation = [](Range const& range) {
    if (auto const* normal = std::get_if<Normal>(&range)) {
      return normal->half_width_95 / 1.96;
    }
    return (highest(range) - lowest(range)) / 2 / 1.7320508;
  };
  for (auto const* key : {"pump.flow_factor", "pump.head_factor", "pump.power_factor"}) {
    EXPECT_LT(deviation(range_of(given->site, key)), deviation(range_of(typical->site, key))) << key;
  }
}

TEST(assumptions, choose_the_cable_by_three_percent) {
  // 3 hp, 11 A at 230 V over 450 ft: 12 AWG (1.93 Ω/kft at 75 °C, NEC chapter 9 table 8) would drop √3·11·0.87 = 16.5 V
  // or 7 %; 8 AWG (0.764) drops 6.6 V, 2.8 %; 10 AWG 4.5 %.
  auto lines = least_lines();
  lines[8] = "power = \"3 hp\"";
  auto const read = read_site(joined(lines) + "[cable]\nlength = \"450 ft\"\n", "a.toml");
  ASSERT_TRUE(read);
  EXPECT_NEAR(std::get<Triangular>(read->site.cable.conductor_diameter_m).mode, 0.1285 * 0.0254, 1e-5);
}

TEST(assumptions, follow_the_supply) {
  auto const read = read_site(with("supply", "voltage = \"480 V\""), "a.toml");
  ASSERT_TRUE(read);
  EXPECT_EQ(middle(read->site.motor.voltage_v), 460);
  auto const low = read_site(least(), "a.toml");
  // Twice the volts, half the amps.
  EXPECT_NEAR(middle(read->site.motor.service_factor_current_a) * 2, middle(low->site.motor.service_factor_current_a),
              1e-9);
  auto const fifty = read_site(with("motor", "voltage = \"400 V\""), "a.toml");
  EXPECT_EQ(middle(fifty->site.motor.frequency_hz), 50);
  EXPECT_EQ(middle(fifty->site.supply.frequency_hz), 50);
}

TEST(assumptions, cover_the_whole_programme) {
  auto const read = read_site(
      least() + "[[zone]]\nflow = \"4 gpm\"\ntime = \"50 min\"\n[[zone]]\nflow = \"4 gpm\"\ntime = \"40 min\"\n",
      "a.toml");
  ASSERT_TRUE(read);
  EXPECT_GE(lowest(read->site.demand.longest_run_s), 90 * 60);
}

}  // namespace
}  // namespace wellproof
