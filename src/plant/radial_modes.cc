#include "plant/radial_modes.h"

#include <algorithm>
#include <cmath>

#include <Eigen/Dense>

#include "contract/require.h"

namespace wellproof {
namespace {

using Matrix = Eigen::MatrixXd;
constexpr std::size_t nodes_of_ring = RadialModes::degree + 1;
constexpr std::size_t gauss_points = 12;  // exact for the polynomials; e^{2x} over one ring to rounding

// The ends and the extremes of the Legendre polynomial of degree 5: ±1, ±√(1/3 ± 2√7/21) (Gauss–Lobatto).
std::array<double, nodes_of_ring> lobatto() {
  double const outer = std::sqrt(1.0 / 3 + 2 * std::sqrt(7.0) / 21);
  double const inner = std::sqrt(1.0 / 3 - 2 * std::sqrt(7.0) / 21);
  return {-1, -outer, -inner, inner, outer, 1};
}

struct GaussPoint {
  double place;
  double weight;
};

/// Gauss–Legendre points on [-1, 1]: Newton on the Legendre polynomial by its recurrence.
std::array<GaussPoint, gauss_points> gauss() {
  std::array<GaussPoint, gauss_points> out{};
  auto const n = static_cast<double>(gauss_points);
  for (std::size_t i = 0; i < gauss_points; ++i) {
    double x = std::cos(3.14159265358979323846 * (static_cast<double>(i) + 0.75) / (n + 0.5));
    double slope = 0;
    for (int round = 0; round < 20; ++round) {
      double before = 1;
      double value = x;
      for (std::size_t k = 2; k <= gauss_points; ++k) {
        auto const degree = static_cast<double>(k);
        double const next = ((2 * degree - 1) * x * value - (degree - 1) * before) / degree;
        before = value;
        value = next;
      }
      slope = n * (x * value - before) / (x * x - 1);
      x -= value / slope;
    }
    out[i] = {x, 2 / ((1 - x * x) * slope * slope)};
  }
  return out;
}

/// Lagrange's polynomials through the ring's nodes, and their slopes, at a place in [-1, 1].
std::array<double, nodes_of_ring> shape(double place) {
  auto const node = lobatto();
  std::array<double, nodes_of_ring> out{};
  for (std::size_t k = 0; k < nodes_of_ring; ++k) {
    out[k] = 1;
    for (std::size_t j = 0; j < nodes_of_ring; ++j) {
      out[k] *= j == k ? 1 : (place - node[j]) / (node[k] - node[j]);
    }
  }
  return out;
}

std::array<double, nodes_of_ring> shape_slope(double place) {
  auto const node = lobatto();
  std::array<double, nodes_of_ring> out{};
  for (std::size_t k = 0; k < nodes_of_ring; ++k) {
    for (std::size_t i = 0; i < nodes_of_ring; ++i) {
      if (i == k) {
        continue;
      }
      double term = 1 / (node[k] - node[i]);
      for (std::size_t j = 0; j < nodes_of_ring; ++j) {
        term *= j == k || j == i ? 1 : (place - node[j]) / (node[k] - node[j]);
      }
      out[k] += term;
    }
  }
  return out;
}

// With the storage matrix M = L·Lᵀ and the flow matrix A = Gᵀ·G the decays are the squared singular values of G·L⁻ᵀ.
// They span eighteen powers of ten; taken from the factors by Jacobi's rotations the small ones keep their digits
// (demmel_veselic_1992), which an eigenvalue solver on L⁻¹·A·L⁻ᵀ would lose.
RadialModes worked_out() {
  constexpr auto count = static_cast<Eigen::Index>(RadialModes::count);
  constexpr double width = RadialModes::log_span / RadialModes::rings;
  auto const points = gauss();
  Matrix storage = Matrix::Zero(count, count);
  Matrix gradient = Matrix::Zero(static_cast<Eigen::Index>(RadialModes::rings * gauss_points), count);
  for (std::size_t ring = 0; ring < RadialModes::rings; ++ring) {
    auto const first = static_cast<Eigen::Index>(ring * RadialModes::degree);
    for (std::size_t g = 0; g < gauss_points; ++g) {
      auto const value = shape(points[g].place);
      auto const slope = shape_slope(points[g].place);
      double const x = width * (static_cast<double>(ring) + 0.5 * (points[g].place + 1));
      double const weight = points[g].weight * width / 2;
      auto const row = static_cast<Eigen::Index>(ring * gauss_points + g);
      for (std::size_t i = 0; i < nodes_of_ring; ++i) {
        auto const at = first + static_cast<Eigen::Index>(i);
        gradient(row, at) = std::sqrt(weight) * slope[i] * 2 / width;
        for (std::size_t j = 0; j < nodes_of_ring; ++j) {
          storage(at, first + static_cast<Eigen::Index>(j)) += weight * std::exp(2 * x) * value[i] * value[j];
        }
      }
    }
  }
  Matrix const lower = storage.llt().matrixL();
  Matrix const factor = lower.triangularView<Eigen::Lower>().solve(gradient.transpose()).transpose();
  Eigen::JacobiSVD<Matrix, Eigen::ColPivHouseholderQRPreconditioner> const split(factor, Eigen::ComputeThinV);
  Matrix const shapes = lower.transpose().triangularView<Eigen::Upper>().solve(split.matrixV());

  RadialModes modes;
  for (std::size_t mode = 0; mode < RadialModes::count; ++mode) {
    // Singular values come largest first.
    auto const from = count - 1 - static_cast<Eigen::Index>(mode);
    double const value = split.singularValues()(from);
    double const sign = shapes(0, from) < 0 ? -1 : 1;
    modes.decay[mode] = mode == 0 ? 0 : value * value;
    for (std::size_t node = 0; node < RadialModes::count; ++node) {
      modes.shapes[mode][node] = sign * shapes(static_cast<Eigen::Index>(node), from);
    }
    modes.at_well[mode] = modes.shapes[mode][0];
  }
  return modes;
}

}  // namespace

RadialModes::Values RadialModes::at(double log_radius) const {
  require(log_radius >= 0 && log_radius <= log_span, "the modes end at their border");
  constexpr double width = log_span / rings;
  auto const ring = std::min(static_cast<std::size_t>(log_radius / width), rings - 1);
  auto const part = shape(2 * (log_radius / width - static_cast<double>(ring)) - 1);
  Values out{};
  for (std::size_t mode = 0; mode < count; ++mode) {
    for (std::size_t i = 0; i < nodes_of_ring; ++i) {
      out[mode] += part[i] * shapes[mode][ring * degree + i];
    }
  }
  return out;
}

RadialModes const& radial_modes() {
  static RadialModes const modes = worked_out();
  return modes;
}

}  // namespace wellproof
