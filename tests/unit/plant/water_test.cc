// Water and air: what they do with warmth and height. Figures are checked in tests/reference.
#include "plant/water.h"

#include <gtest/gtest.h>

namespace wellproof {
namespace {

TEST(Water, is_densest_near_4_degrees) {
  EXPECT_GT(water_density_kg_m3(4), water_density_kg_m3(2));
  EXPECT_GT(water_density_kg_m3(4), water_density_kg_m3(6));
}

TEST(Water, grows_thinner_as_it_warms) {
  for (int t_c = 0; t_c < 40; ++t_c) {
    EXPECT_GT(water_viscosity_m2_s(t_c), water_viscosity_m2_s(t_c + 1));
  }
}

TEST(Water, beyond_its_range_keeps_the_value_of_the_end) {
  EXPECT_EQ(water_density_kg_m3(60), water_density_kg_m3(40));
  EXPECT_EQ(water_viscosity_m2_s(-5), water_viscosity_m2_s(0));
}

TEST(Atmosphere, is_one_atmosphere_at_the_sea_and_falls_with_height) {
  EXPECT_DOUBLE_EQ(atmosphere_pa_abs(0), 101325);
  EXPECT_GT(atmosphere_pa_abs(-100), 101325);
  EXPECT_LT(atmosphere_pa_abs(100), 101325);
  EXPECT_EQ(atmosphere_pa_abs(20000), atmosphere_pa_abs(11000));
}

}  // namespace
}  // namespace wellproof
