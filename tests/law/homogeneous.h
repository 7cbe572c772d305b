#pragma once
// Dimensional homogeneity as a property. A physical law does not know in which units its numbers come: measure length,
// mass, time and current in other units, and its answer must change as the unit of the answer says. A law that adds a
// head to a pressure, or drops a square, does not pass.
//
// Standard gravity stands inside the laws as a number. It keeps that number if length is rescaled by the square of
// time, which is what Rescaling does unless a law without gravity asks for all four to be free.
#include <array>
#include <cmath>
#include <cstddef>
#include <tuple>

namespace wellproof {

/// A unit as powers of metre, kilogram, second and ampere.
struct Powers {
  double metre = 0;
  double kilogram = 0;
  double second = 0;
  double ampere = 0;
};

namespace powers {
inline constexpr Powers none{};
inline constexpr Powers length{1, 0, 0, 0};
inline constexpr Powers area{2, 0, 0, 0};
inline constexpr Powers volume{3, 0, 0, 0};
inline constexpr Powers duration{0, 0, 1, 0};
inline constexpr Powers velocity{1, 0, -1, 0};
inline constexpr Powers flow{3, 0, -1, 0};
inline constexpr Powers viscosity{2, 0, -1, 0};
inline constexpr Powers capacity{2, 0, -1, 0};
inline constexpr Powers rotation{0, 0, -1, 0};
inline constexpr Powers density{-3, 1, 0, 0};
inline constexpr Powers pressure{-1, 1, -2, 0};
inline constexpr Powers torque{2, 1, -2, 0};
inline constexpr Powers power{2, 1, -3, 0};
inline constexpr Powers current{0, 0, 0, 1};
inline constexpr Powers voltage{2, 1, -3, -1};
inline constexpr Powers resistance{2, 1, -3, -2};
}  // namespace powers

constexpr Powers over(Powers a, Powers b) {
  return {a.metre - b.metre, a.kilogram - b.kilogram, a.second - b.second, a.ampere - b.ampere};
}

/// How many of the new unit make one of the old.
struct Rescaling {
  double metre = 1;
  double kilogram = 1;
  double second = 1;
  double ampere = 1;

  double of(Powers unit) const {
    return std::pow(metre, unit.metre) * std::pow(kilogram, unit.kilogram) * std::pow(second, unit.second) *
           std::pow(ampere, unit.ampere);
  }
  /// The same with length tied to time, so that 9.80665 stays 9.80665.
  Rescaling keeping_gravity() const { return {second * second, kilogram, second, ampere}; }
};

/// A number that goes into a law, and its unit.
struct Measured {
  double value = 0;
  Powers unit;
};

/// Relative departure of the law of rescaled numbers from the rescaled law: rounding alone, if the law is homogeneous.
template <class Law, std::size_t count>
double departure(Law const& law, std::array<Measured, count> const& arguments, Powers answer,
                 Rescaling const& rescaling) {
  std::array<double, count> plain{};
  std::array<double, count> rescaled{};
  for (std::size_t i = 0; i < count; ++i) {
    plain[i] = arguments[i].value;
    rescaled[i] = arguments[i].value * rescaling.of(arguments[i].unit);
  }
  double const expected = std::apply(law, plain) * rescaling.of(answer);
  double const found = std::apply(law, rescaled);
  return expected == found ? 0 : std::abs(found - expected) / std::abs(expected);
}

}  // namespace wellproof
