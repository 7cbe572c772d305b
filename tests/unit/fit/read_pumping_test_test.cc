#include "fit/read_pumping_test.h"

#include <string>

#include <gtest/gtest.h>

namespace wellproof {
namespace {

PumpingTestText plain(std::string text, std::string distance = "30 m") {
  PumpingTestText test;
  test.records = {{"a.csv", std::move(text), std::move(distance)}};
  test.rates = {"788 m3/d"};
  return test;
}

std::string all(Result<PumpingTest> const& read) {
  std::string out;
  if (!read) {
    for (auto const& finding : read.error()) {
      out += text(finding) + "\n";
    }
  }
  return out;
}

TEST(read_pumping_test, takes_units_from_the_head_in_any_order) {
  for (char const* head :
       {"t_min,s_ft", "time (min),drawdown (ft)", "t [min],s [ft]", "elapsed time_min,Drawdown_ft"}) {
    auto const read = read_pumping_test(plain(std::string("# a remark\n") + head + "\n1,1\n\n2,2\r\n3,2.5\n"));
    ASSERT_TRUE(read) << head << "\n" << all(read);
    ASSERT_EQ(read->records[0].readings.size(), 3U);
    EXPECT_DOUBLE_EQ(read->records[0].readings[1].time_s, 120);
    EXPECT_DOUBLE_EQ(read->records[0].readings[1].drawdown_m, 2 * 0.3048);
  }
  auto const turned = read_pumping_test(plain("s_ft;t_min\n1;1\n2;2\n2.5;3\n"));
  ASSERT_TRUE(turned) << all(turned);
  EXPECT_DOUBLE_EQ(turned->records[0].readings[2].time_s, 180);
}

TEST(read_pumping_test, takes_units_from_options_where_the_head_has_none) {
  auto test = plain("t,s\n1,1\n2,2\n3,3\n");
  test.time_unit = "h";
  test.level_unit = "ft";
  auto const read = read_pumping_test(test);
  ASSERT_TRUE(read) << all(read);
  EXPECT_DOUBLE_EQ(read->records[0].readings[0].time_s, 3600);
  auto without = plain("t,s\n1,1\n");
  EXPECT_NE(all(read_pumping_test(without)).find("a.csv:1:1: found \"t\"; expected its unit"), std::string::npos);
  EXPECT_NE(all(read_pumping_test(without)).find("a.csv:1:3: found \"s\"; expected its unit"), std::string::npos);
}

TEST(read_pumping_test, reads_several_rates_on_one_line) {
  auto test = plain("t_min,s_m\n1,1\n2,2\n3,2.5\n");
  test.rates = {"20, 35, 50 gpm"};
  test.step = "60 min";
  test.stop = "4 h";
  auto const read = read_pumping_test(test);
  ASSERT_TRUE(read) << all(read);
  ASSERT_EQ(read->rates.size(), 4U);
  EXPECT_DOUBLE_EQ(read->rates[1].from_s, 3600);
  EXPECT_NEAR(read->rates[1].flow_m3_s, 35 * 3.785411784e-3 / 60, 1e-15);
  EXPECT_DOUBLE_EQ(read->rates[3].from_s, 14400);
  EXPECT_EQ(read->rates[3].flow_m3_s, 0);
  test.rates = {"20 gpm", "35 gpm @ 30 min"};
  test.step = "";
  EXPECT_DOUBLE_EQ(read_pumping_test(test)->rates[1].from_s, 1800);
}

TEST(read_pumping_test, takes_rates_from_a_column) {
  PumpingTestText test;
  test.records = {{"a.csv", "t_min,s_m,q_m3_per_d\n1,1,864\n2,2,864\n3,2.5,0\n4,1,0\n", "30 m"}};
  auto const read = read_pumping_test(test);
  ASSERT_TRUE(read) << all(read);
  ASSERT_EQ(read->rates.size(), 2U);
  EXPECT_DOUBLE_EQ(read->rates[0].flow_m3_s, 0.01);
  EXPECT_DOUBLE_EQ(read->rates[1].from_s, 120);
  EXPECT_DOUBLE_EQ(read->rates_from_their_rows[1].from_s, 180);
}

TEST(read_pumping_test, turns_depths_into_drawdown_by_the_level_at_rest) {
  auto const from_row = read_pumping_test(plain("t_min,depth_m\n0,10\n1,11\n2,12\n3,12.5\n"));
  ASSERT_TRUE(from_row) << all(from_row);
  EXPECT_DOUBLE_EQ(from_row->records[0].readings[1].drawdown_m, 2);
  auto test = plain("t_min,depth_m\n1,11\n2,12\n3,12.5\n");
  EXPECT_NE(all(read_pumping_test(test)).find("--static-level"), std::string::npos);
  test.static_level = "10 m";
  EXPECT_DOUBLE_EQ(read_pumping_test(test)->records[0].readings[0].drawdown_m, 1);
}

TEST(read_pumping_test, counts_times_of_recovery_from_the_stop) {
  auto test = plain("tprime_min,recov_m\n1,0.2\n5,0.4\n9,0.5\n");
  EXPECT_NE(all(read_pumping_test(test)).find("--stop"), std::string::npos);
  test.stop = "4 h";
  auto const read = read_pumping_test(test);
  ASSERT_TRUE(read) << all(read);
  EXPECT_TRUE(read->records[0].recovered);
  EXPECT_DOUBLE_EQ(read->records[0].readings[0].time_s, 14460);
}

TEST(read_pumping_test, finds_everything_that_is_wrong_at_once) {
  auto test = plain("t_min,s_m\n1,1\n3,x\n2,-4\n4\n5,1,1\n");
  test.rates = {"0 gpm"};
  std::string const found = all(read_pumping_test(test));
  EXPECT_NE(found.find("--rate: found a rate of zero"), std::string::npos) << found;
  EXPECT_NE(found.find("a.csv:3:3: found \"x\"; expected a level as a number"), std::string::npos) << found;
  EXPECT_NE(found.find("a.csv:5: found 1 of 2 columns"), std::string::npos) << found;
  EXPECT_NE(found.find("a.csv:4:3: found \"-4\": the water stands above its level at rest"), std::string::npos)
      << found;
}

TEST(read_pumping_test, finds_time_that_goes_backwards) {
  EXPECT_NE(all(read_pumping_test(plain("t_min,s_m\n1,1\n3,1.2\n2,1.4\n4,1.5\n")))
                .find("a.csv:4:1: found \"2\" after \"3\"; expected a time no earlier"),
            std::string::npos);
}

TEST(read_pumping_test, sees_two_columns_swapped) {
  std::string const found =
      all(read_pumping_test(plain("t_min,s_m\n0.1,0.2\n0.3,1\n0.5,5\n0.6,20\n0.7,60\n0.8,200\n0.9,800\n")));
  EXPECT_NE(found.find("a.csv:2:1: "), std::string::npos);
  EXPECT_NE(found.find("the columns look swapped"), std::string::npos) << found;
}

TEST(read_pumping_test, takes_the_early_rise_of_a_far_place_for_no_swap) {
  // From a type curve, u from 5 to 0.5: W 0.00115, 0.0130, 0.0489, 0.219, 0.560.
  auto const read = read_pumping_test(plain("t_min,s_m\n2,0.00115\n3.3,0.0130\n5,0.0489\n10,0.219\n20,0.560\n"));
  EXPECT_TRUE(read) << all(read);
}

TEST(read_pumping_test, finds_water_above_ground) {
  EXPECT_NE(all(read_pumping_test(plain("t_min,depth_m\n0,1\n1,2\n2,-0.5\n3,2.5\n")))
                .find("a.csv:4:3: found \"-0.5\": the "
                      "water stands above ground"),
            std::string::npos);
}

TEST(read_pumping_test, finds_a_text_that_is_no_table) {
  for (std::string const text : {"", "Dear all,\nthe well was pumped.\n", "[site]\nname = \"x\"\n", "\x01\x02\n"}) {
    auto const read = read_pumping_test(plain(text));
    ASSERT_FALSE(read);
    EXPECT_LE(read.error().size(), 2U);
    EXPECT_NE(all(read).find("expected a head that names time and level"), std::string::npos) << all(read);
  }
}

TEST(read_pumping_test, finds_rates_of_zero_in_a_column) {
  PumpingTestText test;
  test.records = {{"a.csv", "t_min,s_m,q_gpm\n1,1,0\n2,2,0\n3,2.5,0\n", "30 m"}};
  EXPECT_NE(all(read_pumping_test(test)).find("a.csv:2:5: found rates of zero only"), std::string::npos);
}

TEST(read_pumping_test, says_only_the_first_of_many) {
  std::string text = "t_min,s_m\n";
  for (int i = 1; i < 200; ++i) {
    text += std::to_string(i) + ",x\n";
  }
  auto const read = read_pumping_test(plain(text));
  ASSERT_FALSE(read);
  EXPECT_LE(read.error().size(), 12U);
  EXPECT_NE(all(read).find("191 more lines like these"), std::string::npos) << all(read);
}

}  // namespace
}  // namespace wellproof
