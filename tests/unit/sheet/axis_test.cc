#include "sheet/axis.h"

#include <gtest/gtest.h>

namespace wellproof {
namespace {

TEST(Axis, StepsAreOneTwoOrFiveTimesAPowerOfTen) {
  EXPECT_DOUBLE_EQ(round_step(10, 10), 1);
  EXPECT_DOUBLE_EQ(round_step(11, 10), 2);
  EXPECT_DOUBLE_EQ(round_step(0.3, 8), 0.05);
  EXPECT_DOUBLE_EQ(round_step(7000, 8), 1000);
}

TEST(Axis, FiguresAreRoundInTheUnitShown) {
  // 1 psi = 6894.757 Pa (NIST SP 811, table of conversion factors).
  auto const axis = round_axis("pressure", 0, 71.3 * 6894.757, Dimension::pressure, UnitSystem::us, 4);
  EXPECT_EQ(axis.title, "pressure, psi");
  ASSERT_EQ(axis.ticks.size(), 5U);
  EXPECT_EQ(axis.ticks[1].text, "20");
  EXPECT_EQ(axis.ticks.back().text, "80");
  EXPECT_NEAR(axis.share(40 * 6894.757), 0.5, 1e-6);
}

TEST(Axis, LongTimesAreShownInMinutesAndHours) {
  EXPECT_EQ(tight_axis("time", 0, 200, Dimension::time, UnitSystem::us, 10).title, "time, s");
  EXPECT_EQ(tight_axis("time", 0, 3600, Dimension::time, UnitSystem::us, 10).title, "time, min");
  EXPECT_EQ(tight_axis("time", 0, 86400, Dimension::time, UnitSystem::us, 10).title, "time, h");
}

TEST(Axis, EndsThatAreEqualAreSpread) {
  auto const axis = round_axis("water depth", 12, 12, Dimension::length, UnitSystem::metric, 4);
  EXPECT_LT(axis.low, 12);
  EXPECT_GT(axis.high, 12);
  EXPECT_GE(axis.ticks.size(), 2U);
}

TEST(Axis, ZeroIsNeverPrintedBelowZero) {
  auto const axis = round_axis("flow", -0.3, 0.3, Dimension::none, UnitSystem::us, 6);
  for (auto const& tick : axis.ticks) {
    EXPECT_NE(tick.text, "−0.0");
  }
  EXPECT_EQ(axis.ticks.front().text, "−0.3");
}

}  // namespace
}  // namespace wellproof
