#include "plant/cable.h"

#include <cmath>
#include <numbers>

#include "contract/require.h"

namespace wellproof {
namespace {

constexpr double copper_ohm_m = 1e-6 / 58;     // annealed, at 20 °C
constexpr double copper_rise_per_k = 0.00393;  // at 20 °C
constexpr double copper_reference_c = 20;
constexpr double stranding_factor = 1.02;  // strands run longer than the cable

}  // namespace

double cable_resistance_ohm(double conductor_diameter_m, double length_m, double temperature_c) {
  require(conductor_diameter_m > 0 && length_m >= 0, "a cable has a diameter and a length");
  double const area_m2 = 0.25 * std::numbers::pi * conductor_diameter_m * conductor_diameter_m;
  double const warmth = 1 + copper_rise_per_k * (temperature_c - copper_reference_c);
  return stranding_factor * copper_ohm_m * length_m / area_m2 * warmth;
}

double awg_diameter_m(int gauge) {
  require(gauge >= 0 && gauge <= 40, "a wire gauge lies between 0 and 40");
  double const inch_m = 0.0254;
  return 0.005 * inch_m * std::pow(92.0, (36 - gauge) / 39.0);
}

}  // namespace wellproof
