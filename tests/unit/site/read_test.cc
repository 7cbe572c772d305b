#include <gtest/gtest.h>

#include "unit/site/site_text.h"

namespace wellproof {
namespace {

using namespace site_text;

TEST(read_site, takes_a_handful_of_entries_and_declares_the_rest) {
  auto const read = read_site(least(), "a.toml");
  ASSERT_TRUE(read) << text(read.error().front());
  EXPECT_EQ(read->site.well.inflow_known, InflowKnown::test);
  EXPECT_TRUE(read->site.pump.curve_is_typical);
  EXPECT_TRUE(read->site.motor.plate_is_typical);
  EXPECT_NEAR(middle(read->site.well.static_level_depth_m), 60 * 0.3048, 1e-9);
  EXPECT_GT(read->assumptions.size(), 40U);
}

TEST(read_site, says_why_each_assumption_was_made_and_stays_within_the_limits) {
  auto const read = read_site(least(), "a.toml");
  ASSERT_TRUE(read);
  for (auto const& one : read->assumptions) {
    EXPECT_FALSE(one.because.empty()) << one.key;
  }
  each_field(read->site, [](Field const& field, Range const& range) {
    EXPECT_GE(lowest(range), field.least) << field.key;
    EXPECT_LE(highest(range), field.most) << field.key;
  });
}

TEST(read_site, gives_each_quantity_a_value_or_an_assumption_and_never_both) {
  auto const read = read_site(with("well", "casing = \"6 in\""), "a.toml");
  ASSERT_TRUE(read);
  auto const assumed = [&](std::string_view key) {
    return std::any_of(read->assumptions.begin(), read->assumptions.end(),
                       [&](Assumption const& one) { return one.key == key; });
  };
  EXPECT_FALSE(assumed("well.casing"));
  EXPECT_FALSE(assumed("well.static_level"));
  EXPECT_TRUE(assumed("well.season_drop"));
  EXPECT_TRUE(assumed("motor.efficiency"));
}

TEST(read_site, misses_each_required_entry_that_is_left_out) {
  struct Case {
    std::string_view line;
    std::string_view key;
    int at;  // the line of the table's head
  };
  for (auto const& one : {Case{"static_level", "well.static_level", 1}, Case{"test_flow", "well.test_flow", 1},
                          Case{"test_level", "well.test_level", 1}, Case{"setting", "pump.setting", 5},
                          Case{"rated_flow", "pump.rated_flow", 5}, Case{"power", "pump.rated_power", 5},
                          Case{"outlet_pressure", "demand.outlet_pressure", 10}}) {
    auto const found = findings(without({one.line}));
    ASSERT_EQ(found.size(), 1U) << one.line;
    EXPECT_EQ(found[0].key, one.key);
    EXPECT_EQ(found[0].place, (Place{"a.toml", one.at, 1})) << one.line;
  }
}

TEST(read_site, says_that_the_file_lacks_a_table_at_its_first_line) {
  auto const found = findings(without({"[demand]", "outlet_pressure"}));
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].place, (Place{"a.toml", 1, 1}));
}

TEST(read_site, finds_everything_that_is_required_in_an_empty_file) {
  auto const found = findings("");
  for (auto const* key : {"well.static_level", "well.yield", "pump.setting", "pump.rated_flow", "pump.rated_power",
                          "demand.outlet_pressure"}) {
    EXPECT_NE(about(found, key), nullptr) << key;
  }
}

TEST(read_site, takes_the_inflow_from_the_best_knowledge) {
  auto const inflow = [](std::string const& text) {
    auto const read = read_site(text, "a.toml");
    return read ? read->site.well : Site{}.well;
  };
  auto const all = inflow(with("well", "yield = \"6 gpm\"\nspecific_capacity = \"0.2 gpm/ft\""));
  EXPECT_EQ(all.inflow_known, InflowKnown::specific_capacity);
  EXPECT_EQ(highest(all.test_flow_m3_s), 0);
  EXPECT_EQ(highest(all.yield_m3_s), 0);
  auto const tested = inflow(with("well", "yield = \"6 gpm\""));
  EXPECT_EQ(tested.inflow_known, InflowKnown::test);
  EXPECT_EQ(highest(tested.yield_m3_s), 0);
  EXPECT_GT(lowest(tested.test_time_s), 0);
}

