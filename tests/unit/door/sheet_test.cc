// The sheet for the visit through the door.
#include <string>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "door/door.h"
#include "folders.h"

namespace wellproof {
namespace {

Request request() {
  Request made;
  made.command = "sheet";
  made.site = {"shallow_strong.toml", example_text("shallow_strong.toml")};
  made.draws = least_draws;
  made.html = "sheet.html";
  return made;
}

TEST(SheetCommand, ShowsTextAndAnswersWithItsPages) {
  auto const answer = Door().ask(request_bytes(request()));
  ASSERT_LE(answer.exit_code, 1) << answer.err;
  EXPECT_EQ(answer.out.rfind("Sheet for the visit: Alder Hollow 4", 0), 0U);
  EXPECT_EQ(answer.out.find("NOT PROVEN") == std::string::npos, answer.exit_code == 0);
  ASSERT_EQ(answer.files.size(), 1U);
  EXPECT_EQ(answer.files[0].first, "sheet.html");
  EXPECT_EQ(answer.files[0].second.rfind("<!DOCTYPE html>", 0), 0U);
}

TEST(SheetCommand, GivesTheSameTwice) {
  auto made = request();
  made.json = true;
  made.text = "sheet.txt";
  auto const once = Door().ask(request_bytes(made));
  made.threads = 3;
  auto const again = Door().ask(request_bytes(made));
  EXPECT_EQ(once.out, again.out);
  ASSERT_EQ(once.files.size(), 2U);
  EXPECT_EQ(once.files, again.files);
  EXPECT_TRUE(nlohmann::json::accept(once.out));
}

TEST(SheetCommand, TakesTheSettingsInForce) {
  auto made = request();
  made.set = {"pressure.target=52 psi"};
  auto const answer = Door().ask(request_bytes(made));
  EXPECT_NE(answer.out.find("52 psi  =  _"), std::string::npos) << answer.out;
  made.set = {"pressure.tarGet=52 psi"};
  EXPECT_EQ(Door().ask(request_bytes(made)).exit_code, exit_code::bad_input);
}

}  // namespace
}  // namespace wellproof
