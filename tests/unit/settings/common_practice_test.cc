// The thresholds met in the trade, against service-factor amps: closed discharge about 0.75 to 0.85, dry about 0.56 to
// 0.66; a sleep speed left at 45 Hz or so (common practice, no source).
#include "settings/common_practice.h"

#include "unit/simulate/plain_site.h"

namespace wellproof {
namespace {

TEST(CommonPractice, TakesItsAmpsFromTheMotorsSizeAlone) {
  auto site = plain_site();
  auto const one = common_practice(build(site));
  EXPECT_GT(one.closed_amps_below_a, 0.75 * site.motor.service_factor_current_a);
  EXPECT_LT(one.closed_amps_below_a, 0.85 * site.motor.service_factor_current_a);
  EXPECT_GT(one.dry_run_amps_below_a, 0.56 * site.motor.service_factor_current_a);
  EXPECT_LT(one.dry_run_amps_below_a, 0.66 * site.motor.service_factor_current_a);
  // By power shut and dry lie further apart than by current, and both below what the rated load takes in.
  EXPECT_LT(one.dry_run_power_below_w, one.closed_power_below_w);
  EXPECT_LT(one.closed_power_below_w, site.motor.power_w);
  EXPECT_EQ(one.sleep_speed_below_hz, 45);
  // Neither the water nor the pipes are looked at.
  site.well.static_level_depth_m += 20;
  site.demand.leak_m3_s *= 2;
  site.tank.volume_m3 *= 3;
  EXPECT_TRUE(common_practice(build(site)) == one);
}

TEST(CommonPractice, GrowsWithTheMotorAndGoesOnBeyondTheTable) {
  auto plant = plain_plant();
  double before_a = 0;
  for (double const power_hp : {0.5, 1.0, 2.0, 5.0, 7.5, 10.0}) {
    plant.site.motor.power_w = power_hp * 745.7;
    double const limit_a = common_practice(plant).motor_current_limit_a;
    EXPECT_GT(limit_a, before_a);
    before_a = limit_a;
  }
  EXPECT_NEAR(before_a, 36, 0.1);  // 27 A at 7.5 hp
}

}  // namespace
}  // namespace wellproof
