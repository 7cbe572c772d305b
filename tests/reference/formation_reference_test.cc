// The formation's rings against published solutions: Theis, Cooper–Jacob, recovery, Papadopulos–Cooper, image wells.
#include "plant/formation.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <numbers>
#include <sstream>
#include <string>

#include "folders.h"
#include "plant/driller_test.h"
#include "plant/radial_flow.h"
#include "plant/well.h"

namespace wellproof {
namespace {

constexpr double transmissivity_m2_s = 2e-5;
constexpr double storativity = 3e-4;
constexpr double radius_m = 0.0762;

Formation formation(Boundary boundary = Boundary::none, double distance_m = 0) {
  return {transmissivity_m2_s, storativity, radius_m, boundary, distance_m};
}

// theis_1935; the well function from Boost, which tests/reference/radial_flow_reference_test.cc holds to printed
// tables.
TEST(FormationReference, agrees_with_Theis_over_six_powers_of_ten) {
  double const distance_m = 100 * radius_m;
  auto const prepared = formation();
  for (double power = 0; power >= -6; power -= 0.25) {
    double const u = std::pow(10.0, power);
    double const time_s = distance_m * distance_m * storativity / (4 * transmissivity_m2_s * u);
    Formation::Drawn drawn{};
    prepared.advance(drawn, 1e-4, time_s);
    double const theis_m = theis_drawdown_m(1e-4, transmissivity_m2_s, storativity, distance_m, time_s);
    EXPECT_NEAR(prepared.drawdown_m(drawn, distance_m), theis_m, 0.003 * theis_m) << "u = " << u;
  }
}

// Followed in steps of any length it comes to the same: even inflow is followed exactly.
TEST(FormationReference, does_not_mind_how_time_is_cut) {
  auto const prepared = formation();
  Formation::Drawn at_once{};
  prepared.advance(at_once, 1e-4, 86400);
  Formation::Drawn in_steps{};
  double gone_s = 0;
  for (double step_s = 0.3; gone_s < 86400; step_s *= 1.1) {
    double const taken_s = std::min(step_s, 86400 - gone_s);
    prepared.advance(in_steps, 1e-4, taken_s);
    gone_s += taken_s;
  }
  EXPECT_NEAR(prepared.drawdown_m(in_steps, radius_m), prepared.drawdown_m(at_once, radius_m), 1e-8);
  EXPECT_NEAR(prepared.given_m3(in_steps), 8.64, 1e-9 * 8.64);
}

// cooper_jacob_1946, within 0.01 % where u is below 1e-5.
TEST(FormationReference, agrees_with_Cooper_and_Jacob_at_the_well) {
  auto const prepared = formation();
  for (double const time_s : {3600.0, 86400.0, 3e6}) {
    double const straight_m = cooper_jacob_drawdown_m(1e-4, transmissivity_m2_s, storativity, radius_m, time_s);
    EXPECT_NEAR(1e-4 * prepared.drawdown_per_flow_s_m2(time_s), straight_m, 3e-4 * straight_m);
  }
}

// Theis' recovery: what is left is the difference of two well functions (theis_1935).
TEST(FormationReference, recovers_after_Theis) {
  auto const prepared = formation();
  double const pumped_s = 4 * 3600;
  double const distance_m = 20 * radius_m;
  Formation::Drawn drawn{};
  prepared.advance(drawn, 2e-4, pumped_s);
  double rested_s = 0;
  for (double const until_s : {300.0, 1800.0, 7200.0, 40000.0}) {
    prepared.advance(drawn, 0, until_s - rested_s);
    rested_s = until_s;
    RateStep const rates[] = {{0, 2e-4}, {pumped_s, 0}};
    double const left_m = theis_drawdown_m(rates, transmissivity_m2_s, storativity, distance_m, pumped_s + until_s);
    EXPECT_NEAR(prepared.drawdown_m(drawn, distance_m), left_m, 0.005 * left_m) << until_s;
  }
}

// ferris_1962: a border at a distance d is an image well at 2·d, of the same sign where nothing flows, of the other
// where the level holds.
TEST(FormationReference, mirrors_its_well_in_a_border) {
  double const distance_m = 40;
  for (double const time_s : {600.0, 86400.0, 1e6}) {
    double const own_m = 1e-4 * formation().drawdown_per_flow_s_m2(time_s);
    double const image_m = theis_drawdown_m(1e-4, transmissivity_m2_s, storativity, 2 * distance_m, time_s);
    EXPECT_NEAR(1e-4 * formation(Boundary::no_flow, distance_m).drawdown_per_flow_s_m2(time_s), own_m + image_m,
                2e-4 * own_m);
    EXPECT_NEAR(1e-4 * formation(Boundary::recharge, distance_m).drawdown_per_flow_s_m2(time_s), own_m - image_m,
                2e-4 * own_m);
  }
}

// A stream holds its level, so that a long draw settles: s = Q/(2πT)·ln(2d/r) (ferris_1962).
TEST(FormationReference, settles_beside_a_stream) {
  double const settled_m = 1e-4 / (2 * std::numbers::pi * transmissivity_m2_s) * std::log(2 * 40 / radius_m);
  EXPECT_NEAR(1e-4 * formation(Boundary::recharge, 40).drawdown_per_flow_s_m2(3e7), settled_m, 1e-3 * settled_m);
}

// papadopulos_cooper_1967, the grid of tables/papadopulos_cooper_F.csv: casing and formation joined.
TEST(FormationReference, agrees_with_Papadopulos_and_Cooper_with_the_casing) {
  std::ifstream file(reference_folder() + "/tables/papadopulos_cooper_F.csv");
  if (!file) {
    GTEST_SKIP() << "the table is not here";
  }
  constexpr double tight_m2_s = 1e-8;  // so that the shortest stretch that a line is drawn for is short beside all
  std::string line;
  int compared = 0;
  while (std::getline(file, line)) {
    std::istringstream row(line);
    double alpha = 0;
    double u = 0;
    double f = 0;
    char comma = 0;
    if (!(row >> alpha >> comma >> u >> comma >> f)) {
      continue;
    }
    Well well;
    well.depth_m = 1e6;
    well.formation = Formation(tight_m2_s, storativity, radius_m);
    well.bore_area_m2 = std::numbers::pi * radius_m * radius_m * storativity / alpha;
    double const time_s = radius_m * radius_m * storativity / (4 * tight_m2_s * u);
    // Drawn so much that lines are cut by the level's move and not by their shortest time.
    double const flow_m3_s = 20 * 4 * std::numbers::pi * tight_m2_s;
    auto bore = bore_at_rest(well);
    pump_evenly(well, bore, flow_m3_s, time_s);
    if (time_s < 20) {
      continue;  // below the shortest stretch that a line is drawn for
    }
    EXPECT_NEAR(bore.level_depth_m / 20, f, 0.01 * f) << "alpha " << alpha << ", u " << u;
    ++compared;
  }
  EXPECT_GT(compared, 40);
}

// bradbury_rothschild_1985's repetition is Cooper–Jacob's line solved for T.
TEST(DrillerTestReference, repetition_ends_where_Cooper_and_Jacob_give_the_drawdown) {
  DrillerTest const test{.flow_m3_s = 6e-4,
                         .time_s = 4 * 3600,
                         .drawdown_m = 12,
                         .storativity = 2e-4,
                         .well_radius_m = 0.0762,
                         .quadratic_loss_s2_m5 = 2e6};
  double const found_m2_s = repeated_transmissivity_m2_s(test);
  double const back_m = cooper_jacob_drawdown_m(6e-4, found_m2_s, 2e-4, 0.0762, 4 * 3600) + 2e6 * 36e-8;
  EXPECT_NEAR(back_m, 12, 12 * 2e-3);  // 2.25 is printed for e^{-0.5772}·4 = 2.2458
  EXPECT_NEAR(tested_transmissivity_m2_s(test), found_m2_s, 2e-3 * found_m2_s);
}

// A test on a well whose casing gave most of the water: the formation is that much tighter.
TEST(DrillerTestReference, takes_off_what_the_casing_gave) {
  DrillerTest test{.flow_m3_s = 4e-4,
                   .time_s = 3600,
                   .drawdown_m = 50,
                   .storativity = 2e-4,
                   .well_radius_m = 0.0762,
                   .bore_area_m2 = 0.0172};
  double const found_m2_s = tested_transmissivity_m2_s(test);
  EXPECT_LT(found_m2_s, 0.6 * repeated_transmissivity_m2_s(test));
  RateStep const rate{0, test.flow_m3_s};
  PumpedWell const well{.transmissivity_m2_s = found_m2_s,
                        .storativity = 2e-4,
                        .well_radius_m = 0.0762,
                        .casing_radius_m = std::sqrt(0.0172 / std::numbers::pi)};
  EXPECT_NEAR(pumped_well_drawdown_m(std::span(&rate, 1), well, 3600), 50, 1e-5);
  test.time_s = 2000;  // 0.8 m³ from a casing that holds 0.86 m³ over the drawdown
  EXPECT_EQ(tested_transmissivity_m2_s(test), 0);
}

}  // namespace
}  // namespace wellproof
