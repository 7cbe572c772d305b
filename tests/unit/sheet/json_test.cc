#include "sheet/json.h"

#include <gtest/gtest.h>

#include <limits>
#include <nlohmann/json.hpp>

#include "unit/sheet/made_plan.h"

namespace wellproof {
namespace {

TEST(PlanJson, NumbersReadBackToTheSameDoubles) {
  auto plan = made_plan();
  plan.derived.settings.pressure_target_pa = 344737.86466 / 3;
  auto const json = nlohmann::json::parse(plan_json(plan));
  EXPECT_EQ(json["settings"]["pressure.target"]["value"].get<double>(), plan.derived.settings.pressure_target_pa);
  EXPECT_EQ(json["map"]["rows"][7]["shut_a"]["high"].get<double>(), plan.map.rows[7].shut_a.high);
}

TEST(PlanJson, HoldsWhatTheSheetSays) {
  auto const json = nlohmann::json::parse(plan_json(made_plan()));
  EXPECT_EQ(json["site"]["name"], "Made Hollow 1");
  EXPECT_EQ(json["site"]["quantities"]["pump.setting"], "30.48 m");
  EXPECT_EQ(json["assumptions"].size(), 2U);
  EXPECT_EQ(json["settings"].size(), 26U);  // without those of guards by power: made for a drive that lacks them
  EXPECT_EQ(json["settings"]["pressure.target"]["text"], "50 psi");
  EXPECT_EQ(json["settings"]["permissive.sense"]["value"], "unused");
  EXPECT_EQ(json["proof"]["proven"], false);
  EXPECT_EQ(json["proof"]["scenarios"][2]["failed"], 3);
  EXPECT_EQ(json["proof"]["scenarios"][2]["worst"]["draw"], 7);
  std::size_t infeasible = 0;
  for (auto const& [key, setting] : json["settings"].items()) {
    infeasible += setting.contains("stands_in_the_way") ? 1U : 0U;
  }
  EXPECT_EQ(infeasible, 1U);
}

TEST(PlanJson, TellsMarginsInUnitsBesideTheRelativeOnes) {
  auto plan = made_plan();
  plan.proof.margins = {{"rating", Dimension::pressure, 31000.5, 7, "4.5 psi to the rating."},
                        {"sleep", Dimension::frequency, std::nullopt, 0, "It does not sleep by speed."}};
  plan.proof.scenarios[0].criteria = {{.measure = Measure::least_tee_pressure}};
  auto const json = nlohmann::json::parse(plan_json(plan));
  EXPECT_EQ(json["proof"]["margins"][0]["key"], "rating");
  EXPECT_EQ(json["proof"]["margins"][0]["value"].get<double>(), 31000.5);
  EXPECT_EQ(json["proof"]["margins"][0]["unit"], "Pa");
  EXPECT_EQ(json["proof"]["margins"][0]["draw"], 7);
  EXPECT_TRUE(json["proof"]["margins"][1]["value"].is_null());
  EXPECT_EQ(json["proof"]["scenarios"][0]["worst"]["distance"].get<double>(), 290000.0 - 275790.0);
}

TEST(PlanJson, TellsWhatToMeasureAndWhereAScenarioFirstFails) {
  auto plan = made_plan();
  plan.proof.measure = {
      {"well.static_level", "depth to water", 0.41, 0.02, 0.11, 20, "Sound the well", "quiet_house_with_leak"}};
  plan.proof.scenarios[1].drivers = {{"demand.leak", 0.3}};
  plan.proof.scenarios[1].first_failure = FirstFailure{2.4, 0.0082, "first fails at demand.leak 0.3 gpm"};
  auto const json = nlohmann::json::parse(plan_json(plan))["proof"];
  EXPECT_EQ(json["measure"][0]["key"], "well.static_level");
  EXPECT_EQ(json["measure"][0]["gain"].get<double>(), 0.11 - 0.02);
  EXPECT_EQ(json["measure"][0]["how"], "Sound the well");
  EXPECT_EQ(json["scenarios"][1]["drivers"][0]["share"].get<double>(), 0.3);
  EXPECT_EQ(json["scenarios"][1]["first_failure"]["spreads"].get<double>(), 2.4);
  EXPECT_FALSE(json["scenarios"][0].contains("first_failure"));
}

TEST(PlanJson, TellsWhatASearchGainedWhereThereWasOne) {
  auto plan = made_plan();
  EXPECT_FALSE(nlohmann::json::parse(plan_json(plan)).contains("search"));
  plan.search.emplace();
  plan.search->start_margin = 0.02;
  plan.search->found_margin = 0.11;
  plan.search->tries = 96;
  plan.search->moved = {{"closed.delay", Dimension::time, 12, 9}};
  plan.search->binding = {"quiet_house"};
  auto const json = nlohmann::json::parse(plan_json(plan))["search"];
  EXPECT_EQ(json["found_margin"].get<double>(), 0.11);
  EXPECT_EQ(json["moved"][0]["to"].get<double>(), 9);
  EXPECT_EQ(json["binding"][0], "quiet_house");
  EXPECT_TRUE(json["common_practice"].is_null());
  plan.search->common = CommonPractice{-3, 12};
  EXPECT_EQ(nlohmann::json::parse(plan_json(plan))["search"]["common_practice"]["failing_scenarios"], 12);
}

TEST(PlanJson, WhereThereIsNoNumberStandsNull) {
  auto plan = made_plan();
  plan.map.rows[0].flow_at_target_m3_s.low = std::numeric_limits<double>::quiet_NaN();
  plan.proof.scenarios[0].worst.value = std::numeric_limits<double>::infinity();
  auto const json = nlohmann::json::parse(plan_json(plan));
  EXPECT_TRUE(json["map"]["rows"][0]["flow_at_target_m3_s"]["low"].is_null());
  EXPECT_TRUE(json["proof"]["scenarios"][0]["worst"]["value"].is_null());
}

TEST(PlanJson, ANameThatIsNoTextStillMakesJson) {
  auto plan = made_plan();
  plan.site.site.name = "bad \xFF byte";
  EXPECT_TRUE(nlohmann::json::accept(plan_json(plan)));
}

}  // namespace
}  // namespace wellproof
