#pragma once
// The pressure sensor: what the drive is told, which is not what is true.
#include <bit>
#include <cstdint>

#include "quantity/chance.h"
#include "site/site.h"

namespace wellproof {

enum class SensorFault {
  none,
  open,     // wire off: signal below the span
  shorted,  // signal above the span
  stuck,    // stays at the value it had
};

inline constexpr unsigned noise_coins = 36;
inline constexpr double noise_sigma_heads = 3.0138568866708542;  // √(36/4 + 1/12)
inline constexpr double most_noise_sigmas = 0.5 * (noise_coins + 1) / noise_sigma_heads;

/// Noise of one sample, in standard deviations, at most most_noise_sigmas from nothing: near enough normal, heads of 36
/// coins, spread evenly over the gaps between their counts. No logarithm and no cosine, so that every machine has the
/// same bits.
/// Checked: tests/unit/plant/sensor_test.cc
inline double sensor_noise(std::uint64_t sample) {
  constexpr unsigned spread_bits = 64 - noise_coins;
  std::uint64_t const bits = mixed((sample + 1) * chance_step);
  auto const heads = static_cast<double>(std::popcount(bits >> spread_bits));
  double const gap = (static_cast<double>(bits & ((1U << spread_bits) - 1)) + 0.5) / (1U << spread_bits);
  return (heads + gap - 0.5 * (noise_coins + 1)) / noise_sigma_heads;
}

/// Reading of a lagged pressure: gain, zero, noise of sample k (hashed, so that no state is kept), resolution, ends of
/// the span. An open or shorted sensor reads −25 % or 125 % of full scale: outside what a working one can say.
/// @return [Pa] gauge as the drive sees it
double sensor_reading_pa(SensorOf<double> const& sensor, double lagged_pressure_pa, SensorFault fault, double stuck_pa,
                         std::uint64_t sample);

}  // namespace wellproof
