#include "proof/moves.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "settings/loops.h"
#include "unit/proof/open_site.h"

namespace wellproof {
namespace {

/// What may be moved from the settings derived for the open site.
struct FromDerived {
  Site site = open_site();
  std::vector<Plant> plants = draw_plants(site, 1, 8);
  Settings start = derive(site, plants, UnitSystem::us).settings;
  ProveOptions options{};
  std::vector<std::string> fixed{};
  std::optional<Card> card{};

  Moves moves() const { return {site, plants, start, options, fixed, card}; }
};

std::size_t place(Moves const& moves, std::string_view key) {
  auto const& knobs = moves.knobs();
  auto const at = std::find_if(knobs.begin(), knobs.end(), [&](Knob const& knob) { return knob.key == key; });
  return static_cast<std::size_t>(at - knobs.begin());
}

bool has(Moves const& moves, std::string_view key) {
  return place(moves, key) < moves.knobs().size();
}

Moves::Steps none(Moves const& moves) {
  return Moves::Steps(moves.knobs().size(), 0);
}

TEST(Moves, WithNoStepsAreTheStart) {
  FromDerived const from;
  auto moves = from.moves();
  EXPECT_TRUE(moves.allows(none(moves)));
  EXPECT_EQ(moves.at(none(moves)).settings, from.start);
  EXPECT_EQ(moves.anew(none(moves)), nullptr);
}

TEST(Moves, WithTheCeilingGoesAllThatRestsOnIt) {
  FromDerived const from;
  auto moves = from.moves();
  auto steps = none(moves);
  steps[place(moves, "speed.ceiling")] = -4;
  auto bounds = bounds_of(from.start);
  bounds.ceiling_hz -= 2;
  auto const derived = derive(from.site, from.plants, UnitSystem::us, {}, bounds).settings;
  EXPECT_EQ(moves.at(steps).settings, derived);
  EXPECT_LT(derived.closed_amps_below_a, from.start.closed_amps_below_a);
  ASSERT_NE(moves.anew(steps), nullptr);
  EXPECT_EQ(moves.anew(steps)->settings, derived);
  steps[place(moves, "closed.delay")] = 2;
  EXPECT_EQ(moves.at(steps).settings.closed_delay_s, derived.closed_delay_s + 2);
}

TEST(Moves, WhatIsGivenStaysAsItIs) {
  FromDerived from;
  from.fixed = {"closed.amps_below", "sleep.hold"};
  auto moves = from.moves();
  EXPECT_FALSE(has(moves, "closed.amps_below"));
  auto steps = none(moves);
  steps[place(moves, "speed.ceiling")] = -4;
  auto const drive = moves.at(steps);
  EXPECT_EQ(drive.settings.closed_amps_below_a, from.start.closed_amps_below_a);
  EXPECT_LT(drive.settings.dry_run_amps_below_a, from.start.dry_run_amps_below_a);
}

TEST(Moves, EndWhereSomethingThatNoRunShowsStandsInTheWay) {
  FromDerived const from;
  auto moves = from.moves();
  auto const allowed = [&](std::string_view key, int steps) {
    auto all = none(moves);
    all[place(moves, key)] = steps;
    return moves.allows(all);
  };
  EXPECT_FALSE(allowed("speed.ceiling", 1)) << "what bounds it stands above it";
  EXPECT_TRUE(allowed("fill.time", -2));
  auto const& fill = moves.knobs()[place(moves, "fill.time")];
  EXPECT_NEAR(fill.least, from.start.fill_time_s / 1.5, 1e-9) << "the slowest fill";
  EXPECT_FALSE(allowed("fill.time", -static_cast<int>(from.start.fill_time_s / fill.step)));
  auto const& delay = moves.knobs()[place(moves, "closed.delay")];
  EXPECT_GE(delay.least, 3 * from.options.logic.current_filter_s);
  auto const& gain = moves.knobs()[place(moves, "regulator.gain")];
  EXPECT_LE(gain.most, std::max(most_gain_for_noise_hz_pa(from.plants), from.start.regulator_gain_hz_pa));
  // Dry above closed would say dry of what is shut.
  auto all = none(moves);
  all[place(moves, "dry_run.amps_below")] =
      static_cast<int>((from.start.closed_amps_below_a - from.start.dry_run_amps_below_a) / 0.05) + 1;
  EXPECT_FALSE(moves.allows(all));
}

TEST(Moves, OnACardAreTheStepsOfTheDrive) {
  FromDerived from;
  CardEntry ceiling;
  ceiling.key = "speed.ceiling";
  ceiling.label = "top";
  ceiling.unit = "Hz";
  ceiling.dimension = Dimension::frequency;
  ceiling.step = 1;
  from.card = Card{};
  from.card->entries = {ceiling};
  auto moves = from.moves();
  ASSERT_EQ(moves.knobs().size(), 1U) << "the drive has nothing else to set";
  EXPECT_EQ(moves.knobs()[0].step, 1);
  from.card->entries[0].fixed = 60;
  EXPECT_TRUE(from.moves().knobs().empty());
}

}  // namespace
}  // namespace wellproof
