// What must hold of every card: rounding moves a value by no more than a step, to the safe side, and no second time;
// and no margin falls below zero by rounding without being told.
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "law/random_site.h"
#include "proof/rounding.h"
#include "settings/on_card.h"
#include "settings/safe_side.h"
#include "unit/settings/settings_sites.h"

namespace wellproof {
namespace {

/// A value that somebody might derive, within what a drive can be set to.
double random_value(SettingField const& field, RandomNumbers& random) {
  auto const ends = ends_of(field);
  double const most = std::min(ends.most, field.dimension == Dimension::time ? 5000.0 : ends.most);
  return random.between(ends.least, 0.3 * most + 0.7 * ends.least);
}

CardEntry random_entry(SettingField const& field, double value, RandomNumbers& random) {
  CardEntry entry;
  entry.key = field.key;
  entry.label = "x";
  entry.unit = "u";
  entry.dimension = field.dimension;
  entry.unit_factor = std::pow(10, std::floor(random.between(-2, 4)));
  entry.step = std::abs(value) * random.between(0.001, 0.4) + 1e-6;
  if (random.between(0, 1) < 0.5) {
    entry.least = value - *entry.step * random.between(0, 20);
  }
  if (random.between(0, 1) < 0.5) {
    entry.most = value + *entry.step * random.between(1.01, 20);
  }
  return entry;
}

double entered_of(Settings const& settings, std::string_view key) {
  double found = 0;
  each_setting(settings, [&](SettingField const& field, double value) { found = field.key == key ? value : found; });
  return found;
}

TEST(CardLaw, RoundingMovesByLessThanAStepToTheSafeSideAndOnlyOnce) {
  for (std::uint64_t seed = 0; seed < 300; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    RandomNumbers random(seed);
    Settings settings;
    Card card;
    card.logic.guard_where = seed % 3 == 0 ? GuardWhere::any_speed : GuardWhere::near_ceiling;
    each_setting(settings, [&](SettingField const& field, double& value) {
      value = random_value(field, random);
      card.entries.push_back(random_entry(field, value, random));
    });
    auto const entered = on_card(settings, card);
    for (auto const& one : entered.entries) {
      auto const& entry = *card.entry(one.key);
      double const moved = one.entered - one.wanted;
      EXPECT_LT(std::abs(moved), *entry.step * (1 + 1e-6)) << one.key;
      EXPECT_FALSE(one.clipped) << one.key;
      EXPECT_EQ(one.entered, entered_of(entered.settings, one.key));
      EXPECT_EQ(one.safe_side.empty(), std::abs(moved) <= 1e-7 * std::abs(one.wanted)) << one.key;
      double const slack = 1e-6 * *entry.step;
      switch (safe_side(one.key, card.logic).side) {
        case Side::down:
          EXPECT_LE(moved, slack) << one.key;
          break;
        case Side::up:
          EXPECT_GE(moved, -slack) << one.key;
          break;
        case Side::nearest:
          EXPECT_LE(std::abs(moved), 0.5 * *entry.step + slack) << one.key;
          break;
      }
    }
    auto const again = on_card(entered.settings, card);
    each_setting(again.settings, [&](SettingField const& field, double value) {
      EXPECT_NEAR(value, entered_of(entered.settings, field.key), 1e-6 * *card.entry(field.key)->step) << field.key;
    });
    for (std::size_t i = 0; i < again.entries.size(); ++i) {
      EXPECT_EQ(again.entries[i].text, entered.entries[i].text);
    }
  }
}

/// A card with steps of a size that hurts.
Card coarse_card(RandomNumbers& random) {
  Card card;
  card.name = "coarse";
  Settings const none;
  each_setting(none, [&](SettingField const& field, double) {
    if (!applies(card.logic, field.key)) {
      return;
    }
    CardEntry entry;
    entry.key = field.key;
    entry.label = field.key;
    entry.dimension = field.dimension;
    double const size = field.dimension == Dimension::pressure         ? 3e4
                        : field.dimension == Dimension::current        ? 0.7
                        : field.dimension == Dimension::frequency      ? 4
                        : field.dimension == Dimension::ramp           ? 3
                        : field.dimension == Dimension::regulator_gain ? 1e-4
                                                                       : 20;
    entry.step = size * random.between(0.3, 1);
    entry.least = *entry.step;
    if (field.key == "sensor.full_scale" || field.key == "sensor.trim") {
      entry.step.reset();
      entry.least.reset();
    }
    card.entries.push_back(std::move(entry));
  });
  return card;
}

// Told against both proofs in full: whatever holds as derived and fails as entered is among the losses, and nothing
// else.
TEST(CardLaw, NoMarginFallsBelowZeroByRoundingUntold) {
  constexpr std::uint32_t draws = 8;
  // One card each day, as many as asked for otherwise: WP_CARDS=20 takes some minutes.
  auto const* const asked = std::getenv("WP_CARDS");  // NOLINT(concurrency-mt-unsafe): before any thread
  std::uint64_t const cards = asked == nullptr ? 1 : std::strtoull(asked, nullptr, 10);
  std::size_t told = 0;
  for (std::uint64_t seed = 0; seed < cards; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    RandomNumbers random(seed);
    auto const card = coarse_card(random);
    auto const site = site_of({});
    auto const plants = draw_plants(site, seed + 1, draws);
    auto const wanted = derive(site, plants, UnitSystem::us, card.logic).settings;
    auto const derived = without_rounding(wanted, card);
    auto const entered = on_card(wanted, card).settings;
    ProveOptions options;
    options.seed = seed + 1;
    options.draws = draws;
    options.insight = false;
    options.logic = card.logic;
    auto const before = prove(site, plants, derived, options);
    auto const after = prove(site, plants, entered, options);
    auto const losses = lost_by_rounding(plants, after, entered, derived, options);
    auto const is_told = [&](std::string const& name) {
      return std::any_of(losses.begin(), losses.end(), [&](RoundingLoss const& loss) { return loss.name == name; });
    };
    for (std::size_t i = 0; i < after.scenarios.size(); ++i) {
      bool const lost = before.scenarios[i].failed == 0 && after.scenarios[i].failed > 0;
      EXPECT_EQ(is_told(after.scenarios[i].name), lost) << after.scenarios[i].name;
    }
    for (std::size_t i = 0; i < after.margins.size(); ++i) {
      auto const& a = before.margins[i];
      auto const& b = after.margins[i];
      if (a.key != "rating" && a.key != "hunting" && a.value && b.value) {
        EXPECT_EQ(is_told(b.key), *a.value >= 0 && *b.value < 0) << b.key;
      }
    }
    told += losses.size();
  }
  EXPECT_GT(told, 0U);  // steps of that size do cost something: the claim above is not about nothing
}

}  // namespace
}  // namespace wellproof
