#pragma once
// The parameters under which a law comes nearest to readings, and how well the readings hold them.
#include <functional>
#include <vector>

namespace wellproof {

/// Residuals of the law at these parameters: always as many, each a finite number.
using Residuals = std::function<std::vector<double>(std::vector<double> const& parameters)>;

/// parameters     where the sum of squares is least
/// standard_error of each, from the Jacobian and the scatter left; infinite where the readings do not hold it
/// freedom        readings less parameters
struct LeastSquares {
  std::vector<double> parameters;
  std::vector<double> standard_error;
  std::vector<double> residuals;
  double sum_of_squares = 0;
  int freedom = 0;
};

/// From one start; MINPACK's Levenberg-Marquardt by central differences.
/// @param start not empty (require)
/// Source:  marquardt_1963, more_1978
/// Checked: tests/unit/fit/least_squares_test.cc
LeastSquares least_squares(Residuals const& residuals, std::vector<double> const& start);

/// Half the width of a 95 % interval in standard errors.
/// @param freedom > 0 (require)
/// Source:  student_1908
/// Checked: tests/unit/fit/least_squares_test.cc
/// Example: student_t_95(10) == 2.228139 within 1e-6
double student_t_95(int freedom);

struct Factors {
  double low = 0;
  double high = 0;
};

/// The 95 % interval of a scatter found with so much freedom, as factors of it.
/// @param freedom > 0 (require)
/// Checked: tests/unit/fit/least_squares_test.cc
Factors scatter_factors_95(int freedom);

/// Correlation of each residual with the next, over runs of them that follow each other in time.
/// @return [-] -1 to 1; 0 for fewer than four
double autocorrelation(std::vector<double> const& residuals);

}  // namespace wellproof
