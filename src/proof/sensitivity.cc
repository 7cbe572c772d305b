#include "proof/sensitivity.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include <Eigen/Dense>

#include "contract/require.h"
#include "site/draw.h"

namespace wellproof {
namespace {

constexpr std::size_t most_degree = 4;
constexpr std::size_t runs_a_degree = 16;  // fewer runs for each coefficient and the curve follows chance
constexpr double sigmas = 3;               // of the share that chance alone explains
constexpr int points_averaged = 9;

std::size_t degree_for(std::size_t runs) {
  return std::clamp<std::size_t>(runs / runs_a_degree, 1, most_degree);
}

/// Legendre polynomials of 2x − 1.
std::array<double, most_degree + 1> legendre(double coordinate) {
  double const t = 2 * coordinate - 1;
  std::array<double, most_degree + 1> p{1, t};
  for (std::size_t n = 1; n < most_degree; ++n) {
    auto const k = static_cast<double>(n);
    p[n + 1] = ((2 * k + 1) * t * p[n] - k * p[n - 1]) / (k + 1);
  }
  return p;
}

double mean_of(std::vector<double> const& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

}  // namespace

SobolIndices sobol_indices(UnitModel const& model, std::size_t unknowns, std::uint32_t base, std::uint64_t seed) {
  require(unknowns > 0 && base > 0, "indices are of some unknowns and some runs");
  SobolIndices indices{std::vector<double>(unknowns), std::vector<double>(unknowns), 0};
  std::vector<double> f_a;
  std::vector<double> f_b;
  std::vector<std::vector<double>> rows;
  for (std::uint32_t k = 0; k < base; ++k) {
    rows.push_back(sequence_point(seed, k + 1, 2 * unknowns));  // 0 is the middle of everything, not of the sequence
    std::span<double const> const row(rows.back());
    f_a.push_back(model(row.first(unknowns)));
    f_b.push_back(model(row.last(unknowns)));
  }
  double const mean = 0.5 * (mean_of(f_a) + mean_of(f_b));
  for (std::uint32_t k = 0; k < base; ++k) {
    indices.variance += ((f_a[k] - mean) * (f_a[k] - mean) + (f_b[k] - mean) * (f_b[k] - mean)) / (2.0 * base);
  }
  if (indices.variance <= 0) {
    return indices;
  }
  for (std::size_t i = 0; i < unknowns; ++i) {
    double first = 0;
    double total = 0;
    for (std::uint32_t k = 0; k < base; ++k) {
      std::vector<double> mixed(rows[k].begin(), rows[k].begin() + static_cast<std::ptrdiff_t>(unknowns));
      mixed[i] = rows[k][unknowns + i];
      double const f_mixed = model(mixed);
      first += (f_b[k] - mean) * (f_mixed - f_a[k]);
      total += (f_a[k] - f_mixed) * (f_a[k] - f_mixed);
    }
    indices.first[i] = first / base / indices.variance;
    indices.total[i] = total / (2.0 * base) / indices.variance;
  }
  return indices;
}

double Trend::at(double coordinate) const {
  auto const p = legendre(coordinate);
  double value = 0;
  for (std::size_t n = 0; n < coefficients.size(); ++n) {
    value += coefficients[n] * p[n];
  }
  return value;
}

double Trend::near(double coordinate, double width) const {
  double const low = std::max(coordinate - 0.5 * width, 0.0);
  double const high = std::min(coordinate + 0.5 * width, 1.0);
  double sum = 0;
  for (int i = 0; i < points_averaged; ++i) {
    sum += at(low + (high - low) * (i + 0.5) / points_averaged);
  }
  return sum / points_averaged;
}

Trend trend(std::vector<double> const& coordinates, std::vector<double> const& values) {
  require(coordinates.size() == values.size() && values.size() > 2, "a trend is of some runs");
  auto const runs = static_cast<Eigen::Index>(values.size());
  auto const terms = static_cast<Eigen::Index>(degree_for(values.size()) + 1);
  Eigen::MatrixXd basis(runs, terms);
  Eigen::VectorXd results(runs);
  for (Eigen::Index k = 0; k < runs; ++k) {
    auto const p = legendre(coordinates[static_cast<std::size_t>(k)]);
    for (Eigen::Index n = 0; n < terms; ++n) {
      basis(k, n) = p[static_cast<std::size_t>(n)];
    }
    results(k) = values[static_cast<std::size_t>(k)];
  }
  Eigen::VectorXd const fitted = basis.colPivHouseholderQr().solve(results);
  Trend found{std::vector<double>(fitted.data(), fitted.data() + terms), 0};
  double const spread = (results.array() - results.mean()).square().sum();
  double const rounding = 1e-24 * results.squaredNorm();  // what a result that does not move seems to move
  double const left = (results - basis * fitted).squaredNorm();
  if (spread > rounding && runs > terms) {
    found.share = 1 - left / spread * static_cast<double>(runs - 1) / static_cast<double>(runs - terms);
  }
  return found;
}

std::vector<Leading> leading_unknowns(std::vector<std::vector<double>> const& coordinates,
                                      std::vector<double> const& values) {
  double const mean = mean_of(values);
  auto const spread_of = [mean](std::vector<double> const& of) {
    double spread = 0;
    for (double const value : of) {
      spread += (value - mean) * (value - mean);
    }
    return spread;
  };
  double const whole = spread_of(values);
  std::vector<Leading> found;
  std::vector<char> taken(coordinates.size(), 0);
  auto left = values;
  while (found.size() < coordinates.size()) {
    double const left_share = whole > 0 ? spread_of(left) / whole : 0;
    Leading best;
    for (std::size_t i = 0; i < coordinates.size(); ++i) {
      if (taken[i] != 0) {
        continue;
      }
      auto one = trend(coordinates[i], left);
      one.share *= left_share;
      if (one.share > best.trend.share) {
        best = {i, std::move(one)};
      }
    }
    if (best.trend.share < chance_share(values.size())) {
      break;
    }
    taken[best.unknown] = 1;
    for (std::size_t k = 0; k < left.size(); ++k) {
      left[k] += mean - best.trend.at(coordinates[best.unknown][k]);
    }
    found.push_back(std::move(best));
  }
  return found;
}

double chance_share(std::size_t runs) {
  // R² of unrelated data is about χ² with `degree` degrees of freedom over the runs.
  return sigmas * std::sqrt(2.0 * static_cast<double>(degree_for(runs))) / static_cast<double>(runs);
}

double lower_quantile(std::vector<double> values, double share) {
  require(!values.empty(), "a quantile is of some values");
  std::sort(values.begin(), values.end());
  auto const place = static_cast<std::size_t>(std::ceil(share * static_cast<double>(values.size())));
  return values[std::clamp<std::size_t>(place, 1, values.size()) - 1];
}

double lower_bound_measured(Trend const& trend, std::vector<double> const& coordinates,
                            std::vector<double> const& values, double width, double share) {
  double const mean = mean_of(values);
  std::vector<double> remains;
  for (std::size_t k = 0; k < values.size(); ++k) {
    remains.push_back(mean + values[k] - trend.near(coordinates[k], width));
  }
  return lower_quantile(std::move(remains), share);
}

}  // namespace wellproof
