// Readings through the door: what moved, what fits nothing, and the narrower site file.
#include <fstream>
#include <iterator>
#include <string>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "door/door.h"
#include "site/read.h"

namespace wellproof {
namespace {

std::string text_of(std::string const& name) {
  std::ifstream file(std::string(WP_SOURCE_DIR) + "/examples/" + name);
  return {std::istreambuf_iterator<char>(file), {}};
}

Request request(std::string const& readings) {
  Request made;
  made.command = "fit";
  made.site = {"shallow_strong.toml", text_of("shallow_strong.toml")};
  made.readings = {readings, text_of(readings)};
  made.draws = least_draws;
  return made;
}

Answer ask(Request const& made) {
  return Door().ask(request_bytes(made));
}

TEST(FitCommand, ARequestReadsBackAsWhatWasWritten) {
  auto made = request("shallow_strong_readings.toml");
  made.into = "narrower.toml";
  auto const read = read_request(request_bytes(made));
  ASSERT_TRUE(read);
  EXPECT_EQ(read->readings.file, made.readings.file);
  EXPECT_EQ(read->readings.text, made.readings.text);
  EXPECT_EQ(read->into, "narrower.toml");
}

TEST(FitCommand, NarrowsTheExampleAndItsFileReadsBackWithoutFindings) {
  auto made = request("shallow_strong_readings.toml");
  made.into = "narrower.toml";
  made.json = true;
  auto const answer = ask(made);
  ASSERT_LE(answer.exit_code, 1) << answer.err;
  auto const json = nlohmann::json::parse(answer.out);
  EXPECT_EQ(json["settings_stand"].get<bool>(), answer.exit_code == 0);
  EXPECT_TRUE(json["misfits"].empty()) << answer.out;
  EXPECT_TRUE(json["site_file"].contains("supply.voltage"));
  EXPECT_FALSE(json["site_file"].contains("well.season_drop"));  // a day says nothing of the dry season
  ASSERT_EQ(answer.files.size(), 1U);
  auto const read = read_site(answer.files[0].second, "narrower.toml");
  ASSERT_TRUE(read);
  // The supply was read as 244.8 V ± 1 %, the site said 240 ± 7 V: the file is narrower now and about the reading.
  EXPECT_NEAR(middle(read->site.supply.voltage_v), 244.3, 0.5);
  EXPECT_LT(highest(read->site.supply.voltage_v) - lowest(read->site.supply.voltage_v), 8);
  // Every remark of the site's author is still there.
  EXPECT_NE(answer.files[0].second.find("# sounded with a tape, dry month"), std::string::npos);
}

TEST(FitCommand, RefusesABadSiteBadReadingsAndBadSettings) {
  auto made = request("shallow_strong_readings.toml");
  made.readings.text = "[[reading]]\ncondition = \"shut\"\n";
  auto answer = ask(made);
  EXPECT_EQ(answer.exit_code, exit_code::bad_input);
  EXPECT_NE(answer.err.find("shallow_strong_readings.toml:1:"), std::string::npos);
  made = request("shallow_strong_readings.toml");
  made.set = {"sensor.trimm=1 psi"};
  EXPECT_EQ(ask(made).exit_code, exit_code::bad_input);
  made = request("shallow_strong_readings.toml");
  made.site.text = "[well]\n";
  EXPECT_EQ(ask(made).exit_code, exit_code::bad_input);
}

}  // namespace
}  // namespace wellproof
