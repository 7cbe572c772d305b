#include "plant/tank.h"

#include <algorithm>
#include <cmath>

namespace wellproof {
namespace {

constexpr double fullest = 0.999;  // of the volume: beyond it the gas law would run to infinity

}  // namespace

Sloped Tank::pressure_pa(double water_m3) const {
  double const within_m3 = std::clamp(water_m3, 0.0, fullest * volume_m3);
  double const gas_m3 = volume_m3 - within_m3;
  double const squeeze = volume_m3 / gas_m3;
  double const gas_pa_abs =
      (precharge_pa + atmosphere_pa_abs) * (exponent == 1 ? squeeze : std::pow(squeeze, exponent));
  double const slope_pa_m3 = exponent * gas_pa_abs / gas_m3;
  return {gas_pa_abs - atmosphere_pa_abs + slope_pa_m3 * (water_m3 - within_m3), slope_pa_m3};
}

double Tank::water_m3(double pressure_pa) const {
  if (!(pressure_pa > precharge_pa)) {
    return 0;
  }
  double const ratio = (precharge_pa + atmosphere_pa_abs) / (pressure_pa + atmosphere_pa_abs);
  double const water = volume_m3 * (1 - (exponent == 1 ? ratio : std::pow(ratio, 1 / exponent)));
  double const most_m3 = fullest * volume_m3;
  if (water <= most_m3) {
    return water;
  }
  auto const full = this->pressure_pa(most_m3);
  return most_m3 + (pressure_pa - full.value) / full.slope;
}

double drawdown_factor(double high_pa, double low_pa, double precharge_pa, double atmosphere_pa_abs) {
  double const charge_pa_abs = precharge_pa + atmosphere_pa_abs;
  auto const gas_share = [&](double gauge_pa) { return std::min(1.0, charge_pa_abs / (gauge_pa + atmosphere_pa_abs)); };
  return gas_share(low_pa) - gas_share(high_pa);
}

}  // namespace wellproof
