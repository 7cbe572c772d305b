#pragma once
// The point at which readings and prior together are likeliest, and how well both hold it there: least squares in which
// every unknown is, before the readings, normal about 0 with standard deviation 1.
#include <functional>
#include <vector>

namespace wellproof {

/// A model of readings. Its residuals are in standard deviations of each reading.
/// residuals  at a point
/// jacobian   d(residual i)/d(unknown k) at a point whose residuals are given, as rows[i][k]
/// rough_jacobian  about that at the start, to save one; may be empty
struct ReadingModel {
  std::function<std::vector<double>(std::vector<double> const& at)> residuals;
  std::function<std::vector<std::vector<double>>(std::vector<double> const& at, std::vector<double> const& there)>
      jacobian;
  std::vector<std::vector<double>> rough_jacobian{};
};

/// at         the likeliest point
/// covariance of the unknowns there, from the Jacobian and the prior (Laplace's approximation), as rows
/// leverage   of each residual: the share of its value that it sets itself, 0 to 1
/// cost       sum of squares of residuals and unknowns
struct MostLikely {
  std::vector<double> at;
  std::vector<double> residuals;
  std::vector<std::vector<double>> jacobian;
  std::vector<std::vector<double>> covariance;
  std::vector<double> leverage;
  double cost = 0;
  bool converged = false;
};

/// Levenberg–Marquardt from a start, unknowns kept within ± limit.
/// @param counted which residuals count; the others are worked out but not fitted
/// @param limit   [-] > 0
/// Source:  marquardt_1963, broyden_1965
/// Checked: tests/unit/fit/most_likely_test.cc (a straight line against its solution in closed form)
MostLikely most_likely(ReadingModel const& model, std::vector<double> const& start, std::vector<bool> const& counted,
                       double limit);

/// The cost that could be reached if these residuals stood at the point in place of its own and the model were a plane
/// there.
/// @param free_unknown which unknowns may move; the others stay and cost nothing
double cost_within_reach(MostLikely const& found, std::vector<double> const& residuals,
                         std::vector<bool> const& counted, std::vector<bool> const& free_unknown);

}  // namespace wellproof
