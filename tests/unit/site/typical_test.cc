#include "site/typical.h"

#include <gtest/gtest.h>

#include <cmath>

namespace wellproof {
namespace {

constexpr double gpm_m3_s = 6.30902e-5;
constexpr double hp_w = 745.7;
constexpr double water_n_m3 = 9.80665 * 999.1;

TEST(typical_curve, spends_its_power_on_head_by_its_efficiency) {
  // H = η P / (ρ g Q) by hand: 10 gpm, 1 hp at its largest, 0.97 of it at best efficiency.
  double const efficiency = typical_pump_efficiency(10 * gpm_m3_s);
  EXPECT_NEAR(typical_head_m(10 * gpm_m3_s, hp_w), efficiency * 0.97 * hp_w / (water_n_m3 * 10 * gpm_m3_s), 1e-6);
  EXPECT_NEAR(typical_most_power_w(10 * gpm_m3_s, typical_head_m(10 * gpm_m3_s, hp_w)), hp_w, 1e-6);
}

TEST(typical_curve, has_the_shape_of_its_class) {
  // Common practice, no source: shut head 1.25 to 1.4 of that at best efficiency, run-out 1.5 to 1.6 of that flow, shut
  // power 0.5 to 0.6 of the largest, efficiency 0.45 at 5 gpm to 0.65 at 40 gpm.
  for (double const flow_gpm : {5.0, 10.0, 20.0, 40.0}) {
    double const flow_m3_s = flow_gpm * gpm_m3_s;
    double const head_m = typical_head_m(flow_m3_s, hp_w);
    auto const curve = typical_curve(flow_m3_s, head_m, hp_w);
    EXPECT_GE(curve.front().head_m / head_m, 1.25);
    EXPECT_LE(curve.front().head_m / head_m, 1.4);
    EXPECT_GE(curve.back().flow_m3_s / flow_m3_s, 1.5);
    EXPECT_LE(curve.back().flow_m3_s / flow_m3_s, 1.6);
    EXPECT_GE(curve.front().shaft_power_w / most_power_w(curve), 0.5);
    EXPECT_LE(curve.front().shaft_power_w / most_power_w(curve), 0.6);
    EXPECT_NEAR(most_power_w(curve), hp_w, 1e-9);
    for (std::size_t i = 1; i < curve.size(); ++i) {
      EXPECT_LT(curve[i].head_m, curve[i - 1].head_m);
    }
  }
  EXPECT_NEAR(typical_pump_efficiency(5 * gpm_m3_s), 0.45, 1e-4);
  EXPECT_NEAR(typical_pump_efficiency(40 * gpm_m3_s), 0.65, 1e-4);
}

TEST(typical_curve, is_best_at_its_own_flow) {
  auto const curve = typical_curve(10 * gpm_m3_s, 80, hp_w);
  EXPECT_NEAR(best_efficiency_flow_m3_s(curve) / gpm_m3_s, 10, 0.5);
  EXPECT_NEAR(curve_head_m(curve, 10 * gpm_m3_s), 80, 1e-9);
}

TEST(best_efficiency_flow, is_the_vertex_of_a_parabola) {
  // Efficiency 1 - (q - 2.3)² over q = 0 … 4 with constant power: head · flow is that parabola.
  std::vector<CurvePoint> curve;
  for (double q = 0.5; q < 4; q += 0.5) {
    curve.push_back({q, (10 - (q - 2.3) * (q - 2.3)) / q, 1});
  }
  EXPECT_NEAR(best_efficiency_flow_m3_s(curve), 2.3, 1e-9);
}

TEST(typical_plate, agrees_with_itself_and_with_the_trade) {
  // Common practice, no source: service-factor amps at 230 V; full-load efficiency 0.62 to 0.80, power factor 0.72 to
  // 0.86.
  struct Row {
    double power_hp, service_factor, current_a, tolerance;
  };
  for (auto const& row :
       {Row{0.5, 1.6, 3, 0.1}, Row{0.75, 1.5, 4, 0.1}, Row{1, 1.4, 5, 0.1}, Row{1.5, 1.3, 6, 0.2},
        Row{2, 1.25, 8.5, 0.4}, Row{3, 1.15, 11, 0.2}, Row{5, 1.15, 18, 0.2}, Row{7.5, 1.15, 27, 0.2}}) {
    auto const plate = typical_plate(row.power_hp * hp_w, 230);
    EXPECT_NEAR(plate.service_factor, row.service_factor, 0.01) << row.power_hp;
    EXPECT_NEAR(plate.service_factor_current_a, row.current_a, row.tolerance) << row.power_hp;
    EXPECT_GE(plate.efficiency, 0.62);
    EXPECT_LE(plate.efficiency, 0.80);
    EXPECT_GE(plate.power_factor, 0.72);
    EXPECT_LE(plate.power_factor, 0.86);
    EXPECT_LT(plate.full_load_current_a, plate.service_factor_current_a);
    double const implied_w = std::sqrt(3.0) * 230 * plate.full_load_current_a * plate.efficiency * plate.power_factor;
    EXPECT_NEAR(implied_w, row.power_hp * hp_w, 0.001 * implied_w);
  }
}

TEST(typical_plate, is_a_smaller_motors_below_the_table_and_a_larger_ones_above) {
  double before_a = 0;
  for (double power_hp = 0.2; power_hp < 40; power_hp *= 1.1) {
    auto const plate = typical_plate(power_hp * hp_w, 230);
    EXPECT_GT(plate.service_factor_current_a, before_a) << power_hp;
    before_a = plate.service_factor_current_a;
  }
}

TEST(typical_motor, covers_the_pump_with_its_service_factor) {
  EXPECT_NEAR(typical_motor_power_w(1.39 * hp_w) / hp_w, 1, 1e-3);
  EXPECT_NEAR(typical_motor_power_w(1.41 * hp_w) / hp_w, 1.5, 1e-3);
  EXPECT_GT(typical_motor_power_w(60 * hp_w) / hp_w, 50);
}

}  // namespace
}  // namespace wellproof
