#include "plant/water.h"

#include <algorithm>
#include <cmath>

namespace wellproof {

double water_density_kg_m3(double temperature_c) {
  // Tanaka's formula at one atmosphere, its own constants.
  double const t_c = std::clamp(temperature_c, 0.0, 40.0);
  double const from_densest_c = t_c - 3.983035;
  return 999.974950 * (1 - from_densest_c * from_densest_c * (t_c + 301.797) / (522528.9 * (t_c + 69.34881)));
}

double water_viscosity_m2_s(double temperature_c) {
  // Four powers of T/300 K give the dynamic viscosity in µPa·s at 0.1 MPa.
  double const t_c = std::clamp(temperature_c, 0.0, 40.0);
  double const ratio = (t_c + 273.15) / 300;
  double const viscosity_pa_s = 1e-6 * (280.68 * std::pow(ratio, -1.9) + 511.45 * std::pow(ratio, -7.7) +
                                        61.131 * std::pow(ratio, -19.6) + 0.45903 * std::pow(ratio, -40.0));
  return viscosity_pa_s / water_density_kg_m3(t_c);
}

double atmosphere_pa_abs(double altitude_m) {
  return 101325 * std::pow(1 - 2.25577e-5 * std::clamp(altitude_m, -400.0, 11000.0), 5.25588);
}

}  // namespace wellproof
