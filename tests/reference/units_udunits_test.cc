// The table of units against UDUNITS-2, an independent table of units, and wire sizes against printed ones.
#include <cmath>
#include <fstream>
#include <memory>
#include <sstream>
#include <string>
#include <vector>

#include <gtest/gtest.h>
#include <udunits2.h>

#include "folders.h"
#include "quantity/quantity.h"
#include "quantity/wire_gauge.h"

namespace wellproof {
namespace {

struct Free {
  void operator()(ut_system* system) const { ut_free_system(system); }
  void operator()(ut_unit* unit) const { ut_free(unit); }
  void operator()(cv_converter* converter) const { cv_free(converter); }
};
using System = std::unique_ptr<ut_system, Free>;
using UtUnit = std::unique_ptr<ut_unit, Free>;
using Converter = std::unique_ptr<cv_converter, Free>;

struct Named {
  std::string_view ours;
  char const* theirs;
};

// What UDUNITS calls what the trade writes otherwise; all others mean the same there by the same spelling.
constexpr Named renamed[] = {
    {"in", "inch"},
    {"mi", "mile"},
    {"ft", "foot"},
    {"gal", "231 inch3"},
    {"qt", "57.75 inch3"},
    {"ft3", "foot3"},
    {"in3", "inch3"},
    {"ft2", "foot2"},
    {"in2", "inch2"},
    {"cmil", "0.78539816339744831 mil2"},
    {"kcmil", "785.39816339744831 mil2"},
    {"m3/h", "m3/hour"},
    {"L/h", "L/hour"},
    {"h", "hour"},
    {"d", "day"},
    {"m3/d", "m3/day"},
    {"L/d", "L/day"},
    {"m2/d", "m2/day"},
    {"m2/h", "m2/hour"},
    {"ft2/d", "foot2/day"},
    {"gpm", "231 inch3/minute"},
    {"gph", "231 inch3/hour"},
    {"gpd", "231 inch3/day"},
    {"ft3/s", "foot3/s"},
    {"ft3/min", "foot3/minute"},
    {"L/s/m", "L s-1 m-1"},
    {"L/min/m", "L minute-1 m-1"},
    {"gpm/ft", "231 inch3 minute-1 foot-1"},
    {"ft2/s", "foot2/s"},
    {"ft2/min", "foot2/minute"},
    {"m2/min", "m2/minute"},
    {"gpd/ft", "231 inch3 day-1 foot-1"},
    {"min/m2", "minute m-2"},
    {"h/m2", "hour m-2"},
    {"d/m2", "day m-2"},
    {"ft/gpm", "foot minute (231 inch3)-1"},
    {"min2/m5", "minute2 m-5"},
    {"h2/m5", "hour2 m-5"},
    {"d2/m5", "day2 m-5"},
    {"ft/gpm2", "foot minute2 (231 inch3)-2"},
    {"rev/s", "revolution/s"},
    {"rpm", "revolution/minute"},
    {"hp", "550 foot pound_force/s"},
    {"ohm", "ohm"},
    {"mohm", "milliohm"},
    {"kohm", "kiloohm"},
    {"Mohm", "megaohm"},
    {"°C", "degree_Celsius"},
    {"°F", "degree_Fahrenheit"},
    {"mH2O", "m H2O"},
    {"ftH2O", "foot H2O"},
    {"inH2O", "inch H2O"},
    {"inHg", "inch Hg"},
    {"mmHg", "mm Hg"},
    {"psi", "pound_force/inch2"},
    {"Hz/psi", "Hz inch2 pound_force-1"},
    {"Hz/mH2O", "Hz m-1 H2O-1"},
    {"Hz/ftH2O", "Hz foot-1 H2O-1"},
};

std::string theirs(std::string_view ours) {
  for (Named const& pair : renamed) {
    if (pair.ours == ours) {
      return pair.theirs;
    }
  }
  return std::string(ours);
}

// UDUNITS keeps these as seven printed digits; the table above takes them by their definition, and here they are held
// to what it prints as well.
constexpr Named printed[] = {
    {"gal", "US_liquid_gallon"},
    {"qt", "US_liquid_quart"},
    {"cmil", "circular_mil"},
    {"hp", "shaft_horsepower"},
    {"psi", "psi"},
    {"ftH2O", "foot_H2O"},
    {"inHg", "inHg"},
    {"atm", "standard_atmosphere"},
};

class units_against_udunits : public testing::Test {
 protected:
  void SetUp() override {
    ut_set_error_message_handler(ut_ignore);
    system_.reset(ut_read_xml(nullptr));
    if (!system_) {
      GTEST_SKIP() << "UDUNITS-2 has no database here";
    }
  }
  UtUnit parse(std::string const& text) const { return UtUnit(ut_parse(system_.get(), text.c_str(), UT_UTF8)); }

