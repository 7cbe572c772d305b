// The tank: its two ways of asking agree, and it holds its ends.
#include "plant/tank.h"

#include <gtest/gtest.h>

namespace wellproof {
namespace {

constexpr double psi_pa = 6894.757;

Tank tank_of(double exponent) {
  return {0.0757, 38 * psi_pa, exponent, 101325};
}

TEST(Tank, empty_stands_at_its_precharge) {
  EXPECT_NEAR(tank_of(1.2).pressure_pa(0).value, 38 * psi_pa, 1e-6);
  EXPECT_EQ(tank_of(1.2).water_m3(38 * psi_pa), 0);
  EXPECT_EQ(tank_of(1.2).water_m3(10 * psi_pa), 0);
}

TEST(Tank, half_full_has_twice_its_absolute_pressure_when_slow) {
  // Boyle
  EXPECT_NEAR(tank_of(1).pressure_pa(0.0757 / 2).value + 101325, 2 * (38 * psi_pa + 101325), 1e-6);
}

TEST(Tank, half_full_stands_higher_when_quick) {
  EXPECT_GT(tank_of(1.4).pressure_pa(0.0757 / 2).value, tank_of(1).pressure_pa(0.0757 / 2).value);
}

TEST(Tank, asked_back_gives_the_water_that_was_put_in) {
  for (double const exponent : {1.0, 1.15, 1.4}) {
    auto const tank = tank_of(exponent);
    for (double const share : {0.01, 0.3, 0.7, 0.95, 0.9995, 1.01}) {
      double const water_m3 = share * tank.volume_m3;
      EXPECT_NEAR(tank.water_m3(tank.pressure_pa(water_m3).value), water_m3, 1e-9 * tank.volume_m3)
          << share << " full, exponent " << exponent;
    }
  }
}

TEST(Tank, rises_ever_steeper_with_water) {
  auto const tank = tank_of(1.1);
  double steepness = 0;
  for (double const share : {0.0, 0.2, 0.5, 0.8, 0.99}) {
    double const slope_pa_m3 = tank.pressure_pa(share * tank.volume_m3).slope;
    EXPECT_GT(slope_pa_m3, steepness);
    steepness = slope_pa_m3;
  }
}

TEST(Tank, beyond_its_ends_goes_on_straight) {
  auto const tank = tank_of(1);
  auto const full = tank.pressure_pa(0.999 * tank.volume_m3);
  EXPECT_NEAR(tank.pressure_pa(1.5 * tank.volume_m3).value, full.value + full.slope * 0.501 * tank.volume_m3,
              1e-9 * full.slope * tank.volume_m3);
  auto const empty = tank.pressure_pa(0);
  EXPECT_NEAR(tank.pressure_pa(-0.001).value, empty.value - 0.001 * empty.slope, 1e-6);
}

TEST(Tank, that_lost_charge_holds_more_water_and_gives_less) {
  auto whole = tank_of(1);
  auto lost = whole;
  lost.precharge_pa = 10 * psi_pa;
  EXPECT_GT(lost.water_m3(50 * psi_pa), whole.water_m3(50 * psi_pa));
  EXPECT_LT(lost.water_m3(60 * psi_pa) - lost.water_m3(40 * psi_pa),
            whole.water_m3(60 * psi_pa) - whole.water_m3(40 * psi_pa));
}

TEST(DrawdownFactor, is_what_the_slow_tank_gives) {
  auto const tank = tank_of(1);
  EXPECT_NEAR(drawdown_factor(60 * psi_pa, 40 * psi_pa, 38 * psi_pa, 101325) * tank.volume_m3,
              tank.water_m3(60 * psi_pa) - tank.water_m3(40 * psi_pa), 1e-12);
}

TEST(DrawdownFactor, gains_nothing_below_the_precharge) {
  EXPECT_DOUBLE_EQ(drawdown_factor(60, 20, 38, 14.7), drawdown_factor(60, 38, 38, 14.7));
}

}  // namespace
}  // namespace wellproof
