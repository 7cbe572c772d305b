// A plan for one drive, asked through the door.
#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <string>

#include "door/door.h"
#include "folders.h"

namespace wellproof {
namespace {

using Json = nlohmann::json;

Request with_card(std::string command, std::string const& card) {
  Request made;
  made.command = std::move(command);
  made.site = {"shallow_strong.toml", example_text("shallow_strong.toml")};
  made.card = NamedText{card, example_text(card)};
  made.draws = least_draws;
  return made;
}

Answer ask(Request const& made) {
  return Door().ask(request_bytes(made));
}

TEST(DoorCard, APlanEntersWhatTheCardTakesInItsOrder) {
  auto made = with_card("plan", "card_plain.toml");
  made.json = true;
  made.settings_to = "set.toml";
  auto const answer = ask(made);
  ASSERT_NE(answer.exit_code, exit_code::bad_input) << answer.err;
  auto const plan = Json::parse(answer.out);
  auto const& entries = plan["drive"]["entries"];
  ASSERT_EQ(entries.size(), 23U);
  EXPECT_EQ(entries[0]["label"], "Motor label amps");
  for (auto const& entry : entries) {
    std::string const key = entry["key"];
    if (entry.contains("entered")) {
      // The proof is of what is entered.
      EXPECT_EQ(plan["settings"][key]["value"], entry["entered"]) << key;
      EXPECT_EQ(entry["derived"] == entry["entered"], entry["rounded"] == "") << key;
    }
  }
  EXPECT_FALSE(plan["settings"].contains("fill.time"));
  EXPECT_FALSE(plan["drive"]["lacking"].empty());
  // What was written is read back to the same settings, which the drive takes as they are.
  ASSERT_EQ(answer.files.size(), 1U);
  auto again = with_card("plan", "card_plain.toml");
  again.json = true;
  again.settings = NamedText{"set.toml", answer.files[0].second};
  auto const then = ask(again);
  ASSERT_NE(then.exit_code, exit_code::bad_input) << then.err;
  auto const second = Json::parse(then.out);
  for (auto const& entry : second["drive"]["entries"]) {
    if (entry.contains("entered")) {
      double const before = plan["settings"][std::string(entry["key"])]["value"];
      EXPECT_NEAR(double(entry["entered"]), before, 1e-9 * std::abs(before)) << entry["key"];
    }
  }
}

TEST(DoorCard, TheSheetHasLabelsAndWhatTheDriveLacksWithinEightyColumns) {
  auto const answer = ask(with_card("plan", "card_plain.toml"));
  for (char const* const piece : {"Settings on the drive: Plain bench drive", "House pressure", "page 2, line 1",
                                  "What this drive does not have", "sensor.trim", "--card CARD"}) {
    EXPECT_NE(answer.out.find(piece), std::string::npos) << piece;
  }
}

TEST(DoorCard, ARunGoesByTheCardsLogic) {
  auto plain = with_card("run", "card_plain.toml");
  plain.scenario = "overdrawn_well";
  auto power = with_card("run", "card_power.toml");
  power.scenario = "overdrawn_well";
  auto const one = ask(plain);
  auto const other = ask(power);
  ASSERT_NE(one.exit_code, exit_code::bad_input) << one.err;
  ASSERT_NE(other.exit_code, exit_code::bad_input) << other.err;
  EXPECT_NE(one.out, other.out);
}

TEST(DoorCard, FindingsOfSiteAndCardComeTogether) {
  auto made = with_card("plan", "card_plain.toml");
  made.site.text += "\n[nonsense]\nx = 1\n";
  made.card->text += "\n[[entry]]\nkey = \"fill.time\"\n";
  auto const answer = ask(made);
  EXPECT_EQ(answer.exit_code, exit_code::bad_input);
  EXPECT_NE(answer.err.find("nonsense"), std::string::npos);
  EXPECT_NE(answer.err.find("card_plain.toml:"), std::string::npos);
}

TEST(DoorCard, ASearchEndsOnTheStepsOfTheDrive) {
  auto made = with_card("plan", "card_plain.toml");
  made.json = true;
  made.search = true;
  // All that a search moves but the gain, which is left to it.
  made.set = {"pressure.wake_drop=8 psi", "regulator.reset_time=6 s", "sleep.speed_below=40 Hz",
              "sleep.hold=20 s",          "sleep.ramp=1 Hz/s",        "dry_run.amps_below=3.5 A",
              "dry_run.delay=6 s",        "closed.amps_below=4 A",    "closed.delay=10 s",
              "speed.ceiling=59 Hz",      "long_run.limit=50 min"};
  auto const answer = ask(made);
  ASSERT_NE(answer.exit_code, exit_code::bad_input) << answer.err;
  auto const plan = Json::parse(answer.out);
  auto const& search = plan["search"];
  EXPECT_GE(double(search["found_margin"]), double(search["start_margin"]));
  for (auto const& moved : search["moved"]) {
    EXPECT_EQ(moved["key"], "regulator.gain");
  }
  for (auto const& entry : plan["drive"]["entries"]) {
    if (entry.contains("entered")) {
      EXPECT_EQ(plan["settings"][std::string(entry["key"])]["value"], entry["entered"]) << entry["key"];
      EXPECT_EQ(entry["rounded"], "") << entry["key"] << ": what was found is what is entered";
    }
  }
}

}  // namespace
}  // namespace wellproof
