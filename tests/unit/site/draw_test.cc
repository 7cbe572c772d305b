#include <gtest/gtest.h>

#include <cmath>

#include "contract/require.h"
#include "unit/site/site_text.h"

namespace wellproof {
namespace {

using namespace site_text;

Site least_site() {
  auto const read = read_site(least(), "a.toml");
  return read ? read->site : Site{};
}

TEST(draw, takes_a_coordinate_for_each_quantity_that_is_a_range) {
  auto const site = least_site();
  auto const keys = unknown_keys(site);
  EXPECT_EQ(keys.size(), unknowns(site));
  EXPECT_GT(keys.size(), 30U);
  EXPECT_EQ(std::find(keys.begin(), keys.end(), "well.static_level"), keys.end());
  EXPECT_NE(std::find(keys.begin(), keys.end(), "well.season_drop"), keys.end());
  std::vector<double> const short_point(keys.size() - 1, 0.5);
  EXPECT_THROW(draw(site, short_point), ContractBroken);
}

TEST(draw, in_the_middle_is_the_median_of_everything_that_nothing_mends) {
  auto const site = least_site();
  auto const drawn = draw(site, 1, 0);
  EXPECT_DOUBLE_EQ(drawn.well.season_drop_m, middle(site.well.season_drop_m));
  EXPECT_DOUBLE_EQ(drawn.pump.head_factor, middle(site.pump.head_factor));
  EXPECT_DOUBLE_EQ(drawn.tank.volume_m3, middle(site.tank.volume_m3));
}

TEST(draw, moves_only_the_quantity_whose_coordinate_moves) {
  auto const site = least_site();
  auto const keys = unknown_keys(site);
  std::vector<double> point(keys.size(), 0.5);
  auto const at = std::find(keys.begin(), keys.end(), "well.season_drop") - keys.begin();
  auto const before = draw(site, point);
  point[static_cast<std::size_t>(at)] = 0.9;
  auto const after = draw(site, point);
  EXPECT_GT(after.well.season_drop_m, before.well.season_drop_m);
  EXPECT_EQ(after.well.depth_m, before.well.depth_m);
  EXPECT_EQ(after.limits.altitude_m, before.limits.altitude_m);
}

TEST(draw, keeps_words_and_curve) {
  auto const read = read_example("deep_weak.toml");
  ASSERT_TRUE(read);
  auto const drawn = draw(read->site, 3, 5);
  EXPECT_EQ(drawn.name, "Cold Spring Ridge 11");
  EXPECT_EQ(drawn.pump.curve.size(), 10U);
  EXPECT_EQ(drawn.pump.curve[3].head_m, read->site.pump.curve[3].head_m);
  EXPECT_EQ(drawn.demand.zones[1].name, "beds along the drive");
  EXPECT_EQ(drawn.pipes[0].kind, "galvanized_sch40");
}

/// The claims below hold in every draw of every example and of the least site.
class EveryDraw : public testing::TestWithParam<int> {
 protected:
  template <class F>
  void each(F&& claim) const {
    static char const* const names[] = {"shallow_strong.toml", "deep_weak.toml", "not_provable.toml"};
    auto const site = GetParam() < 3 ? read_example(names[GetParam()])->site : least_site();
    for (std::uint32_t k = 0; k < 300; ++k) {
      claim(draw(site, 42, k));
    }
  }
};

TEST_P(EveryDraw, is_a_plate_of_one_motor) {
  each([](DrawnSite const& s) {
    auto const& m = s.motor;
    EXPECT_LE(m.full_load_current_a, m.service_factor_current_a);
    EXPECT_LT(m.no_load_current_a, m.full_load_current_a);
    EXPECT_GT(m.locked_rotor_current_a, m.service_factor_current_a);
    double const implied_w = std::sqrt(3.0) * m.voltage_v * m.full_load_current_a * m.efficiency * m.power_factor;
    EXPECT_NEAR(implied_w, m.power_w, 0.15 * m.power_w);
  });
}

TEST_P(EveryDraw, hangs_together_in_the_well) {
  each([](DrawnSite const& s) {
    if (s.well.inflow_known == InflowKnown::test) {
      EXPECT_GT(s.well.test_level_depth_m, s.well.static_level_depth_m);
    }
    EXPECT_GE(s.well.depth_m, s.pump.setting_depth_m);
    EXPECT_LT(s.pump.outside_diameter_m, s.well.casing_diameter_m);
  });
}

TEST_P(EveryDraw, has_a_drop_pipe_that_reaches_the_pump_and_rises_that_add_up) {
  each([](DrawnSite const& s) {
    double drop_m = 0;
    double yard_m = 0;
    double house_m = 0;
    for (auto const& run : s.pipes) {
      drop_m += run.place == PipePlace::drop ? run.length_m : 0;
      yard_m += run.place == PipePlace::yard ? run.rise_m : 0;
      house_m += run.place == PipePlace::house ? run.rise_m : 0;
      EXPECT_GE(run.length_m, std::abs(run.rise_m) - 1e-9);
    }
    EXPECT_NEAR(drop_m, s.pump.setting_depth_m, 1e-9);
    EXPECT_NEAR(yard_m, s.tank.elevation_m, 1e-9);
    EXPECT_NEAR(house_m, s.demand.outlet_rise_m, 1e-9);
  });
}

TEST_P(EveryDraw, charges_its_tank_below_the_pressure_wanted) {
  each([](DrawnSite const& s) {
    EXPECT_LT(s.tank.precharge_pa, s.demand.outlet_pressure_pa + 9790 * s.demand.outlet_rise_m);
  });
}

INSTANTIATE_TEST_SUITE_P(of_examples, EveryDraw, testing::Range(0, 4));

TEST(draw, stretches_a_typical_curve_to_the_class_drawn) {
  auto const read = read_site(with("pump", "rated_power = \"1.0 .. 1.4 hp\""), "a.toml");
  ASSERT_TRUE(read);
  for (std::uint32_t k = 0; k < 50; ++k) {
    auto const drawn = draw(read->site, 8, k);
    double most_w = 0;
    for (auto const& point : drawn.pump.curve) {
      most_w = std::max(most_w, point.shaft_power_w);
    }
    EXPECT_NEAR(most_w, drawn.pump.rated_power_w, 1e-6 * most_w);
  }
}

TEST(draw, sums_the_rise_that_pipes_and_tank_tell) {
  auto const read = read_site(with("tank", "elevation = \"10 ± 2 ft\""), "a.toml");
  ASSERT_TRUE(read);
  EXPECT_NEAR(draw(read->site, 1, 0).tank.elevation_m, 10 * 0.3048, 1e-9);
  auto const other = draw(read->site, 1, 3).tank.elevation_m;
  EXPECT_NE(other, 10 * 0.3048);
  EXPECT_NEAR(other, 10 * 0.3048, 3 * 0.3048);
}

}  // namespace
}  // namespace wellproof
