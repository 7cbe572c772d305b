#include "plant/sensor.h"

#include <algorithm>
#include <cmath>

namespace wellproof {

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
    reading_pa += sensor.noise_pa * sensor_noise(sample);
  }
  if (sensor.resolution_pa > 0) {
    reading_pa = std::floor(reading_pa / sensor.resolution_pa + 0.5) * sensor.resolution_pa;
  }
  return std::clamp(reading_pa, 0.0, sensor.full_scale_pa);
}

}  // namespace wellproof
