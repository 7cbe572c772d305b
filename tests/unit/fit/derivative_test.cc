#include "fit/derivative.h"

#include <cmath>

#include <gtest/gtest.h>

namespace wellproof {
namespace {

TEST(log_derivative, of_a_straight_line_over_the_logarithm_is_its_slope) {
  std::vector<double> times_s;
  std::vector<double> values_m;
  for (int i = 0; i < 20; ++i) {
    times_s.push_back(std::exp(0.37 * i));
    values_m.push_back(0.1 + 0.42 * 0.37 * i);
  }
  auto const slopes = log_derivative(times_s, values_m, 0.2);
  ASSERT_EQ(slopes.size(), 18U);
  for (auto const& slope : slopes) {
    EXPECT_NEAR(slope.slope_m, 0.42, 1e-12);
  }
}

TEST(log_derivative, of_a_parabola_over_the_logarithm_is_exact) {
  // Bourdet's weights make a second-degree course exact at uneven steps as well.
  std::vector<double> const x{0, 0.3, 0.9, 1.0, 1.7, 2.9};
  std::vector<double> times_s;
  std::vector<double> values_m;
  for (double const at : x) {
    times_s.push_back(std::exp(at));
    values_m.push_back(at * at);
  }
  for (auto const& slope : log_derivative(times_s, values_m, 0)) {
    EXPECT_NEAR(slope.slope_m, 2 * std::log(slope.time_s), 1e-12);
  }
}

TEST(log_derivative, takes_readings_at_one_time_without_dividing_by_nothing) {
  for (auto const& slope : log_derivative({1, 1, 1, 2, 2, 3}, {0, 1, 2, 3, 4, 5}, 0.1)) {
    EXPECT_TRUE(std::isfinite(slope.slope_m));
  }
}

TEST(responses, of_all_steps_lie_on_one_curve) {
  PumpingTest test;
  test.rates = {{0, 0.005}, {3600, 0.008}, {7200, 0}};
  test.records = {{"a.csv", 20, false, {}}};
  PumpedWell const planted{2e-3, 3e-4, 0, 0, 0, 0};
  for (int i = 1; i <= 60; ++i) {
    double const time_s = 180.0 * i;
    test.records[0].readings.push_back({time_s, modelled_m(test.rates, planted, test.records[0], time_s)});
  }
  auto const fit = fit_pumping_test(test);
  auto const stages = responses(fit, fit.records[0]);
  ASSERT_EQ(stages.size(), 3U);
  for (auto const& stage : stages) {
    for (auto const& point : stage.points) {
      EXPECT_NEAR(point.response_m, theis_drawdown_m(0.005, 2e-3, 3e-4, 20, point.time_s), 1e-5);
    }
  }
}

}  // namespace
}  // namespace wellproof
