#include "plant/heat.h"

#include <cmath>

namespace wellproof {
namespace {

// Common practice, no source.
constexpr double cooling_velocity_m_s = 0.25 * 0.3048;
constexpr double shell_rise_k = 15;             // at rated loss and cooling velocity, over the water
constexpr double winding_rise_k = 45;           // over the shell
constexpr double winding_loss_share = 2.0 / 3;  // of the rated loss: winding and core
constexpr double winding_s_k = 1.2;             // heat capacity for each watt of rated power
constexpr double shell_s_k = 4;
constexpr double velocity_exponent = 0.6;
constexpr double still_water_share = 0.35;

}  // namespace

MotorHeat motor_heat(double rated_power_w, double rated_loss_w) {
  return {.winding_j_k = winding_s_k * rated_power_w,
          .shell_j_k = shell_s_k * rated_power_w,
          .winding_to_shell_w_k = winding_loss_share * rated_loss_w / winding_rise_k,
          .shell_to_water_w_k = rated_loss_w / shell_rise_k,
          .reference_velocity_m_s = cooling_velocity_m_s};
}

double shell_to_water_w_k(MotorHeat const& heat, double velocity_m_s) {
  constexpr double still = still_water_share * still_water_share * still_water_share;
  double const forced = std::pow(std::fabs(velocity_m_s) / heat.reference_velocity_m_s, 3 * velocity_exponent);
  // The forced part alone is a little under the whole at the reference velocity, so that the whole is what was stated.
  return heat.shell_to_water_w_k * std::cbrt(still + (1 - still) * forced);
}

HeatRates heat_rates(MotorHeat const& heat, double winding_c, double shell_c, double water_c, double to_water_w_k,
                     double winding_loss_w, double shell_loss_w) {
  double const winding_out_w = heat.winding_to_shell_w_k * (winding_c - shell_c);
  double const shell_out_w = to_water_w_k * (shell_c - water_c);
  return {.winding_k_s = (winding_loss_w - winding_out_w) / heat.winding_j_k,
          .shell_k_s = (winding_out_w + shell_loss_w - shell_out_w) / heat.shell_j_k};
}

double insulation_life_ratio(double winding_c, double limit_c) {
  return std::exp2((limit_c - winding_c) / 10);
}

}  // namespace wellproof
