#include "sheet/welltest.h"

#include <cmath>
#include <string>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "sheet/log_axis.h"
#include "unit/fit/planted.h"
#include "unit/sheet/within_80.h"

namespace wellproof {
namespace {

WellTest made(double last_s, UnitSystem units = UnitSystem::us) {
  PumpedWell const planted{6e-5, 2e-4, 0.0762, 0.0762, 0, 6e5};
  Errors errors(3);
  PumpingTest test;
  test.rates = {{0, 5e-4}};
  test.well_radius_m = 0.0762;
  test.casing_radius_m = 0.0762;
  test.records = {planted_record(test.rates, planted, 0, spread_times(30, last_s, 30), 0.01, 0, errors)};
  test.records[0].file = "a <b>.csv";
  return {fit_pumping_test(test), units, ""};
}

TEST(LogAxis, EndsOnRoundFiguresAndCountsDecades) {
  auto const axis = log_axis("time", 6.0, 50000, Dimension::time, UnitSystem::us);
  EXPECT_EQ(axis.title, "time, min");
  EXPECT_DOUBLE_EQ(axis.low, 0.1);
  EXPECT_DOUBLE_EQ(axis.high, 1000);
  EXPECT_NEAR(axis.share(600), 0.5, 1e-12);
  EXPECT_TRUE(std::isnan(axis.share(-1)));
  EXPECT_EQ(axis.ticks.front().text, "0.1");
  EXPECT_EQ(axis.ticks.back().text, "1000");
}

TEST(LogAxis, ShowsTwosAndFivesWhereItIsShort) {
  auto const axis = log_axis("level", 0.3, 0.4, Dimension::length, UnitSystem::metric);
  EXPECT_GT(axis.high, axis.low);
  EXPECT_GE(axis.ticks.size(), 2U);
}

TEST(WellTestSheet, SaysTheResultWithinEightyColumns) {
  for (auto const& test : {made(86400), made(60), made(86400, UnitSystem::metric)}) {
    std::string const sheet = welltest_sheet(test, false);
    expect_within_80(sheet);
    EXPECT_EQ(sheet.rfind(test.fit.tells_transmissivity ? "TRANSMISSIVITY IS KNOWN" : "THE DATA CANNOT TELL", 0), 0U);
  }
  EXPECT_FALSE(made(60).fit.tells_transmissivity);
}

TEST(WellTestJson, GivesEachQuantityWithItsInterval) {
  auto const test = made(86400);
  auto const json = nlohmann::json::parse(welltest_json(test));
  for (char const* key : {"T_m2_per_d", "S", "rmse_m"}) {
    EXPECT_LT(json[key]["low"].get<double>(), json[key]["value"].get<double>()) << key;
    EXPECT_GT(json[key]["high"].get<double>(), json[key]["value"].get<double>()) << key;
  }
  EXPECT_NEAR(json["T_m2_per_d"]["value"].get<double>(), 86400 * test.fit.transmissivity_m2_s.value, 1e-9);
  EXPECT_EQ(json["records"][0]["readings"].size(), 30U);
  EXPECT_TRUE(json["tells"]["T"].get<bool>());
  EXPECT_FALSE(json["tells"]["S"].get<bool>());
  EXPECT_FALSE(json["notes"].empty());
}

TEST(WellTestReport, LeavesOutWhatHasNoPlaceOnALogarithmicAxis) {
  auto test = made(86400);
  for (std::size_t i = 0; i < 4; ++i) {
    test.fit.records[0].readings[i].fitted_m = -0.1;
    test.fit.records[0].readings[i].measured_m = -0.2;
  }
  EXPECT_EQ(welltest_report(test).find("nan"), std::string::npos);
}

TEST(WellTestReport, HoldsItsChartsAndEscapesWhatAPersonWrote) {
  std::string const page = welltest_report(made(86400));
  for (char const* id : {"semilog-title", "diagnostic-title", "residuals-title"}) {
    EXPECT_NE(page.find(id), std::string::npos) << id;
  }
  EXPECT_EQ(page.find("<b>"), std::string::npos);
  EXPECT_NE(page.find("a &lt;b&gt;.csv"), std::string::npos);
  EXPECT_EQ(page.find("<script"), std::string::npos);
  EXPECT_EQ(page.find("nan"), std::string::npos);
  EXPECT_EQ(page.find("inf "), std::string::npos);
}

}  // namespace
}  // namespace wellproof
