// Drawdown of pressure tanks against printed examples.
#include <gtest/gtest.h>

#include "plant/tank.h"
#include "plant/water.h"

namespace wellproof {
namespace {

constexpr double psi_pa = 6894.757;
constexpr double gallon_m3 = 0.003785411784;

TEST(DrawdownReference, of_an_85_gallon_tank) {
  // Pelikan, National Driller, 2006 and 2008: 85 gal, 30/50 psi, precharge 28: 25.1 gal; at 6000 ft (11.8 psi) 26.1
  // gal. He subtracts rounded volumes at 6000 ft (80.9 − 54.7); unrounded it is 26.19.
  EXPECT_NEAR(85 * drawdown_factor(50 * psi_pa, 30 * psi_pa, 28 * psi_pa, 14.7 * psi_pa), 25.1, 0.05);
  EXPECT_NEAR(85 * drawdown_factor(50 * psi_pa, 30 * psi_pa, 28 * psi_pa, 11.8 * psi_pa), 26.1, 0.11);
}

TEST(DrawdownReference, of_the_tank_law_itself) {
  Tank const tank{85 * gallon_m3, 28 * psi_pa, 1, 14.7 * psi_pa};
  EXPECT_NEAR((tank.water_m3(50 * psi_pa) - tank.water_m3(30 * psi_pa)) / gallon_m3, 25.1, 0.05);
}

struct FactorRow {
  double low_psi;
  double high_psi;
  double precharged_2_below;
  double precharged_at_cut_in;
};

TEST(DrawdownReference, factors_of_the_usual_switch_settings) {
  // Boyle's law by another program, atmosphere 14.7 psi; Pelikan prints 0.295 and a ratio of 0.3 for 30/50.
  constexpr FactorRow rows[] = {
      {20, 40, 0.3446, 0.3656}, {30, 50, 0.2953, 0.3091}, {40, 60, 0.2579, 0.2677}, {50, 70, 0.2288, 0.2361}};
  for (auto const& row : rows) {
    EXPECT_NEAR(drawdown_factor(row.high_psi, row.low_psi, row.low_psi - 2, 14.7), row.precharged_2_below, 6e-5);
    EXPECT_NEAR(drawdown_factor(row.high_psi, row.low_psi, row.low_psi, 14.7), row.precharged_at_cut_in, 6e-5);
  }
}

TEST(DrawdownReference, the_air_at_6000_feet_is_the_printed_11_8_psi) {
  EXPECT_NEAR(atmosphere_pa_abs(6000 * 0.3048) / psi_pa, 11.8, 0.05);
}

}  // namespace
}  // namespace wellproof
