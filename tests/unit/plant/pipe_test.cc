// Pipe: what the prepared path keeps of the laws it is made of.
#include "plant/pipe.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

#include "contract/require.h"
#include "plant/water.h"

namespace wellproof {
namespace {

constexpr double viscosity_m2_s = 1.3063e-6;  // water at 10 °C
constexpr double most_flow_m3_s = 4e-3;

PipeRunOf<double> run_of(double diameter_m, double length_m, double roughness_m, double minor_loss) {
  PipeRunOf<double> run;
  run.inside_diameter_m = diameter_m;
  run.length_m = length_m;
  run.roughness_m = roughness_m;
  run.minor_loss = minor_loss;
  return run;
}

std::vector<PipeRunOf<double>> two_runs() {
  return {run_of(0.0351, 60, 1.5e-6, 4), run_of(0.0266, 25, 0, 9)};
}

double sum_over_runs_m(std::vector<PipeRunOf<double>> const& runs, double flow_m3_s) {
  double sum_m = 0;
  for (auto const& run : runs) {
    sum_m += friction_head_m(flow_m3_s, run.length_m, run.inside_diameter_m, run.roughness_m, viscosity_m2_s) +
             minor_head_m(flow_m3_s, run.inside_diameter_m, run.minor_loss);
  }
  return sum_m;
}

TEST(Friction, of_slow_flow_is_laminar) {
  // Hagen-Poiseuille: h = 128 ν L Q / (π g D⁴)
  double const flow_m3_s = 5e-6;
  double const expected_m =
      128 * viscosity_m2_s * 10 * flow_m3_s / (std::numbers::pi * gravity_m_s2 * std::pow(0.02, 4));
  EXPECT_NEAR(friction_head_m(flow_m3_s, 10, 0.02, 0, viscosity_m2_s), expected_m, 1e-6 * expected_m);
}

TEST(Friction, does_not_jump_where_the_laminar_law_is_taken_alone) {
  EXPECT_NEAR(friction_factor(100 - 1e-9, 0.01), friction_factor(100 + 1e-9, 0.01), 1e-9);
}

TEST(Friction, of_water_at_rest_is_none) {
  EXPECT_EQ(friction_head_m(0, 10, 0.02, 0, viscosity_m2_s), 0);
}

TEST(Friction, is_more_in_a_rougher_pipe) {
  EXPECT_GT(friction_head_m(1e-3, 10, 0.03, 1e-4, viscosity_m2_s), friction_head_m(1e-3, 10, 0.03, 0, viscosity_m2_s));
}

TEST(Fittings, take_their_share_of_the_velocity_head_against_the_flow) {
  double const velocity_m_s = 1e-3 / (std::numbers::pi / 4 * 0.03 * 0.03);
  EXPECT_NEAR(minor_head_m(1e-3, 0.03, 3), 3 * velocity_m_s * velocity_m_s / (2 * 9.80665), 1e-12);
  EXPECT_DOUBLE_EQ(minor_head_m(-1e-3, 0.03, 3), -minor_head_m(1e-3, 0.03, 3));
}

TEST(HazenWilliams, takes_the_sign_of_the_flow) {
  EXPECT_DOUBLE_EQ(hazen_williams_head_m(-1e-3, 10, 0.03, 150), -hazen_williams_head_m(1e-3, 10, 0.03, 150));
  EXPECT_EQ(hazen_williams_head_m(0, 10, 0.03, 150), 0);
}

TEST(Path, loses_within_a_thousandth_what_its_runs_lose) {
  Path const path(two_runs(), viscosity_m2_s, most_flow_m3_s);
  for (int i = 1; i <= 5000; ++i) {
    double const flow_m3_s = most_flow_m3_s * i / 5000 * i / 5000;
    double const expected_m = sum_over_runs_m(two_runs(), flow_m3_s);
    EXPECT_NEAR(path.loss_m(flow_m3_s).value, expected_m, 1e-3 * expected_m) << "at " << flow_m3_s << " m³/s";
  }
}

TEST(Path, loses_within_a_thousandth_also_where_it_is_prepared_for_far_more_flow) {
  Path const path(two_runs(), viscosity_m2_s, 10 * most_flow_m3_s);
  for (int i = 1; i <= 5000; ++i) {
    double const flow_m3_s = 1e-3 * i / 5000;
    double const expected_m = sum_over_runs_m(two_runs(), flow_m3_s);
    EXPECT_NEAR(path.loss_m(flow_m3_s).value, expected_m, 1e-3 * expected_m) << "at " << flow_m3_s << " m³/s";
  }
}

TEST(Path, has_a_finite_slope_at_rest) {
  Path const path(two_runs(), viscosity_m2_s, most_flow_m3_s);
  auto const at_rest = path.loss_m(0);
  EXPECT_EQ(at_rest.value, 0);
  EXPECT_NEAR(at_rest.slope, sum_over_runs_m(two_runs(), 1e-9) / 1e-9, 1e-3 * at_rest.slope);
}

TEST(Path, goes_on_rising_beyond_the_flow_it_was_prepared_for) {
  Path const path(two_runs(), viscosity_m2_s, most_flow_m3_s);
  EXPECT_GT(path.loss_m(3 * most_flow_m3_s).value, 3 * path.loss_m(most_flow_m3_s).value);
}

TEST(Path, adds_up_length_rise_volume_and_inertance) {
  auto runs = two_runs();
  runs[0].rise_m = 12;
  runs[1].rise_m = -2;
  Path const path(runs, viscosity_m2_s, most_flow_m3_s);
  double const first_m2 = std::numbers::pi / 4 * 0.0351 * 0.0351;
  double const second_m2 = std::numbers::pi / 4 * 0.0266 * 0.0266;
  EXPECT_DOUBLE_EQ(path.length_m(), 85);
  EXPECT_DOUBLE_EQ(path.rise_m(), 10);
  EXPECT_NEAR(path.volume_m3(), 60 * first_m2 + 25 * second_m2, 1e-12);
  EXPECT_NEAR(path.inertance_s2_m2(), (60 / first_m2 + 25 / second_m2) / 9.80665, 1e-6);
}

TEST(Path, is_as_strong_as_its_weakest_run_that_states_a_class) {
  auto runs = two_runs();
  runs[0].rating_pa = 1.4e6;
  EXPECT_DOUBLE_EQ(Path(runs, viscosity_m2_s, most_flow_m3_s).rating_pa(), 1.4e6);
  runs[1].rating_pa = 1.1e6;
  EXPECT_DOUBLE_EQ(Path(runs, viscosity_m2_s, most_flow_m3_s).rating_pa(), 1.1e6);
}

TEST(Path, without_runs_loses_nothing) {
  Path const none({}, viscosity_m2_s, most_flow_m3_s);
  EXPECT_EQ(none.loss_m(1e-3).value, 0);
  EXPECT_EQ(none.loss_m(1e-3).slope, 0);
  EXPECT_EQ(none.inertance_s2_m2(), 0);
}

TEST(Path, is_not_prepared_for_no_flow) {
  EXPECT_THROW(Path(two_runs(), viscosity_m2_s, 0), ContractBroken);
  EXPECT_THROW(Path(two_runs(), 0, most_flow_m3_s), ContractBroken);
}

}  // namespace
}  // namespace wellproof
