// The command that says how near the regulator comes to swinging, and what to do where it swings.
#include <algorithm>
#include <string>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "door/commands.h"
#include "folders.h"
#include "unit/sheet/within_80.h"

namespace wellproof {
namespace {

Request tune_request(std::string swing, std::string period) {
  Request made;
  made.command = "tune";
  made.site = {"shallow_strong.toml", example_text("shallow_strong.toml")};
  made.draws = 8;
  made.swing = std::move(swing);
  made.period = std::move(period);
  return made;
}

nlohmann::json tuned(Request made) {
  made.json = true;
  auto const answer = tune_command(made);
  EXPECT_EQ(answer.exit_code, exit_code::fine) << answer.err;
  return nlohmann::json::parse(answer.out);
}

double largest_sensitivity(nlohmann::json const& check) {
  double largest = 0;
  for (auto const& loop : check["loops"]) {
    largest = std::max(largest, loop["sensitivity"].get<double>());
  }
  return largest;
}

TEST(Tune, WhatIsDerivedKeepsEachLoopAwayFromSwinging) {
  auto const json = tuned(tune_request("", ""));
  EXPECT_EQ(json["as_set"]["loops"].size(), 8U * 2 * 3);
  EXPECT_LE(largest_sensitivity(json["as_set"]), 1.7);
  EXPECT_FALSE(json.contains("advice"));
}

TEST(Tune, AQuickSwingHalvesTheGainAndBringsEachLoopFartherAway) {
  auto made = tune_request("20 psi", "2 s");
  made.set = {"regulator.gain=8 Hz/psi", "regulator.reset_time=5 s"};
  auto const json = tuned(made);
  EXPECT_NEAR(json["as_advised"]["regulator.gain"].get<double>() / json["as_set"]["regulator.gain"].get<double>(), 0.5,
              0.01);
  EXPECT_LT(largest_sensitivity(json["as_advised"]), largest_sensitivity(json["as_set"]));
}

TEST(Tune, RefusesASwingWithoutItsPeriodAndWhatIsNone) {
  auto const answer = tune_command(tune_request("8 psi", ""));
  EXPECT_EQ(answer.exit_code, exit_code::bad_input);
  EXPECT_NE(answer.err.find("--period"), std::string::npos);
  EXPECT_EQ(answer.err.find("--swing"), std::string::npos);
  EXPECT_NE(tune_command(tune_request("8 gpm", "-3 s")).err.find("--swing"), std::string::npos);
}

TEST(Tune, FitsATerminal) {
  expect_within_80(tune_command(tune_request("20 psi", "60 s")).out);
}

}  // namespace
}  // namespace wellproof
