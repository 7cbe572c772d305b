#include "quantity/inverse_normal.h"

#include <cmath>

#include <gtest/gtest.h>

namespace wellproof {
namespace {

// The distribution itself, from the C library's erfc: an independent way round.
double part_below(double deviate) {
  return 0.5 * std::erfc(-deviate / std::sqrt(2.0));
}

TEST(inverse_normal, gives_the_printed_percentage_points) {
  // Abramowitz and Stegun 1964, table 26.5, and the usual two-sided 95 % point.
  EXPECT_NEAR(inverse_normal(0.475), 1.959963984540054, 1e-14);
  EXPECT_NEAR(inverse_normal(0.49), 2.326347874040841, 1e-14);
  EXPECT_NEAR(inverse_normal(0.40), 1.281551565544600, 1e-14);
  EXPECT_NEAR(inverse_normal(0.25), 0.674489750196082, 1e-14);
}

TEST(inverse_normal, undoes_the_distribution) {
  for (double deviate = -3.5; deviate <= 3.5; deviate += 0.0625) {
    EXPECT_NEAR(inverse_normal(part_below(deviate) - 0.5), deviate, 1e-12) << deviate;
  }
}

TEST(inverse_normal, mirrors_itself) {
  EXPECT_EQ(inverse_normal(0), 0);
  for (double from_half : {0.001, 0.2, 0.425, 0.4250001, 0.499}) {
    EXPECT_EQ(inverse_normal(-from_half), -inverse_normal(from_half)) << from_half;
  }
}

}  // namespace
}  // namespace wellproof
