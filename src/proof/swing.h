#pragma once
// Whether the pressure swings on while water is drawn evenly: the check on the real plant, with its ramps, its sampling
// and its tank, of what the regulator's linear margins promise.
#include <array>
#include <cstddef>
#include <cstdint>

#include "plant/plant.h"
#include "regulator/regulator.h"

namespace wellproof {

/// A swing of the pressure at the tee that does not die out.
struct Swing {
  double swing_pa = 0;  // from top to bottom; 0: it has settled, within 0.2 % of the target
  double period_s = 0;
};

/// Draws a share of the whole house's peak for eight minutes and looks at the last four of them. A pressure that
/// drifts, or a pump that goes to sleep meanwhile, is no swing.
/// @param opening 0 … 1 of the house
/// Checked: tests/unit/proof/hunting_test.cc
Swing swing_while_drawing(Plant const& plant, Settings const& settings, Logic const& logic, double opening,
                          std::uint64_t noise);

/// What a proof looks at: so many draws of the site, each under these draws of water.
inline constexpr std::size_t swing_draws = 8;
inline constexpr std::array swing_openings{0.2, 0.5, 1.0};
using SwingsOfDraw = std::array<Swing, swing_openings.size()>;
SwingsOfDraw swings_while_drawing(Plant const& plant, Settings const& settings, Logic const& logic,
                                  std::uint64_t noise);

}  // namespace wellproof
