// The curve through points: what it must keep of them.
#include "plant/curve.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "contract/require.h"

namespace wellproof {
namespace {

std::vector<double> const uneven_x{0, 1, 1.5, 4, 5};
std::vector<double> const falling_y{10, 9.5, 7, 6.9, 0};

TEST(MonotoneCurve, passes_through_its_points) {
  MonotoneCurve const curve(uneven_x, falling_y);
  for (std::size_t i = 0; i < uneven_x.size(); ++i) {
    EXPECT_NEAR(curve.at(uneven_x[i]).value, falling_y[i], 1e-12) << "at " << uneven_x[i];
  }
}

TEST(MonotoneCurve, falls_everywhere_between_falling_points) {
  MonotoneCurve const curve(uneven_x, falling_y);
  double before = curve.at(0).value;
  for (int i = 1; i <= 1000; ++i) {
    double const here = curve.at(i * 0.005).value;
    EXPECT_LE(here, before + 1e-12) << "at " << i * 0.005;
    before = here;
  }
}

TEST(MonotoneCurve, stays_flat_between_equal_points) {
  MonotoneCurve const curve({0, 1, 2, 3}, {1, 1, 5, 5});
  EXPECT_DOUBLE_EQ(curve.at(0.5).value, 1);
  EXPECT_DOUBLE_EQ(curve.at(2.5).value, 5);
}

TEST(MonotoneCurve, never_overshoots_a_peak) {
  MonotoneCurve const curve({0, 1, 2, 3, 4}, {0, 1, 4, 1, 0});
  for (int i = 0; i <= 400; ++i) {
    EXPECT_LE(curve.at(i * 0.01).value, 4 + 1e-12);
    EXPECT_GE(curve.at(i * 0.01).value, -1e-12);
  }
}

TEST(MonotoneCurve, finds_the_same_piece_with_and_without_a_search) {
  std::vector<double> const y{0, 1, 4, 9, 16, 25};
  MonotoneCurve const even({0, 1, 2, 3, 4, 5}, y);
  // One point shifted by a hair makes the grid uneven.
  MonotoneCurve const uneven({0, 1, 2, 3 + 1e-7, 4, 5}, y);
  for (int i = -10; i <= 70; ++i) {
    EXPECT_NEAR(even.at(i * 0.1).value, uneven.at(i * 0.1).value, 1e-5) << "at " << i * 0.1;
  }
}

TEST(MonotoneCurve, goes_on_straight_beyond_its_ends) {
  MonotoneCurve const curve(uneven_x, falling_y);
  auto const first = curve.at(0);
  auto const last = curve.at(5);
  EXPECT_NEAR(curve.at(-2).value, first.value - 2 * first.slope, 1e-12);
  EXPECT_NEAR(curve.at(8).value, last.value + 3 * last.slope, 1e-12);
  EXPECT_DOUBLE_EQ(curve.at(8).slope, last.slope);
}

TEST(MonotoneCurve, has_the_slope_of_its_own_values) {
  MonotoneCurve const curve(uneven_x, falling_y);
  for (double const x : {-0.5, 0.3, 1.2, 2.7, 4.4, 5.5}) {
    double const step = 1e-6;
    EXPECT_NEAR(curve.at(x).slope, (curve.at(x + step).value - curve.at(x - step).value) / (2 * step), 1e-7);
  }
}

TEST(MonotoneCurve, is_a_straight_line_through_two_points) {
  MonotoneCurve const curve({1, 3}, {2, 8});
  EXPECT_NEAR(curve.at(2).value, 5, 1e-12);
  EXPECT_NEAR(curve.at(0).value, -1, 1e-12);
}

TEST(MonotoneCurve, leaves_its_ends_with_the_slope_of_a_parabola) {
  // (x + 1)² at uneven points
  MonotoneCurve const curve({0, 1, 3}, {1, 4, 16});
  EXPECT_NEAR(curve.at(0).slope, 2, 1e-12);
  EXPECT_NEAR(curve.at(1).slope, 4, 1e-12);
  EXPECT_NEAR(curve.at(3).slope, 8, 1e-12);
}

TEST(MonotoneCurve, given_exact_slopes_of_a_cubic_is_that_cubic) {
  std::vector<double> x;
  std::vector<double> y;
  std::vector<double> slope;
  for (int i = 0; i <= 4; ++i) {
    x.push_back(i);
    y.push_back(i * i * i + i);
    slope.push_back(3 * i * i + 1);
  }
  MonotoneCurve const curve(x, y, slope);
  EXPECT_NEAR(curve.at(2.5).value, 2.5 * 2.5 * 2.5 + 2.5, 1e-12);
}

TEST(MonotoneCurve, refuses_points_that_make_no_curve) {
  EXPECT_THROW(MonotoneCurve({1}, {1}), ContractBroken);
  EXPECT_THROW(MonotoneCurve({1, 1}, {1, 2}), ContractBroken);
  EXPECT_THROW(MonotoneCurve({1, 2}, {1}), ContractBroken);
}

}  // namespace
}  // namespace wellproof
