#include "site/fixtures.h"

#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <string>

#include "folders.h"

namespace wellproof {
namespace {

constexpr double gpm_m3_s = 6.30901964e-5;

double demand_gpm(double units) {
  return peak_draw_m3_s(units) / gpm_m3_s;
}

TEST(fixtures, draw_what_the_code_tabulates) {
  // International Plumbing Code, table E103.3(3), systems with predominantly flush tanks.
  std::map<double, double> const rows{{1, 3},     {5, 9.4}, {10, 14.6},  {15, 17.5},  {20, 19.6}, {30, 23.3},
                                      {50, 29.1}, {80, 38}, {100, 43.5}, {140, 52.5}, {200, 65}};
  for (auto const& [units, gpm] : rows) {
    EXPECT_NEAR(demand_gpm(units), gpm, 1e-6) << units;
  }
}

TEST(fixtures, draw_what_the_whole_table_says) {
  std::ifstream table(reference_folder() + "/tables/ipc_E103_3_3_flush_tank.csv");
  if (!table) {
    GTEST_SKIP() << "no published tables beside the project";
  }
  int rows = 0;
  for (std::string line; std::getline(table, line);) {
    if (auto const comma = line.find(','); comma != line.npos && line[0] >= '0' && line[0] <= '9') {
      EXPECT_NEAR(demand_gpm(std::stod(line)), std::stod(line.substr(comma + 1)), 1e-6) << line;
      ++rows;
    }
  }
  EXPECT_GE(rows, 30);
}

TEST(fixtures, never_draw_less_for_more_units_nor_more_than_all_at_once) {
  double before = 0;
  for (double units = 0; units < 600; units += 0.25) {
    EXPECT_GE(demand_gpm(units), before) << units;
    EXPECT_LE(demand_gpm(units), 3 * units + 1e-9) << units;
    before = demand_gpm(units);
  }
  EXPECT_EQ(peak_draw_m3_s(0), 0);
  EXPECT_NEAR(demand_gpm(12.5), 16.25, 1e-6) << "halfway between the rows of 12 and 13 units";
}

TEST(fixtures, weigh_what_the_code_says) {
  // International Plumbing Code, table E103.3(2), private, total.
  std::map<std::string_view, double> const weights{
      {"bathroom_group", 3.6}, {"bathtub", 1.4},    {"shower", 1.4},         {"lavatory", 0.7},     {"toilet", 2.2},
      {"kitchen_sink", 1.4},   {"dishwasher", 1.4}, {"clothes_washer", 1.4}, {"laundry_tray", 1.4}, {"bidet", 2}};
  ASSERT_EQ(fixture_kinds().size(), weights.size());
  for (auto const& kind : fixture_kinds()) {
    EXPECT_EQ(kind.units, weights.at(kind.key)) << kind.key;
  }
}

}  // namespace
}  // namespace wellproof
