#include "plant/root.h"

#include <cmath>

#include <gtest/gtest.h>

namespace wellproof {
namespace {

TEST(Root, BracketClosesOnTheRootOfACosine) {
  Bracket bracket{.low = 1, .high = 2, .low_value = std::cos(1.0), .high_value = std::cos(2.0)};
  int asked = 0;
  auto const value = [&](double x) {
    ++asked;
    return std::cos(x);
  };
  narrow(bracket, value, {.width = 1e-10});
  EXPECT_LE(bracket.low, std::acos(0.0));
  EXPECT_GE(bracket.high, std::acos(0.0));
  EXPECT_NEAR(bracket.high, std::acos(0.0), 1e-10);
  EXPECT_LT(asked, 20);  // bisection would take 34
}

TEST(Root, OneSidedBendIsMetFromBothSides) {
  // False position alone would crawl along the flat side.
  Bracket bracket{.low = 0, .high = 2, .low_value = 1, .high_value = -1023};
  auto const value = [](double x) { return 1 - std::pow(x, 10); };
  double const found = narrow(bracket, value, {.width = 1e-12, .value_width = 1e-9});
  EXPECT_NEAR(found, 1, 1e-9);
}

}  // namespace
}  // namespace wellproof
