#include "sheet/terminal.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <sstream>

#include "sheet/layout.h"
#include "sheet/map_sheet.h"
#include "sheet/run_sheet.h"
#include "sheet/words.h"
#include "unit/sheet/made_plan.h"
#include "unit/sheet/within_80.h"

namespace wellproof {
namespace {

TEST(Terminal, NoLineIsWiderThan80) {
  expect_within_80(terminal_sheet(made_plan(), false));
  expect_within_80(map_sheet("Made Hollow 1", made_map(), UnitSystem::us, false));
  expect_within_80(map_sheet("Made Hollow 1", made_map(), UnitSystem::metric, false));
}

TEST(Terminal, TheVerdictComesBeforeTheSettings) {
  auto const sheet = terminal_sheet(made_plan(), false);
  EXPECT_LT(sheet.find("NOT PROVEN"), sheet.find("pressure.target"));
  EXPECT_NE(sheet.find("3 of 384 runs failed, in 1 of 3 scenarios"), std::string::npos);
}

TEST(Terminal, WithoutColourTheWordsAreTheSame) {
  auto const plan = made_plan();
  auto const plain = terminal_sheet(plan, false);
  auto coloured = terminal_sheet(plan, true);
  EXPECT_EQ(plain.find('\x1b'), std::string::npos);
  for (std::size_t at = coloured.find('\x1b'); at != std::string::npos; at = coloured.find('\x1b')) {
    coloured.erase(at, coloured.find('m', at) - at + 1);
  }
  EXPECT_EQ(coloured, plain);
}

TEST(Terminal, AControlCharacterInANameNeverReachesTheTerminal) {
  auto plan = made_plan();
  plan.site.site.name = "Made\x1b[31m Hollow\r\n\x07\xC2\x9B";
  plan.site.assumptions[0].because = "tab\there";
  auto const sheet = terminal_sheet(plan, false);
  for (char const letter : {'\x1b', '\r', '\x07', '\t'}) {
    EXPECT_EQ(sheet.find(letter), std::string::npos) << static_cast<int>(letter);
  }
  EXPECT_EQ(sheet.find("\xC2\x9B"), std::string::npos);
}

TEST(Terminal, WhatCannotBeSetWellSaysWhatStandsInTheWay) {
  auto const sheet = terminal_sheet(made_plan(), false);
  EXPECT_NE(sheet.find("1 value cannot be set well on this site"), std::string::npos);
  EXPECT_NE(sheet.find("In the way: shut and least draw"), std::string::npos);
  EXPECT_NE(sheet.find("Would change it: a smaller pump"), std::string::npos);
}

TEST(Terminal, TellsMarginsInUnitsAndWhatToMeasureNext) {
  auto plan = made_plan();
  EXPECT_EQ(terminal_sheet(plan, false).find("What to measure next"), std::string::npos);
  plan.proof.margins = {{"rating", Dimension::pressure, -31000.5, 7, "4.5 psi past the rating, in a_run (draw 7)."}};
  plan.proof.measure = {
      {"well.static_level", "depth to water", 0.41, 0.02, 0.11, 20, "Sound the well", "quiet_house_with_leak"}};
  plan.proof.scenarios[1].first_failure = FirstFailure{2.4, 0.0082, "first fails at demand.leak 0.3 gpm"};
  auto sheet = terminal_sheet(plan, false);
  expect_within_80(sheet);
  for (std::size_t at = sheet.find("\n    "); at != std::string::npos; at = sheet.find("\n    ")) {
    sheet.replace(at, 5, " ");  // as one reads it, not as it is broken
  }
  EXPECT_NE(sheet.find("  ! 4.5 psi past the rating"), std::string::npos);
  EXPECT_NE(sheet.find("quiet_house_with_leak first fails at demand.leak 0.3 gpm"), std::string::npos);
  EXPECT_NE(sheet.find("it explains 41 %"), std::string::npos);
  EXPECT_NE(sheet.find("Sound the well (20 min)"), std::string::npos);
  EXPECT_NE(sheet.find("+0.02 to about +0.11"), std::string::npos);
}

TEST(Terminal, TheStandingCautionsAreOnEverySheet) {
  auto const sheet = terminal_sheet(Plan{}, false);
  for (char const* const word : {"lock", "capacitors", "relief valve", "Disinfect", "Local code"}) {
    EXPECT_NE(sheet.find(word), std::string::npos) << word;
  }
}

TEST(Layout, ColumnsCountWhatIsSeen) {
  EXPECT_EQ(columns("abc"), 3U);
  EXPECT_EQ(columns("−0.5 °C"), 7U);
  EXPECT_EQ(columns("e\xCC\x81"), 1U);     // a letter and its accent
  EXPECT_EQ(columns("\xE4\xBA\x95"), 2U);  // a wide character
  EXPECT_EQ(columns("\xFF\xFE"), 2U);      // bytes that are no text
}

TEST(Layout, WrappingLosesNoWordAndCutsOnlyWhatIsTooLong) {
  auto const lines = wrapped("one two  three fourteenlettersword", 9);
  EXPECT_EQ(lines, (std::vector<std::string>{"one two", "three", "fourteenl", "etterswor", "d"}));
}

TEST(Words, ARunThatFailedNeverReadsAsHeld) {
  EXPECT_EQ(margin_text(-0.004), "−0.01");
  EXPECT_EQ(margin_text(0.999), "+0.99");
  EXPECT_EQ(margin_text(1e9), "> 999");
  EXPECT_EQ(margin_text(std::numeric_limits<double>::quiet_NaN()), "–");
}

TEST(Words, AMomentReadsAsHoursMinutesSeconds) {
  EXPECT_EQ(clock_text(0), "0:00:00.0");
  EXPECT_EQ(clock_text(3753.54), "1:02:33.5");
  EXPECT_EQ(clock_text(59.96), "0:01:00.0");
}

JudgedRun made_run() {
  JudgedRun run;
  run.site_name = "Made Hollow 1";
  run.scenario = "ordinary_day";
  run.title = "An ordinary day";
  run.says = "Taps open and close as in any house.";
  run.seed = 1;
  run.draw = 7;
  run.trace = made_trace(600);
  Criterion criterion{Measure::least_outlet_pressure,       0, 275790, 27579, 0, {},
                      "keeps 40 psi at the highest outlet", ""};
  run.criteria = {criterion};
  run.verdicts = {{false, 265000, -0.39}};
  return run;
}

TEST(RunSheet, TellsWhatHappenedAndHowItIsJudged) {
  auto const sheet = run_sheet(made_run(), false);
  expect_within_80(sheet);
  EXPECT_NE(sheet.find("0:09:00.0  STOPS: dry run; rests before the next try"), std::string::npos);
  EXPECT_NE(sheet.find("FAILED  keeps 40 psi at the highest outlet"), std::string::npos);
  std::string on_one_line;
  for (auto const& line : wrapped(sheet, 100'000)) {
    on_one_line += line;
  }
  EXPECT_NE(on_one_line.find("38.44 psi; at least 40 psi; margin −0.39"), std::string::npos)
      << on_one_line;  // 265000/6894.757
}

TEST(Words, WhatRepeatsItselfIsToldOnce) {
  using Kind = RegulatorEvent::Kind;
  TraceEvent const eases{10, {Kind::mode, Mode::easing, {}}};
  TraceEvent const gives_up{20, {Kind::gave_up_sleep, Mode::holding, {}}};
  TraceEvent const sleeps{90, {Kind::slept, Mode::asleep, {}}};
  std::vector<TraceEvent> events{{5, {Kind::woke, Mode::holding, {}}}};
  for (int i = 0; i < 4; ++i) {
    events.push_back(eases);
    events.push_back(gives_up);
  }
  events.back().time_s = 80;
  events.push_back(eases);
  events.push_back(sleeps);
  auto const told = told_events(events);
  ASSERT_EQ(told.size(), 5U);
  EXPECT_EQ(again_says(told[2]), "these two 3 times more, until 0:01:20.0");
  EXPECT_EQ(told[3].time_s, 10);
  EXPECT_EQ(told[4].says, "goes to sleep");
  EXPECT_EQ(again_says(told[0]), "");

  std::vector<TraceEvent> const round{{1, {Kind::woke, Mode::holding, {}}}, eases, sleeps};
  std::vector<TraceEvent> rounds = round;
  rounds.insert(rounds.end(), round.begin(), round.end());
  rounds.insert(rounds.end(), round.begin(), round.end());
  auto const once = told_events(rounds);
  ASSERT_EQ(once.size(), 3U);
  EXPECT_EQ(again_says(once[2]), "these three 2 times more, until 0:01:30.0");
}

TEST(RunSheet, ARunThatWasNotComputedToItsEndHasFailed) {
  auto run = made_run();
  run.verdicts[0].passed = true;
  EXPECT_TRUE(run.passed());
  run.trace.ending = Ending::chatter;
  EXPECT_FALSE(run.passed());
  EXPECT_NE(run_sheet(run, false).find("could not be computed to its end: chatter"), std::string::npos);
}

TEST(RunSheet, TheTableHasAsManyCellsInEachRowAsInItsHead) {
  auto const csv = run_csv(made_trace(10));
  std::istringstream lines(csv);
  std::string line;
  std::getline(lines, line);
  auto const commas = std::count(line.begin(), line.end(), ',');
  std::size_t rows = 0;
  for (; std::getline(lines, line); ++rows) {
    EXPECT_EQ(std::count(line.begin(), line.end(), ','), commas);
    EXPECT_EQ(line.back(), '\r');
  }
  EXPECT_EQ(rows, 21U);
}

}  // namespace
}  // namespace wellproof
