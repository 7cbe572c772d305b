// Radial flow to a well against printed and computed tables.
#include <array>
#include <cmath>
#include <fstream>
#include <sstream>
#include <string>

#include <gtest/gtest.h>

#include "folders.h"
#include "plant/radial_flow.h"

namespace wellproof {
namespace {

struct Row {
  double u;
  double printed;
  double tolerance;  // half of the last digit printed
};

TEST(theis_well_function, agrees_with_printed_tables) {
  // L. Huisman, Groundwater Recovery, 1972, table 4.1, but for u = 6, where a digit is misprinted.
  constexpr Row huisman[] = {{1e-15, 33.9616, 5e-5}, {1e-10, 22.4486, 5e-5}, {1e-5, 10.9357, 5e-5},
                             {1, 0.2194, 5e-5},      {2, 0.04890, 5e-6},     {3, 0.01305, 5e-6},
                             {4, 0.003779, 5e-7},    {5, 0.001148, 5e-7},    {7, 1.155e-4, 5e-8},
                             {8, 3.767e-5, 5e-9},    {9, 1.245e-5, 5e-9},    {9.9, 4.637e-6, 5e-10}};
  for (Row const& row : huisman) {
    EXPECT_NEAR(theis_well_function(row.u), row.printed, 1.01 * row.tolerance) << row.u;
  }
  // G. M. Fair, J. C. Geyer, D. A. Okun, Water and Wastewater Engineering, table 3.2.
  constexpr Row fair[] = {{1e-15, 33.96, 5e-3}, {1e-14, 31.66, 5e-3}, {1e-13, 29.36, 5e-3}, {1e-12, 27.05, 5e-3},
                          {1e-11, 24.75, 5e-3}, {1e-10, 22.45, 5e-3}, {1e-9, 20.15, 5e-3},  {1e-8, 17.84, 5e-3},
                          {5e-9, 18.54, 5e-3},  {5e-8, 16.23, 5e-3}};
  for (Row const& row : fair) {
    EXPECT_NEAR(theis_well_function(row.u), row.printed, 1.01 * row.tolerance) << row.u;
  }
}

TEST(theis_well_function, agrees_with_another_library) {
  // SciPy's exp1, ten digits.
  constexpr Row scipy[] = {{1e-7, 15.54088009, 5e-9}, {1e-4, 8.633224705, 5e-10}, {1e-2, 4.037929577, 5e-10},
                           {0.1, 1.822923958, 5e-10}, {0.5, 0.5597735948, 5e-11}, {1, 0.2193839344, 5e-11},
                           {3, 0.01304838109, 5e-12}, {5, 0.001148295591, 5e-13}, {6, 3.600825e-4, 5e-11}};
  for (Row const& row : scipy) {
    EXPECT_NEAR(theis_well_function(row.u), row.printed, 1.1 * row.tolerance) << row.u;
  }
}

TEST(large_well_function, agrees_with_the_table_over_its_whole_grid) {
  std::ifstream file(reference_folder() + "/tables/papadopulos_cooper_F.csv");
  if (!file) {
    GTEST_SKIP() << "no table of the large well's function here";
  }
  int rows = 0;
  int printed_rows = 0;
  double worst = 0;
  for (std::string line; std::getline(file, line);) {
    std::istringstream fields(line);
    double alpha = 0;
    double u = 0;
    double talbot = 0;
    double other = 0;
    char comma = 0;
    if (!(fields >> alpha >> comma >> u >> comma >> talbot >> comma >> other)) {
      continue;
    }
    double const found = large_well_function(u, alpha, 0, 1);
    worst = std::max(worst, std::abs(found / talbot - 1));
    EXPECT_NEAR(found / talbot, 1, 2e-5) << "alpha " << alpha << ", u " << u;
    ++rows;
    double printed = 0;
    if (fields >> comma >> printed) {
      EXPECT_NEAR(found / printed, 1, 1.2e-3) << "alpha " << alpha << ", u " << u;
      ++printed_rows;
    }
  }
  RecordProperty("worst_relative_departure", std::to_string(worst));
  EXPECT_EQ(rows, 90);
  EXPECT_GT(printed_rows, 20);
}

TEST(large_well_function, agrees_with_the_closed_integral) {
  // Papadopulos and Cooper's integral 32α²/π² ∫ (1 − e^(−β²/4u))/(β³Δ) dβ, computed with 30 digits.
  EXPECT_NEAR(large_well_function(1e-3, 0.1, 0, 1) / 6.21241, 1, 1e-5);
  EXPECT_NEAR(large_well_function(1e-6, 1e-4, 0, 1) / 12.9100, 1, 1e-5);
}

TEST(large_well_function, without_skin_at_a_distance_comes_to_theis) {
  // Far beyond what the casing still feels, a wide well draws like a thin one.
  for (double ratio : {10.0, 100.0}) {
    double const u_well = 1e-3 / (ratio * ratio);
    EXPECT_NEAR(large_well_function(u_well, 0.1, 0, ratio) / theis_well_function(1e-3), 1, 0.02) << ratio;
  }
  EXPECT_NEAR(large_well_function(1e-9, 0.1, 0, 50) / theis_well_function(2500e-9), 1, 1e-5);
}

TEST(pumped_well, gives_from_its_casing_alone_at_first) {
  PumpedWell const well{1e-4, 1e-4, 0.1, 0.5, 50, 1e5};
  std::array<RateStep, 1> const rates{{{0, 1e-3}}};
  double const time_s = 0.1;
  double const area_m2 = 3.14159265358979 * 0.25;
  EXPECT_NEAR(pumped_well_drawdown_m(rates, well, time_s) / (1e-3 * time_s / area_m2), 1, 1e-3);
}

TEST(pumped_well, loses_what_jacob_says_once_its_casing_has_settled) {
  PumpedWell const lossless{1e-3, 1e-4, 0.1, 0.1, 0, 0};
  PumpedWell lossy = lossless;
  lossy.linear_loss_s_m2 = 30;
  lossy.quadratic_loss_s2_m5 = 2000;
  std::array<RateStep, 3> const rates{{{0, 5e-3}, {7200, 10e-3}, {14400, 0}}};
  double const pumped_s = 14000;
  double const loss_m =
      pumped_well_drawdown_m(rates, lossy, pumped_s) - pumped_well_drawdown_m(rates, lossless, pumped_s);
  EXPECT_NEAR(loss_m, 30 * 0.01 + 2000 * 1e-4, 2e-3);
  double const recovered_s = 28000;
  EXPECT_NEAR(pumped_well_drawdown_m(rates, lossy, recovered_s), pumped_well_drawdown_m(rates, lossless, recovered_s),
              2e-3);
}

TEST(recovery, follows_the_straight_line_of_theis) {
  // s' = Q/4πT · ln(t/t'), late.
  std::array<RateStep, 2> const rates{{{0, 0.01}, {3600, 0}}};
  double const residual_m = theis_drawdown_m(rates, 1e-2, 1e-5, 1, 7200);
  EXPECT_NEAR(residual_m, 0.01 / (4 * 3.14159265358979 * 1e-2) * std::log(2.0), 1e-6);
}

TEST(cooper_jacob, comes_within_a_quarter_per_cent_below_u_of_a_hundredth) {
  double const s_m = theis_drawdown_m(1e-2, 1e-3, 1e-4, 20, 1000.0);  // u = 0.01
  EXPECT_NEAR(cooper_jacob_drawdown_m(1e-2, 1e-3, 1e-4, 20, 1000.0) / s_m, 1, 2.5e-3);
}

}  // namespace
}  // namespace wellproof
