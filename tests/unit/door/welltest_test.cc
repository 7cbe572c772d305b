// A pumping test through the door, and its result in a site file.
#include <string>

#include <gtest/gtest.h>

#include "door/door.h"
#include "folders.h"
#include "site/read.h"

namespace wellproof {
namespace {

Request request() {
  Request made;
  made.command = "welltest";
  made.test.records = {{"step_test.csv", example_text("step_test.csv"), ""}};
  made.test.casing = "6 in";
  return made;
}

Answer ask(Request const& made) {
  return Door().ask(request_bytes(made));
}

TEST(WellTestCommand, ARequestReadsBackAsWhatWasWritten) {
  auto made = request();
  made.test.records.push_back({"b.csv", "t_min,s_m\n1,2\n", "30 m"});
  made.test.rates = {"20 gpm", "35 gpm @ 1 h"};
  made.test.step = "1 h";
  made.test.stop = "3 h";
  made.test.bore = "8 in";
  made.test.static_level = "10 ft";
  made.test.storativity = "1e-4";
  made.test.time_unit = "min";
  made.test.level_unit = "ft";
  auto const read = read_request(request_bytes(made));
  ASSERT_TRUE(read);
  EXPECT_EQ(request_bytes(*read), request_bytes(made));
  EXPECT_EQ(read->test.records.size(), 2U);
  EXPECT_EQ(read->test.level_unit, "ft");
}

TEST(WellTestCommand, RefusesATestThatIsNone) {
  for (char const* bytes : {R"({"command":"welltest"})", R"({"command":"welltest","test":5})",
                            R"({"command":"welltest","test":{"records":5}})",
                            R"({"command":"welltest","test":{"records":[5],"rates":[5],"step":5}})"}) {
    auto const answer = Door().ask(bytes);
    EXPECT_EQ(answer.exit_code, exit_code::bad_input) << bytes;
    EXPECT_FALSE(answer.err.empty()) << bytes;
  }
}

TEST(WellTestCommand, WritesRangesIntoASiteThatStillReads) {
  for (auto const units : {UnitSystem::us, UnitSystem::metric}) {
    auto made = request();
    made.units = units;
    made.site = {"mine.toml", example_text("shallow_strong.toml")};
    auto const answer = ask(made);
    ASSERT_EQ(answer.exit_code, exit_code::fine) << answer.err;
    ASSERT_EQ(answer.files.size(), 1U);
    EXPECT_EQ(answer.files[0].first, "mine.toml");
    auto const site = read_site(answer.files[0].second, "mine.toml");
    ASSERT_TRUE(site) << answer.files[0].second;
    // The invented well of the example was made with 6e-5 m²/s and 6e5 s²/m5.
    auto const& well = site->site.well;
    EXPECT_LT(lowest(well.transmissivity_m2_s), 6e-5);
    EXPECT_GT(highest(well.transmissivity_m2_s), 5.9e-5);
    EXPECT_LT(lowest(well.quadratic_loss_s2_m5), 6e5);
    EXPECT_GT(highest(well.quadratic_loss_s2_m5), 6e5);
  }
}

TEST(WellTestCommand, LeavesTheSiteAloneWhereTheDataCannotTell) {
  auto made = request();
  made.site = {"mine.toml", example_text("shallow_strong.toml")};
  made.test.records = {{"short.csv", "t_s,s_ft\n10,0.22\n20,0.45\n30,0.67\n40,0.89\n50,1.12\n60,1.34\n", ""}};
  made.test.rates = {"2 gpm"};
  auto const answer = ask(made);
  EXPECT_EQ(answer.exit_code, exit_code::not_proven) << answer.out;
  EXPECT_TRUE(answer.files.empty());
  EXPECT_NE(answer.err.find("not written"), std::string::npos);
}

TEST(WellTestCommand, AnswersWithAReport) {
  auto made = request();
  made.report = "out.html";
  auto const answer = ask(made);
  ASSERT_EQ(answer.files.size(), 1U);
  EXPECT_EQ(answer.files[0].second.rfind("<!DOCTYPE html>", 0), 0U);
}

}  // namespace
}  // namespace wellproof
