#include "proof/search.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <gtest/gtest.h>

#include "settings/derive.h"
#include "unit/proof/open_site.h"

namespace wellproof {
namespace {

TEST(CompassSearch, ClimbsToTheTopOfAHillOnTheGrid) {
  auto const hill = [](std::vector<int> const& at) { return -std::pow(at[0] - 11, 2) - 3 * std::pow(at[1] + 5, 2); };
  auto const found = compass_search(hill, {0, 0}, 8, 1000);
  EXPECT_EQ(found.steps, (std::vector<int>{11, -5}));
  EXPECT_EQ(found.value, 0);
}

TEST(CompassSearch, StopsAtTheTriesItHasAndIsNeverWorseThanTheStart) {
  auto const hill = [](std::vector<int> const& at) { return -std::abs(at[0] - 1000.0); };
  auto const found = compass_search(hill, {0}, 8, 12);
  EXPECT_EQ(found.tries, 12U);
  EXPECT_GT(found.value, hill({0}));
  auto const flat = compass_search([](std::vector<int> const&) { return 1.0; }, {0, 0, 0}, 8, 1000);
  EXPECT_EQ(flat.steps, (std::vector<int>{0, 0, 0}));
  EXPECT_EQ(flat.tries, 1 + 3 * 2 * 4U);  // 8, 4, 2 and 1 steps each way
}

std::uint32_t failed(Proof const& of) {
  std::uint32_t sum = 0;
  for (auto const& scenario : of.scenarios) {
    sum += scenario.failed;
  }
  return sum;
}

/// A site, settings with one spoiled, and a search that may move no other.
struct Spoiled {
  Site site = open_site();
  std::vector<Plant> plants = draw_plants(site, 1, 8);
  Settings start = derive(site, plants, UnitSystem::us).settings;
  SearchOptions options{};
  Proof proof{};

  explicit Spoiled(double sleep_hold_s) {
    start.sleep_hold_s = sleep_hold_s;
    options.prove.draws = 8;
    options.prove.threads = 2;
    options.prove.insight = false;
    options.most_tries = 16;
    each_setting(start, [&](SettingField const& field, double) {
      if (field.key != "sleep.hold") {
        options.fixed.emplace_back(field.key);
      }
    });
    proof = prove(site, plants, start, options.prove);
  }
  SearchResult search() const { return search_settings(site, plants, start, proof, options); }
};

constexpr double never_at_rest_s = 110;  // no house comes to rest within two minutes with it

TEST(Search, MendsASettingThatWasSpoiledAndSaysWhatItGained) {
  Spoiled const spoiled(never_at_rest_s);
  auto const found = spoiled.search();
  EXPECT_DOUBLE_EQ(found.start_margin, smallest_margin(spoiled.proof));
  EXPECT_DOUBLE_EQ(found.found_margin, smallest_margin(found.proof));
  EXPECT_LT(failed(found.proof), failed(spoiled.proof));
  ASSERT_EQ(found.moved.size(), 1U);
  EXPECT_EQ(found.moved[0].key, "sleep.hold");
  EXPECT_DOUBLE_EQ(found.moved[0].from, 110);
  EXPECT_LT(found.moved[0].to, 100);
  EXPECT_LE(found.tries, 16U);
  EXPECT_EQ(found.binding.size(), 3U);
}

TEST(Search, WhatDoesNothingForTheMarginStaysWhereItWasDerived) {
  Spoiled spoiled(never_at_rest_s);
  auto& fixed = spoiled.options.fixed;
  for (auto const key : {"pressure.wake_drop", "fill.time", "closed.delay"}) {
    fixed.erase(std::remove(fixed.begin(), fixed.end(), key), fixed.end());
  }
  spoiled.options.most_tries = 60;
  auto const found = spoiled.search();
  ASSERT_EQ(found.moved.size(), 1U);
  EXPECT_EQ(found.moved[0].key, "sleep.hold");
  EXPECT_FALSE(found.moved[0].followed);
}

TEST(Search, WithACardTriesNothingThatTheDriveCannotBeSetTo) {
  CardEntry entry;
  entry.key = "sleep.hold";
  entry.label = "hold";
  entry.unit = "s";
  entry.dimension = Dimension::time;
  entry.least = 5;
  entry.step = 7;
  Spoiled spoiled(5 + 7 * 15);
  spoiled.options.card = Card{};
  spoiled.options.card->entries = {entry};
  auto const found = spoiled.search();
  EXPECT_LT(failed(found.proof), failed(spoiled.proof));
  ASSERT_EQ(found.moved.size(), 1U);
  double const steps = (found.moved[0].to - 5) / 7;
  EXPECT_NEAR(steps, std::round(steps), 1e-9);
  EXPECT_LT(steps, 15);

  spoiled.options.card->entries[0].fixed = 5 + 7 * 15;
  EXPECT_EQ(spoiled.search().tries, 1U) << "one look at where it stands";
}

}  // namespace
}  // namespace wellproof
