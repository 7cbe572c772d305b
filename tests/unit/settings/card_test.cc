// A card as a person writes it, right and wrong.
#include "settings/card.h"

#include <gtest/gtest.h>

#include "unit/settings/card_text.h"

namespace wellproof {
namespace {

constexpr double psi_pa = 6894.757293168;

std::string findings_of(std::string const& text) {
  auto const card = read_card(text, "c.toml");
  std::string all;
  if (!card) {
    for (auto const& finding : card.error()) {
      all += wellproof::text(finding) + "\n";
    }
  }
  return all;
}

void expect_finding(std::string const& text, std::string const& piece) {
  auto const all = findings_of(text);
  EXPECT_NE(all.find(piece), std::string::npos) << "wanted: " << piece << "\nfound:\n" << all;
}

TEST(Card, WithEverySettingIsRead) {
  auto const card = read_card(card_text(), "c.toml");
  ASSERT_TRUE(card) << findings_of(card_text());
  EXPECT_EQ(card->name, "Test drive");
  EXPECT_EQ(card->entries.size(), 26U);
  // What the logic has no use for is lacking by itself.
  EXPECT_EQ(card->lacks, (std::vector<std::string>{"dry_run.power_below", "closed.power_below"}));
  ASSERT_NE(card->entry("pressure.target"), nullptr);
  EXPECT_NEAR(card->entry("pressure.target")->unit_factor, psi_pa, 1e-3);
}

TEST(Card, NumbersAreInTheEntrysUnitAndTextsInTheirOwn) {
  auto const text =
      card_text("name = \"x\"", "", "pressure.target;",
                entry_text("pressure.target", "unit = \"psi\"\nleast = 20\nmost = \"8 bar\"\nstep = 0.5"));
  auto const card = read_card(text, "c.toml");
  ASSERT_TRUE(card) << findings_of(text);
  auto const& entry = *card->entry("pressure.target");
  EXPECT_NEAR(*entry.least, 20 * psi_pa, 1e-3);
  EXPECT_NEAR(*entry.most, 8e5, 1e-6);
  EXPECT_NEAR(*entry.step, 0.5 * psi_pa, 1e-3);
}

TEST(Card, LogicWordsBecomeTheLogic) {
  auto const text = card_text("name = \"x\"",
                              "guards = \"amps_any_speed\"\nsleep = \"pressure_nudge\"\nrests = \"doubling\"\n"
                              "longest_rest = \"4 h\"\nlong_run_guard = false\nline_fill = false\n"
                              "gains = \"two_by_error\"\nsecond_gain_error = \"5 psi\"\nsecond_gain_share = 2\n"
                              "sample_rate = \"10 Hz\"\n",
                              "sleep.speed_below;long_run.limit;fill.time;fill.speed;");
  auto const card = read_card(text, "c.toml");
  ASSERT_TRUE(card) << findings_of(text);
  EXPECT_EQ(card->logic.guard_where, GuardWhere::any_speed);
  EXPECT_EQ(card->logic.guard_by, GuardBy::current);
  EXPECT_EQ(card->logic.sleep_test, SleepTest::nudge);
  EXPECT_EQ(card->logic.rest_growth, 2);
  EXPECT_EQ(card->logic.longest_rest_s, 4 * 3600);
  EXPECT_FALSE(card->logic.long_run_guard);
  EXPECT_FALSE(card->logic.line_fill);
  EXPECT_EQ(card->logic.second_gain, SecondGain::large_error);
  EXPECT_EQ(card->logic.second_gain_share, 2);
  EXPECT_EQ(card->sample_rate_hz, 10);
}

TEST(Card, EachMistakeIsFoundWhereItStands) {
  auto const wrong = [](std::string const& lines) {
    return card_text("name = \"x\"", "", "pressure.target;", entry_text("pressure.target", lines));
  };
  expect_finding(wrong("unit = \"gpm\""), "a unit of a pressure");
  expect_finding(wrong("unit = \"psj\""), "did you mean \"psi\"");
  expect_finding(wrong("unit = \"psi\"\nleast = 90\nmost = 20"), "at most the most, 20 psi");
  expect_finding(wrong("unit = \"psi\"\nstep = 0"), "a step of 0 psi");
  expect_finding(wrong("unit = \"psi\"\nstep = -1"), "more than nothing");
  expect_finding(wrong("unit = \"psi\"\nfixed = 50\nstep = 1"), "fixed beside");
  expect_finding(wrong("unit = \"psi\"\nleast = \"20 gpm\""), "pressure");
  expect_finding(wrong("unit = \"psi\"\nlest = 20"), "did you mean \"least\"");
  expect_finding(wrong("unit = \"psi\"\nleast = true"), "a number in psi");
  expect_finding(wrong("unit = \"psi\"\nshown_as = \"below_target\""), "itself");
  expect_finding(wrong("unit = \"psi\"\nfixed = 1e9"), "fixed");
  expect_finding(card_text() + entry_text("pressure.target", "unit = \"psi\""), "entered a second time");
  expect_finding(card_text() + entry_text("pressure.targit", "unit = \"psi\""), "did you mean \"pressure.target\"");
  expect_finding(card_text("name = \"x\"", "guards = \"amps_anyspeed\""), "did you mean \"amps_any_speed\"");
  expect_finding(card_text("name = \"x\"", "gards = \"x\""), "did you mean \"guards\"");
  expect_finding(card_text("name = \"x\"", "rests = \"doubling\""), "for rests = \"doubling\"");
  expect_finding(card_text("name = \"x\"", "second_gain_share = 2"), "it belongs to two gains");
  expect_finding(card_text("name = \"x\"", "sample_rate = \"1000 Hz\""), "200 Hz");
  expect_finding(card_text("note = \"nameless\""), "[card] with a name");
  expect_finding(card_text("name = \"x\"", "", "closed.delay;"), "nothing for closed.delay");
  expect_finding(card_text("name = \"x\"\nlacks = [\"pressure.target\"]", "", "pressure.target;"),
                 "every drive has one");
  expect_finding(card_text("name = \"x\"\nlacks = [\"closed.delay\"]"), "which is entered below");
  expect_finding(card_text("name = \"x\"", "long_run_guard = false"), "no such setting");
  expect_finding(card_text("name = \"x\"\nlacks = [\"fill.time\"]", "", "fill.time;"), "line_fill = false");
  expect_finding(card_text("name = \"x\"\nlacks = [\"closed.delay\"]", "", "closed.delay;"), "without its delay");
  expect_finding(card_text("name = \"x\"\nlacks = [\"sleep.band\"]", "", "sleep.band;"), "every drive has one");
  expect_finding(card_text("name = \"x\"", "", "", entry_text("regulator.second_gain", "unit = \"Hz/psi\"")),
                 "one gain");
  expect_finding("[card\nname", "c.toml:1");
}

TEST(Card, StopsHaveTheDrivesLabels) {
  auto const text = card_text() + "\n[stops]\ndry_run = \"S01\"\nlow_volts = [\"Supply sag\", \"Supply gone\"]\n";
  auto const card = read_card(text, "c.toml");
  ASSERT_TRUE(card) << findings_of(text);
  ASSERT_EQ(card->stops.size(), 3U);
  EXPECT_EQ(card->stops[0].label, "S01");
  EXPECT_EQ(card->stops[0].kind, StopCause::dry_run);
  EXPECT_EQ(card->stops[2].label, "Supply gone");
  EXPECT_EQ(card->stops[2].kind, StopCause::low_volts);
  auto const wrong = [](std::string const& lines) { return card_text() + "\n[stops]\n" + lines + "\n"; };
  expect_finding(wrong("dry_rum = \"S01\""), "did you mean \"dry_run\"");
  expect_finding(wrong("dry_run = 1"), "a text in quotes");
  expect_finding(wrong("dry_run = \"-\""), "what the drive's list of stops shows");
  expect_finding(wrong("dry_run = \"S01\"\nlow_volts = [\"S01\"]"), "each label for one kind");
}

TEST(Card, AFindingNamesLineAndColumn) {
  auto const all = findings_of("[card]\nname = \"x\"\nlacks = [\"fill.tim\"]\n");
  EXPECT_NE(all.find("c.toml:3:10: card.lacks: found \"fill.tim\""), std::string::npos) << all;
}

TEST(Card, AnyBytesAreAnswered) {
  for (std::string const& text :
       {std::string(), std::string("\x00\xff[", 3), std::string("entry = 3"), std::string("[[card]]\n[logic]\nx"),
        std::string("[[entry]]\n"), std::string("[[entry]]\nkey = 3\n"), std::string("[card]\nlacks = \"x\"\n")}) {
    EXPECT_FALSE(read_card(text, "c.toml"));
  }
}

}  // namespace
}  // namespace wellproof
