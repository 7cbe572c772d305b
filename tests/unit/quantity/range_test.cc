#include "quantity/range.h"

#include <cmath>
#include <string>

#include <gtest/gtest.h>

namespace wellproof {
namespace {

constexpr double ft = 0.3048;

template <class Distribution>
Distribution read(std::string_view text, Dimension dimension) {
  auto const range = read_range(text, dimension);
  if (!range || !std::holds_alternative<Distribution>(*range)) {
    ADD_FAILURE() << text << (range ? ": another distribution" : ": " + range.error().expected);
    return {};
  }
  return std::get<Distribution>(*range);
}

TextError refused(std::string_view text, Dimension dimension) {
  auto const range = read_range(text, dimension);
  EXPECT_FALSE(range) << text;
  return range ? TextError{999, "", "", ""} : range.error();
}

TEST(read_range, takes_one_unit_for_all_numbers_or_one_for_each) {
  for (std::string_view text : {"90 .. 140 ft", "90 ft .. 140 ft", "90..140ft", "90 to 140 ft", "1080 in .. 140 ft"}) {
    Even const even = read<Even>(text, Dimension::length);
    EXPECT_NEAR(even.low, 90 * ft, 1e-12) << text;
    EXPECT_NEAR(even.high, 140 * ft, 1e-12) << text;
  }
  Triangular const triangular = read<Triangular>("90 .. 110 .. 140 ft", Dimension::length);
  EXPECT_DOUBLE_EQ(triangular.mode, 110 * ft);
  EXPECT_DOUBLE_EQ(read<Fixed>("110 ft", Dimension::length).value, 110 * ft);
}

TEST(read_range, takes_a_half_width_in_units_and_in_percent_of_the_mean) {
  for (std::string_view text : {"110 ± 11 ft", "110 +/- 11 ft", "110 ft ± 11 ft", "110 ft ± 10 %", "110 ft ± 132 in"}) {
    Normal const normal = read<Normal>(text, Dimension::length);
    EXPECT_NEAR(normal.mean, 110 * ft, 1e-12) << text;
    EXPECT_NEAR(normal.half_width_95, 11 * ft, 1e-12) << text;
  }
  EXPECT_NEAR(read<Normal>("0.6 ± 5 %", Dimension::none).half_width_95, 0.03, 1e-15);
  EXPECT_NEAR(read<Normal>("65 % ± 5 %", Dimension::none).half_width_95, 0.05, 1e-15);
  EXPECT_NEAR(read<Normal>("-10 m ± 10 %", Dimension::length).half_width_95, 1, 1e-15);
}

TEST(read_range, leaves_the_zero_of_the_scale_out_of_a_temperature_half_width) {
  Normal const normal = read<Normal>("50 ± 9 °F", Dimension::temperature);
  EXPECT_NEAR(normal.mean, 10, 1e-12);
  EXPECT_NEAR(normal.half_width_95, 5, 1e-12);
  EXPECT_NEAR(read<Normal>("10 °C ± 2 K", Dimension::temperature).half_width_95, 2, 1e-15);
  EXPECT_EQ(refused("50 °F ± 5 %", Dimension::temperature).expected, "a half width in degrees");
}

TEST(read_range, makes_a_range_without_width_a_fixed_number) {
  EXPECT_DOUBLE_EQ(read<Fixed>("110 ± 0 ft", Dimension::length).value, 110 * ft);
  EXPECT_DOUBLE_EQ(read<Fixed>("90 .. 90 ft", Dimension::length).value, 90 * ft);
  EXPECT_DOUBLE_EQ(read<Fixed>("90 .. 90 .. 90 ft", Dimension::length).value, 90 * ft);
  EXPECT_DOUBLE_EQ(read<Fixed>("0 ± 10 %", Dimension::none).value, 0);
}

TEST(read_range, takes_negative_ends) {
  Even const even = read<Even>("-5 .. 5 °C", Dimension::temperature);
  EXPECT_EQ(even.low, -5);
  EXPECT_EQ(even.high, 5);
}

TEST(read_range, refuses_what_is_not_a_range) {
  EXPECT_EQ(refused("140 .. 90 ft", Dimension::length).expected, "the lower end of the range first");
  EXPECT_EQ(refused("90 .. 150 .. 140 ft", Dimension::length).expected, "the lower end of the range first");
  EXPECT_EQ(refused("110 ± -5 ft", Dimension::length).expected, "a half width that is not negative");
  EXPECT_EQ(refused("90...140 ft", Dimension::length).offset, 2U);
  EXPECT_EQ(refused("90 .. 140", Dimension::length).found, "\"90\" without a unit");
  EXPECT_EQ(refused("90 ft .. 140", Dimension::length).found, "\"140\" without a unit");
  EXPECT_EQ(refused("110 ± 10 .. 20 ft", Dimension::length).offset, 0U);
  EXPECT_EQ(refused("1 .. 2 .. 3 .. 4 ft", Dimension::length).offset, 0U);
  EXPECT_EQ(refused("90 .. 140 gpm", Dimension::length).found, "\"gpm\", a flow");
  EXPECT_EQ(refused("5 .. 5 ft 3 in", Dimension::length).found, "\"5\" without a unit");
  EXPECT_FALSE(read_range("-1e308 .. 1e308 m", Dimension::length));
  EXPECT_FALSE(read_range("1e308 ± 1e308 m", Dimension::length));
  for (std::string_view text :
       {"..", "±", "to", " to ", "90 ..", ".. 90 ft", "± 5 ft", "5 ft ±", "5 ft ± %", "a .. b"}) {
    EXPECT_FALSE(read_range(text, Dimension::length)) << text;
  }
}

TEST(write_range, writes_as_a_person_would) {
  EXPECT_EQ(write_range(Fixed{73.152}, Dimension::length, UnitSystem::us), "240 ft");
  EXPECT_EQ(write_range(Normal{110 * ft, 10 * ft}, Dimension::length, UnitSystem::us), "110 ± 10 ft");
  EXPECT_EQ(write_range(Even{90 * ft, 140 * ft}, Dimension::length, UnitSystem::us), "90 .. 140 ft");
  EXPECT_EQ(write_range(Triangular{10, 20, 40}, Dimension::length, UnitSystem::metric), "10 .. 20 .. 40 m");
  EXPECT_EQ(write_range(Normal{10, 5}, Dimension::temperature, UnitSystem::us), "50 ± 9 °F");
  EXPECT_EQ(write_range(Even{600, 3600}, Dimension::time, UnitSystem::us), "10 .. 60 min");
}

TEST(write_range_exactly, reads_back_to_the_same_range) {
  Range const ranges[] = {Fixed{1.0 / 3}, Normal{1.0 / 3, 0.1 / 7}, Normal{-20.0 / 3, 1e-9}, Even{-1.0 / 3, 1.0 / 7},
                          Triangular{0.1, 0.1, 100.0 / 3}};
  for (Dimension dimension : all_dimensions) {
    for (UnitSystem system : {UnitSystem::us, UnitSystem::metric}) {
      for (Range const& range : ranges) {
        std::string const text = write_range_exactly(range, dimension, system);
        auto const back = read_range(text, dimension);
        ASSERT_TRUE(back) << text;
        EXPECT_TRUE(*back == range) << text;
      }
    }
  }
}

TEST(quantile, ends_at_three_sigma_and_at_the_ends_of_a_range) {
  Normal const normal{100, 1.96};
  EXPECT_DOUBLE_EQ(quantile(normal, 0), 97);
  EXPECT_DOUBLE_EQ(quantile(normal, 1), 103);
  EXPECT_EQ(quantile(normal, 0.5), 100);
  EXPECT_EQ(lowest(Triangular{1, 2, 5}), 1);
  EXPECT_EQ(highest(Triangular{1, 2, 5}), 5);
  EXPECT_EQ(highest(Even{0.1, 0.7}), 0.7);
  EXPECT_EQ(middle(Even{1, 3}), 2);
  EXPECT_EQ(quantile(Fixed{4}, 0.3), 4);
  EXPECT_TRUE(is_fixed(Fixed{4}));
  EXPECT_FALSE(is_fixed(Even{1, 3}));
}

TEST(quantile, of_the_cut_normal_leaves_the_right_part_below) {
  // The distribution function of the cut normal from the C library's erf.
  double const within = std::erf(3 / std::sqrt(2.0));
  for (double u : {0.0005, 0.01, 0.1, 0.3, 0.5, 0.77, 0.95, 0.999, 0.99999}) {
    double const deviate = quantile(Normal{0, 1.96}, u);
    double const below = 0.5 + std::erf(deviate / std::sqrt(2.0)) / (2 * within);
    EXPECT_NEAR(below, u, 1e-14);
  }
}

TEST(quantile, of_the_triangular_leaves_the_right_part_below) {
  // Area of the triangle left of x: (x - low)² / ((high - low) (mode - low)), and its mirror image.
  EXPECT_DOUBLE_EQ(quantile(Triangular{0, 4, 10}, 0.1), 2);
  EXPECT_DOUBLE_EQ(quantile(Triangular{0, 4, 10}, 0.4), 4);
  EXPECT_DOUBLE_EQ(quantile(Triangular{0, 4, 10}, 0.85), 7);
  EXPECT_DOUBLE_EQ(quantile(Triangular{0, 0, 10}, 0.75), 5);
  EXPECT_DOUBLE_EQ(quantile(Triangular{0, 10, 10}, 0.25), 5);
}

}  // namespace
}  // namespace wellproof
