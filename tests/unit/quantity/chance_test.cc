#include "quantity/chance.h"

#include <gtest/gtest.h>

namespace wellproof {
namespace {

TEST(Chance, IsSplitmix64) {
  // The first outputs for the seed 1234567 that implementations are held against (Rosetta Code, from memory).
  Chance chance(1234567);
  for (std::uint64_t const expected : {6457827717110365317U, 3203168211198807973U, 9817491932198370423U}) {
    EXPECT_EQ(chance.bits(), expected);
  }
}

TEST(Chance, StaysInsideItsEnds) {
  Chance chance(1);
  double sum = 0;
  for (int i = 0; i < 10000; ++i) {
    double const one = chance.next();
    EXPECT_GT(one, 0);
    EXPECT_LT(one, 1);
    sum += one;
  }
  EXPECT_NEAR(sum / 10000, 0.5, 4 * 0.2887 / 100);  // four standard deviations of the mean
}

}  // namespace
}  // namespace wellproof
