#include "fit/most_likely.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <cstddef>

namespace wellproof {
namespace {

using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;

constexpr int most_rounds = 25;
constexpr double enough = 2e-3;  // of the cost: less than a twentieth of a standard deviation

Vector vector_of(std::vector<double> const& from) {
  return Eigen::Map<Vector const>(from.data(), static_cast<Eigen::Index>(from.size()));
}

std::vector<double> plain(Vector const& from) {
  return {from.data(), from.data() + from.size()};
}

Matrix matrix_of(std::vector<std::vector<double>> const& rows, Eigen::Index columns) {
  Matrix matrix(static_cast<Eigen::Index>(rows.size()), columns);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    matrix.row(static_cast<Eigen::Index>(i)) = vector_of(rows[i]).transpose();
  }
  return matrix;
}

}  // namespace

MostLikely most_likely(ReadingModel const& model, std::vector<double> const& start, std::vector<bool> const& counted,
                       double limit) {
  auto const unknowns = static_cast<Eigen::Index>(start.size());
  Vector weight(static_cast<Eigen::Index>(counted.size()));
  for (std::size_t i = 0; i < counted.size(); ++i) {
    weight[static_cast<Eigen::Index>(i)] = counted[i] ? 1 : 0;
  }
  auto const cost_of = [&](std::vector<double> const& residuals, Vector const& at) {
    return vector_of(residuals).cwiseProduct(weight).squaredNorm() + at.squaredNorm();
  };

  MostLikely best;
  Vector at = vector_of(start);
  best.residuals = model.residuals(start);
  best.cost = cost_of(best.residuals, at);
  double damping = 1e-4;
  // The Jacobian costs a plant for each unknown. Between two of them a step itself tells how it has changed along the
  // step (broyden_1965); the last one is always computed.
  Matrix jacobian;
  Matrix computed;
  bool fresh = false;
  bool rough = !model.rough_jacobian.empty();
  if (rough) {
    jacobian = matrix_of(model.rough_jacobian, unknowns);
  }
  for (int round = 0; round < most_rounds && !best.converged; ++round) {
    if (!rough) {
      best.jacobian = model.jacobian(plain(at), best.residuals);
      computed = matrix_of(best.jacobian, unknowns);
      jacobian = computed;
      fresh = true;
    }
    rough = false;
    double gained = 0;
    do {
      Matrix const weighed = weight.asDiagonal() * jacobian;
      Matrix const normal = weighed.transpose() * weighed + Matrix::Identity(unknowns, unknowns);
      Vector const slope = weighed.transpose() * vector_of(best.residuals) + at;
      gained = 0;
      int const most_tries = fresh ? 12 : 2;
      for (int tries = 0; tries < most_tries && gained <= 0; ++tries) {
        Matrix damped = normal;
        damped.diagonal() *= 1 + damping;
        Vector const next = (at - damped.ldlt().solve(slope)).cwiseMax(-limit).cwiseMin(limit);
        auto const residuals = model.residuals(plain(next));
        double const cost = cost_of(residuals, next);
        if (cost < best.cost) {
          gained = best.cost - cost;
          Vector const moved = next - at;
          Vector const missed = vector_of(residuals) - vector_of(best.residuals) - jacobian * moved;
          jacobian += missed * moved.transpose() / std::max(moved.squaredNorm(), 1e-300);
          best.cost = cost;
          best.residuals = residuals;
          at = next;
          damping = std::max(damping * 0.1, 1e-9);
        } else {
          damping *= 10;
        }
      }
      best.converged = fresh && gained < enough * (1 + 0.01 * best.cost);
      fresh = false;
    } while (gained > enough * (1 + 0.01 * best.cost));
    damping = std::min(damping, 1.0);
  }
  Matrix const weighed = weight.asDiagonal() * computed;
  Matrix const normal = weighed.transpose() * weighed + Matrix::Identity(unknowns, unknowns);
  best.at = plain(at);
  Matrix const covariance = normal.ldlt().solve(Matrix::Identity(unknowns, unknowns));
  for (Eigen::Index i = 0; i < unknowns; ++i) {
    best.covariance.push_back(plain(covariance.row(i).transpose()));
  }
  for (Eigen::Index i = 0; i < computed.rows(); ++i) {
    best.leverage.push_back(computed.row(i) * covariance * computed.row(i).transpose());
  }
  return best;
}

double cost_within_reach(MostLikely const& found, std::vector<double> const& residuals,
                         std::vector<bool> const& counted, std::vector<bool> const& free_unknown) {
  auto const unknowns = static_cast<Eigen::Index>(found.at.size());
  Matrix jacobian = matrix_of(found.jacobian, unknowns);
  Vector there = vector_of(residuals);
  Vector at = vector_of(found.at);
  for (std::size_t i = 0; i < counted.size(); ++i) {
    if (!counted[i]) {
      jacobian.row(static_cast<Eigen::Index>(i)).setZero();
      there[static_cast<Eigen::Index>(i)] = 0;
    }
  }
  for (std::size_t i = 0; i < free_unknown.size(); ++i) {
    if (!free_unknown[i]) {
      jacobian.col(static_cast<Eigen::Index>(i)).setZero();
      at[static_cast<Eigen::Index>(i)] = 0;
    }
  }
  Matrix const normal = jacobian.transpose() * jacobian + Matrix::Identity(unknowns, unknowns);
  Vector const move = -normal.ldlt().solve(jacobian.transpose() * there + at);
  return (there + jacobian * move).squaredNorm() + (at + move).squaredNorm();
}

}  // namespace wellproof
