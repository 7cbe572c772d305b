#include "fit/least_squares.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <unsupported/Eigen/NonLinearOptimization>

#include "contract/require.h"

namespace wellproof {
namespace {

/// The law in the form that the library asks for.
class Law {
 public:
  using Scalar = double;
  using InputType = Eigen::VectorXd;
  using ValueType = Eigen::VectorXd;
  using JacobianType = Eigen::MatrixXd;
  // The library's names. NOLINTNEXTLINE(readability-identifier-naming)
  enum { InputsAtCompileTime = Eigen::Dynamic, ValuesAtCompileTime = Eigen::Dynamic };

  Law(Residuals const& residuals, int inputs, int values) : residuals_(residuals), inputs_(inputs), values_(values) {}
  int inputs() const { return inputs_; }
  int values() const { return values_; }

  int operator()(Eigen::VectorXd const& at, Eigen::VectorXd& into) const {
    auto const found = residuals_(std::vector<double>(at.data(), at.data() + at.size()));
    into.setZero();
    std::copy_n(found.begin(), std::min<std::size_t>(found.size(), static_cast<std::size_t>(values_)), into.data());
    return 0;
  }

  int df(Eigen::VectorXd const& at, Eigen::MatrixXd& jacobian) const {
    Eigen::VectorXd up(values_);
    Eigen::VectorXd down(values_);
    for (int i = 0; i < inputs_; ++i) {
      Eigen::VectorXd moved = at;
      double const step = 1e-4 * std::max(1.0, std::abs(at[i]) * 1e-2);
      moved[i] = at[i] + step;
      (*this)(moved, up);
      moved[i] = at[i] - step;
      (*this)(moved, down);
      jacobian.col(i) = (up - down) / (2 * step);
    }
    return 0;
  }

 private:
  Residuals const& residuals_;
  int inputs_;
  int values_;
};

std::vector<double> plain(Eigen::VectorXd const& vector) {
  return {vector.data(), vector.data() + vector.size()};
}

}  // namespace

LeastSquares least_squares(Residuals const& residuals, std::vector<double> const& start) {
  require(!start.empty(), "a fit needs a parameter");
  int const inputs = static_cast<int>(start.size());
  int const values = static_cast<int>(residuals(start).size());
  Law law(residuals, inputs, std::max(values, inputs));
  Eigen::VectorXd at = Eigen::Map<Eigen::VectorXd const>(start.data(), inputs);
  Eigen::LevenbergMarquardt<Law> search(law);
  search.parameters.maxfev = 200L * (inputs + 1);
  search.parameters.xtol = 1e-9;
  search.parameters.ftol = 1e-12;
  search.parameters.factor = 1;
  search.minimize(at);

  LeastSquares fit;
  fit.parameters = plain(at);
  fit.residuals = residuals(fit.parameters);
  for (double const each : fit.residuals) {
    fit.sum_of_squares += each * each;
  }
  fit.freedom = values - inputs;

  Eigen::MatrixXd jacobian(law.values(), inputs);
  law.df(at, jacobian);
  Eigen::JacobiSVD<Eigen::MatrixXd> const parts(jacobian, Eigen::ComputeThinV);
  double const scatter = fit.freedom > 0 ? fit.sum_of_squares / fit.freedom : std::numeric_limits<double>::infinity();
  double const least = 1e-7 * std::max(parts.singularValues()[0], 1e-300);
  for (int i = 0; i < inputs; ++i) {
    double variance = 0;
    for (int k = 0; k < inputs; ++k) {
      double const share = parts.matrixV()(i, k);
      double const held = parts.singularValues()[k];
      if (held > least) {
        variance += share * share / (held * held);
      } else if (std::abs(share) > 1e-3) {
        variance = std::numeric_limits<double>::infinity();
      }
    }
    bool const exact = fit.sum_of_squares == 0 && std::isfinite(variance);
    fit.standard_error.push_back(exact ? 0 : std::sqrt(scatter * variance));
  }
  return fit;
}

double student_t_95(int freedom) {
  require(freedom > 0, "an interval needs more readings than parameters");
  return boost::math::quantile(boost::math::students_t(freedom), 0.975);
}

Factors scatter_factors_95(int freedom) {
  require(freedom > 0, "an interval needs more readings than parameters");
  boost::math::chi_squared const chi_squared(freedom);
  return {std::sqrt(freedom / boost::math::quantile(chi_squared, 0.975)),
          std::sqrt(freedom / boost::math::quantile(chi_squared, 0.025))};
}

double autocorrelation(std::vector<double> const& residuals) {
  constexpr std::size_t least = 4;
  if (residuals.size() < least) {
    return 0;
  }
  double products = 0;
  double squares = 0;
  for (std::size_t i = 0; i < residuals.size(); ++i) {
    squares += residuals[i] * residuals[i];
    products += i > 0 ? residuals[i] * residuals[i - 1] : 0;
  }
  return squares > 0 ? products / squares : 0;
}

}  // namespace wellproof
