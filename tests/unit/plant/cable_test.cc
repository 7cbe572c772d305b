#include "plant/cable.h"

#include <gtest/gtest.h>

namespace wellproof {
namespace {

TEST(Cable, resistance_goes_with_length_and_against_area) {
  double const once_ohm = cable_resistance_ohm(2e-3, 50, 20);
  EXPECT_DOUBLE_EQ(cable_resistance_ohm(2e-3, 100, 20), 2 * once_ohm);
  EXPECT_DOUBLE_EQ(cable_resistance_ohm(4e-3, 50, 20), once_ohm / 4);
  EXPECT_EQ(cable_resistance_ohm(2e-3, 0, 20), 0);
}

// iec_60028: a square millimetre of annealed copper a metre long has 1/58 Ω at 20 °C. Stranding adds 2 %.
TEST(Cable, a_square_millimetre_of_copper_is_as_the_standard_says) {
  double const diameter_m = 1.1283791670955126e-3;
  EXPECT_NEAR(cable_resistance_ohm(diameter_m, 1, 20), 1.02 / 58, 1e-9);
  EXPECT_NEAR(cable_resistance_ohm(diameter_m, 1, 30) / cable_resistance_ohm(diameter_m, 1, 20), 1.0393, 1e-9);
}

// astm_b258: 0.46 in at 0000 and 0.005 in at 36 are the row's two ends; 0 lies three steps from the one.
TEST(Cable, gauges_stand_in_a_geometric_row) {
  EXPECT_NEAR(awg_diameter_m(36), 0.005 * 0.0254, 1e-12);
  EXPECT_NEAR(awg_diameter_m(0), 0.3249 * 0.0254, 0.00005 * 0.0254);
  EXPECT_NEAR(awg_diameter_m(4) / awg_diameter_m(10), awg_diameter_m(14) / awg_diameter_m(20), 1e-12);
}

}  // namespace
}  // namespace wellproof
