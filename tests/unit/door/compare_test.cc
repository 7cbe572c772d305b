#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <string>

#include "door/compared.h"
#include "door/door.h"
#include "folders.h"
#include "unit/sheet/within_80.h"

namespace wellproof {
namespace {

using Json = nlohmann::json;

Request compare_request(std::vector<NamedText> sets) {
  Request made;
  made.command = "compare";
  made.site = {"shallow_strong.toml", example_text("shallow_strong.toml")};
  made.draws = least_draws;
  made.sets = std::move(sets);
  return made;
}

Answer ask(Request const& made) {
  return Door().ask(request_bytes(made));
}

ScenarioProof scenario(std::uint32_t failed, double margin) {
  ScenarioProof one;
  one.failed = failed;
  one.worst.margin = margin;
  return one;
}

TEST(Better, CountsFailuresBeforeMargins) {
  EXPECT_EQ(better(scenario(0, 0.1), scenario(1, -0.1)), Better::first);
  EXPECT_EQ(better(scenario(2, -3), scenario(1, -9)), Better::second);
  EXPECT_EQ(better(scenario(0, 0.1), scenario(0, 0.4)), Better::second);
  EXPECT_EQ(better(scenario(0, 0.400), scenario(0, 0.401)), Better::neither);
}

TEST(Compare, ASetComparedWithItselfIsTheSameEverywhere) {
  auto made = compare_request({{"derived", ""}, {"derived", ""}});
  made.json = true;
  auto const json = Json::parse(ask(made).out);
  EXPECT_TRUE(json["differing_settings"].empty());
  EXPECT_EQ(json["sets"][0]["scenarios"], json["sets"][1]["scenarios"]);
  for (auto const& each : json["better_in"]) {
    EXPECT_TRUE(each["better"].is_null());
  }
}

TEST(Compare, AFileChangesWhatItNamesAndNothingElse) {
  auto made = compare_request({{"derived", ""}, {"off.toml", "[dry_run]\namps_below = \"0 A\"\n"}});
  made.json = true;
  auto const answer = ask(made);
  auto const json = Json::parse(answer.out);
  EXPECT_EQ(json["differing_settings"], Json::array({"dry_run.amps_below"}));
  EXPECT_EQ(json["sets"][1]["settings_si"]["dry_run.amps_below"], 0);
  EXPECT_EQ(json["sets"][1]["name"], "off.toml");
}

TEST(Compare, FitsATerminalAndSaysInWordsWhichIsBetter) {
  auto const answer = ask(compare_request({{"derived", ""}, {"common_practice", ""}}));
  expect_within_80(answer.out);
  EXPECT_NE(answer.out.find("Only B loses:"), std::string::npos);
  EXPECT_NE(answer.out.find("sleep.speed_below"), std::string::npos);
  EXPECT_NE(answer.out.find("common_practice: what people commonly enter"), std::string::npos);
  EXPECT_EQ(answer.out.find('\x1b'), std::string::npos);
}

TEST(Compare, AsksForTwoSets) {
  EXPECT_EQ(ask(compare_request({{"derived", ""}})).exit_code, exit_code::bad_input);
  EXPECT_EQ(ask(compare_request({})).exit_code, exit_code::bad_input);
}

TEST(Compare, TellsProgressOverBothProofs) {
  std::size_t last = 0;
  std::size_t all_told = 0;
  Door const door([&](std::size_t done, std::size_t all) {
    EXPECT_GT(done, last);
    last = done;
    all_told = all;
  });
  auto const answer = door.ask(request_bytes(compare_request({{"derived", ""}, {"common_practice", ""}})));
  EXPECT_EQ(last, all_told);
  EXPECT_EQ(all_told, 2 * least_draws * hazards().size());
}

}  // namespace
}  // namespace wellproof
