// The invented household against a metered one of five people over two weeks (CIWS data, BSD 3-Clause, read only where
// present), against two weeks of another house by the minute (AMPds2, CC BY 4.0), and against figures printed from the
// end-use survey of 2016 (median 125 US gallons a day indoors, toilets a quarter of it).
#include "proof/household.h"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <string>

#include <gtest/gtest.h>

#include "folders.h"

namespace wellproof {
namespace {

constexpr double gallon_m3 = 3.785411784e-3;
constexpr double gpm_m3_s = gallon_m3 / 60;
constexpr std::uint32_t days = 140;  // ten fortnights: what is compared are means

double volume_m3(std::vector<WaterUse> const& uses, bool indoors_only) {
  double sum = 0;
  for (auto const& use : uses) {
    sum += indoors_only && use.fixture == Fixture::hose ? 0 : use.duration_s * use.flow_m3_s;
  }
  return sum;
}

TEST(Household, UsesIndoorsAboutWhatTheSurveyFound) {
  auto const uses = household_uses(5, 0, days);
  // REUS 2016: 138 gallons a household and day in the mean, 125 in the median; a family of five is above that.
  double const daily_gallons = volume_m3(uses, true) / days / gallon_m3;
  EXPECT_GT(daily_gallons, 115);
  EXPECT_LT(daily_gallons, 175);
  double toilets_m3 = 0;
  for (auto const& use : uses) {
    toilets_m3 += use.fixture == Fixture::toilet ? use.duration_s * use.flow_m3_s : 0;
  }
  // A quarter there (33.1 of 138 gallons); two fifths in the metered house.
  EXPECT_GT(toilets_m3 / volume_m3(uses, true), 0.2);
  EXPECT_LT(toilets_m3 / volume_m3(uses, true), 0.45);
}

TEST(Household, HasThePeaksThatAFixtureCountLeadsToExpect) {
  // Metered: 12.3 gal/min over a minute in the house with irrigation, 15.1 L/min (4 gal/min) in the smaller one; a
  // house without irrigation lies between.
  double most_m3_s = 0;
  for (auto const& drawn : drawn_together(household_uses(5, 0, 14))) {
    most_m3_s = std::max(most_m3_s, drawn.flow_m3_s);
  }
  EXPECT_GT(most_m3_s, 4 * gpm_m3_s);
  EXPECT_LT(most_m3_s, 14 * gpm_m3_s);
}

TEST(Household, GivesTheSameDayWhateverIsAskedBeforeIt) {
  auto const fortnight = household_uses(5, 0, 14);
  auto const third = household_uses(5, 2, 1);
  std::size_t at = 0;
  for (auto const& use : fortnight) {
    if (use.start_s >= 2 * 86400.0 && use.start_s < 3 * 86400.0) {
      ASSERT_LT(at, third.size());
      EXPECT_NEAR(use.start_s - 2 * 86400.0, third[at].start_s, 1e-9);
      EXPECT_EQ(use.flow_m3_s, third[at].flow_m3_s);
      ++at;
    }
  }
  EXPECT_EQ(at, third.size());
  EXPECT_NE(household_uses(6, 0, 1).size() + household_uses(6, 1, 1).size(),
            household_uses(5, 0, 1).size() + household_uses(5, 2, 1).size());
}

TEST(Household, ShutsAllThatItOpened) {
  auto const flows = drawn_together(household_uses(5, 0, 3));
  EXPECT_EQ(flows.back().flow_m3_s, 0);
  for (std::size_t i = 1; i < flows.size(); ++i) {
    EXPECT_GE(flows[i].time_s, flows[i - 1].time_s);
    EXPECT_GE(flows[i].flow_m3_s, 0);
  }
}

TEST(Household, FollowsTheMeteredHouseFixtureByFixture) {
  std::filesystem::path const file =
      std::filesystem::path(reference_folder()) / "demand/house_use_events_5people_2020.csv";
  if (!std::filesystem::exists(file)) {
    GTEST_SKIP() << "the metered series is not there";
  }
  std::ifstream lines(file);
  std::string line;
  struct Metered {
    double uses = 0;
    double gallons = 0;
  };
  std::map<std::string, Metered> metered;
  while (std::getline(lines, line)) {
    std::stringstream cells(line);
    std::string cell;
    std::vector<std::string> row;
    while (std::getline(cells, cell, ',')) {
      row.push_back(cell);
    }
    if (row.size() == 8 && row[0].rfind("20", 0) == 0) {
      auto& one = metered[row[7].substr(0, row[7].find('\r'))];
      one.uses += 1;
      one.gallons += std::stod(row[3]);
    }
  }
  auto const uses = household_uses(5, 0, days);
  std::map<Fixture, std::string> const names{{Fixture::toilet, "toilet"},
                                             {Fixture::faucet, "faucet"},
                                             {Fixture::shower, "shower"},
                                             {Fixture::washer, "clothwasher"},
                                             {Fixture::hose, "hose"}};
  for (auto const& [fixture, name] : names) {
    SCOPED_TRACE(name);
    double count = 0;
    double gallons = 0;
    for (auto const& use : uses) {
      count += use.fixture == fixture ? 1 : 0;
      gallons += use.fixture == fixture ? use.duration_s * use.flow_m3_s / gallon_m3 : 0;
    }
    ASSERT_GT(metered[name].uses, 0);
    EXPECT_NEAR(count / days / (metered[name].uses / 14), 1, 0.15);
    EXPECT_NEAR(gallons / count / (metered[name].gallons / metered[name].uses), 1, 0.3);
  }
}

TEST(Household, DrawsADayAsTheHouseByTheMinuteDoes) {
  std::filesystem::path const file =
      std::filesystem::path(reference_folder()) / "demand/ampds_house_1min_14days_nonzero.csv";
  if (!std::filesystem::exists(file)) {
    GTEST_SKIP() << "the metered series is not there";
  }
  std::ifstream lines(file);
  std::string line;
  double litres = 0;
  double night = 0;
  while (std::getline(lines, line)) {
    auto const comma = line.find(',');
    if (line.empty() || comma == std::string::npos || line[0] < '0' || line[0] > '9') {
      continue;
    }
    double const rate = std::stod(line.substr(comma + 1));
    litres += rate;
    night += std::stol(line) / 60 % 24 < 6 && std::stol(line) / 60 % 24 > 0 ? rate : 0;
  }
  auto const uses = household_uses(5, 0, days);
  double drawn_at_night_m3 = 0;
  for (auto const& use : uses) {
    double const hour = std::fmod(use.start_s / 3600, 24);
    drawn_at_night_m3 += hour >= 1 && hour < 6 ? use.duration_s * use.flow_m3_s : 0;
  }
  // Another house with other people: the day within a factor of two, the night next to nothing in both.
  double const daily_litres = 1e3 * volume_m3(uses, false) / days;
  EXPECT_GT(daily_litres, litres / 14 / 2);
  EXPECT_LT(daily_litres, litres / 14 * 2);
  EXPECT_LT(night / litres, 0.05);
  EXPECT_LT(drawn_at_night_m3 / volume_m3(uses, false), 0.05);
}

}  // namespace
}  // namespace wellproof
