#include "door/door.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <string>

#include "folders.h"

namespace wellproof {
namespace {

using Json = nlohmann::json;

Request request(std::string command) {
  Request made;
  made.command = std::move(command);
  made.site = {"shallow_strong.toml", example_text("shallow_strong.toml")};
  made.draws = least_draws;
  return made;
}

Answer ask(Request const& made) {
  return Door().ask(request_bytes(made));
}

TEST(Door, ARequestReadsBackAsWhatWasWritten) {
  auto made = request("run");
  made.scenario = "quiet_house";
  made.set = {"pressure.target=50 psi", "speed.floor=31 Hz"};
  made.settings = NamedText{"s.toml", "x = 1"};
  made.beside = {{"curve.csv", "1,2,3\n"}};
  made.seed = 18446744073709551615U;
  made.units = UnitSystem::metric;
  made.json = true;
  made.csv = "a.csv";
  auto const read = read_request(request_bytes(made));
  ASSERT_TRUE(read);
  EXPECT_EQ(request_bytes(*read), request_bytes(made));
  EXPECT_EQ(read->seed, made.seed);
  EXPECT_EQ(read->settings->text, "x = 1");
  EXPECT_EQ(read->beside.at(0).text, "1,2,3\n");
}

TEST(Door, BytesThatAreNoRequestAreRefusedNotThrown) {
  for (char const* const bytes :
       {"", "{", "[]", "null", "\xFF\xFE", R"({"command": 3})", R"({"site": []})", R"({"options": {"draws": -1}})",
        R"({"options": {"draws": 1e99}})", R"({"options": {"set": "x"}})", R"({"options": {"settings": 7}})",
        R"({"site": {"beside": [3]}})", R"({"command": "plna"})", R"({"extra": 1})", R"({"options": {"unitz": "us"}})",
        R"({"options": {"threads": 0}})"}) {
    auto const answer = Door().ask(bytes);
    EXPECT_EQ(answer.exit_code, exit_code::bad_input) << bytes;
    EXPECT_FALSE(answer.err.empty()) << bytes;
    EXPECT_TRUE(answer.out.empty()) << bytes;
  }
}

TEST(Door, AnUnknownCommandIsAnsweredWithTheNearest) {
  EXPECT_NE(Door().ask(R"({"command": "chekc"})").err.find("did you mean \"check\"?"), std::string::npos);
}

TEST(Door, FindingsOfSiteAndSettingsComeTogether) {
  auto made = request("map");
  made.site.text += "\n[nonsense]\nx = 1\n";
  made.set = {"presure.target=50 psi", "speed.ceiling=60 psi", "fill.time", "sleep.hold=-3 s"};
  auto const answer = ask(made);
  EXPECT_EQ(answer.exit_code, exit_code::bad_input);
  for (char const* const piece :
       {"nonsense", "did you mean \"pressure.target\"?", "speed.ceiling", "KEY=VALUE", "sleep.hold"}) {
    EXPECT_NE(answer.err.find(piece), std::string::npos) << piece << "\n" << answer.err;
  }
}

TEST(Door, AFindingInASettingsFileNamesItsPlace) {
  auto made = request("map");
  made.settings = NamedText{"mine.toml", "[pressure]\ntarget = \"50 gpm\"\nwake_drop = 5\n"};
  auto const answer = ask(made);
  EXPECT_NE(answer.err.find("mine.toml:2:"), std::string::npos) << answer.err;
  EXPECT_NE(answer.err.find("mine.toml:3:13: pressure.wake_drop"), std::string::npos) << answer.err;
}

TEST(Door, WhatIsGivenStandsInPlaceOfWhatIsDerived) {
  auto made = request("plan");
  made.settings = NamedText{"mine.toml", "pressure.wake_drop = \"6 psi\"\nsleep.hold = \"9 s\"\n"};
  made.set = {"pressure.wake_drop=7 psi", "permissive.sense=closed_runs"};
  made.json = true;
  auto const json = Json::parse(ask(made).out);
  EXPECT_EQ(json["settings"]["pressure.wake_drop"]["text"], "7 psi");  // the command line wins
  EXPECT_EQ(json["settings"]["pressure.wake_drop"]["imposed"], true);
  EXPECT_EQ(json["settings"]["sleep.hold"]["value"], 9.0);
  EXPECT_EQ(json["settings"]["permissive.sense"]["value"], "closed_runs");
  EXPECT_FALSE(json["settings"]["speed.floor"].contains("imposed"));
}

TEST(Door, AFloorAboveTheCeilingIsRefused) {
  auto made = request("map");
  made.set = {"speed.floor=70 Hz", "speed.ceiling=50 Hz"};
  auto const answer = ask(made);
  EXPECT_EQ(answer.exit_code, exit_code::bad_input);
  EXPECT_NE(answer.err.find("speed.floor"), std::string::npos);
}

TEST(Door, ARunShowsWhatTheProofSaw) {
  auto made = request("plan");
  made.json = true;
  auto const plan = Json::parse(ask(made).out);
  made.command = "run";
  std::size_t compared = 0;
  for (auto const& scenario : plan["proof"]["scenarios"]) {
    made.scenario = scenario["name"];
    made.draw = scenario["worst"]["draw"];
    auto const answer = ask(made);
    auto const run = Json::parse(answer.out);
    EXPECT_EQ(run["passed"], scenario["worst"]["passed"]) << made.scenario;
    EXPECT_EQ(answer.exit_code, scenario["worst"]["passed"] ? exit_code::fine : exit_code::not_proven);
    double least = 1e300;
    for (auto const& criterion : run["criteria"]) {
      least = std::min(least, criterion["margin"].get<double>());
    }
    EXPECT_EQ(least, scenario["margin"].get<double>()) << made.scenario;
    ++compared;
  }
  EXPECT_GE(compared, 5U);
}

TEST(Door, ProgressCountsUpToAll) {
  std::size_t last = 0;
  std::size_t all_runs = 0;
  Door const door([&](std::size_t done, std::size_t all) {
    EXPECT_EQ(done, last + 1);
    last = done;
    all_runs = all;
  });
  door.ask(request_bytes(request("plan")));
  EXPECT_GT(all_runs, 0U);
  EXPECT_EQ(last, all_runs);
}

TEST(Door, TheStarterPassesItsOwnCheck) {
  for (auto const units : {UnitSystem::us, UnitSystem::metric}) {
    Request made;
    made.command = "new";
    made.starter = "mine.toml";
    made.units = units;
    auto const starter = ask(made);
    ASSERT_EQ(starter.files.size(), 1U);
    made.command = "check";
    made.site = {"mine.toml", starter.files[0].second};
    auto const checked = ask(made);
    EXPECT_EQ(checked.exit_code, exit_code::fine) << checked.err;
    EXPECT_NE(checked.out.find("mine.toml: nothing wrong"), std::string::npos);
  }
}

TEST(Door, AnAnswerAsBytesIsJson) {
  auto const json = Json::parse(answer_bytes({1, "out \xFF", "err", {{"a", "b"}}}));
  EXPECT_EQ(json["exit_code"], 1);
  EXPECT_EQ(json["files"][0]["name"], "a");
}

}  // namespace
}  // namespace wellproof