TEST(read_site, reads_a_curve_from_the_file_and_from_one_beside_it_alike) {
  std::string const points =
      "curve = [[\"0 gpm\",\"330 ft\",\"0.7 hp\"],[\"10 gpm\",\"250 ft\",\"1.1 hp\"],"
      "[\"15 gpm\",\"130 ft\",\"1.2 hp\"]]";
  auto const inside = read_site(with("pump", points), "a.toml");
  auto const named = with("pump", "curve_file = \"c.csv\"");
  ASSERT_EQ(files_named(named), std::vector<std::string>{"c.csv"});
  auto const beside =
      read_site(named, "a.toml",
                {{"c.csv", "# a test\r\nhead_ft,power_hp,flow_gpm\r\n330,0.7,0\r\n250,1.1,10\r\n130,1.2,15\r\n"}});
  ASSERT_TRUE(inside);
  ASSERT_TRUE(beside);
  ASSERT_EQ(inside->site.pump.curve.size(), 3U);
  EXPECT_FALSE(inside->site.pump.curve_is_typical);
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_NEAR(inside->site.pump.curve[i].flow_m3_s, beside->site.pump.curve[i].flow_m3_s, 1e-12);
    EXPECT_NEAR(inside->site.pump.curve[i].head_m, beside->site.pump.curve[i].head_m, 1e-9);
    EXPECT_NEAR(inside->site.pump.curve[i].shaft_power_w, beside->site.pump.curve[i].shaft_power_w, 1e-9);
  }
  // 1 hp = 745.69987 W, 1 gpm = 6.30902e-5 m³/s (NIST SP 811).
  EXPECT_NEAR(inside->site.pump.curve[1].shaft_power_w, 1.1 * 745.69987, 1e-3);
  EXPECT_NEAR(inside->site.pump.curve[1].flow_m3_s, 6.30902e-4, 1e-9);
}

TEST(read_site, takes_a_well_known_curve_in_place_of_class_and_power) {
  auto const text = without({"rated_flow", "power", "[motor]"});
  auto const at = text.find("[pump]\n") + 7;
  auto const curved = text.substr(0, at) +
                      "curve = [[\"0 gpm\",\"330 ft\",\"0.7 hp\"],[\"10 gpm\",\"250 ft\",\"1.1 hp\"],"
                      "[\"15 gpm\",\"130 ft\",\"1.2 hp\"]]\n" +
                      text.substr(at);
  auto const read = read_site(curved, "a.toml");
  ASSERT_TRUE(read) << wellproof::text(read.error().front());
  // 1.2 hp of shaft power want the next usual motor whose service-factor power covers it: 1 hp · 1.4.
  EXPECT_NEAR(middle(read->site.motor.power_w), 745.7, 0.1);
  EXPECT_NEAR(middle(read->site.pump.rated_power_w), 1.2 * 745.7, 0.1);
}

TEST(read_site, gives_a_place_without_pipe_a_usual_run) {
  auto const read =
      read_site(least() + "[[pipe]]\nplace = \"yard\"\nkind = \"sidr9_pe\"\nsize = \"1-1/4 in\"\n", "a.toml");
  ASSERT_TRUE(read);
  ASSERT_EQ(read->site.pipes.size(), 3U);
  EXPECT_NEAR(middle(read->site.pipes[0].inside_diameter_m), 1.380 * 0.0254, 1e-9);
  EXPECT_EQ(read->site.pipes[1].place, PipePlace::drop);
  EXPECT_EQ(read->site.pipes[2].place, PipePlace::house);
}

TEST(read_site, sums_fixtures_to_units_and_peak_draw) {
  auto const read =
      read_site(least() + "[demand.fixtures]\nbathroom_group = 2\nkitchen_sink = 1\nclothes_washer = 1\n", "a.toml");
  ASSERT_TRUE(read);
  // IPC table E103.3(2): 2 · 3.6 + 1.4 + 1.4 = 10 units; table E103.3(3), flush tanks: 10 units draw 14.6 gpm.
  EXPECT_NEAR(middle(read->site.demand.fixture_units), 10, 1e-9);
  EXPECT_NEAR(middle(read->site.demand.peak_draw_m3_s) / 6.30902e-5, 14.6, 1e-4);
}

TEST(read_site, reads_the_examples) {
  for (auto const* name : {"shallow_strong.toml", "deep_weak.toml", "not_provable.toml"}) {
    auto const read = read_example(name);
    EXPECT_TRUE(read) << name << ": " << (read ? "" : text(read.error().front()));
  }
}

TEST(read_site, finds_every_mistake_of_the_broken_example_at_once_and_in_order) {
  auto const read = read_example("broken.toml");
  ASSERT_FALSE(read);
  EXPECT_GE(read.error().size(), 20U);
  for (std::size_t i = 1; i < read.error().size(); ++i) {
    EXPECT_LE(read.error()[i - 1].place.line, read.error()[i].place.line);
  }
}

}  // namespace
}  // namespace wellproof
