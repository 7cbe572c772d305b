#include "plant/drive.h"

#include <algorithm>
#include <numbers>

namespace wellproof {
namespace {

// Shares of the rated loss.
constexpr double fixed_share = 0.4;
constexpr double current_share = 0.3;
constexpr double power_share = 0.3;

}  // namespace

double drive_voltage_v(double frequency_hz, double base_frequency_hz, double base_voltage_v, double available_v) {
  return std::min(base_voltage_v * std::min(frequency_hz / base_frequency_hz, 1.0), available_v);
}

double drive_available_v(double supply_v) {
  return supply_v * (3 / std::numbers::pi);
}

double drive_loss_w(double output_power_w, double current_a, double rated_current_a, double rated_power_w,
                    double rated_efficiency) {
  double const rated_loss_w = rated_power_w * (1 / rated_efficiency - 1);
  return rated_loss_w *
         (fixed_share + current_share * (current_a / rated_current_a) + power_share * (output_power_w / rated_power_w));
}

}  // namespace wellproof
