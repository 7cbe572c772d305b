#pragma once
// How far the swings of an even draw (swing.h) are from what is called hunting.
#include <span>

#include "proof/prove.h"

namespace wellproof {

/// Share of the target that a swing from top to bottom may take before it is called hunting (common practice, no
/// source).
inline constexpr double hunting_share = 0.04;

/// The largest over some draws and draws of water, against what may pass.
/// @param options seed, units, logic and threads of a proof; its runs, where they are made already
/// Checked: tests/unit/proof/hunting_test.cc
PlanMargin hunting_margin(std::span<Plant const> plants, Settings const& settings, ProveOptions const& options);

}  // namespace wellproof