 private:
  System system_;
};

TEST_F(units_against_udunits, every_unit_becomes_the_same_number_in_si) {
  int checked = 0;
  for (Unit const& unit : units()) {
    std::string_view const ours = unit.spellings.front();
    std::string const si_text = unit.dimension == Dimension::none ? "1" : theirs(si_unit(unit.dimension));
    UtUnit const from = parse(theirs(ours));
    UtUnit const to = parse(si_text);
    ASSERT_TRUE(from) << ours << " as " << theirs(ours);
    ASSERT_TRUE(to) << si_text;
    Converter const converter(ut_get_converter(from.get(), to.get()));
    ASSERT_TRUE(converter) << ours << " is no " << si_text;
    for (double number : {1.0, -40.0, 1234.5}) {
      double const expected = cv_convert_double(converter.get(), number);
      double const scale = std::abs(unit.factor * number) + std::abs(unit.offset);
      EXPECT_NEAR(unit.factor * number + unit.offset, expected, 1e-12 * scale) << number << " " << ours;
    }
    ++checked;
  }
  EXPECT_GT(checked, 80);
}

TEST_F(units_against_udunits, a_unit_with_a_name_of_its_own_there_agrees_to_the_digits_printed) {
  for (Named const& named : printed) {
    UtUnit const from = parse(named.theirs);
    ASSERT_TRUE(from) << named.theirs;
    bool found = false;
    for (Unit const& unit : units()) {
      if (unit.spellings.front() != named.ours) {
        continue;
      }
      UtUnit const to = parse(theirs(si_unit(unit.dimension)));
      Converter const converter(ut_get_converter(from.get(), to.get()));
      ASSERT_TRUE(converter) << named.theirs;
      EXPECT_NEAR(unit.factor / cv_convert_double(converter.get(), 1), 1, 1e-7) << named.ours;
      found = true;
    }
    EXPECT_TRUE(found) << named.ours;
  }
}

TEST_F(units_against_udunits, a_conversion_both_ways_round_agrees_with_the_text_reader) {
  // 100 gpm in L/min through the text on our side and through the library on the other.
  Converter const converter(ut_get_converter(parse("US_liquid_gallon/minute").get(), parse("L/minute").get()));
  ASSERT_TRUE(converter);
  double const liters_a_minute = cv_convert_double(converter.get(), 100);
  EXPECT_NEAR(*read_quantity("100 gpm", Dimension::flow) * 60000, liters_a_minute, 1e-7 * liters_a_minute);
}

TEST(wire_gauge, agrees_with_the_printed_table) {
  // NEC chapter 9 table 8, circular mils of solid conductors.
  struct Row {
    int gauge;
    double circular_mils;
  };
  constexpr Row rows[] = {{14, 4110}, {12, 6530}, {10, 10380}, {8, 16510},  {6, 26240},   {4, 41740},
                          {3, 52620}, {2, 66360}, {1, 83690},  {0, 105600}, {-1, 133100}, {-3, 211600}};
  double const circular_mil_m2 = *read_quantity("1 cmil", Dimension::area);
  for (Row const& row : rows) {
    // Printed to four digits, from diameters rounded to a tenth of a mil.
    EXPECT_NEAR(wire_gauge_area_m2(row.gauge) / circular_mil_m2, row.circular_mils, 1e-3 * row.circular_mils)
        << row.gauge;
  }
}

TEST(wire_gauge, fixes_the_two_sizes_of_the_standard) {
  // ASTM B258: 4/0 is 0.4600 in, 36 is 0.0050 in.
  EXPECT_NEAR(wire_gauge_diameter_m(-3), 0.4600 * 0.0254, 1e-15);
  EXPECT_NEAR(wire_gauge_diameter_m(36), 0.0050 * 0.0254, 1e-18);
}

TEST(wire_gauge, agrees_with_the_table_of_copper_conductors) {
  std::ifstream file(reference_folder() + "/tables/copper_awg.csv");
  if (!file) {
    GTEST_SKIP() << "no table of copper conductors here";
  }
  int rows = 0;
  for (std::string line; std::getline(file, line);) {
    std::istringstream fields(line);
    double awg = 0;
    double diameter_in = 0;
    double circular_mils = 0;
    double area_mm2 = 0;
    char comma = 0;
    if (!(fields >> awg >> comma >> diameter_in >> comma >> circular_mils >> comma >> area_mm2)) {
      continue;
    }
    int const gauge = static_cast<int>(awg);
    EXPECT_NEAR(wire_gauge_diameter_m(gauge) / 0.0254, diameter_in, 1e-5) << gauge;
    EXPECT_NEAR(wire_gauge_area_m2(gauge) * 1e6, area_mm2, 6e-5) << gauge;
    std::string const text = std::to_string(gauge) + " AWG";
    EXPECT_NEAR(*read_quantity(text, Dimension::area) / *read_quantity("1 cmil", Dimension::area), circular_mils, 0.6)
        << gauge;
    ++rows;
  }
  EXPECT_EQ(rows, 8);
}

}  // namespace
}  // namespace wellproof
