#include <cmath>
#include <limits>
#include <string>

#include <gtest/gtest.h>

#include "quantity/quantity.h"

namespace wellproof {
namespace {

constexpr UnitSystem us = UnitSystem::us;
constexpr UnitSystem metric = UnitSystem::metric;

TEST(write_quantity, uses_the_customary_unit_of_the_system) {
  EXPECT_EQ(write_quantity(73.152, Dimension::length, us), "240 ft");
  EXPECT_EQ(write_quantity(73.152, Dimension::length, metric), "73.15 m");
  EXPECT_EQ(write_quantity(0.03175, Dimension::diameter, us), "1.25 in");
  EXPECT_EQ(write_quantity(0.03175, Dimension::diameter, metric), "31.75 mm");
  EXPECT_EQ(write_quantity(10 * 3.785411784e-3 / 60, Dimension::flow, us), "10 gpm");
  EXPECT_EQ(write_quantity(10 * 3.785411784e-3 / 60, Dimension::flow, metric), "37.85 L/min");
  EXPECT_EQ(write_quantity(344737.8646584181, Dimension::pressure, us), "50 psi");
  EXPECT_EQ(write_quantity(344737.8646584181, Dimension::pressure, metric), "344.7 kPa");
  EXPECT_EQ(write_quantity(0, Dimension::temperature, us), "32 °F");
  EXPECT_EQ(write_quantity(-160.0 / 9.0, Dimension::temperature, us), "0 °F");
  EXPECT_EQ(write_quantity(361.28315516282622, Dimension::rotation, metric), "3450 rpm");
  EXPECT_EQ(write_quantity(0.65, Dimension::none, us), "0.65");
}

TEST(write_quantity, shows_four_significant_digits_and_no_trailing_zeros) {
  EXPECT_EQ(write_quantity(1234.56, Dimension::voltage, us), "1235 V");
  EXPECT_EQ(write_quantity(123456, Dimension::voltage, us), "123500 V");
  EXPECT_EQ(write_quantity(0.012345678, Dimension::voltage, us), "0.01235 V");
  EXPECT_EQ(write_quantity(99.996, Dimension::voltage, us), "100 V");
  EXPECT_EQ(write_quantity(-2.5, Dimension::voltage, us), "-2.5 V");
  EXPECT_EQ(write_quantity(0, Dimension::voltage, us), "0 V");
  EXPECT_EQ(write_quantity(-0.0, Dimension::voltage, us), "0 V");
  EXPECT_EQ(write_quantity(1, Dimension::voltage, us), "1 V");
}

TEST(write_quantity, takes_an_exponent_only_for_sizes_out_of_the_ordinary) {
  EXPECT_EQ(write_quantity(0.00012345, Dimension::none, us), "0.0001234");
  EXPECT_EQ(write_quantity(1.2e-9, Dimension::none, us), "1.2e-9");
  EXPECT_EQ(write_quantity(3e12, Dimension::none, us), "3e12");
}

TEST(write_quantity, shows_long_times_in_minutes_hours_and_days) {
  EXPECT_EQ(write_quantity(0.5, Dimension::time, us), "0.5 s");
  EXPECT_EQ(write_quantity(90, Dimension::time, us), "90 s");
  EXPECT_EQ(write_quantity(1800, Dimension::time, metric), "30 min");
  EXPECT_EQ(write_quantity(9000, Dimension::time, us), "2.5 h");
  EXPECT_EQ(write_quantity(259200, Dimension::time, us), "3 d");
}

TEST(write_quantity_exactly, writes_what_a_person_wrote_not_the_digits_of_its_conversion) {
  for (std::string_view text : {"240 ft", "0.1 ft", "5.25 ft", "1000 ft", "-2 ft", "33.3 ft", "100000 ft"}) {
    EXPECT_EQ(write_quantity_exactly(*read_quantity(text, Dimension::length), Dimension::length, us), text);
  }
  for (std::string_view text : {"55 °F", "-40 °F", "71.6 °F", "32 °F"}) {
    EXPECT_EQ(write_quantity_exactly(*read_quantity(text, Dimension::temperature), Dimension::temperature, us), text);
  }
  EXPECT_EQ(write_quantity_exactly(*read_quantity("1.5 hp", Dimension::power), Dimension::power, us), "1.5 hp");
}

TEST(write_quantity_exactly, reads_back_bit_for_bit_at_the_ends_of_the_doubles) {
  double const numbers[] = {0.0,
                            -0.0,
                            1.0 / 3,
                            -1e-300,
                            5e-324,
                            std::numeric_limits<double>::min(),
                            std::numeric_limits<double>::max(),
                            -std::numeric_limits<double>::max(),
                            std::nextafter(1.0, 2.0)};
  for (Dimension dimension : all_dimensions) {
    for (UnitSystem system : {us, metric}) {
      for (double number : numbers) {
        std::string const text = write_quantity_exactly(number, dimension, system);
        auto const back = read_quantity(text, dimension);
        ASSERT_TRUE(back) << text;
        EXPECT_EQ(*back, number) << text;
        EXPECT_EQ(std::signbit(*back), std::signbit(number)) << text;
      }
    }
  }
}

TEST(customary_unit, is_one_that_the_reader_knows_with_the_same_factor) {
  for (Dimension dimension : all_dimensions) {
    for (UnitSystem system : {us, metric}) {
      CustomaryUnit const unit = customary_unit(dimension, system);
      auto const three = read_quantity("3 " + std::string(unit.spelling), dimension);
      ASSERT_TRUE(three) << name(dimension);
      EXPECT_DOUBLE_EQ(*three, 3 * unit.factor + unit.offset) << unit.spelling;
    }
  }
}

}  // namespace
}  // namespace wellproof
