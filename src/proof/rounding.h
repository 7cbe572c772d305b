#pragma once
// What rounding to a drive's steps costs: where settings as they are entered fail that would hold as they were derived.
#include <cstdint>
#include <string>
#include <vector>

#include "proof/prove.h"

namespace wellproof {

/// A margin that rounding takes below zero.
struct RoundingLoss {
  std::string name;      // of a scenario, or the key of a margin of the plan
  double derived = 0;    // the margin before rounding, ≥ 0
  double entered = 0;    // and after, < 0
  bool of_plan = false;  // a margin of the plan, in SI of its dimension; else a share of the allowance
  Dimension dimension = Dimension::none;
};

/// Only scenarios that fail are run again, the worst draw first: where it fails as derived too, rounding is not to
/// blame.
/// @param proof   of the settings as entered
/// @param entered the settings that it is of
/// @param derived the same before rounding
/// Checked: tests/law/card_law_test.cc
std::vector<RoundingLoss> lost_by_rounding(std::vector<Plant> const& plants, Proof const& proof,
                                           Settings const& entered, Settings const& derived,
                                           ProveOptions const& options);

}  // namespace wellproof
