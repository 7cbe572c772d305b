// What a drive makes of settings.
#include "settings/on_card.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "settings/safe_side.h"
#include "unit/settings/card_text.h"

namespace wellproof {
namespace {

constexpr double psi_pa = 6894.757293168;

Settings some_settings() {
  Settings s;
  s.pressure_target_pa = 50.4 * psi_pa;
  s.pressure_wake_drop_pa = 3.8 * psi_pa;
  s.pressure_stop_above_pa = 77.7 * psi_pa;
  s.sensor_full_scale_pa = 100 * psi_pa;
  s.motor_current_limit_a = 5.87;
  s.speed_floor_hz = 30.2;
  s.speed_ceiling_hz = 61.7;
  s.speed_ramp_up_hz_s = 7;
  s.speed_ramp_down_hz_s = 9;
  s.regulator_gain_hz_pa = 0.57 / psi_pa;
  s.regulator_reset_time_s = 1.13;
  s.sleep_speed_below_hz = 38.24;
  s.sleep_hold_s = 11;
  s.sleep_band_pa = 1.1 * psi_pa;
  s.sleep_ramp_hz_s = 1.35;
  s.dry_run_amps_below_a = 3.52;
  s.dry_run_delay_s = 6;
  s.dry_run_rest_s = 1000;
  s.closed_amps_below_a = 4.37;
  s.closed_delay_s = 11;
  s.long_run_limit_s = 3000;
  s.fill_time_s = 130;
  s.fill_speed_hz = 44.4;
  return s;
}

Card card_with(std::string const& key, std::string const& lines, std::string const& more_card = "",
               std::string const& logic = "") {
  auto const text =
      card_text("name = \"x\"\n" + more_card, logic, key + ";", lines.empty() ? "" : entry_text(key, lines));
  auto card = read_card(text, "c.toml");
  if (!card) {
    ADD_FAILURE() << wellproof::text(card.error().front());
    return {};
  }
  return *card;
}

Rounded rounded_of(std::string const& key, std::string const& lines) {
  auto const entered = on_card(some_settings(), card_with(key, lines)).entries;
  auto const at = std::find_if(entered.begin(), entered.end(), [&](Rounded const& one) { return one.key == key; });
  return at == entered.end() ? Rounded{} : *at;
}

TEST(OnCard, EachKeyHasALineInTheTableOfSafeSides) {
  Settings const none;
  std::size_t count = 0;
  each_setting(none, [&](SettingField const& field, double) {
    EXPECT_EQ(safe_sides()[count++].key, field.key);
    EXPECT_FALSE(safe_side(field.key, {}).because.empty());
  });
  EXPECT_EQ(safe_sides()[count].key, permissive_key);
  EXPECT_EQ(safe_sides()[count + 1].key, fault_contact_key);
  EXPECT_EQ(safe_sides().size(), count + 2);
}

// The sides as docs/card.md has them; the figures are whole steps to either side, by hand.
TEST(OnCard, RoundsToTheSafeSide) {
  EXPECT_EQ(rounded_of("motor.current_limit", "unit = \"A\"\nstep = 0.5").text, "5.5 A");
  EXPECT_EQ(rounded_of("speed.ceiling", "unit = \"Hz\"\nstep = 1").text, "61 Hz");
  EXPECT_EQ(rounded_of("speed.floor", "unit = \"Hz\"\nstep = 1").text, "31 Hz");
  EXPECT_EQ(rounded_of("pressure.stop_above", "unit = \"psi\"\nstep = 5").text, "75 psi");
  EXPECT_EQ(rounded_of("pressure.target", "unit = \"psi\"\nstep = 1").text, "50 psi");
  EXPECT_EQ(rounded_of("dry_run.amps_below", "unit = \"A\"\nstep = 0.1").text, "3.6 A");
  EXPECT_EQ(rounded_of("dry_run.rest", "unit = \"min\"\nstep = 5").text, "20 min");
  EXPECT_EQ(rounded_of("regulator.gain", "unit = \"Hz/psi\"\nstep = 0.1").text, "0.5 Hz/psi");
}

TEST(OnCard, CountsStepsFromTheLeast) {
  EXPECT_EQ(rounded_of("speed.ceiling", "unit = \"Hz\"\nleast = 30.5\nstep = 2").text, "60.5 Hz");
}

TEST(OnCard, AnotherFigureThatStandsForOursIsRoundedAsItIsShown) {
  // 50.4 − 3.8 psi, with the target as it is entered, without steps.
  auto const drop = rounded_of("pressure.wake_drop", "unit = \"psi\"\nshown_as = \"below_target\"\nstep = 1");
  EXPECT_EQ(drop.text, "47 psi");
  EXPECT_NEAR(drop.entered, 3.4 * psi_pa, 0.01 * psi_pa);
  auto const above = rounded_of("pressure.stop_above", "unit = \"psi\"\nshown_as = \"above_target\"\nstep = 1");
  EXPECT_EQ(above.text, "27 psi");
  // 60 Hz at 7 Hz/s take 8.57 s; the nearest whole second is 9, which is 6.67 Hz/s.
  auto const ramp =
      rounded_of("speed.ramp_up", "unit = \"s\"\nshown_as = \"time_over\"\nover = \"60 Hz\"\nleast = 1\nstep = 1");
  EXPECT_EQ(ramp.text, "9 s");
  EXPECT_NEAR(ramp.entered, 60.0 / 9, 1e-9);
}

TEST(OnCard, BeyondTheRangeItGoesToItsEndAndSaysSo) {
  auto const low = rounded_of("speed.ceiling", "unit = \"Hz\"\nleast = 10\nmost = 55\nstep = 1");
  EXPECT_TRUE(low.clipped);
  EXPECT_EQ(low.text, "55 Hz");
  EXPECT_FALSE(low.safe_side.empty());
  auto const high = rounded_of("speed.ceiling", "unit = \"Hz\"\nleast = 65\nstep = 1");
  EXPECT_TRUE(high.clipped);
  EXPECT_EQ(high.text, "65 Hz");
  auto const fixed = rounded_of("sleep.ramp", "unit = \"Hz/s\"\nfixed = 2");
  EXPECT_TRUE(fixed.clipped);
  EXPECT_EQ(fixed.text, "2 Hz/s");
}

TEST(OnCard, AStepThatTheSafeSideCannotReachIsTheLastBelowTheEnd) {
  auto const one = rounded_of("dry_run.amps_below", "unit = \"A\"\nleast = 0\nmost = 3.55\nstep = 0.5");
  EXPECT_EQ(one.text, "3.5 A");
  EXPECT_TRUE(one.clipped);
}

TEST(OnCard, WhatTheDriveLacksActsNoMoreAndIsNamedWithWhatThatLeaves) {
  auto const card = card_with("closed.amps_below", "", "lacks = [\"closed.amps_below\"]\n");
  auto const entered = on_card(some_settings(), card);
  EXPECT_EQ(entered.settings.closed_amps_below_a, 0);
  ASSERT_EQ(entered.lacking.size(), 1U);
  EXPECT_EQ(entered.lacking.front().key, "closed.amps_below");
  EXPECT_NE(entered.lacking.front().unguarded.find("shut line"), std::string::npos);
}

TEST(OnCard, AMissingLongRunGuardIsNamed) {
  auto const entered = on_card(some_settings(), card_with("long_run.limit", "", "", "long_run_guard = false"));
  ASSERT_EQ(entered.lacking.size(), 1U);
  EXPECT_EQ(entered.lacking.front().key, "long_run.limit");
  EXPECT_FALSE(entered.logic.long_run_guard);
}

TEST(OnCard, AContactThatCannotBeHadSoIsTheOneThereIsAndSaysSo) {
  auto card = card_with("speed.ceiling", "unit = \"Hz\"");
  for (auto& entry : card.entries) {
    if (entry.key == fault_contact_key) {
      entry.choices = {{"opens_on_stop", "B"}};
    }
  }
  auto const entered = on_card(some_settings(), card);
  EXPECT_EQ(entered.settings.fault_contact_sense, FaultSense::opens_on_stop);
  auto const& last = entered.entries;
  auto const at =
      std::find_if(last.begin(), last.end(), [](Rounded const& one) { return one.key == fault_contact_key; });
  ASSERT_NE(at, last.end());
  EXPECT_TRUE(at->clipped);
  EXPECT_EQ(at->text, "B");
}

TEST(OnCard, ASecondGainIsEnteredAsItsShareOfTheFirst) {
  auto const text =
      card_text("name = \"x\"", "gains = \"two_by_speed\"\nsecond_gain_below = \"40 Hz\"\nsecond_gain_share = 0.5", "",
                entry_text("regulator.second_gain", "unit = \"Hz/psi\"\nstep = 0.1"));
  auto const card = read_card(text, "c.toml");
  ASSERT_TRUE(card);
  auto const entered = on_card(some_settings(), *card);
  EXPECT_EQ(entered.entries.back().text, "0.2 Hz/psi");  // 0.285, down
  EXPECT_NEAR(entered.logic.second_gain_share, 0.2 / 0.57, 1e-9);
}

TEST(OnCard, WithoutStepsWhatRoundsIsFourDigits) {
  EXPECT_EQ(rounded_of("sleep.speed_below", "unit = \"Hz\"").text, "38.24 Hz");
}

}  // namespace
}  // namespace wellproof
