#include "fit/fit_pumping_test.h"

#include <algorithm>
#include <string>

#include <gtest/gtest.h>

#include "unit/fit/planted.h"

namespace wellproof {
namespace {

bool has(PumpingTestFit const& fit, std::string const& key) {
  return std::any_of(fit.notes.begin(), fit.notes.end(), [&](TestNote const& note) { return note.key == key; });
}

TEST(fit_pumping_test, finds_a_planted_formation_beside_the_well) {
  PumpedWell const planted{5e-3, 2e-4, 0, 0, 0, 0};
  Errors errors(1);
  PumpingTest test;
  test.rates = {{0, 0.01}};
  test.records = {planted_record(test.rates, planted, 25, spread_times(20, 40000, 40), 0.002, 0, errors)};
  auto const fit = fit_pumping_test(test);
  EXPECT_NEAR(fit.transmissivity_m2_s.value, 5e-3, 5e-5);
  EXPECT_NEAR(fit.storativity.value, 2e-4, 4e-6);
  EXPECT_TRUE(fit.tells_transmissivity);
  EXPECT_TRUE(fit.tells_storativity);
  EXPECT_NEAR(fit.rmse_m.value, 0.002, 6e-4);
}

TEST(fit_pumping_test, needs_no_word_on_where_the_casing_rules) {
  // A dug well, 1 m wide, in a weak formation: the casing gives most of the water for the first hour.
  PumpedWell const planted{2e-4, 1e-3, 0.5, 0.5, 0, 0};
  Errors errors(2);
  PumpingTest test;
  test.rates = {{0, 1e-3}};
  test.well_radius_m = 0.5;
  test.casing_radius_m = 0.5;
  test.records = {planted_record(test.rates, planted, 0, spread_times(60, 200000, 50), 0, 0.005, errors)};
  auto const fit = fit_pumping_test(test);
  EXPECT_NEAR(fit.transmissivity_m2_s.value / 2e-4, 1, 0.03);
  EXPECT_TRUE(fit.tells_transmissivity);
  EXPECT_FALSE(has(fit, "storage_dominates"));
}

TEST(fit_pumping_test, finds_the_casing_that_nobody_measured) {
  PumpedWell const planted{2e-4, 1e-4, 0.1, 0.3, 0, 0};
  Errors errors(3);
  PumpingTest test;
  test.rates = {{0, 1e-3}};
  test.well_radius_m = 0.1;
  test.records = {planted_record(test.rates, planted, 0, spread_times(20, 100000, 50), 0, 0.01, errors)};
  auto const fit = fit_pumping_test(test);
  EXPECT_NEAR(fit.storage_radius_m.value, 0.3, 0.01);
  EXPECT_LT(fit.storage_radius_m.low, 0.3);
  EXPECT_GT(fit.storage_radius_m.high, 0.3);
}

TEST(fit_pumping_test, says_that_storage_still_dominates) {
  PumpedWell const planted{2e-5, 1e-4, 0.1, 0.5, 0, 0};
  Errors errors(4);
  PumpingTest test;
  test.rates = {{0, 1e-3}};
  test.well_radius_m = 0.1;
  test.casing_radius_m = 0.5;
  test.records = {planted_record(test.rates, planted, 0, spread_times(30, 900, 30), 0.002, 0.005, errors)};
  auto const fit = fit_pumping_test(test);
  EXPECT_TRUE(has(fit, "storage_dominates"));
  EXPECT_FALSE(fit.tells_transmissivity);
  EXPECT_GT(fit.casing_share, 0.5);
}

TEST(fit_pumping_test, says_that_drawdown_has_hardly_arrived) {
  PumpedWell const planted{5e-3, 1e-3, 0, 0, 0, 0};
  Errors errors(5);
  PumpingTest test;
  test.rates = {{0, 0.01}};
  test.records = {planted_record(test.rates, planted, 200, spread_times(60, 800, 20), 0.001, 0, errors)};
  auto const fit = fit_pumping_test(test);
  EXPECT_FALSE(fit.tells_transmissivity);
  EXPECT_TRUE(has(fit, "too_short") || has(fit, "no_course"));
}

TEST(fit_pumping_test, says_that_a_pumped_well_alone_does_not_tell_storativity) {
  PumpedWell const planted{3e-3, 2e-4, 0.1, 0, 0, 0};
  Errors errors(6);
  PumpingTest test;
  test.rates = {{0, 0.01}};
  test.well_radius_m = 0.1;
  test.casing_radius_m = 0.1;
  test.records = {planted_record(test.rates, planted, 0, spread_times(60, 86400, 40), 0.005, 0, errors)};
  auto const fit = fit_pumping_test(test);
  EXPECT_TRUE(fit.tells_transmissivity);
  EXPECT_FALSE(fit.tells_storativity);
  EXPECT_TRUE(has(fit, "storativity_with_skin"));
}

TEST(fit_pumping_test, takes_a_skin_for_a_linear_loss_at_the_usual_storativity) {
  PumpedWell const planted{3e-3, 3e-4, 0.1, 0.1, 300, 0};
  Errors errors(7);
  PumpingTest test;
  test.rates = {{0, 0.005}};
  test.well_radius_m = 0.1;
  test.casing_radius_m = 0.1;
  test.records = {planted_record(test.rates, planted, 0, spread_times(60, 86400, 40), 0.005, 0, errors)};
  auto const fit = fit_pumping_test(test);
  EXPECT_EQ(fit.storativity.standing, Estimate::Standing::assumed);
  EXPECT_NEAR(fit.linear_loss_s_m2.value, 300, 15);
  EXPECT_TRUE(has(fit, "storativity_assumed"));
}

TEST(fit_pumping_test, tells_loss_from_formation_where_a_place_beside_was_read_too) {
  PumpedWell const planted{3e-3, 5e-4, 0.1, 0.1, 100, 4000};
  Errors errors(8);
  PumpingTest test;
  test.rates = {{0, 0.005}, {7200, 0.010}, {14400, 0.015}};
  test.well_radius_m = 0.1;
  test.casing_radius_m = 0.1;
  std::vector<double> times_s;
  for (double const from_s : {0.0, 7200.0, 14400.0}) {
    for (double const since_s : spread_times(30, 7200, 30)) {
      times_s.push_back(from_s + since_s);
    }
  }
  test.records = {planted_record(test.rates, planted, 0, times_s, 0.002, 0, errors),
                  planted_record(test.rates, planted, 15, times_s, 0.002, 0, errors)};
  auto const fit = fit_pumping_test(test);
  EXPECT_NEAR(fit.transmissivity_m2_s.value / 3e-3, 1, 0.02);
  EXPECT_NEAR(fit.storativity.value / 5e-4, 1, 0.03);
  EXPECT_NEAR(fit.linear_loss_s_m2.value, 100, 5);
  EXPECT_NEAR(fit.quadratic_loss_s2_m5.value / 4000, 1, 0.02);
}

TEST(fit_pumping_test, gathers_the_readings_of_a_logger) {
  PumpedWell const planted{2e-4, 1e-4, 0.1, 0.1, 0, 0};
  Errors errors(10);
  PumpingTest test;
  test.rates = {{0, 1e-3}, {20000, 0}};
  test.well_radius_m = 0.1;
  test.casing_radius_m = 0.1;
  std::vector<double> times_s;
  for (int i = 1; i <= 30000; ++i) {
    times_s.push_back(i);
  }
  test.records = {planted_record(test.rates, planted, 0, times_s, 0.01, 0, errors)};
  auto const fit = fit_pumping_test(test);
  EXPECT_LT(fit.records[0].readings.size(), 600U);
  EXPECT_EQ(fit.records[0].gathered_from, 30000U);
  EXPECT_TRUE(has(fit, "gathered"));
  EXPECT_NEAR(fit.transmissivity_m2_s.value / 2e-4, 1, 0.01);
}

TEST(fit_pumping_test, warns_where_late_drawdown_runs_ahead) {
  // A mirrored well behind a wall 100 m away doubles the late slope.
  PumpingTest test;
  test.rates = {{0, 0.01}};
  LevelRecord record{"wall.csv", 20, false, {}};
  for (double const time_s : spread_times(10, 400000, 60)) {
    record.readings.push_back(
        {time_s, theis_drawdown_m(0.01, 3e-3, 2e-4, 20, time_s) + theis_drawdown_m(0.01, 3e-3, 2e-4, 220, time_s)});
  }
  test.records = {record};
  auto const fit = fit_pumping_test(test);
  EXPECT_TRUE(has(fit, "late_climb"));
  EXPECT_GT(fit.widened, 1);
}

TEST(fit_pumping_test, lets_the_levels_say_where_a_rate_in_a_column_began) {
  PumpedWell const planted{3e-3, 2e-4, 0, 0, 0, 0};
  Errors errors(9);
  std::vector<RateStep> const truth{{0, 0.01}, {3600, 0.02}};
  PumpingTest test;
  test.rates = {{0, 0.01}, {3000, 0.02}};
  test.rates_from_their_rows = truth;
  test.records = {planted_record(truth, planted, 20, spread_times(30, 20000, 50), 0.002, 0, errors)};
  auto const fit = fit_pumping_test(test);
  EXPECT_EQ(fit.rates.back().from_s, 3600);
}

}  // namespace
}  // namespace wellproof
