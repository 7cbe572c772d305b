// Water and air against the international formulations and the standard atmosphere.
#include <gtest/gtest.h>

#include "plant/water.h"
#include "reference/printed_rows.h"

namespace wellproof {
namespace {

struct WaterRow {
  double temperature_c;
  double density_kg_m3;
  double viscosity_mm2_s;
};

// IAPWS-IF97 (density) and IAPWS R12-08 (viscosity) at 0.101325 MPa, computed by an implementation that reproduces the
// releases' check values.
constexpr WaterRow iapws_rows[] = {
    {0, 999.844, 1.7920},  {5, 999.967, 1.5182},  {10, 999.702, 1.3063}, {15, 999.101, 1.1386}, {20, 998.206, 1.0034},
    {25, 997.048, 0.8927}, {30, 995.652, 0.8007}, {35, 994.039, 0.7234}, {40, 992.224, 0.6579},
};

TEST(WaterReference, density_and_viscosity_meet_the_international_formulations) {
  for (auto const& row : iapws_rows) {
    EXPECT_NEAR(water_density_kg_m3(row.temperature_c), row.density_kg_m3, 0.01) << row.temperature_c << " °C";
    EXPECT_NEAR(1e6 * water_viscosity_m2_s(row.temperature_c), row.viscosity_mm2_s, 0.002 * row.viscosity_mm2_s)
        << row.temperature_c << " °C";
  }
}

TEST(WaterReference, meets_the_table_from_0_to_40_degrees) {
  auto const rows = printed_rows("water_properties_0_40C.csv");
  if (rows.empty()) {
    GTEST_SKIP() << "the table is not here";
  }
  for (auto const& row : rows) {
    EXPECT_NEAR(water_density_kg_m3(row[0]), row[1], 0.01) << row[0] << " °C";
    EXPECT_NEAR(1e6 * water_viscosity_m2_s(row[0]), row[3], 0.002 * row[3]) << row[0] << " °C";
  }
}

struct AirRow {
  double altitude_m;
  double pressure_pa;
  double allowed_pa;
};

TEST(AtmosphereReference, meets_the_standard_atmosphere) {
  // U.S. Standard Atmosphere 1976 by geometric height, printed to five digits (0, 2000, 4000 m); ours takes the height
  // as geopotential, which at 4000 m is 2.5 m apart.
  constexpr AirRow rows[] = {{0, 101320, 10}, {2000, 79501, 15}, {4000, 61660, 30}};
  for (auto const& row : rows) {
    EXPECT_NEAR(atmosphere_pa_abs(row.altitude_m), row.pressure_pa, row.allowed_pa) << row.altitude_m << " m";
  }
}

}  // namespace
}  // namespace wellproof
