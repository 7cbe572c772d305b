// Sobol's indices against the closed forms of the two functions that everybody uses: Ishigami's (T. Ishigami, T. Homma,
// 1990; a = 7, b = 0.1) and Sobol's g (I. M. Sobol, 1993; a = 0, 1, 4.5, 9, 99, 99, 99, 99 as in Saltelli 2010, table
// 4). The printed values stand beside the formulas: Ishigami S1 = 0.3139, S2 = 0.4424, S3 = 0, ST1 = 0.5576, ST3 =
// 0.2437.
#include "proof/sensitivity.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>
#include <numeric>

#include "site/draw.h"

namespace wellproof {
namespace {

double ishigami(std::span<double const> u) {
  auto const x = [&](std::size_t i) { return std::numbers::pi * (2 * u[i] - 1); };
  double const sine = std::sin(x(1));
  return std::sin(x(0)) * (1 + 0.1 * std::pow(x(2), 4)) + 7 * sine * sine;
}

constexpr std::array<double, 8> g_a{0, 1, 4.5, 9, 99, 99, 99, 99};

double sobol_g(std::span<double const> u) {
  double product = 1;
  for (std::size_t i = 0; i < g_a.size(); ++i) {
    product *= (std::abs(4 * u[i] - 2) + g_a[i]) / (1 + g_a[i]);
  }
  return product;
}

/// V_i = 1/3/(1 + a_i)², V = Π(1 + V_i) − 1.
struct Exact {
  std::array<double, 8> first{};
  std::array<double, 8> total{};
};
Exact exact_g() {
  std::array<double, 8> part{};
  double product = 1;
  for (std::size_t i = 0; i < part.size(); ++i) {
    part[i] = 1 / (3 * (1 + g_a[i]) * (1 + g_a[i]));
    product *= 1 + part[i];
  }
  Exact exact;
  for (std::size_t i = 0; i < part.size(); ++i) {
    exact.first[i] = part[i] / (product - 1);
    exact.total[i] = part[i] * product / (1 + part[i]) / (product - 1);
  }
  return exact;
}

TEST(SobolIndices, AreThoseOfIshigami) {
  auto const indices = sobol_indices(ishigami, 3, 4096, 1);
  EXPECT_NEAR(indices.variance, 13.8446, 0.05);
  EXPECT_NEAR(indices.first[0], 0.3139, 0.01);
  EXPECT_NEAR(indices.first[1], 0.4424, 0.01);
  EXPECT_NEAR(indices.first[2], 0, 0.01);
  EXPECT_NEAR(indices.total[0], 0.5576, 0.01);
  EXPECT_NEAR(indices.total[1], 0.4424, 0.01);
  EXPECT_NEAR(indices.total[2], 0.2437, 0.01);
}

TEST(SobolIndices, AreThoseOfSobolsG) {
  auto const indices = sobol_indices(sobol_g, 8, 4096, 1);
  auto const exact = exact_g();
  // Saltelli 2010, table 4, prints 0.716, 0.179, 0.0237, 0.0072 and 0.0001.
  EXPECT_NEAR(exact.first[0], 0.716, 5e-4);
  EXPECT_NEAR(exact.first[1], 0.179, 5e-4);
  for (std::size_t i = 0; i < 8; ++i) {
    EXPECT_NEAR(indices.first[i], exact.first[i], 0.01) << i;
    EXPECT_NEAR(indices.total[i], exact.total[i], 0.01) << i;
  }
}

std::vector<Trend> trends_of(UnitModel const& model, std::size_t unknowns, std::uint32_t runs) {
  std::vector<std::vector<double>> coordinates(unknowns);
  std::vector<double> values;
  for (std::uint32_t k = 1; k <= runs; ++k) {
    auto const point = sequence_point(1, k, unknowns);
    values.push_back(model(point));
    for (std::size_t i = 0; i < unknowns; ++i) {
      coordinates[i].push_back(point[i]);
    }
  }
  std::vector<Trend> found;
  for (auto const& each : coordinates) {
    found.push_back(trend(each, values));
  }
  return found;
}

TEST(GivenData, OfAsManyRunsAsAProofMakesRankTheUnknownsAsSobolsFirstOrderDoes) {
  auto const waves = trends_of(ishigami, 3, 128);
  // sin² over two periods has more humps than degree four follows, so that the first two come out about alike; both
  // are told, and the third, which acts only together with the first, is not.
  EXPECT_GT(waves[0].share, chance_share(128));
  EXPECT_GT(waves[1].share, chance_share(128));
  EXPECT_LT(waves[2].share, chance_share(128));
  auto const g = trends_of(sobol_g, 8, 128);
  EXPECT_GT(g[0].share, g[1].share);
  EXPECT_GT(g[1].share, chance_share(128));
  for (std::size_t i = 2; i < 8; ++i) {
    EXPECT_LT(g[i].share, g[1].share) << i;
  }
}

TEST(GivenData, ComeCloseToSobolsFirstOrderWithMoreRuns) {
  auto const exact = exact_g();
  auto const g = trends_of(sobol_g, 8, 2048);
  for (std::size_t i = 0; i < 8; ++i) {
    // |4u − 2| has a kink that a polynomial of degree four does not follow: it explains 0.95 of it.
    EXPECT_NEAR(g[i].share, exact.first[i], 0.05) << i;
  }
  EXPECT_NEAR(trends_of(ishigami, 3, 2048)[0].share, 0.3139, 0.02);
}

TEST(LowerBoundMeasured, OfASumOfTwoIsWhatTheOtherLeaves) {
  // y = 3·u1 + u2, both even: 95 % of y lie above a figure, and with u1 known above 1.5 + 0.05 on average.
  std::vector<double> u1;
  std::vector<double> y;
  for (std::uint32_t k = 1; k <= 4096; ++k) {
    auto const point = sequence_point(3, k, 2);
    u1.push_back(point[0]);
    y.push_back(3 * point[0] + point[1]);
  }
  auto const known = trend(u1, y);
  EXPECT_NEAR(known.share, 0.9, 0.01);  // 9/(9 + 1)
  EXPECT_NEAR(lower_bound_measured(known, u1, y, 0, 0.05), 1.5 + 0.05, 0.01);
  EXPECT_NEAR(lower_bound_measured(known, u1, y, 2, 0.05), lower_quantile(y, 0.05),
              0.01);  // an instrument that says nothing
  // P(y < t) for t < 1 is t²/6.
  EXPECT_NEAR(lower_quantile(y, 0.05), std::sqrt(0.05 * 6), 0.01);
}

}  // namespace
}  // namespace wellproof
