// Pipe friction and surge against published figures.
#include <gtest/gtest.h>

#include <cmath>

#include "plant/pipe.h"
#include "plant/water.h"
#include "reference/printed_rows.h"

namespace wellproof {
namespace {

constexpr double inch_m = 0.0254;
constexpr double foot_m = 0.3048;
constexpr double gallon_m3 = 231 * inch_m * inch_m * inch_m;
constexpr double gpm_m3_s = gallon_m3 / 60;
constexpr double psi_pa = 6894.757;

struct FactorRow {
  double reynolds;
  double relative_roughness;
  double colebrook;
};

// Roots of Colebrook's equation. The first two are printed in the documentation of the open library "fluids" (MIT); the
// others were computed from the equation in SciPy.
constexpr FactorRow colebrook_rows[] = {
    {1e5, 1e-4, 0.018513866077471}, {2.9e5, 1e-5, 0.0146199041093456}, {4e3, 0.05, 0.076986835},
    {1e4, 1e-3, 0.032381806},       {1e4, 1e-6, 0.030884498},          {5e4, 0.002, 0.026505592},
    {1e5, 1e-3, 0.022174536},       {1e6, 1e-4, 0.013441438},          {1e6, 1e-5, 0.011869545},
    {1e7, 0.01, 0.037909826},       {1e8, 1e-4, 0.011999051},
};

TEST(FrictionReference, churchill_stays_within_4_percent_of_colebrook) {
  // Churchill's turbulent part is explicit and departs by a few percent near the transition, and by less than 1.5 %
  // from Reynolds 10⁵ on.
  for (auto const& row : colebrook_rows) {
    double const allowed = row.reynolds >= 1e5 ? 0.015 : 0.04;
    EXPECT_NEAR(friction_factor(row.reynolds, row.relative_roughness), row.colebrook, allowed * row.colebrook)
        << "Re " << row.reynolds << ", roughness " << row.relative_roughness;
  }
}

TEST(FrictionReference, meets_the_fully_rough_limit) {
  // Prandtl, von Kármán and Nikuradse: 1/√f = 2 log₁₀(3.7 D/ε) where viscosity no longer counts.
  for (double const roughness : {0.005, 0.01, 0.03}) {
    double const root = 2 * std::log10(3.7 / roughness);
    EXPECT_NEAR(friction_factor(1e9, roughness), 1 / (root * root), 0.001 / (root * root)) << roughness;
  }
}

TEST(FrictionReference, satisfies_colebrooks_own_equation_nearly) {
  // 1/√f = −2 log₁₀(ε/3.7D + 2.51/(Re √f)), Colebrook 1939; the equation itself, over a grid.
  for (double reynolds = 1e4; reynolds < 2e7; reynolds *= 3) {
    for (double const roughness : {0.0, 1e-5, 1e-4, 1e-3, 1e-2}) {
      double root = 8;
      for (int round = 0; round < 60; ++round) {
        root = -2 * std::log10(roughness / 3.7 + 2.51 * root / reynolds);
      }
      double const colebrook = 1 / (root * root);
      EXPECT_NEAR(friction_factor(reynolds, roughness), colebrook, 0.03 * colebrook) << reynolds << " " << roughness;
    }
  }
}

TEST(FrictionReference, is_laminar_below_2000) {
  // Hagen-Poiseuille, f = 64/Re
  for (double const reynolds : {1.0, 50.0, 99.0, 101.0, 500.0, 1500.0}) {
    EXPECT_NEAR(friction_factor(reynolds, 0), 64 / reynolds, 1e-4 * 64 / reynolds) << reynolds;
  }
}

TEST(FrictionReference, meets_blasius_in_a_smooth_pipe) {
  // Blasius 1913, f = 0.3164 Re^(−1/4) for 4·10³ to 10⁵; 0.03164 at 10⁴ is printed in the documentation of "fluids".
  EXPECT_NEAR(friction_factor(1e4, 0), 0.03164, 0.03 * 0.03164);
  EXPECT_NEAR(friction_factor(5e4, 0), 0.3164 * std::pow(5e4, -0.25), 0.03 * 0.0212);
}

struct HazenRow {
  double inside_in;
  double flow_gpm;
  double loss_ft_per_100ft;
};

// Illinois Administrative Code, Title 77 Part 906 Appendix A Exhibit I: schedule 40 plastic pipe, C = 150, feet of head
// for each 100 ft. Inside diameters of ASME B36.10.
constexpr HazenRow illinois_rows[] = {
    {1.049, 5, 1.52},  {1.049, 10, 5.50}, {1.380, 10, 1.46},  {1.380, 15, 3.06}, {1.380, 20, 5.23},
    {1.610, 10, 0.70}, {1.610, 20, 2.46}, {1.610, 25, 3.75},  {1.610, 30, 5.22}, {2.067, 20, 0.74},
    {2.067, 30, 1.54}, {2.067, 50, 3.98}, {3.068, 100, 2.09},
};

double hazen_ft_per_100ft(double inside_in, double flow_gpm, double coefficient) {
  return hazen_williams_head_m(flow_gpm * gpm_m3_s, 100 * foot_m, inside_in * inch_m, coefficient) / foot_m;
}

TEST(HazenWilliamsReference, meets_the_printed_table_within_2_5_percent) {
  // Printed to two decimals and cut, not rounded; hence half a hundredth beside the percentage.
  for (auto const& row : illinois_rows) {
    EXPECT_NEAR(hazen_ft_per_100ft(row.inside_in, row.flow_gpm, 150), row.loss_ft_per_100ft,
                0.025 * row.loss_ft_per_100ft + 0.005)
        << row.inside_in << " in, " << row.flow_gpm << " gpm";
  }
}

TEST(HazenWilliamsReference, meets_the_whole_table_of_schedule_40) {
  auto const rows = printed_rows("friction_sch40_C150.csv");
  if (rows.empty()) {
    GTEST_SKIP() << "the table is not here";
  }
  for (auto const& row : rows) {
    // nominal, inside [in], gpm, printed, computed with 0.2083 (100/C)^1.852 q^1.852/d^4.8655
    double const found = hazen_ft_per_100ft(row[1], row[2], 150);
    EXPECT_NEAR(found, row[3], 0.025 * row[3] + 0.0125) << row[1] << " in, " << row[2] << " gpm";
    EXPECT_NEAR(found, row[4], 0.015 * row[4]) << row[1] << " in, " << row[2] << " gpm";
  }
}

TEST(HazenWilliamsReference, meets_the_handbook_form_at_other_coefficients) {
  // 0.2083 (100/C)^1.852 q^1.852/d^4.8655 [ft/100 ft, gpm, in], the form usual in irrigation handbooks.
  for (double const coefficient : {120.0, 140.0}) {
    for (double const inside_in : {1.049, 1.380, 1.610, 2.067}) {
      for (double const flow_gpm : {5.0, 10.0, 20.0, 30.0}) {
        double const expected = 0.2083 * std::pow(100 / coefficient * flow_gpm, 1.852) / std::pow(inside_in, 4.8655);
        EXPECT_NEAR(hazen_ft_per_100ft(inside_in, flow_gpm, coefficient), expected, 0.015 * expected);
      }
    }
  }
}

TEST(HazenWilliamsReference, of_new_plastic_is_optimistic_up_to_10_gpm) {
  // Smooth pipe at 15 °C after Colebrook, computed in SciPy, loses 7 to 25 % more than C = 150 says; Churchill's own
  // departure widens that a little.
  for (auto const& row : illinois_rows) {
    if (row.flow_gpm > 10) {
      continue;
    }
    double const darcy_ft =
        friction_head_m(row.flow_gpm * gpm_m3_s, 100 * foot_m, row.inside_in * inch_m, 0, water_viscosity_m2_s(15)) /
        foot_m;
    double const ratio = darcy_ft / hazen_ft_per_100ft(row.inside_in, row.flow_gpm, 150);
    EXPECT_GT(ratio, 1.05) << row.inside_in << " in, " << row.flow_gpm << " gpm";
    EXPECT_LT(ratio, 1.28) << row.inside_in << " in, " << row.flow_gpm << " gpm";
  }
}

TEST(SurgeReference, wave_in_a_steel_pipeline) {
  // A worked example of a public engineering calculator: 1000 m of steel, 200 GPa; 1191.4 m/s, 2L/a = 1.679 s, head of
  // a sudden stop 242.9 m. It does not print modulus 2.2 GPa, D/e = 50, 2 m/s and 9.81: they were inferred from it.
  double const wave_m_s = wave_speed_m_s(2.2e9, 1000, 0.5, 0.01, 200e9);
  EXPECT_NEAR(wave_m_s, 1191.4, 0.05);
  EXPECT_NEAR(2 * 1000 / wave_m_s, 1.679, 0.0005);
  EXPECT_NEAR(joukowsky_pa(1000, wave_m_s, 2) / (1000 * 9.81), 242.9, 0.05);
}

TEST(SurgeReference, wave_in_household_pipes) {
  // Computed in another program from Wylie & Streeter's formula with K = 2.19 GPa: schedule 40 of 1¼ in (1.660 in
  // outside, 1.380 inside) in steel 1407 m/s, in PVC of 2.8 GPa 502 m/s; 62 and 22 psi for each ft/s.
  double const wall_m = 0.140 * inch_m;
  double const steel_m_s = wave_speed_m_s(2.19e9, 998.2, 1.380 * inch_m, wall_m, 200e9);
  double const pvc_m_s = wave_speed_m_s(2.19e9, 998.2, 1.380 * inch_m, wall_m, 2.8e9);
  EXPECT_NEAR(steel_m_s, 1407, 5);
  EXPECT_NEAR(pvc_m_s, 502, 3);
  EXPECT_NEAR(joukowsky_pa(998.2, steel_m_s, foot_m) / psi_pa, 62, 0.6);
  EXPECT_NEAR(joukowsky_pa(998.2, pvc_m_s, foot_m) / psi_pa, 22, 0.5);
}

}  // namespace
}  // namespace wellproof
