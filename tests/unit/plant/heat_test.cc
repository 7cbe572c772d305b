#include "plant/heat.h"

#include <gtest/gtest.h>

namespace wellproof {
namespace {

constexpr double water_c = 12;
constexpr double cooling_velocity_m_s = 0.0762;  // 0.25 ft/s, common practice, no source

/// Temperatures after a time, by small steps.
struct Warm {
  double winding_c = water_c;
  double shell_c = water_c;
};

Warm run_for(MotorHeat const& heat, double time_s, double velocity_m_s, double winding_loss_w, double shell_loss_w,
             Warm warm = {}) {
  constexpr double step_s = 0.5;
  for (double t_s = 0; t_s < time_s; t_s += step_s) {
    HeatRates const rates = heat_rates(heat, warm.winding_c, warm.shell_c, water_c,
                                       shell_to_water_w_k(heat, velocity_m_s), winding_loss_w, shell_loss_w);
    warm.winding_c += step_s * rates.winding_k_s;
    warm.shell_c += step_s * rates.shell_k_s;
  }
  return warm;
}

// A winding 55 to 65 K over the water at rated load: common practice, no source.
TEST(Heat, rated_loss_in_water_at_the_cooling_velocity_gives_the_usual_rise) {
  MotorHeat const heat = motor_heat(1119, 435);
  Warm const warm = run_for(heat, 7200, cooling_velocity_m_s, 290, 145);
  EXPECT_NEAR(warm.winding_c - water_c, 60, 5);
  EXPECT_NEAR(warm.shell_c - water_c, 15, 2);
}

TEST(Heat, the_winding_follows_within_minutes) {
  MotorHeat const heat = motor_heat(1119, 435);
  double const end_c = run_for(heat, 7200, cooling_velocity_m_s, 290, 145).winding_c;
  EXPECT_LT(run_for(heat, 60, cooling_velocity_m_s, 290, 145).winding_c - water_c, 0.5 * (end_c - water_c));
  EXPECT_GT(run_for(heat, 900, cooling_velocity_m_s, 290, 145).winding_c - water_c, 0.9 * (end_c - water_c));
}

TEST(Heat, still_water_cools_less_and_fast_water_more) {
  MotorHeat const heat = motor_heat(2237, 745);
  EXPECT_NEAR(shell_to_water_w_k(heat, cooling_velocity_m_s), heat.shell_to_water_w_k, 1e-9);
  EXPECT_NEAR(shell_to_water_w_k(heat, 0), 0.35 * heat.shell_to_water_w_k, 1e-9);
  EXPECT_EQ(shell_to_water_w_k(heat, -0.1), shell_to_water_w_k(heat, 0.1));
  double before_w_k = 0;
  for (double velocity_m_s = 0; velocity_m_s < 2; velocity_m_s += 0.01) {
    double const now_w_k = shell_to_water_w_k(heat, velocity_m_s);
    EXPECT_GT(now_w_k, before_w_k);
    before_w_k = now_w_k;
  }
  EXPECT_GT(run_for(heat, 7200, 0, 497, 248).winding_c,
            run_for(heat, 7200, cooling_velocity_m_s, 497, 248).winding_c + 15);
}

TEST(Heat, nothing_flows_where_all_is_as_warm_as_the_water) {
  MotorHeat const heat = motor_heat(1119, 435);
  HeatRates const rates = heat_rates(heat, water_c, water_c, water_c, shell_to_water_w_k(heat, 0.1), 0, 0);
  EXPECT_EQ(rates.winding_k_s, 0);
  EXPECT_EQ(rates.shell_k_s, 0);
}

TEST(Heat, what_is_lost_is_stored_or_goes_to_the_water) {
  MotorHeat const heat = motor_heat(1119, 435);
  HeatRates const rates = heat_rates(heat, 70, 30, water_c, shell_to_water_w_k(heat, 0.05), 290, 145);
  double const stored_w = heat.winding_j_k * rates.winding_k_s + heat.shell_j_k * rates.shell_k_s;
  EXPECT_NEAR(stored_w + shell_to_water_w_k(heat, 0.05) * (30 - water_c), 435, 1e-9);
}

// montsinger_1930, and the rule as printed with the insulation classes: each 10 °C over the limit halves the life.
TEST(Heat, ten_degrees_halve_the_life) {
  EXPECT_DOUBLE_EQ(insulation_life_ratio(130, 130), 1);
  EXPECT_DOUBLE_EQ(insulation_life_ratio(140, 130), 0.5);
  EXPECT_DOUBLE_EQ(insulation_life_ratio(100, 130), 8);
}

}  // namespace
}  // namespace wellproof
