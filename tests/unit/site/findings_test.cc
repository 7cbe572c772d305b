#include <gtest/gtest.h>

#include "unit/site/site_text.h"

namespace wellproof {
namespace {

using namespace site_text;

TEST(findings, point_at_the_character_inside_a_text) {
  auto const found = findings(with("well", "depth = \"180 fet\""));
  ASSERT_EQ(found.size(), 1U);
  // depth = "180 fet": the quote is column 9, the unit begins five characters on.
  EXPECT_EQ(found[0].place, (Place{"a.toml", 2, 14}));
  EXPECT_EQ(found[0].key, "well.depth");
}

TEST(findings, refuse_a_bare_number_where_a_unit_is_needed_and_show_how) {
  auto const found = findings(with("well", "depth = 180"));
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NE(found[0].found.find("bare number 180"), std::string::npos);
  EXPECT_NE(found[0].expected.find("\"180 ft\""), std::string::npos);
}

TEST(findings, take_a_bare_number_for_a_ratio) {
  EXPECT_TRUE(findings(with("motor", "service_factor = 1.4\nefficiency = 0.67")).empty());
}

TEST(findings, name_the_nearest_known_word_for_every_misspelt_key) {
  // Each key with a letter left out, one swapped and one doubled; the table is right.
  for (auto const& key : known_keys()) {
    auto const dot = key.rfind('.');
    auto const table = key.substr(0, key.find('.'));
    auto const last = key.substr(dot + 1);
    if (last.size() < 4 || table == "pipe" || table == "zone" || table == "site" || key.find("fixtures") != key.npos) {
      continue;
    }
    auto const missing = last.substr(0, 2) + last.substr(3);
    auto const doubled = last.substr(0, 2) + last[1] + last.substr(2);
    for (auto const& wrong : {missing, doubled}) {
      auto const found = findings(with(table, wrong + " = \"1\""));
      auto const* about_it = about(found, table + '.' + wrong);
      ASSERT_NE(about_it, nullptr) << key << " as " << wrong;
      EXPECT_EQ(about_it->nearest, last) << wrong;
    }
  }
}

TEST(findings, name_the_nearest_table) {
  auto const found = findings(least() + "[motr]\npower = \"1 hp\"\n");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].nearest, "motor");
}

TEST(findings, tell_the_table_that_a_stray_key_belongs_to) {
  auto const found = findings("precharge = \"30 psi\"\n" + least());
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].nearest, "tank.precharge");
}

TEST(findings, of_spelling_do_not_hide_what_else_is_wrong) {
  auto const found = findings(with("well", "depth = \"180 ft\ncasing = 6 in\ncasing = 6\nseason_drop = \"5 gpm\""));
  EXPECT_NE(about(found, "well.depth"), nullptr);
  EXPECT_NE(about(found, "well.casing"), nullptr);
  EXPECT_NE(about(found, "well.season_drop"), nullptr);
  EXPECT_EQ(about(found, "well.static_level"), nullptr);
}

TEST(findings, do_not_call_an_entry_missing_that_is_only_misspelt) {
  auto lines = least_lines();
  lines[1] = "static_level = 60 ft";
  auto const found = findings(joined(lines));
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].found, "60 ft");
  EXPECT_EQ(found[0].expected, "quotes around it: \"60 ft\"");
}

TEST(findings, tell_a_second_entry_of_the_same_key_and_table) {
  auto const twice = findings(with("well", "static_level = \"61 ft\""));
  ASSERT_EQ(twice.size(), 1U);
  EXPECT_EQ(twice[0].place.line, 3);
  EXPECT_FALSE(findings(least() + "[well]\n").empty());
}

TEST(findings, tell_a_value_outside_its_limits) {
  auto const found = findings(with("motor", "efficiency = 74"));
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].place, (Place{"a.toml", 9, 14}));
  EXPECT_FALSE(findings(with("motor", "efficiency = nan")).empty());
  EXPECT_FALSE(findings(with("pump", "stages = inf")).empty());
  EXPECT_FALSE(findings(with("well", "season_drop = \"1 ± 2 ft\"")).empty()) << "a range that reaches below zero";
}

struct Together {
  std::string_view table;
  std::string_view lines;
  std::string_view key;
};

