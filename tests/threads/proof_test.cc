// Who computes a proof does not show in it: each run stands by itself, and nothing is summed in the order of arrival.
#include <gtest/gtest.h>

#include "proof/prove.h"
#include "unit/settings/settings_sites.h"

namespace wellproof {
namespace {

void expect_same(Outcome const& a, Outcome const& b) {
  EXPECT_EQ(a.draw, b.draw);
  EXPECT_EQ(a.passed, b.passed);
  EXPECT_EQ(a.margin, b.margin);
  EXPECT_EQ(a.criterion, b.criterion);
  EXPECT_EQ(a.value, b.value);
  EXPECT_EQ(a.limit, b.limit);
  EXPECT_EQ(a.ending, b.ending);
}

void expect_same(Criterion const& a, Criterion const& b) {
  EXPECT_EQ(a.measure, b.measure);
  EXPECT_EQ(a.window, b.window);
  EXPECT_EQ(a.limit, b.limit);
  EXPECT_EQ(a.scale, b.scale);
  EXPECT_EQ(a.since_s, b.since_s);
  EXPECT_EQ(a.causes, b.causes);
  EXPECT_EQ(a.says, b.says);
  EXPECT_EQ(a.source, b.source);
}

void expect_same(Proof const& a, Proof const& b) {
  EXPECT_EQ(a.proven, b.proven);
  EXPECT_EQ(a.seed, b.seed);
  EXPECT_EQ(a.draws, b.draws);
  ASSERT_EQ(a.scenarios.size(), b.scenarios.size());
  for (std::size_t i = 0; i < a.scenarios.size(); ++i) {
    auto const& x = a.scenarios[i];
    auto const& y = b.scenarios[i];
    SCOPED_TRACE(x.name);
    EXPECT_EQ(x.name, y.name);
    EXPECT_EQ(x.title, y.title);
    EXPECT_EQ(x.runs, y.runs);
    EXPECT_EQ(x.failed, y.failed);
    EXPECT_EQ(x.not_computed, y.not_computed);
    EXPECT_EQ(x.fail_upper95, y.fail_upper95);
    EXPECT_EQ(x.worst_says, y.worst_says);
    expect_same(x.worst, y.worst);
    ASSERT_EQ(x.criteria.size(), y.criteria.size());
    for (std::size_t k = 0; k < x.criteria.size(); ++k) {
      expect_same(x.criteria[k], y.criteria[k]);
    }
  }
}

TEST(Threads, DoNotShowInAProof) {
  auto const one = answer({}, UnitSystem::us, 8);
  ProveOptions options;
  options.draws = 3;
  std::size_t told_of = 0;
  options.progress = [&](std::size_t, std::size_t) { ++told_of; };
  auto const alone = prove(one.site, one.plants, one.derived.settings, options);
  EXPECT_EQ(told_of, hazards().size() * options.draws);
  for (unsigned const threads : {2U, 3U}) {
    SCOPED_TRACE(threads);
    options.threads = threads;
    told_of = 0;
    expect_same(alone, prove(one.site, one.plants, one.derived.settings, options));
    EXPECT_EQ(told_of, hazards().size() * options.draws);
  }
}

}  // namespace
}  // namespace wellproof
