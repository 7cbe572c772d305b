#include "proof/insight.h"

#include <cmath>
#include <vector>

#include "proof/measuring.h"
#include "settings/derive.h"
#include "site/fields.h"
#include "unit/proof/open_site.h"
#include "unit/simulate/plain_site.h"

namespace wellproof {
namespace {

/// Outcomes whose margin hangs on one unknown and a little on the rest.
std::vector<std::vector<Outcome>> outcomes_by(Site const& site, std::size_t decides, std::uint32_t draws) {
  std::vector<std::vector<Outcome>> outcomes(2);
  for (std::uint32_t k = 0; k < draws; ++k) {
    auto const point = sequence_point(1, k, unknowns(site));
    Outcome one;
    one.draw = k;
    one.passed = true;
    one.margin = 0.1 + 0.4 * point[decides] + 0.05 * point[(decides + 1) % point.size()];
    outcomes[1].push_back(one);
    one.margin = 0.9;
    outcomes[0].push_back(one);
  }
  return outcomes;
}

TEST(WorthMeasuring, NamesTheUnknownThatDecidesAndWhatMeasuringItBrings) {
  auto const site = open_site();
  auto const keys = unknown_keys(site);
  std::size_t const level = 0;
  ASSERT_EQ(keys[level], "well.static_level");
  auto const worth = worth_measuring(site, 1, outcomes_by(site, level, 128));
  ASSERT_FALSE(worth.empty());
  EXPECT_EQ(worth[0].key, "well.static_level");
  EXPECT_NEAR(worth[0].share, 16.0 / (16 + 0.25), 0.02);
  // 5 % of 0.1 + 0.4·u + 0.05·v lie below about 0.145; with u measured, on average 0.3 + 0.0025.
  EXPECT_NEAR(worth[0].lower_before, 0.145, 0.01);
  EXPECT_NEAR(worth[0].lower_after, 0.3 + 0.0025, 0.015);
  EXPECT_EQ(worth[0].scenario, hazards()[1].name);
  EXPECT_FALSE(worth[0].how.empty());
  EXPECT_GT(worth[0].minutes, 0);
}

TEST(WorthMeasuring, SaysNothingOfAMarginThatDoesNotMoveOrOfTooFewDraws) {
  auto const site = open_site();
  auto outcomes = outcomes_by(site, 0, 128);
  for (auto& one : outcomes[1]) {
    one.margin = 0.2;
  }
  EXPECT_TRUE(worth_measuring(site, 1, outcomes).empty());
  EXPECT_TRUE(worth_measuring(site, 1, outcomes_by(site, 0, 16)).empty());
}

TEST(MarginDrivers, AreTheUnknownsOfTheirOwnScenario) {
  auto const site = open_site();
  auto const outcomes = outcomes_by(site, 3, 128);
  auto const drivers = margin_drivers(site, 1, outcomes[1]);
  ASSERT_FALSE(drivers.empty());
  EXPECT_EQ(drivers[0].key, unknown_keys(site)[3]);
  EXPECT_TRUE(margin_drivers(site, 1, outcomes[0]).empty());
}

TEST(Measuring, IsToldForMostOfWhatASiteMayLeaveOpen) {
  std::size_t all = 0;
  std::size_t told = 0;
  auto const site = open_site();
  each_field(site, [&](Field const& field, Range const&) {
    ++all;
    auto const by = measuring(field.key);
    told += by ? 1U : 0U;
    if (by) {
      EXPECT_GT(by->minutes, 0) << field.key;
      EXPECT_GT(by->accuracy, 0) << field.key;
    }
  });
  EXPECT_GT(2 * told, all);
  EXPECT_TRUE(measuring("pipe.3.length"));
  EXPECT_FALSE(measuring("pipe.3.no_such"));
}

ProveOptions options_for(std::uint32_t draws, unsigned threads) {
  ProveOptions options;
  options.draws = draws;
  options.threads = threads;
  return options;
}

TEST(Proof, StoppedWhenCertainComesToTheSameVerdictsWithAnyThreads) {
  auto const site = open_site();
  auto const plants = draw_plants(site, 1, 16);
  auto settings = derive(site, plants, UnitSystem::us).settings;
  settings.closed_amps_below_a = 2 * settings.motor_current_limit_a;  // stops for nothing in some scenarios, not in all
  auto options = options_for(16, 1);
  options.insight = false;
  auto const full = prove(site, plants, settings, options);
  options.stop_when_certain = true;
  options.threads = 3;
  auto const early = prove(site, plants, settings, options);
  EXPECT_FALSE(full.proven);
  EXPECT_EQ(early.proven, full.proven);
  std::uint32_t spared = 0;
  for (std::size_t h = 0; h < full.scenarios.size(); ++h) {
    EXPECT_EQ(early.scenarios[h].failed > 0, full.scenarios[h].failed > 0) << full.scenarios[h].name;
    EXPECT_EQ(early.scenarios[h].runs % 8, 0U);  // whole blocks, whatever the threads
    spared += full.scenarios[h].runs - early.scenarios[h].runs;
    if (full.scenarios[h].failed == 0) {
      EXPECT_EQ(early.scenarios[h].runs, 16U);
      EXPECT_EQ(early.scenarios[h].worst_says, full.scenarios[h].worst_says);
      EXPECT_EQ(early.scenarios[h].worst.margin, full.scenarios[h].worst.margin);
    }
  }
  EXPECT_GT(spared, 0U);
}

}  // namespace
}  // namespace wellproof
