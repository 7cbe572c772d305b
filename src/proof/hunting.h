#pragma once
// Whether the pressure swings on while water is drawn evenly: the check on the real plant, with its ramps, its sampling
// and its tank, of what the regulator's linear margins promise.
#include <cstdint>
#include <span>

#include "proof/prove.h"

namespace wellproof {

/// A swing of the pressure at the tee that does not die out.
struct Swing {
  double swing_pa = 0;  // from top to bottom; 0: it has settled, within 0.2 % of the target
  double period_s = 0;
};

/// Share of the target that a swing from top to bottom may take before it is called hunting (common practice, no
/// source).
inline constexpr double hunting_share = 0.04;

/// Draws a share of the whole house's peak for eight minutes and looks at the last four of them. A pressure that
/// drifts, or a pump that goes to sleep meanwhile, is no swing.
/// @param opening 0 … 1 of the house
/// Checked: tests/unit/proof/hunting_test.cc
Swing swing_while_drawing(Plant const& plant, Settings const& settings, Logic const& logic, double opening,
                          std::uint64_t noise);

/// The largest over some draws and draws of water, against what may pass.
/// @param options seed, units, logic and threads of a proof
PlanMargin hunting_margin(std::span<Plant const> plants, Settings const& settings, ProveOptions const& options);

}  // namespace wellproof
