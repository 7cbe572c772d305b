// Where no source is named, the figure follows from a definition: 1 in = 25.4 mm, 1 US gal = 231 in³ and
// 1 lb = 0.45359237 kg exactly (NIST Handbook 44, appendix C).
#include <string>

#include <gtest/gtest.h>

#include "quantity/quantity.h"

namespace wellproof {
namespace {

double read(std::string_view text, Dimension dimension) {
  auto const value = read_quantity(text, dimension);
  EXPECT_TRUE(value) << text << ": found " << (value ? "" : value.error().found) << ", expected "
                     << (value ? "" : value.error().expected);
  return value.value_or(-987654.0);
}

TextError refused(std::string_view text, Dimension dimension) {
  auto const value = read_quantity(text, dimension);
  EXPECT_FALSE(value) << text << " was read as " << value.value_or(0);
  return value ? TextError{999, "", "", ""} : value.error();
}

TEST(read_quantity, takes_us_and_metric_units) {
  EXPECT_DOUBLE_EQ(read("240 ft", Dimension::length), 73.152);
  EXPECT_DOUBLE_EQ(read("73.152 m", Dimension::length), 73.152);
  EXPECT_DOUBLE_EQ(read("1 mi", Dimension::length), 1609.344);
  EXPECT_DOUBLE_EQ(read("20 gal", Dimension::volume), 0.07570823568);
  EXPECT_DOUBLE_EQ(read("10 gpm", Dimension::flow), 10 * 231 * 0.0254 * 0.0254 * 0.0254 / 60);
  EXPECT_DOUBLE_EQ(read("3.6 m3/h", Dimension::flow), 1e-3);
  EXPECT_DOUBLE_EQ(read("3450 rpm", Dimension::rotation), 361.28315516282622);
  EXPECT_NEAR(read("50 psi", Dimension::pressure), 344737.864658, 1e-5);  // 1 psi = 6894.757 293 168 Pa, NIST SP 811
  EXPECT_NEAR(read("1.5 hp", Dimension::power), 1118.5498, 1e-4);         // 550 ft·lbf/s = 745.6999 W, NIST SP 811
  EXPECT_DOUBLE_EQ(read("1 gpm/ft", Dimension::specific_capacity), 3.785411784e-3 / 60 / 0.3048);
  EXPECT_DOUBLE_EQ(read("86400 m2/d", Dimension::specific_capacity), 1);
  EXPECT_DOUBLE_EQ(read("2 Hz/kPa", Dimension::regulator_gain), 2e-3);
  EXPECT_DOUBLE_EQ(read("250 mA", Dimension::current), 0.25);
}

TEST(read_quantity, takes_feet_and_inches_in_every_way_they_are_written) {
  for (std::string_view text :
       {"5 ft 3 in", "5' 3\"", "5'3\"", "5ft3in", "5 feet 3 inches", "5′ 3″", "5.25 ft", "63 in"}) {
    EXPECT_DOUBLE_EQ(read(text, Dimension::length), 1.6002) << text;
  }
  EXPECT_DOUBLE_EQ(read("-5 ft 3 in", Dimension::length), -1.6002);
  EXPECT_DOUBLE_EQ(read("1 h 30 min", Dimension::time), 5400);
  EXPECT_DOUBLE_EQ(read("1d 2h 3min 4s", Dimension::time), 86400 + 7200 + 180 + 4);
}

TEST(read_quantity, takes_fractions_as_on_a_ruler_and_a_nameplate) {
  EXPECT_DOUBLE_EQ(read("1-1/4 in", Dimension::diameter), 0.03175);
  EXPECT_DOUBLE_EQ(read("1 1/4 in", Dimension::diameter), 0.03175);
  EXPECT_DOUBLE_EQ(read("3/4 in", Dimension::diameter), 0.01905);
  EXPECT_DOUBLE_EQ(read("5 ft 3-1/2 in", Dimension::length), 1.6129);
  EXPECT_DOUBLE_EQ(read("1/2 hp", Dimension::power), read("0.5 hp", Dimension::power));
}

TEST(read_quantity, takes_wire_sizes) {
  // NEC chapter 9 table 8: 12 AWG 6530 circular mils; 4/0 AWG 211600, 0.460 in by definition (ASTM B258).
  EXPECT_NEAR(read("12 AWG", Dimension::diameter), 0.0808 * 0.0254, 0.00005 * 0.0254);
  EXPECT_NEAR(read("AWG 12", Dimension::area), read("6530 cmil", Dimension::area), 1e-4 * 3.3e-6);
  EXPECT_NEAR(read("4/0 awg", Dimension::diameter), 0.460 * 0.0254, 1e-12);
  EXPECT_NEAR(read("4/0 AWG", Dimension::area), read("211.6 kcmil", Dimension::area), 1e-12);
  EXPECT_EQ(refused("12.5 AWG", Dimension::diameter).expected, "a wire size such as \"12 AWG\" or \"2/0 AWG\"");
  EXPECT_EQ(refused("5/0 AWG", Dimension::diameter).offset, 0U);
  EXPECT_EQ(refused("12 AWG", Dimension::length).found, "\"AWG\", a wire size");
}

TEST(read_quantity, puts_the_zero_of_temperature_scales_where_it_belongs) {
  EXPECT_NEAR(read("32 °F", Dimension::temperature), 0, 1e-12);
  EXPECT_NEAR(read("212 F", Dimension::temperature), 100, 1e-12);
  EXPECT_NEAR(read("-40 °F", Dimension::temperature), -40, 1e-12);
  EXPECT_NEAR(read("273.15 K", Dimension::temperature), 0, 1e-12);
  EXPECT_DOUBLE_EQ(read("-2 °C", Dimension::temperature), -2);
  EXPECT_DOUBLE_EQ(read("12.5 degC", Dimension::temperature), 12.5);
}

TEST(read_quantity, takes_the_signs_people_type) {
  EXPECT_DOUBLE_EQ(read("2 m³/s", Dimension::flow), 2);
  EXPECT_DOUBLE_EQ(read("2 m^3/s", Dimension::flow), 2);
  EXPECT_DOUBLE_EQ(read("5 µm", Dimension::length), 5e-6);
  EXPECT_DOUBLE_EQ(read("1.2 Ω", Dimension::resistance), 1.2);
  EXPECT_DOUBLE_EQ(read("1 L/(s·m)", Dimension::specific_capacity), 1e-3);
  EXPECT_DOUBLE_EQ(read("−5 ft", Dimension::length), -1.524);
  EXPECT_DOUBLE_EQ(read("+5ft", Dimension::length), 1.524);
  EXPECT_DOUBLE_EQ(read("  1.2e3 \t kPa ", Dimension::pressure), 1.2e6);
  EXPECT_DOUBLE_EQ(read(".5 A", Dimension::current), 0.5);
  EXPECT_DOUBLE_EQ(read("10 gal / min", Dimension::flow), read("10 gpm", Dimension::flow));
  EXPECT_DOUBLE_EQ(read("3 ft H2O", Dimension::pressure), 3 * 0.3048 * 9806.65);
}

TEST(read_quantity, takes_a_plain_number_and_a_percentage_where_there_is_no_unit) {
  EXPECT_EQ(read("0.65", Dimension::none), 0.65);
  EXPECT_DOUBLE_EQ(read("65 %", Dimension::none), 0.65);
  EXPECT_DOUBLE_EQ(read("65%", Dimension::none), 0.65);
  EXPECT_EQ(read("1e-7", Dimension::none), 1e-7);
}

TEST(read_quantity, is_tolerant_of_case_only_where_it_can_mean_one_thing) {
  EXPECT_DOUBLE_EQ(read("5 GPM", Dimension::flow), read("5 gpm", Dimension::flow));
  EXPECT_DOUBLE_EQ(read("5 KW", Dimension::power), 5000);
  EXPECT_DOUBLE_EQ(read("5 FT", Dimension::length), 1.524);
  EXPECT_DOUBLE_EQ(read("5 MM", Dimension::length), 0.005);
  EXPECT_DOUBLE_EQ(read("5 PSI", Dimension::pressure), read("5 psi", Dimension::pressure));
  EXPECT_DOUBLE_EQ(read("1 Mohm", Dimension::resistance), 1e6);
  EXPECT_DOUBLE_EQ(read("1 mohm", Dimension::resistance), 1e-3);
  EXPECT_EQ(refused("5 mW", Dimension::power).nearest, "MW");
  EXPECT_EQ(refused("5 mPa", Dimension::pressure).nearest, "MPa");
  EXPECT_EQ(refused("5 MA", Dimension::current).nearest, "mA");
  EXPECT_EQ(refused("5 MBAR", Dimension::pressure).found, "\"MBAR\"");
}

TEST(read_quantity, refuses_a_bare_number_where_there_is_a_unit) {
  TextError const error = refused("240", Dimension::length);
  EXPECT_EQ(error.found, "\"240\" without a unit");
  EXPECT_EQ(error.expected, "a length with its unit, such as \"240 ft\"");
}

TEST(read_quantity, names_the_kind_of_a_unit_of_another_kind) {
  TextError const error = refused("240 gpm", Dimension::length);
  EXPECT_EQ(error.offset, 4U);
  EXPECT_EQ(error.found, "\"gpm\", a flow");
  EXPECT_EQ(error.expected, "a length such as \"240 ft\"");
  EXPECT_EQ(refused("40 ft", Dimension::pressure).found, "\"ft\", a length");
  EXPECT_EQ(refused("8 A", Dimension::none).found, "\"A\", a current");
}

TEST(read_quantity, suggests_the_unit_behind_a_slip) {
  EXPECT_EQ(refused("10 gmp", Dimension::flow).nearest, "gpm");
  EXPECT_EQ(refused("10 foott", Dimension::length).nearest, "foot");
  EXPECT_EQ(refused("10 furlongs", Dimension::length).nearest, "");
}

TEST(read_quantity, refuses_what_is_no_finite_number) {
  for (std::string_view text : {"nan ft", "inf ft", "-inf ft", "NaN", "infinity m", "1e999 ft", "-1e400 m", "0x10 ft",
                                "ft", "-", "", "   ", ".", "e5 ft", "--5 ft", "- 5 ft"}) {
    EXPECT_FALSE(read_quantity(text, Dimension::length)) << text;
  }
  EXPECT_FALSE(read_quantity("1e308 km", Dimension::length));
}

TEST(read_quantity, refuses_a_comma_since_it_means_two_things) {
  EXPECT_EQ(refused("1,200 ft", Dimension::length).expected, "a number without a comma, such as 1200 or 1.2");
  EXPECT_FALSE(read_quantity("1,5 m", Dimension::length));
  EXPECT_FALSE(read_quantity("1 200 ft", Dimension::length));
}

TEST(read_quantity, points_at_what_is_left_over_counted_in_characters) {
  EXPECT_EQ(refused("240 ft deep", Dimension::length).offset, 7U);
  EXPECT_EQ(refused("240 ft deep", Dimension::length).expected, "nothing after \"240 ft\"");
  EXPECT_EQ(refused("2 m³/s x", Dimension::flow).offset, 7U);
  EXPECT_EQ(refused("1.5.2 ft", Dimension::length).offset, 3U);
  EXPECT_EQ(refused("10 Ωx", Dimension::resistance).found, "\"Ωx\"");
}

TEST(read_quantity, refuses_parts_that_do_not_follow_each_other) {
  for (std::string_view text :
       {"5 ft 14 in", "3 in 5 ft", "5 ft 3", "5 ft -3 in", "5.5 ft 3 in", "5 ft 3 ft", "1 h 90 min"}) {
    EXPECT_FALSE(read_quantity(text, text.find('h') == 2 ? Dimension::time : Dimension::length)) << text;
  }
}

TEST(read_quantity, refuses_improper_fractions) {
  for (std::string_view text :
       {"1/0 in", "5/4 in", "1-5/4 in", "1/ in", "/4 in", "1.5-1/4 in", "0/4 in", "1-1/4/2 in"}) {
    EXPECT_FALSE(read_quantity(text, Dimension::diameter)) << text;
  }
}

TEST(read_quantity, refuses_what_is_too_long_or_no_text) {
  EXPECT_EQ(refused(std::string(1000000, '9'), Dimension::none).found, "a text of 1000000 bytes");
  EXPECT_EQ(refused("5 \xff", Dimension::length).found, "a byte that is not UTF-8");
  EXPECT_EQ(refused("5 \xc3", Dimension::length).offset, 2U);
  EXPECT_EQ(refused("5 \xe2\x80", Dimension::length).expected, "UTF-8 text");
  EXPECT_EQ(refused("5 \xed\xa0\x80", Dimension::length).offset, 2U);
  EXPECT_EQ(refused(std::string_view("5\0 ft", 5), Dimension::length).found, "a control character");
  EXPECT_EQ(refused("5 ½ ft", Dimension::length).offset, 2U);
}

TEST(units, have_one_meaning_for_each_spelling_of_a_dimension) {
  for (Unit const& unit : units()) {
    for (std::string_view spelling : unit.spellings) {
      std::string const text = unit.dimension == Dimension::none ? "2 %" : "2 " + std::string(spelling);
      EXPECT_DOUBLE_EQ(read(text, unit.dimension), unit.factor * 2 + unit.offset) << text;
    }
  }
}

TEST(dimensions, have_an_example_that_reads_and_an_si_unit_of_one) {
  for (Dimension dimension : all_dimensions) {
    EXPECT_TRUE(read_quantity(example(dimension), dimension)) << example(dimension);
    EXPECT_EQ(read("3 " + std::string(si_unit(dimension)), dimension), 3) << name(dimension);
  }
}

}  // namespace
}  // namespace wellproof
