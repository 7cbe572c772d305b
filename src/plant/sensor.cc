#include "plant/sensor.h"

#include <algorithm>
#include <bit>
#include <cmath>

#include "quantity/chance.h"

namespace wellproof {
namespace {

/// A number of mean 0 and standard deviation 1, near enough normal: heads of 36 coins, spread evenly over the gaps
/// between their counts. No logarithm and no cosine, so that every machine has the same bits.
double noise(std::uint64_t sample) {
  constexpr unsigned coins = 36;
  constexpr double sigma = 3.0138568866708542;  // √(36/4 + 1/12)
  std::uint64_t const bits = mixed((sample + 1) * chance_step);
  auto const heads = static_cast<double>(std::popcount(bits >> (64 - coins)));
  double const gap = (static_cast<double>(bits & ((1U << (64 - coins)) - 1)) + 0.5) / (1U << (64 - coins));
  return (heads + gap - (coins + 1) / 2.0) / sigma;
}

}  // namespace

double sensor_reading_pa(SensorOf<double> const& sensor, double lagged_pressure_pa, SensorFault fault, double stuck_pa,
                         std::uint64_t sample) {
  switch (fault) {
    case SensorFault::open:
      return -0.25 * sensor.full_scale_pa;
    case SensorFault::shorted:
      return 1.25 * sensor.full_scale_pa;
    case SensorFault::stuck:
      return stuck_pa;
    case SensorFault::none:
      break;
  }
  double reading_pa = lagged_pressure_pa * (1 + sensor.gain_error) + sensor.zero_error_pa;
  if (sensor.noise_pa > 0) {
    reading_pa += sensor.noise_pa * noise(sample);
  }
  if (sensor.resolution_pa > 0) {
    reading_pa = std::floor(reading_pa / sensor.resolution_pa + 0.5) * sensor.resolution_pa;
  }
  return std::clamp(reading_pa, 0.0, sensor.full_scale_pa);
}

}  // namespace wellproof
