// The sheet for the visit as text, page and JSON.
#include "sheet/visit_sheet.h"

#include <string>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "folders.h"
#include "sheet/visit_words.h"
#include "unit/sheet/within_80.h"

namespace wellproof {
namespace {

constexpr double psi_pa = 6894.757293168;

VisitSheet made(UnitSystem units = UnitSystem::us, bool on_switch = false, std::string const& name = "Alder Hollow 4") {
  auto text = example_text("shallow_strong.toml");
  text.replace(text.find("Alder Hollow 4"), 14, name);
  if (on_switch) {
    text.insert(text.find("[site]\n") + 7, "control = \"pressure_switch\"\n");
  }
  VisitSheet sheet;
  auto read = read_site(text, "site.toml");
  EXPECT_TRUE(read);
  sheet.site = *read;
  sheet.units = units;
  sheet.logic.two_contact_switch = on_switch;
  auto const plants = draw_plants(sheet.site.site, 1, 16);
  sheet.derived = derive(sheet.site.site, plants, units);
  sheet.before = before_power(sheet.site.site, plants, sheet.derived.settings, on_switch, units);
  VisitOptions options;
  options.draws = 16;
  options.units = units;
  options.logic = sheet.logic;
  sheet.visit = acceptance_tests(sheet.site.site, sheet.derived.settings, options);
  sheet.proof.proven = true;
  return sheet;
}

TEST(visit_text, stays_within_eighty_columns_in_both_systems_and_ways_of_control) {
  for (auto const units : {UnitSystem::us, UnitSystem::metric}) {
    for (bool const on_switch : {false, true}) {
      expect_within_80(visit_text(made(units, on_switch)));
    }
  }
}

TEST(visit_text, puts_safety_before_values_and_values_before_tests) {
  auto const out = visit_text(made());
  auto const safety = out.find("Safety first");
  auto const power = out.find("Before power");
  auto const values = out.find("Values to enter");
  auto const tests = out.find("Acceptance tests");
  auto const signature = out.find("Signature");
  ASSERT_NE(signature, std::string::npos);
  EXPECT_LT(safety, power);
  EXPECT_LT(power, values);
  EXPECT_LT(values, tests);
  EXPECT_LT(tests, signature);
  for (auto const* const word : {"Lock out, tag out", "Stored charge", "Relief valve", "Drinking water", "licence",
                                 "precharge", "megohmmeter", "35 psi"}) {
    EXPECT_NE(out.find(word), std::string::npos) << word;
  }
}

TEST(visit_text, has_a_box_for_each_value_that_the_low_water_test_changes) {
  auto const sheet = made();
  auto const out = visit_text(sheet);
  EXPECT_NE(out.find("[ ] speed.ceiling back to " + entry_text(sheet, "speed.ceiling")), std::string::npos);
  EXPECT_NE(out.find("[ ] dry_run.amps_below back to " + entry_text(sheet, "dry_run.amps_below")), std::string::npos);
}

TEST(visit_sheet, under_a_pressure_switch_gives_its_two_pressures_and_no_settings_of_a_regulator) {
  auto const sheet = made(UnitSystem::us, true);
  auto const out = visit_text(sheet);
  EXPECT_NE(out.find("cut-out"), std::string::npos);
  EXPECT_NE(out.find("cut-in"), std::string::npos);
  EXPECT_EQ(out.find("regulator.gain"), std::string::npos);
  EXPECT_EQ(out.find("sleep.hold"), std::string::npos);
  double const in_pa = sheet.derived.settings.pressure_target_pa - sheet.derived.settings.pressure_wake_drop_pa;
  EXPECT_NEAR(sheet.before.precharge_pa, in_pa - 2 * psi_pa, psi_pa);
}

TEST(visit_sheet, warns_of_a_relief_valve_that_opens_above_what_a_part_bears_and_of_none) {
  auto sheet = made();
  sheet.before.relief_told_pa = 150 * psi_pa;
  sheet.before.weakest_pa = 100 * psi_pa;
  EXPECT_NE(visit_text(sheet).find("opens too late"), std::string::npos);
  sheet.before.relief_told_pa = 0;
  EXPECT_NE(visit_text(sheet).find("None is told"), std::string::npos);
}

TEST(band_text, is_rounded_outwards_to_what_the_meter_shows) {
  VisitReading reading;
  reading.dimension = Dimension::current;
  reading.least = 3.449;
  reading.most = 4.301;
  EXPECT_EQ(band_text(reading, UnitSystem::us), "3.4 to 4.4 A");
  reading.dimension = Dimension::pressure;
  reading.least = 57.6 * psi_pa;
  reading.most = 60.9 * psi_pa;
  EXPECT_EQ(band_text(reading, UnitSystem::us), "57.5 to 61.0 psi");
  reading.no_least = true;
  EXPECT_EQ(band_text(reading, UnitSystem::us), "at most 61.0 psi");
}

TEST(visit_html, escapes_what_a_person_typed_and_needs_nothing_else) {
  auto const out = visit_html(made(UnitSystem::us, false, "<b>Alder</b> & \\\"Sons\\\""));
  EXPECT_EQ(out.find("<b>Alder"), std::string::npos);
  EXPECT_NE(out.find("&lt;b&gt;Alder&lt;/b&gt; &amp;"), std::string::npos);
  EXPECT_EQ(out.find("http://"), std::string::npos);
  EXPECT_EQ(out.find("https://"), std::string::npos);
  EXPECT_EQ(out.find("<script"), std::string::npos);
}

TEST(visit_html, has_room_for_each_reading) {
  auto const sheet = made();
  std::size_t readings = 0;
  for (auto const& test : sheet.visit.tests) {
    readings += test.readings.size();
  }
  auto const out = visit_html(sheet);
  std::size_t rows = 0;
  for (auto at = out.find("n band"); at != std::string::npos; at = out.find("n band", at + 1)) {
    ++rows;
  }
  EXPECT_GE(readings, 15U);
  EXPECT_EQ(rows, readings);
}

TEST(visit_json, holds_each_band_in_SI) {
  auto const sheet = made();
  auto const json = nlohmann::json::parse(visit_json(sheet));
  EXPECT_EQ(json["tests"].size(), sheet.visit.tests.size());
  bool seen = false;
  for (auto const& test : json["tests"]) {
    for (auto const& reading : test["readings"]) {
      if (reading["key"] == "full_draw.drive_pressure") {
        seen = true;
        EXPECT_EQ(reading["unit"], "Pa");
        EXPECT_LT(reading["least"].get<double>(), reading["most"].get<double>());
      }
    }
  }
  EXPECT_TRUE(seen);
  EXPECT_TRUE(json["before_power"]["precharge_pa"].is_number());
}

}  // namespace
}  // namespace wellproof
