#include "fit/most_likely.h"

#include <cmath>

#include <gtest/gtest.h>

namespace wellproof {
namespace {

/// Readings y of a + b·x, each with error 1; a and b normal about 0 with standard deviation 1.
struct Line {
  std::vector<double> x;
  std::vector<double> y;

  ReadingModel model() const {
    ReadingModel made;
    made.residuals = [this](std::vector<double> const& at) {
      std::vector<double> out;
      for (std::size_t i = 0; i < x.size(); ++i) {
        out.push_back(at[0] + at[1] * x[i] - y[i]);
      }
      return out;
    };
    made.jacobian = [this](std::vector<double> const&, std::vector<double> const&) {
      std::vector<std::vector<double>> rows;
      for (double const each : x) {
        rows.push_back({1, each});
      }
      return rows;
    };
    return made;
  }
};

// The normal equations of Bayesian linear regression, (XᵀX + I)·β = Xᵀy, by hand: X = rows (1, x) of x = 0, 1, 2 and
// y = 1, 2, 4 give [[4, 3], [3, 6]]·β = (7, 10), so β = (12/15, 19/15) and the covariance is the inverse matrix.
TEST(most_likely, meets_the_closed_form_of_a_line) {
  Line const line{{0, 1, 2}, {1, 2, 4}};
  auto const found = most_likely(line.model(), {0, 0}, {true, true, true}, 10);
  EXPECT_TRUE(found.converged);
  EXPECT_NEAR(found.at[0], 12.0 / 15, 1e-6);
  EXPECT_NEAR(found.at[1], 19.0 / 15, 1e-6);
  EXPECT_NEAR(found.covariance[0][0], 6.0 / 15, 1e-9);
  EXPECT_NEAR(found.covariance[0][1], -3.0 / 15, 1e-9);
  EXPECT_NEAR(found.covariance[1][1], 4.0 / 15, 1e-9);
  // Leverage of x = 2: (1, 2)·C·(1, 2)ᵀ = (6 − 12 + 16)/15.
  EXPECT_NEAR(found.leverage[2], 10.0 / 15, 1e-9);
}

TEST(most_likely, leaves_out_what_does_not_count_and_still_works_it_out) {
  Line const line{{0, 1, 2, 5}, {1, 2, 4, 100}};
  auto const found = most_likely(line.model(), {0, 0}, {true, true, true, false}, 10);
  EXPECT_NEAR(found.at[1], 19.0 / 15, 1e-6);
  EXPECT_NEAR(found.residuals[3], 12.0 / 15 + 19.0 / 3 - 100, 1e-5);
}

TEST(most_likely, stays_within_the_limit) {
  Line const line{{0}, {100}};
  auto const found = most_likely(line.model(), {0, 0}, {true}, 3);
  EXPECT_DOUBLE_EQ(found.at[0], 3);
}

TEST(most_likely, follows_a_curve_from_a_wrong_first_jacobian) {
  // y = exp(a) read as e with an error of 0.001: a = 1 within that, whatever the start's slope was taken to be.
  ReadingModel model;
  model.residuals = [](std::vector<double> const& at) {
    return std::vector<double>{(std::exp(at[0]) - std::exp(1.0)) / 0.001};
  };
  model.jacobian = [](std::vector<double> const& at, std::vector<double> const&) {
    return std::vector<std::vector<double>>{{std::exp(at[0]) / 0.001}};
  };
  model.rough_jacobian = {{300}};
  auto const found = most_likely(model, {0}, {true}, 5);
  EXPECT_TRUE(found.converged);
  EXPECT_NEAR(found.at[0], 1, 1e-4);
}

}  // namespace
}  // namespace wellproof
