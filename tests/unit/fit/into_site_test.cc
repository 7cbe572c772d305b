#include "fit/into_site.h"

#include <string>

#include <gtest/gtest.h>

#include "quantity/range.h"

namespace wellproof {
namespace {

std::vector<WellKey> const two{{"transmissivity", "400 .. 430 .. 460 m2/d"}, {"storativity", "0.0001"}};

TEST(with_well_keys, puts_new_lines_into_the_table_and_keeps_all_remarks) {
  std::string const site =
      "# my site\n[site]\nname = \"x\"\n\n[well]  # drilled 1998\nstatic_level = \"40 ft\" # spring\n# to be measured\n"
      "casing = \"6 in\"\n\n# the pump\n[pump]\nstages = 7\n";
  auto const written = with_well_keys(site, "a.toml", two, "from t.csv");
  ASSERT_TRUE(written);
  EXPECT_EQ(*written,
            "# my site\n[site]\nname = \"x\"\n\n[well]  # drilled 1998\nstatic_level = \"40 ft\" # spring\n# to be "
            "measured\ncasing = \"6 in\"\ntransmissivity = \"400 .. 430 .. 460 m2/d\"  # from t.csv\nstorativity = "
            "\"0.0001\"  # from t.csv\n\n# the pump\n[pump]\nstages = 7\n");
}

TEST(with_well_keys, replaces_a_value_and_keeps_the_remark_behind_it) {
  std::string const site =
      "[well]\r\nstatic_level = \"40 ft\"\r\n  transmissivity = '10 .. 20 ft2/d' # à revoir \"soon\"\r\nstorativity = "
      "0.2#guess\r\n";
  auto const written = with_well_keys(site, "a.toml", two, "from t.csv");
  ASSERT_TRUE(written);
  EXPECT_EQ(
      *written,
      "[well]\r\nstatic_level = \"40 ft\"\r\n  transmissivity = \"400 .. 430 .. 460 m2/d\" # à revoir \"soon\"\r\n"
      "storativity = \"0.0001\"#guess\r\n");
  // And once more changes nothing.
  EXPECT_EQ(*with_well_keys(*written, "a.toml", two, "from t.csv"), *written);
}

TEST(with_well_keys, changes_its_own_remark_with_the_value) {
  EXPECT_EQ(*with_well_keys("[well]\nstorativity = \"0.2\"  # from the pumping test a.csv\n", "a.toml", {two[1]},
                            "from the pumping test b.csv"),
            "[well]\nstorativity = \"0.0001\"  # from the pumping test b.csv\n");
}

TEST(with_well_keys, follows_dotted_keys_and_a_file_without_a_last_line_end) {
  auto const dotted = with_well_keys("well.static_level = \"40 ft\"\nsite.name = \"x\"", "a.toml", two, "r");
  ASSERT_TRUE(dotted);
  EXPECT_EQ(*dotted,
            "well.static_level = \"40 ft\"\nwell.transmissivity = \"400 .. 430 .. 460 m2/d\"  # r\nwell.storativity = "
            "\"0.0001\"  # r\nsite.name = \"x\"");
  auto const open = with_well_keys("[well]\nstatic_level = \"40 ft\"", "a.toml", two, "r\nx = 1");
  ASSERT_TRUE(open);
  EXPECT_EQ(*open,
            "[well]\nstatic_level = \"40 ft\"\ntransmissivity = \"400 .. 430 .. 460 m2/d\"  # rx = 1\nstorativity = "
            "\"0.0001\"  # rx = 1\n");
}

TEST(with_well_keys, makes_the_table_where_there_is_none) {
  EXPECT_EQ(*with_well_keys("[site]\nname = \"x\"\n", "a.toml", {two[1]}, "r"),
            "[site]\nname = \"x\"\n\n[well]\nstorativity = \"0.0001\"  # r\n");
}

TEST(with_well_keys, refuses_what_no_line_can_be_added_to) {
  EXPECT_FALSE(with_well_keys("well = { static_level = \"40 ft\" }\n", "a.toml", two, "r"));
  EXPECT_FALSE(with_well_keys("[well\nx = 1\n", "a.toml", two, "r"));
  EXPECT_FALSE(with_well_keys("[well]\na = 1\ntransmissivity = \"\"\"\n1 m2/d\"\"\"\n", "a.toml", two, "r"));
}

TEST(well_keys, make_a_well_that_draws_as_if_wider_one_of_more_storativity) {
  PumpingTestFit fit;
  fit.transmissivity_m2_s = {5e-3, 4e-3, 6e-3, Estimate::Standing::fitted};
  fit.storativity = {3e-4, 5e-5, 5e-3, Estimate::Standing::assumed};
  fit.well.well_radius_m = 0.5;
  fit.stated_radius_m = 0.1;
  auto const keys = well_keys(fit, UnitSystem::metric);
  EXPECT_EQ(keys[1].value, "0.0075");
}

TEST(well_keys, are_ranges_that_read_back_in_both_systems) {
  PumpingTestFit fit;
  fit.transmissivity_m2_s = {5e-3, 4e-3, 6e-3, Estimate::Standing::fitted};
  fit.storativity = {1e-4, 1e-9, 0.9, Estimate::Standing::fitted};
  fit.quadratic_loss_s2_m5 = {1000, 900, 1200, Estimate::Standing::fitted};
  fit.records.push_back({"a.csv", 0, false, {}, 0, 0, std::nullopt, std::nullopt, 0});
  for (auto const units : {UnitSystem::us, UnitSystem::metric}) {
    auto const keys = well_keys(fit, units);
    ASSERT_EQ(keys.size(), 4U);
    auto const transmissivity = read_range(keys[0].value, Dimension::transmissivity);
    ASSERT_TRUE(transmissivity) << keys[0].value;
    EXPECT_NEAR(lowest(*transmissivity), 4e-3, 4e-6);
    EXPECT_NEAR(highest(*transmissivity), 6e-3, 6e-6);
    EXPECT_TRUE(read_range(keys[1].value, Dimension::none)) << keys[1].value;
    EXPECT_TRUE(is_fixed(*read_range(keys[2].value, Dimension::linear_loss))) << keys[2].value;
    EXPECT_TRUE(read_range(keys[3].value, Dimension::quadratic_loss)) << keys[3].value;
  }
}

TEST(with_site_keys, reaches_all_tables_and_numbered_pipe_runs) {
  std::string const site =
      "[well]\nstatic_level = \"40 ft\" # tape\n\n[[pipe]]\nplace = \"drop\"\n\n[[pipe]]\nplace = \"yard\"\nlength = "
      "\"60 ft\"\n\n[supply]\nvoltage = \"240 V\"\n";
  auto const written = with_site_keys(site, "a.toml",
                                      {{"well.static_level", "41 ± 1 ft"},
                                       {"pump.wear", "0.1"},
                                       {"pipe.2.minor_loss", "3"},
                                       {"pipe.1.minor_loss", "2"},
                                       {"supply.voltage", "236 V"}},
                                      "from readings r.toml");
  ASSERT_TRUE(written);
  EXPECT_EQ(*written,
            "[well]\nstatic_level = \"41 ± 1 ft\" # tape\n\n[[pipe]]\nplace = \"drop\"\nminor_loss = \"2\"  # from "
            "readings r.toml\n\n[[pipe]]\nplace = \"yard\"\nlength = \"60 ft\"\nminor_loss = \"3\"  # from readings "
            "r.toml\n\n[supply]\nvoltage = \"236 V\"\n\n[pump]\nwear = \"0.1\"  # from readings r.toml\n");
}

TEST(with_site_keys, names_the_key_of_a_run_that_the_file_does_not_hold) {
  auto const written = with_site_keys("[well]\na = 1\n", "a.toml", {{"pipe.2.length", "1 ft"}}, "r");
  ASSERT_FALSE(written);
  EXPECT_EQ(written.error().front().key, "pipe.2.length");
}

}  // namespace
}  // namespace wellproof
