#pragma once
// Radial flow to a well, worked out once for all wells. On the logarithm of the radius the equation
// (T/r)·∂/∂r(r·∂s/∂r) = S·∂s/∂t becomes ∂²s/∂x² = e^{2x}·∂s/∂τ with x = ln(r/r_w), τ = T·t/(S·r_w²). Rings of equal
// width on x, each with polynomials of the fifth degree (spectral elements, patera_1984), make it a system of
// equations, and its natural modes take that apart into single ones that each decay by themselves. A mode is followed
// exactly in time, whatever the step.
#include <array>
#include <cstddef>

namespace wellproof {

/// Natural modes of the rings between the well's radius and a closed border 10⁶ radii away, which no well's cone
/// reaches. All without units.
struct RadialModes {
  static constexpr std::size_t rings = 8;
  static constexpr std::size_t degree = 5;
  static constexpr std::size_t count = rings * degree + 1;
  static constexpr double log_span = 13.815510557964274;  // ln 10⁶

  using Values = std::array<double, count>;
  Values decay{};                      // 1/τ of each mode; the first is the whole formation drawn down evenly: 0
  Values at_well{};                    // each mode's shape at the well's radius
  std::array<Values, count> shapes{};  // of each mode at each node

  /// The modes' shapes at x = ln(r/r_w). @param log_radius within [0, log_span]
  Values at(double log_radius) const;
};

/// The one set of modes there is; worked out at first use, constant from then on.
/// Checked: tests/reference/formation_reference_test.cc
RadialModes const& radial_modes();

}  // namespace wellproof
