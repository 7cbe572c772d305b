// Settings by search, asked through the door.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <string>

#include "door/door.h"
#include "folders.h"

namespace wellproof {
namespace {

using Json = nlohmann::json;

constexpr int draws = 16;

Answer plan(bool search, std::vector<std::string> set = {}, bool json = true) {
  Request made;
  made.command = "plan";
  made.site = {"shallow_strong.toml", example_text("shallow_strong.toml")};
  made.draws = draws;
  made.json = json;
  made.search = search;
  made.set = std::move(set);
  return Door().ask(request_bytes(made));
}

TEST(DoorSearch, MovesTheCeilingWithWhatRestsOnItAndTheProofIsOfWhatItSays) {
  auto const found = Json::parse(plan(true).out);
  auto const& search = found["search"];
  EXPECT_GE(double(search["found_margin"]), double(search["start_margin"]) + 0.01) << "or nothing is moved";
  EXPECT_LT(double(search["common_practice"]["margin"]), double(search["found_margin"]));
  std::vector<std::string> given;
  bool ceiling = false;
  bool followed = false;
  for (auto const& moved : search["moved"]) {
    std::string const key = moved["key"];
    ceiling |= key == "speed.ceiling" && !moved["followed"].get<bool>();
    followed |= key == "closed.amps_below" && moved["followed"].get<bool>();
    given.push_back(key + "=" + std::string(found["settings"][key]["text"]));
  }
  EXPECT_TRUE(ceiling) << search.dump(1);
  EXPECT_TRUE(followed) << search.dump(1);
  std::string const reason = found["settings"]["closed.amps_below"]["because"];
  EXPECT_NE(reason.find("At " + std::string(found["settings"]["speed.ceiling"]["text"])), std::string::npos) << reason;
  EXPECT_NE(reason.find("before the search moved the ceiling"), std::string::npos) << reason;
  // What it says to give without searching is the same plan.
  auto const again = Json::parse(plan(false, given).out);
  EXPECT_EQ(again["proof"]["scenarios"], found["proof"]["scenarios"]);
}

TEST(DoorSearch, AGivenCeilingStaysWhereItIs) {
  auto const found = Json::parse(plan(true, {"speed.ceiling=58.5 Hz"}).out);
  for (auto const& moved : found["search"]["moved"]) {
    EXPECT_NE(moved["key"], "speed.ceiling");
    EXPECT_FALSE(moved["followed"].get<bool>()) << moved;
  }
}

}  // namespace
}  // namespace wellproof
