// Over many made-up pumping tests: the planted formation lies within the stated intervals as often as they say, laws
// are homogeneous, and a step test gives back what it was made from.
#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "fit/fit_pumping_test.h"
#include "law/homogeneous.h"
#include "plant/radial_flow.h"
#include "unit/fit/planted.h"

namespace wellproof {
namespace {

constexpr int tests = 200;

/// Between two ends, evenly in the logarithm.
double between(double low, double high, double share) {
  return low * std::pow(high / low, share);
}

bool within(Estimate const& estimate, double truth) {
  return estimate.low <= truth && truth <= estimate.high;
}

TEST(intervals, hold_a_planted_formation_in_nine_tests_of_ten_beside_the_well) {
  int transmissivity_within = 0;
  int storativity_within = 0;
  for (int i = 0; i < tests; ++i) {
    Errors errors(static_cast<std::uint64_t>(i + 1));
    double const share = (i + 0.5) / tests;
    double const other = std::fmod(share * 61.8033988, 1.0);
    PumpedWell const planted{between(1e-4, 2e-2, share), between(2e-5, 5e-3, other), 0, 0, 0, 0};
    PumpingTest test;
    test.rates = {{0, planted.transmissivity_m2_s}};
    double const bend_s = 900 * planted.storativity / (4 * planted.transmissivity_m2_s);
    test.records = {planted_record(test.rates, planted, 30, spread_times(bend_s, 3000 * bend_s, 30), 0.01, 0, errors)};
    auto const fit = fit_pumping_test(test);
    transmissivity_within += within(fit.transmissivity_m2_s, planted.transmissivity_m2_s) ? 1 : 0;
    storativity_within += within(fit.storativity, planted.storativity) ? 1 : 0;
  }
  EXPECT_GE(transmissivity_within, tests * 9 / 10);
  EXPECT_GE(storativity_within, tests * 9 / 10);
  // And not by being wide beyond use: one in a hundred at least falls outside.
  EXPECT_LE(transmissivity_within, tests * 995 / 1000);
}

TEST(intervals, hold_a_planted_formation_in_nine_tests_of_ten_in_a_well_that_stores) {
  int transmissivity_within = 0;
  int told = 0;
  constexpr int fewer = 100;
  for (int i = 0; i < fewer; ++i) {
    Errors errors(static_cast<std::uint64_t>(i + 1000));
    double const share = (i + 0.5) / fewer;
    PumpedWell const planted{between(1e-5, 1e-3, share), 2e-4, 0.1, 0.1, 0, 0};
    PumpingTest test;
    test.rates = {{0, planted.transmissivity_m2_s * 5}};
    test.well_radius_m = 0.1;
    test.casing_radius_m = 0.1;
    double const casing_s = 0.01 / planted.transmissivity_m2_s;
    test.records = {
        planted_record(test.rates, planted, 0, spread_times(0.1 * casing_s, 3000 * casing_s, 30), 0.01, 0, errors)};
    auto const fit = fit_pumping_test(test);
    transmissivity_within += within(fit.transmissivity_m2_s, planted.transmissivity_m2_s) ? 1 : 0;
    told += fit.tells_transmissivity ? 1 : 0;
  }
  EXPECT_GE(transmissivity_within, fewer * 9 / 10);
  EXPECT_EQ(told, fewer);
}

TEST(step_test, with_one_per_cent_of_noise_gives_back_what_it_was_made_from) {
  // Turbulent loss weighs as it does in such a well: half of the drawdown at the highest rate.
  PumpedWell const planted{4e-3, 2e-4, 0.15, 0.15, 0, 4000};
  PumpingTest test;
  std::vector<double> times_s;
  for (int i = 0; i < 6; ++i) {
    double const from_s = 7200.0 * i;
    test.rates.push_back({from_s, 0.005 * (i + 1)});
    for (double const since_s : spread_times(60, 7200, 60)) {
      times_s.push_back(from_s + since_s);
    }
  }
  test.well_radius_m = 0.15;
  test.casing_radius_m = 0.15;
  int held = 0;
  constexpr int several = 10;
  for (int i = 0; i < several; ++i) {
    Errors errors(static_cast<std::uint64_t>(i + 1));
    test.records = {planted_record(test.rates, planted, 0, times_s, 0, 0.01, errors)};
    auto const fit = fit_pumping_test(test);
    bool const near = std::abs(fit.transmissivity_m2_s.value / planted.transmissivity_m2_s - 1) < 0.02 &&
                      std::abs(fit.quadratic_loss_s2_m5.value / planted.quadratic_loss_s2_m5 - 1) < 0.02;
    held += near ? 1 : 0;
  }
  EXPECT_GE(held, several * 9 / 10);
}

TEST(step_test, without_noise_gives_back_what_it_was_made_from_exactly) {
  PumpedWell const planted{4e-3, 2e-4, 0.15, 0.15, 0, 4000};
  Errors errors(1);
  PumpingTest test;
  test.rates = {{0, 0.005}, {7200, 0.01}, {14400, 0.02}};
  std::vector<double> times_s;
  for (double const from_s : {0.0, 7200.0, 14400.0}) {
    for (double const since_s : spread_times(30, 7200, 20)) {
      times_s.push_back(from_s + since_s);
    }
  }
  test.well_radius_m = 0.15;
  test.casing_radius_m = 0.15;
  test.records = {planted_record(test.rates, planted, 0, times_s, 0, 0, errors)};
  auto const fit = fit_pumping_test(test);
  EXPECT_NEAR(fit.transmissivity_m2_s.value / planted.transmissivity_m2_s, 1, 1e-5);
  EXPECT_NEAR(fit.storativity.value / planted.storativity, 1, 1e-4);
  EXPECT_NEAR(fit.quadratic_loss_s2_m5.value / planted.quadratic_loss_s2_m5, 1, 1e-5);
}

RC_GTEST_PROP(radial_flow, keeps_its_units, ()) {
  auto const pick = [](double low, double high) { return between(low, high, *rc::gen::inRange(0, 1000) / 1000.0); };
  Rescaling const rescaling{pick(0.1, 10), 1, pick(0.1, 10), 1};
  double const transmissivity_m2_s = pick(1e-5, 1e-2);
  double const storativity = pick(1e-5, 1e-2);
  double const radius_m = pick(0.05, 1);
  double const time_s = pick(1e2, 1e6);
  double const flow_m3_s = pick(1e-4, 1e-1);
  auto const theis = [&](double flow, double transmissivity, double distance, double time) {
    return theis_drawdown_m(flow, transmissivity, storativity, distance, time);
  };
  std::array<Measured, 4> const arguments{{{flow_m3_s, powers::flow},
                                           {transmissivity_m2_s, powers::capacity},
                                           {10 * radius_m, powers::length},
                                           {time_s, powers::duration}}};
  if (theis(flow_m3_s, transmissivity_m2_s, 10 * radius_m, time_s) > 1e-12) {
    RC_ASSERT(departure(theis, arguments, powers::length, rescaling) < 1e-9);
  }
  constexpr Powers linear_loss{-2, 0, 1, 0};
  constexpr Powers quadratic_loss{-5, 0, 2, 0};
  auto const pumped = [&](double flow, double transmissivity, double radius, double linear, double quadratic,
                          double time) {
    RateStep const step{0, flow};
    return pumped_well_drawdown_m(std::span(&step, 1),
                                  {transmissivity, storativity, radius, 2 * radius, linear, quadratic}, time);
  };
  std::array<Measured, 6> const of_well{{{flow_m3_s, powers::flow},
                                         {transmissivity_m2_s, powers::capacity},
                                         {radius_m, powers::length},
                                         {pick(1, 1e3), linear_loss},
                                         {pick(1, 1e4), quadratic_loss},
                                         {time_s, powers::duration}}};
  // The inversion of the transform takes differences of large terms: eight digits stay.
  RC_ASSERT(departure(pumped, of_well, powers::length, rescaling) < 1e-7);
}

RC_GTEST_PROP(pumped_well, never_takes_more_from_its_casing_than_was_pumped, ()) {
  auto const pick = [](double low, double high) { return between(low, high, *rc::gen::inRange(0, 1000) / 1000.0); };
  double const radius_m = pick(0.05, 1);
  PumpedWell const well{pick(1e-6, 1e-2), pick(1e-5, 1e-2), radius_m, radius_m, pick(1, 1e4), pick(1, 1e7)};
  RateStep const step{0, pick(1e-5, 1e-2)};
  double const time_s = pick(1, 1e5);
  double const area_m2 = 3.14159265358979 * radius_m * radius_m;
  double const drawdown_m = pumped_well_drawdown_m(std::span(&step, 1), well, time_s);
  RC_ASSERT(drawdown_m > 0);
  RC_ASSERT(drawdown_m * area_m2 <= step.flow_m3_s * time_s * 1.0001);
}

}  // namespace
}  // namespace wellproof
