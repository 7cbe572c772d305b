// The pump's affinity and its churning against worked examples.
#include <gtest/gtest.h>

#include <numbers>

#include "plant/pump.h"

namespace wellproof {
namespace {

constexpr double inch_m = 0.0254;
constexpr double foot_m = 0.3048;
constexpr double gpm_m3_s = 231 * inch_m * inch_m * inch_m / 60;
constexpr double horsepower_w = 745.69987;
constexpr double rpm_rad_s = std::numbers::pi / 30;

/// An invented curve about one point.
PumpOf<double> pump_about(double flow_m3_s, double head_m, double power_w, double speed_rad_s) {
  PumpOf<double> pump;
  pump.curve = {
      {0, 1.2 * head_m, 0.5 * power_w}, {flow_m3_s, head_m, power_w}, {1.5 * flow_m3_s, 0.5 * head_m, power_w}};
  pump.curve_speed_rad_s = speed_rad_s;
  pump.flow_factor = 1;
  pump.head_factor = 1;
  pump.power_factor = 1;
  pump.rated_power_w = power_w;
  pump.dry_power_fraction = 0.3;
  return pump;
}

TEST(AffinityReference, of_a_handbook_example) {
  // Crane TP-410, example 7.33: 400 gpm, 126 ft, 17.5 hp at 3500 rpm become 194.2857 gpm, 29.7257 ft and 2.0053 hp at
  // 1700 rpm.
  Pump const pump(pump_about(400 * gpm_m3_s, 126 * foot_m, 17.5 * horsepower_w, 3500 * rpm_rad_s));
  double const flow_m3_s = 194.2857 * gpm_m3_s;
  double const speed_rad_s = 1700 * rpm_rad_s;
  EXPECT_NEAR(pump.head_m(flow_m3_s, speed_rad_s, 1).value / foot_m, 29.7257, 0.001 * 29.7257);
  EXPECT_NEAR(pump.shaft_power_w(flow_m3_s, speed_rad_s, 1) / horsepower_w, 2.0053, 0.001 * 2.0053);
  EXPECT_NEAR(pump.flow_at_head_m3_s(29.7257 * foot_m, speed_rad_s) / gpm_m3_s, 194.2857, 0.002 * 194.2857);
}

TEST(AffinityReference, shut_off_head_at_80_hertz_is_16_ninths_of_that_at_60) {
  // (80/60)² = 1.78
  Pump const pump(pump_about(1e-3, 60, 1000, 361));
  EXPECT_NEAR(pump.head_m(0, 361 * 80.0 / 60, 1).value / pump.head_m(0, 361, 1).value, 1.78, 0.005);
}

TEST(ChurningReference, of_water_held_in_a_shut_pump) {
  // dT/dt = 42.4·bhp/(W·c) °F a minute with W in pounds and c in Btu/lb°F (42.4 Btu a minute are one horsepower); the
  // rule is from memory, the unit equation is not.
  double const held_lb = 5;
  double const held_m3 = held_lb * 0.45359237 / 998.2;
  double const expected_k_s = 42.4 * 1.5 / held_lb / 60 * 5 / 9;
  EXPECT_NEAR(churning_rate_k_s(1.5 * horsepower_w, held_m3), expected_k_s, 0.002 * expected_k_s);
}

TEST(ChurningReference, agrees_with_the_printed_rise_of_a_flow) {
  // An engineering page prints Δt = P(1−η)/(c·q·ρ): 0.11 kW, 28 %, 1.7e-3 m³/s give 0.011 °C. A flow of that size
  // renews its own volume of one second: the rate over one second is the rise.
  EXPECT_NEAR(churning_rate_k_s(110 * (1 - 0.28), 1.7e-3), 0.011, 0.0005);
  EXPECT_NEAR(churning_rate_k_s(95 * (1 - 0.15), 5.6e-4), 0.035, 0.001);
}

}  // namespace
}  // namespace wellproof
