#include "explain/likelihood.h"

#include <cmath>

#include <gtest/gtest.h>

namespace wellproof {
namespace {

// With two shares each known from one count, every number of successes is equally likely: the order of k and n − k has
// the probability k!·(n − k)!/(n + 1)! (Bayes' rule of succession; Johnson, Kotz & Balakrishnan, Discrete Multivariate
// Distributions, 1997, chapter 35: the Dirichlet compound multinomial).
TEST(counts_log_likelihood, follows_the_rule_of_succession) {
  double const even[] = {0.5, 0.5};
  for (int n = 0; n < 8; ++n) {
    for (int k = 0; k <= n; ++k) {
      double const counts[] = {static_cast<double>(k), static_cast<double>(n - k)};
      double const expected = std::tgamma(k + 1) * std::tgamma(n - k + 1) / std::tgamma(n + 2);
      EXPECT_NEAR(std::exp(counts_log_likelihood(counts, even, 2, 2)), expected, 1e-12);
    }
  }
}

TEST(counts_log_likelihood, comes_to_a_multinomial_where_the_shares_are_certain) {
  double const shares[] = {0.2, 0.3, 0.5};
  double const counts[] = {1, 2, 3};
  EXPECT_NEAR(counts_log_likelihood(counts, shares, 3, 1e9), std::log(0.2) + 2 * std::log(0.3) + 3 * std::log(0.5),
              1e-6);
}

TEST(counts_log_likelihood, takes_many_of_a_kind_for_less_than_so_many_witnesses) {
  double const shares[] = {0.5, 0.5};
  double const twenty[] = {20, 0};
  EXPECT_GT(counts_log_likelihood(twenty, shares, 2, 8), 20 * std::log(0.5) + 5);
}

TEST(symptom_log_likelihood, is_higher_where_the_symptom_is_felt) {
  World felt;
  felt.feels[static_cast<std::size_t>(Symptom::sand)] = 0.9;
  World const not_felt;
  ToldSymptom const told{Symptom::sand, true, std::nullopt};
  ToldSymptom const denied{Symptom::sand, false, std::nullopt};
  EXPECT_GT(symptom_log_likelihood(told, felt), symptom_log_likelihood(told, not_felt) + 1);
  EXPECT_LT(symptom_log_likelihood(denied, felt), symptom_log_likelihood(denied, not_felt) - 1);
  EXPECT_LT(silence_log_likelihood(Symptom::sand, felt), silence_log_likelihood(Symptom::sand, not_felt));
}

TEST(symptom_log_likelihood, holds_a_told_interval_against_that_of_the_world) {
  World quick;
  quick.feels[static_cast<std::size_t>(Symptom::cycles)] = 0.8;
  World slow = quick;
  quick.cycle_s = 40;
  slow.cycle_s = 900;
  ToldSymptom const told{Symptom::cycles, true, 45.0};
  EXPECT_GT(symptom_log_likelihood(told, quick), symptom_log_likelihood(told, slow) + 1);
}

}  // namespace
}  // namespace wellproof
