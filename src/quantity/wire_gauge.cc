#include "quantity/wire_gauge.h"

#include <cmath>
#include <numbers>

namespace wellproof {

double wire_gauge_diameter_m(int gauge) {
  // The standard fixes two sizes, 36 at 5 mil and 4/0 at 460 mil, and 39 equal ratios between them.
  constexpr double size_36_m = 1.27e-4;
  return size_36_m * std::pow(92.0, (36.0 - gauge) / 39.0);
}

double wire_gauge_area_m2(int gauge) {
  double const diameter_m = wire_gauge_diameter_m(gauge);
  return std::numbers::pi / 4 * diameter_m * diameter_m;
}

}  // namespace wellproof
