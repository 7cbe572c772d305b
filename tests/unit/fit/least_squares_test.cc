#include "fit/least_squares.h"

#include <cmath>

#include <gtest/gtest.h>

namespace wellproof {
namespace {

// NIST Statistical Reference Datasets, Misra1a: y = b1·(1 − exp(−b2·x)), 14 readings.
struct Pair {
  double y;
  double x;
};
constexpr Pair misra[] = {{10.07, 77.6},  {14.73, 114.9}, {17.94, 141.1}, {23.93, 190.8}, {29.61, 239.9},
                          {35.18, 289.0}, {40.02, 332.8}, {44.82, 378.4}, {50.76, 434.8}, {55.05, 477.3},
                          {61.01, 536.8}, {66.40, 593.1}, {75.47, 689.1}, {81.78, 760.0}};

TEST(least_squares, finds_the_certified_values_of_misra) {
  auto const fit = least_squares(
      [](std::vector<double> const& logs) {
        std::vector<double> out;
        for (Pair const& each : misra) {
          out.push_back(std::exp(logs[0]) * (1 - std::exp(-std::exp(logs[1]) * each.x)) - each.y);
        }
        return out;
      },
      {std::log(250.0), std::log(5e-4)});
  // Certified: b1 238.94212918 ± 2.7070075241, b2 5.5015643181e-4 ± 7.2668688436e-6, sum of squares 0.12455138894.
  EXPECT_NEAR(std::exp(fit.parameters[0]), 238.94212918, 2e-3);
  EXPECT_NEAR(std::exp(fit.parameters[1]), 5.5015643181e-4, 1e-8);
  EXPECT_NEAR(fit.sum_of_squares, 0.12455138894, 1e-7);
  EXPECT_EQ(fit.freedom, 12);
  // The errors of the logarithms are the relative ones.
  EXPECT_NEAR(fit.standard_error[0], 2.7070075241 / 238.94212918, 1e-5);
  EXPECT_NEAR(fit.standard_error[1], 7.2668688436e-6 / 5.5015643181e-4, 1e-5);
}

TEST(least_squares, says_so_where_the_readings_do_not_hold_a_parameter) {
  auto const fit = least_squares(
      [](std::vector<double> const& at) {
        return std::vector<double>{at[0] + at[1] - 1, at[0] + at[1] - 1.1, at[0] + at[1] - 0.9};
      },
      {0.3, 0.3});
  EXPECT_TRUE(std::isinf(fit.standard_error[0]));
  EXPECT_TRUE(std::isinf(fit.standard_error[1]));
}

TEST(student_t, agrees_with_printed_tables) {
  // Any table of Student's t, two-sided 5 %.
  EXPECT_NEAR(student_t_95(1), 12.706, 5e-4);
  EXPECT_NEAR(student_t_95(5), 2.571, 5e-4);
  EXPECT_NEAR(student_t_95(30), 2.042, 5e-4);
}

TEST(scatter_factors, agree_with_printed_tables) {
  // Chi-squared with 10 degrees of freedom: 3.247 and 20.483.
  auto const factors = scatter_factors_95(10);
  EXPECT_NEAR(factors.low, std::sqrt(10 / 20.483), 1e-4);
  EXPECT_NEAR(factors.high, std::sqrt(10 / 3.247), 1e-4);
}

TEST(autocorrelation, tells_a_trend_from_alternation) {
  EXPECT_GT(autocorrelation({1, 1, 1, 1, -1, -1, -1, -1}), 0.6);
  EXPECT_LT(autocorrelation({1, -1, 1, -1, 1, -1}), -0.6);
  EXPECT_EQ(autocorrelation({1, -1}), 0);
}

}  // namespace
}  // namespace wellproof