class Contradiction : public testing::TestWithParam<Together> {};

TEST_P(Contradiction, is_a_finding) {
  auto const& one = GetParam();
  auto const found = findings(with(one.table, std::string(one.lines)));
  EXPECT_NE(about(found, one.key), nullptr) << one.lines << (found.empty() ? "" : " gave " + text(found[0]));
  EXPECT_EQ(found.size(), 1U);
}

// The least site: water at 60 ft, test level 110 ft, pump at 140 ft, 10 gpm, 1 hp, 40 psi at the outlet.
INSTANTIATE_TEST_SUITE_P(
    of_two_entries, Contradiction,
    testing::Values(
        Together{"well", "depth = \"120 ft\"", "pump.setting"},
        Together{"tank", "precharge = \"70 psi\"", "tank.precharge"},
        Together{"tank", "rating = \"30 psi\"", "tank.rating"},
        Together{"sensor", "full_scale = \"30 psi\"", "sensor.full_scale"},
        Together{"limits", "relief = \"35 psi\"", "limits.relief"},
        Together{"motor", "voltage = \"230 V\"\nfull_load_current = \"14 A\"", "motor.full_load_current"},
        Together{"motor", "full_load_current = \"5 A\"\nservice_factor_current = \"4 A\"", "motor.full_load_current"},
        Together{"motor", "full_load_current = \"3.9 A\"\nno_load_current = \"4 A\"", "motor.no_load_current"},
        Together{"demand", "least_draw = \"5 gpm\"\npeak_draw = \"4 gpm\"", "demand.least_draw"},
        Together{"demand", "fixture_units = 10\nfixtures = { toilet = 1 }", "demand.fixture_units"}));

TEST(findings, tell_water_below_the_pump_and_a_test_that_raised_the_water) {
  auto lines = least_lines();
  lines[1] = "static_level = \"150 ft\"";
  auto const found = findings(joined(lines));
  EXPECT_NE(about(found, "well.static_level"), nullptr);
  EXPECT_NE(about(found, "well.test_level"), nullptr);
}

TEST(findings, say_what_a_plate_implies_that_does_not_agree) {
  // √3 · 230 V · 8 A · 0.7 · 0.8 = 1785 W = 2.39 hp, not 1 hp; 1 hp would go with 3.34 A.
  auto const found =
      findings(with("motor", "voltage = \"230 V\"\nfull_load_current = \"8 A\"\nefficiency = 0.7\npower_factor = 0.8"));
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NE(found[0].expected.find("2.393 hp"), std::string::npos) << found[0].expected;
  EXPECT_NE(found[0].expected.find("3.343 A"), std::string::npos) << found[0].expected;
  EXPECT_TRUE(findings(with("motor",
                            "voltage = \"230 V\"\nfull_load_current = \"3.5 A\"\nefficiency = 0.7\n"
                            "power_factor = 0.8"))
                  .empty());
}

TEST(findings, tell_what_is_wrong_with_a_curve) {
  auto const curve = [](std::string const& points) { return findings(with("pump", "curve = [" + points + "]")); };
  std::string const shut = "[\"0 gpm\",\"330 ft\",\"0.7 hp\"],";
  std::string const end = "[\"15 gpm\",\"130 ft\",\"1.2 hp\"]";
  EXPECT_TRUE(curve(shut + "[\"10 gpm\",\"250 ft\",\"1.1 hp\"]," + end).empty());
  EXPECT_EQ(curve(shut + end).size(), 1U) << "two points";
  EXPECT_EQ(curve(shut + "[\"10 gpm\",\"340 ft\",\"1.2 hp\"]," + end).size(), 1U) << "head rises";
  EXPECT_EQ(curve(shut + "[\"16 gpm\",\"200 ft\",\"1.2 hp\"]," + end).size(), 1U) << "flow falls";
  EXPECT_EQ(curve(shut + "[\"10 gpm\",\"250 ft\",\"-1 hp\"]," + end).size(), 1U) << "power below zero";
  EXPECT_EQ(curve(shut + "[\"10 gpm\",\"250 ft\",\"0.5 hp\"]," + end).size(), 1U)
      << "more water power than shaft power";
  EXPECT_EQ(curve(shut + "[\"10 gpm\",\"250 ft\"]," + end).size(), 1U) << "no power";
  EXPECT_EQ(curve(shut + "[10, 250, 1.1]," + end).size(), 3U) << "bare numbers";
  EXPECT_EQ(curve("[\"5 gpm\",\"300 ft\",\"1 hp\"],[\"10 gpm\",\"250 ft\",\"1.1 hp\"]," + end).size(), 1U)
      << "nothing near zero flow";
}

