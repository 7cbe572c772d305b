// What the sheet of readings says, without the proof behind it.
#include "sheet/site_fit.h"

#include <algorithm>
#include <string>

#include <gtest/gtest.h>

#include "folders.h"
#include "site/read.h"
#include "unit/sheet/within_80.h"

namespace wellproof {
namespace {

FittedSite fitted(std::string const& readings_file) {
  auto const site = read_site(example_text("shallow_strong.toml"), "shallow_strong.toml");
  EXPECT_TRUE(site);
  auto const readings = read_readings(example_text(readings_file), readings_file, site->site);
  EXPECT_TRUE(readings);
  FittedSite made;
  made.name = "Alder Hollow 4";
  made.fit = fit_site(site->site, *readings, 0);
  made.keys = narrowed_keys(made.fit, UnitSystem::us);
  made.proof.proven = true;
  return made;
}

TEST(fit_sheet, stays_within_eighty_columns_in_both_systems_of_units) {
  auto sound = fitted("shallow_strong_readings.toml");
  EXPECT_TRUE(sound.settings_stand());
  expect_within_80(fit_sheet(sound, false));
  sound.units = UnitSystem::metric;
  expect_within_80(fit_sheet(sound, false));
}

TEST(fit_sheet, names_the_misread_figure_and_asks_to_read_it_again) {
  auto const misread = fitted("shallow_strong_readings_misread.toml");
  auto const out = fit_sheet(misread, false);
  ASSERT_EQ(misread.fit.misfits.size(), 1U);
  auto const says = misfit_says(misread, misread.fit.misfits[0]);
  EXPECT_NE(says.find("Reading 4 (least): the speed was read as 40.1 Hz"), std::string::npos) << says;
  EXPECT_NE(says.find("read it again"), std::string::npos) << says;
  EXPECT_NE(out.find("fits nothing"), std::string::npos);
  expect_within_80(out);
  // A figure misread says nothing against the settings.
  EXPECT_TRUE(misread.settings_stand());
}

TEST(fit_report, shows_what_moved_and_marks_what_was_left_out_and_escapes_what_was_typed) {
  auto misread = fitted("shallow_strong_readings_misread.toml");
  misread.name = "<i>Alder</i>";
  misread.fit.readings.readings[0].note = "a < b & \"c\"";
  auto const out = fit_report(misread);
  EXPECT_NE(out.find("THE SETTINGS STAND"), std::string::npos);
  EXPECT_NE(out.find("fits nothing"), std::string::npos);
  EXPECT_EQ(out.find("<i>Alder"), std::string::npos);
  EXPECT_NE(out.find("a &lt; b &amp; &quot;c&quot;"), std::string::npos);
  EXPECT_EQ(out.find("http"), out.find("http-equiv"));
  EXPECT_EQ(out.find("<script"), std::string::npos);
  // A row in the chart for each figure read, and one for each quantity that moved.
  std::size_t moved = 0;
  for (auto const& unknown : misread.fit.unknowns) {
    moved += unknown.tells() ? 1U : 0U;
  }
  std::size_t rows = 0;
  for (auto at = out.find("class=\"name\""); at != std::string::npos; at = out.find("class=\"name\"", at + 1)) {
    ++rows;
  }
  EXPECT_EQ(rows, moved + misread.fit.values.size());
}

TEST(fit_sheet, does_not_let_settings_stand_on_a_site_that_is_not_the_one_described) {
  auto sound = fitted("shallow_strong_readings.toml");
  sound.fit.misfits.push_back({0, 0, {}, "pump.wear", 0.4, Dimension::none, "the pump is worn"});
  EXPECT_FALSE(sound.settings_stand());
  EXPECT_NE(stand_says(sound).find("pump.wear is beyond what the site file says of it"), std::string::npos);
}

}  // namespace
}  // namespace wellproof
