#include "proof/rare.h"

#include <gtest/gtest.h>

#include <cmath>

#include "quantity/inverse_normal.h"
#include "site/draw.h"

namespace wellproof {
namespace {

using Margin = std::function<double(std::span<double const>)>;

std::optional<RareFailure> found(Margin const& margin, std::size_t unknowns, std::uint32_t runs = 128) {
  std::vector<std::vector<double>> points;
  std::vector<double> margins;
  for (std::uint32_t k = 0; k < runs; ++k) {
    points.push_back(sequence_point(1, k, unknowns));
    margins.push_back(margin(points.back()));
  }
  return rare_failure(margin, points, margins);
}

double z(double u) {
  return inverse_normal(std::fmin(std::fmax(u - 0.5, -0.4999), 0.4999));
}

TEST(NormalShare, IsThatOfTheTables) {
  // Abramowitz & Stegun, table 26.1.
  EXPECT_NEAR(normal_share(-1.6448536), 0.05, 1e-8);
  EXPECT_NEAR(normal_share(3), 0.99865010, 1e-8);
}

TEST(RareFailure, OfAPlaneLiesAtItsDistance) {
  // 3.5 − (z1 + z2)/√2 fails beyond 3.5 spreads: 2.3 in 10 000, far beyond what 128 draws meet. Ten unknowns do
  // nothing.
  Margin const plane = [](std::span<double const> u) { return 3.5 - (z(u[0]) + z(u[1])) / std::sqrt(2.0); };
  auto const failure = found(plane, 12);
  ASSERT_TRUE(failure);
  EXPECT_NEAR(failure->spreads, 3.5, 0.05);
  EXPECT_NEAR(failure->share, 2.326e-4, 5e-5);
  ASSERT_GE(failure->leads.size(), 2U);
  EXPECT_LE(failure->leads[0], 1U);
  EXPECT_LE(failure->leads[1], 1U);
  EXPECT_LT(plane(failure->point), 0);
}

TEST(RareFailure, OfABentSurfaceAgreesWithCounting) {
  // Even unknowns and a margin that bends: counted with a million plain draws of the same sequence.
  Margin const bent = [](std::span<double const> u) { return 1.02 - u[0] * u[0] * (0.4 + 0.65 * u[1]); };
  auto const failure = found(bent, 4);
  ASSERT_TRUE(failure);
  int failed = 0;
  constexpr int all = 1 << 17;
  for (std::uint32_t k = 1; k <= all; ++k) {
    failed += bent(sequence_point(5, k, 2)) < 0 ? 1 : 0;
  }
  double const counted = static_cast<double>(failed) / all;
  EXPECT_GT(counted, 0);
  EXPECT_LT(counted, 1e-3);
  EXPECT_GT(failure->share, counted / 10);
  EXPECT_LT(failure->share, counted * 10);
}

TEST(RareFailure, IsNotInventedWhereNothingFails) {
  EXPECT_FALSE(found([](std::span<double const> u) { return 2 - u[0]; }, 3));
  EXPECT_FALSE(found([](std::span<double const>) { return 1.0; }, 3));
  EXPECT_FALSE(found([](std::span<double const> u) { return u[0] - 0.7; }, 3));  // the middle fails: nothing rare
}

}  // namespace
}  // namespace wellproof