TEST(findings, of_a_file_beside_name_that_file_and_line) {
  auto const beside = [](std::string const& table) {
    auto const read = read_site(with("pump", "curve_file = \"c.csv\""), "a.toml", {{"c.csv", table}});
    return read ? Findings{} : read.error();
  };
  auto const bad = beside("flow_gpm,head_ft,power_hp\n0,330,0.7\n10,25o,1.1\n15,130,1.2\n");
  ASSERT_EQ(bad.size(), 1U);
  EXPECT_EQ(bad[0].place, (Place{"c.csv", 3, 4}));
  auto const head = beside("flow_gpm,haed_ft,power_hp\n0,330,0.7\n");
  ASSERT_EQ(head.size(), 1U);
  EXPECT_EQ(head[0].place, (Place{"c.csv", 1, 10}));
  EXPECT_EQ(head[0].nearest, "head");
  EXPECT_EQ(beside("flow_gpm,head_parsec,power_hp\n0,330,0.7\n").size(), 1U);
  EXPECT_EQ(beside("flow_gpm,head_ft\n0,330\n").size(), 1U);
  auto const absent = read_site(with("pump", "curve_file = \"c.csv\""), "a.toml");
  ASSERT_FALSE(absent);
  EXPECT_EQ(absent.error()[0].key, "pump.curve_file");
}

TEST(findings, of_pipes_tell_the_nearest_size_and_kind) {
  auto const size = findings(least() + "[[pipe]]\nplace = \"yard\"\nkind = \"pex\"\nsize = \"1-1/8 in\"\n");
  ASSERT_EQ(size.size(), 1U);
  EXPECT_EQ(size[0].key, "pipe.1.size");
  EXPECT_EQ(size[0].nearest, "1 in");
  auto const kind = findings(least() + "[[pipe]]\nplace = \"yard\"\nkind = \"sch40_pcv\"\nsize = \"1 in\"\n");
  ASSERT_EQ(kind.size(), 1U);
  EXPECT_EQ(kind[0].nearest, "sch40_pvc");
  EXPECT_EQ(findings(least() + "[pipe]\nplace = \"yard\"\n").size(), 1U) << "[pipe] in place of [[pipe]]";
  EXPECT_EQ(findings(least() + "[[pipe]]\nkind = \"pex\"\nsize = \"1 in\"\n").size(), 1U) << "no place";
}

TEST(findings, answer_any_nasty_text) {
  std::string const deep(5000, '[');
  std::string dotted = "a";
  for (int i = 0; i < 5000; ++i) {
    dotted += ".a";
  }
  for (auto const& nasty : {std::string("\xEF\xB1\xBF"), std::string("x = \"\xEF\xB1\xBF\""), std::string("\xFF\xFE"),
                            std::string("[[["), std::string("x = \"") + '\0' + '"', "x = " + deep, dotted + " = 1",
                            "[" + dotted + "]", std::string("[pump]\n[pump.curve]"), std::string("pipe = [1, 2]"),
                            std::string("zone = \"a\""), std::string("well = 3"), std::string(300000, '#')}) {
    EXPECT_FALSE(findings(nasty).empty());
  }
}

TEST(findings, of_a_line_that_began_a_long_text_do_not_bare_what_was_in_it) {
  // The line left out took the opening quotes along: the sign below would stand where the parser bears none.
  auto const found = findings("x\"\"\"\nflow = 6 ± 0.2 gpm\n");
  ASSERT_FALSE(found.empty());
  EXPECT_EQ(found[0].place.line, 1);
  for (auto const& each : found) {
    EXPECT_NE(each.place.line, 2) << text(each);
  }
}

}  // namespace
}  // namespace wellproof
