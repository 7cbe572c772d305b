#pragma once
// The pressure sensor: what the drive is told, which is not what is true.
#include <cstdint>

#include "site/site.h"

namespace wellproof {

enum class SensorFault {
  none,
  open,     // wire off: signal below the span
  shorted,  // signal above the span
  stuck,    // stays at the value it had
};

/// The noise of a sample is never further from nothing, in standard deviations.
inline constexpr double most_noise_sigmas = 6.14;

/// Reading of a lagged pressure: gain, zero, noise of sample k (hashed, so that no state is kept), resolution, ends of
/// the span. An open or shorted sensor reads −25 % or 125 % of full scale: outside what a working one can say.
/// @return [Pa] gauge as the drive sees it
double sensor_reading_pa(SensorOf<double> const& sensor, double lagged_pressure_pa, SensorFault fault, double stuck_pa,
                         std::uint64_t sample);

}  // namespace wellproof
