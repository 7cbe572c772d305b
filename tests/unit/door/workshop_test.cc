#include "door/workshop.h"

#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <string>

#include "folders.h"

namespace wellproof {
namespace {

using Json = nlohmann::json;

std::string example_site() {
  return example_text("shallow_strong.toml");
}

Json asked(char const* command) {
  return {{"command", command},
          {"site", {{"file", "s.toml"}, {"text", example_site()}}},
          {"options", {{"draws", least_draws}, {"json", true}}}};
}

Json out(Answer const& answer) {
  EXPECT_EQ(answer.exit_code, exit_code::fine) << answer.err;
  return Json::parse(answer.out, nullptr, false);
}

TEST(Workshop, SharesOfAProofJoinedAreTheProof) {
  // The plan made at once is the standard, byte for byte.
  Workshop workshop;
  Json shares = Json::array();
  for (unsigned first : {6U, 0U, 3U}) {
    auto request = asked("share");
    request["options"]["first"] = first;
    request["options"]["count"] = first == 6 ? 2U : 3U;
    shares.push_back(out(workshop.ask(request.dump())));
    EXPECT_FALSE(shares.back()["worst"]["quiet_house"].get<std::string>().empty());
  }
  auto joined = asked("plan");
  joined["options"]["made"] = shares.dump();
  auto const of_shares = workshop.ask(joined.dump());
  auto const at_once = Door().ask(asked("plan").dump());
  EXPECT_EQ(of_shares.exit_code, at_once.exit_code);
  EXPECT_EQ(of_shares.out, at_once.out);
  // Swings that are not there are looked for.
  for (auto const& none : {Json(nullptr), Json::array(), Json{{{1, 2}}}}) {
    shares[0]["swings"] = none;
    joined["options"]["made"] = shares.dump();
    EXPECT_EQ(workshop.ask(joined.dump()).out, at_once.out) << none;
  }
}

TEST(Workshop, ASearchMakesRunsOfItsOwnThoughAProofWasPutTogether) {
  Workshop workshop;
  auto plan = asked("plan");
  // With everything given there is nothing to move, and what common practice comes to is left to find.
  plan["options"]["set"] = {"speed.ceiling=59 Hz",      "pressure.wake_drop=7 psi", "regulator.gain=0.5 Hz/psi",
                            "regulator.reset_time=6 s", "sleep.speed_below=41 Hz",  "sleep.hold=50 s",
                            "sleep.ramp=0.2 Hz/s",      "dry_run.amps_below=3.3 A", "dry_run.delay=6 s",
                            "closed.amps_below=4.3 A",  "closed.delay=11 s",        "long_run.limit=50 min",
                            "fill.time=3 min"};
  plan["options"]["search"] = true;
  auto share = plan;
  share["command"] = "share";
  share["options"]["count"] = least_draws;
  auto joined = plan;
  joined["options"]["made"] = Json::array({out(workshop.ask(share.dump()))}).dump();
  auto const of_door = Json::parse(Door().ask(plan.dump()).out);
  EXPECT_EQ(Json::parse(workshop.ask(joined.dump()).out), of_door);
  EXPECT_LT(double(of_door["search"]["common_practice"]["margin"]), double(of_door["search"]["found_margin"]));
  EXPECT_TRUE(of_door["search"]["moved"].empty());
}

TEST(Workshop, WithACardItAnswersAsTheDoorOnItsStepsWhateverWasSetBefore) {
  Workshop workshop;
  for (char const* const card : {"card_plain.toml", "card_power.toml"}) {
    auto request = asked("derive");
    request["options"]["card"] = {{"file", card}, {"text", example_text(card)}};
    auto moved = request;
    moved["options"]["set"] = {"pressure.target=47.3 psi"};
    auto plan = moved;
    plan["command"] = "plan";
    auto const of_door = Json::parse(Door().ask(plan.dump()).out);
    auto const derived = out(workshop.ask(request.dump()));
    auto const given = out(workshop.ask(moved.dump()));
    EXPECT_EQ(given["settings"], of_door["settings"]) << card;
    EXPECT_EQ(given["drive"]["entries"], of_door["drive"]["entries"]) << card;
    EXPECT_EQ(out(workshop.ask(request.dump())), derived) << card;
    auto share = moved;
    share["command"] = "share";
    share["options"]["count"] = least_draws;
    auto joined = plan;
    joined["options"]["made"] = Json::array({out(workshop.ask(share.dump()))}).dump();
    EXPECT_EQ(Json::parse(workshop.ask(joined.dump()).out), of_door) << "the runs are those of the drive, " << card;
  }
}

TEST(Workshop, AnswersAreRankedOverTheWorldsThatAreThere) {
  Workshop workshop;
  auto request = asked("explain");
  request["history"] = {{"file", "stops.txt"},
                        {"text", "now: 2026-08-14 07:00\nyesterday 9:40 pm: dry\n12:13 am: dry\n1:29 am: dry\n"}};
  auto const plain = workshop.ask(request.dump());
  auto const before = out(plain);
  EXPECT_EQ(plain.out, Door().ask(request.dump()).out);
  auto answered = request;
  auto const& question = before["next"][0];
  auto const word = question["answers"].back()["word"].get<std::string>();
  answered["options"]["answers"] = {question["key"].get<std::string>() + "=" + word};
  auto const after = out(workshop.ask(answered.dump()));
  EXPECT_EQ(after["worlds"], before["worlds"]);
  // The leader after an answer is the one that was told beforehand (the table of Explained::questions).
  EXPECT_EQ(after["causes"][0]["key"], question["answers"].back()["leader"]);
  EXPECT_EQ(workshop.ask(request.dump()).out, plain.out) << "taken back it is as before";
  answered["options"]["answers"] = {"watch_gauge=perhaps"};
  EXPECT_EQ(workshop.ask(answered.dump()).exit_code, exit_code::bad_input);
}

TEST(Workshop, SharesThatAreNoneAreFoundOut) {
  for (char const* const made : {"x", "{}", "[]", "[3]", R"([{"runs": {}}])", R"([{"runs": {"ordinary_morning": 3}}])",
                                 R"([{"runs": {"ordinary_morning": [[0, true, 1e999, 0, 0, 0, 0, null]]}}])",
                                 R"([{"runs": {"ordinary_morning": [[9, true, 1, 0, 0, 0, 9, null]]}}])"}) {
    auto request = asked("plan");
    request["options"]["made"] = made;
    auto const answer = Door().ask(request.dump());
    EXPECT_EQ(answer.exit_code, exit_code::bad_input) << made;
    EXPECT_FALSE(answer.findings.empty());
  }
}

TEST(Workshop, AnotherSettingChangesTheShareAndBackAgain) {
  Workshop workshop;
  auto request = asked("share");
  auto const first = workshop.ask(request.dump()).out;
  auto other = request;
  other["options"]["set"] = {"dry_run.amps_below=5.9 A"};
  EXPECT_NE(workshop.ask(other.dump()).out, first);
  EXPECT_EQ(workshop.ask(request.dump()).out, first);
  EXPECT_EQ(Door().ask(request.dump()).out, first) << "what remembers answers as what does not";
  other["options"]["set"] = {"dry_run.amps_belov=5.9 A"};
  EXPECT_EQ(workshop.ask(other.dump()).exit_code, exit_code::bad_input);
}

TEST(Workshop, DerivesWithoutAProof) {
  auto const derived = out(Workshop().ask(asked("derive").dump()));
  auto const planned = Json::parse(Door().ask(asked("plan").dump()).out);
  EXPECT_EQ(derived["settings"], planned["settings"]);
  EXPECT_TRUE(derived["proof"]["scenarios"].empty());
}

// A hand that was told what another derived answers byte for byte as one that derived it; the deep example has a rest
// curve as well.
TEST(Workshop, WhatAnotherHandDerivedNeedNotBeDerivedAgain) {
  for (char const* const site : {"shallow_strong.toml", "deep_weak.toml"}) {
    auto request = asked("derive");
    request["site"] = {{"file", site}, {"text", example_text(site)}};
    request["site"]["beside"] = {{{"name", "deep_weak_curve.csv"}, {"text", example_text("deep_weak_curve.csv")}}};
    auto const first = Workshop().ask(request.dump());
    ASSERT_EQ(first.files.size(), 1U);
    request["options"]["derived"] = first.files.front().second;
    Workshop told;
    EXPECT_EQ(told.ask(request.dump()).out, first.out);
    auto const again = told.ask(request.dump());
    EXPECT_EQ(again.files, first.files);
    request["options"]["set"] = {"pressure.target=47 psi"};
    auto const moved = told.ask(request.dump());
    request["options"].erase("derived");
    EXPECT_EQ(moved.out, Workshop().ask(request.dump()).out);
  }
}

// That it is taken shows by a word that no derivation writes; where it cannot be taken, it is derived anew.
TEST(Workshop, WhatWasDerivedElsewhereIsNotTaken) {
  auto request = asked("derive");
  auto const first = Workshop().ask(request.dump());
  auto const text = first.files.front().second;
  auto const with = [&](std::string derived, unsigned draws) {
    request["options"]["derived"] = std::move(derived);
    request["options"]["draws"] = draws;
    return Workshop().ask(request.dump());
  };
  auto marked = Json::parse(text);
  marked["reasons"][0][1] = "told by another";
  EXPECT_NE(with(marked.dump(), least_draws).out.find("told by another"), std::string::npos);
  EXPECT_EQ(with(marked.dump(), least_draws + 1).out.find("told by another"), std::string::npos) << "of other draws";
  for (auto const& [key, value] : {std::pair<char const*, Json>{"of", 3},
                                   {"settings", Json::object()},
                                   {"reasons", 7},
                                   {"reasons", {{"a", "b"}}},
                                   {"rest_curve", {{"x", 1, 2, 3}}},
                                   {"not_on_drive", {{1}}}}) {
    auto broken = marked;
    broken[key] = value;
    EXPECT_EQ(with(broken.dump(), least_draws).out, first.out) << key;
  }
  auto no_choice = marked;
  no_choice["settings"]["permissive.sense"] = "perhaps";
  EXPECT_EQ(with(no_choice.dump(), least_draws).out, first.out);
  for (char const* const none : {"x", "[]", "3", "null", "{}"}) {
    EXPECT_EQ(with(none, least_draws).out, first.out) << none;
  }
}

TEST(Workshop, ALiveRunIsOpenedTurnedAndTold) {
  Workshop workshop;
  auto request = asked("live");
  request["live"] = {{"do", "go"}, {"seconds", 1}};
  EXPECT_EQ(workshop.ask(request.dump()).exit_code, exit_code::bad_input) << "nothing is open";
  request["live"] = {{"do", "open"}};
  auto const opened = out(workshop.ask(request.dump()));
  EXPECT_EQ(opened["words"]["mode"], "asleep");
  EXPECT_GT(opened["scene"]["setting_m"].get<double>(), 0);
  auto const tell = [&](Json const& live) {
    return out(workshop.ask(Json{{"command", "live"}, {"live", live}}.dump()));
  };
  auto const ran =
      tell({{"do", "go"}, {"seconds", 60}, {"acts", {{{"act", "outlet"}, {"outlet", 2}, {"value", 0.6}}}}});
  EXPECT_EQ(ran["words"]["mode"], "holding");
  EXPECT_GT(ran["now"]["speed_hz"].get<double>(), 20);
  EXPECT_FALSE(ran["events"].empty());
  EXPECT_GT(ran["points"].size(), 100U);
  auto again = asked("live");
  again["live"] = {{"do", "again"}, {"every", 0.5}};
  auto const columns = out(workshop.ask(again.dump()))["columns"];
  for (auto const& [name, column] : columns.items()) {
    EXPECT_EQ(column.size(), columns["t"].size()) << name;
    auto const& now = name == "t" ? Json(60) : ran["now"][name];
    EXPECT_NEAR(column.back().get<double>(), now.get<double>(), 0.05 * std::abs(now.get<double>())) << name;
  }
  EXPECT_GT(columns["t"].size(), 40U);
  auto const dragged = tell({{"do", "go"}, {"seconds", 0}, {"acts", {{{"act", "water"}, {"value", 2}}}}});
  EXPECT_NEAR(dragged["now"]["level_m"].get<double>(), ran["now"]["level_m"].get<double>() + 2, 0.01);
}

TEST(Workshop, WhatNoLiveRunUnderstandsIsRefused) {
  Workshop workshop;
  auto request = asked("live");
  request["live"] = {{"do", "open"}};
  out(workshop.ask(request.dump()));
  for (char const* const live :
       {R"({"do": "fly"})", R"({"do": "go", "seconds": -1})", R"({"do": "go", "seconds": 1e9})", R"([])", R"({})",
        R"({"do": "go", "acts": [{"act": "outlet", "outlet": 99, "value": 1}]})", R"({"do": "go", "acts": [3]})",
        R"({"do": "go", "acts": [{"act": "outlet", "outlet": -1, "value": 1}]})",
        R"({"do": "go", "acts": [{"act": "moon", "value": 1}]})", R"({"do": "open", "scenario": "none such"})"}) {
    request["live"] = Json::parse(live);
    EXPECT_EQ(workshop.ask(request.dump()).exit_code, exit_code::bad_input) << live;
  }
}

TEST(Workshop, ACheckedSiteTellsEachQuantityForAForm) {
  auto const checked = out(Workshop().ask(asked("check").dump()));
  bool level = false;
  bool assumed = false;
  for (auto const& each : checked["quantities"]) {
    level = level || (each["key"] == "well.static_level" && each["given"] == true && each["unit"] == "ft");
    assumed = assumed || (each["given"] == false && !each["because"].get<std::string>().empty());
  }
  EXPECT_TRUE(level);
  EXPECT_TRUE(assumed);
  auto broken = asked("check");
  broken["site"]["text"] = "[well]\nstatic_levle = \"40 ft\"\n";
  auto const answer = Json::parse(answer_bytes(Workshop().ask(broken.dump())));
  ASSERT_TRUE(answer.contains("findings"));
  bool placed = false;
  for (auto const& each : answer["findings"]) {
    placed = placed || (each["line"] == 2 && each["nearest"] == "static_level");
  }
  EXPECT_TRUE(placed) << answer["findings"].dump();
}

}  // namespace
}  // namespace wellproof
