#pragma once
// Numbers by lot, the same for the same seed on every machine.
#include <cmath>
#include <cstddef>
#include <cstdint>

namespace wellproof {

/// The step between the states that are mixed, 2⁶⁴ over the golden ratio.
inline constexpr std::uint64_t chance_step = 0x9E3779B97F4A7C15U;

/// Bits of a state, well mixed (the finaliser of Stafford, variant 13).
/// Source:  steele_2014 (splitmix)
/// Checked: tests/unit/quantity/chance_test.cc
constexpr std::uint64_t mixed(std::uint64_t state) {
  state = (state ^ (state >> 30U)) * 0xBF58476D1CE4E5B9U;
  state = (state ^ (state >> 27U)) * 0x94D049BB133111EBU;
  return state ^ (state >> 31U);
}

class Chance {
 public:
  explicit Chance(std::uint64_t seed) : state_(seed) {}

  std::uint64_t bits() { return mixed(state_ += chance_step); }
  /// Evenly inside (0, 1).
  double next() { return (static_cast<double>(bits() >> 11U) + 0.5) * 0x1p-53; }
  double between(double low, double high) { return low + (high - low) * next(); }
  /// Evenly by the logarithm; both ends > 0.
  double by_size(double low, double high) { return low * std::pow(high / low, next()); }
  bool says(double share) { return next() < share; }
  /// 0 … count − 1.
  std::size_t one_of(std::size_t count) { return static_cast<std::size_t>(next() * static_cast<double>(count)); }

 private:
  std::uint64_t state_;
};

/// A seed for one thing out of others.
inline std::uint64_t seed_of(std::uint64_t seed, std::uint64_t one, std::uint64_t other) {
  return (seed + 1) * 0x2545F4914F6CDD1DU + one * 0xD1342543DE82EF95U + other * chance_step;
}

}  // namespace wellproof
