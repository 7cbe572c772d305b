// The bound on a failure rate against the beta quantile of Boost.Math (Clopper & Pearson 1934 in its closed form: the
// upper bound is the 95 % point of Beta(failed + 1, runs − failed)).
#include <gtest/gtest.h>

#include <boost/math/distributions/beta.hpp>

#include "proof/prove.h"

namespace wellproof {
namespace {

TEST(FailureUpper95, IsTheBetaQuantile) {
  for (std::uint32_t const runs : {1U, 8U, 128U, 1024U}) {
    for (std::uint32_t const failed : {0U, 1U, 3U, 7U, 100U, 900U}) {
      if (failed < runs) {
        boost::math::beta_distribution<double> const beta(failed + 1.0, static_cast<double>(runs - failed));
        EXPECT_NEAR(failure_upper95(failed, runs), boost::math::quantile(beta, 0.95), 1e-9) << failed << "/" << runs;
      }
    }
  }
}

}  // namespace
}  // namespace wellproof
