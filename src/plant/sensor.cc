#include "plant/sensor.h"

#include <algorithm>
#include <cmath>

#include "quantity/chance.h"

namespace wellproof {
namespace {

/// A number of mean 0 and standard deviation 1, near enough normal: the sum of twelve even ones less six. No logarithm
/// and no cosine, so that every machine has the same bits; never beyond six.
double noise(std::uint64_t sample) {
  std::uint64_t sum = 0;
  for (std::uint64_t word = 0; word < 3; ++word) {
    std::uint64_t const bits = mixed((3 * sample + word + 1) * chance_step);
    sum += (bits & 0xFFFF) + ((bits >> 16) & 0xFFFF) + ((bits >> 32) & 0xFFFF) + (bits >> 48);
  }
  return (static_cast<double>(sum) + 6) / 65536 - 6;
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
