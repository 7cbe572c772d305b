#pragma once
// What no run shows and a search must not spend: the distance to a stop for nothing, to harm, to sleeplessness, and the
// regulator's robustness.
#include <cstdint>
#include <map>
#include <utility>
#include <vector>

#include "proof/moves.h"
#include "proof/prove.h"
#include "settings/loops.h"

namespace wellproof {

/// Looked at for every try are the loops of all draws and those draws in which the other margins are nearest; for what
/// was found, by its proof, all.
class UnseenMargins {
 public:
  /// All of these have to outlive it.
  /// @param proof of the settings searched from
  UnseenMargins(std::vector<Plant> const& plants, OnDrive const& start, Proof const& proof,
                ProveOptions const& options);

  /// Whether settings keep most of each margin, or all of one that is past its limit already.
  bool kept_by(OnDrive const& drive);
  bool kept_by(Proof const& proof) const;

  /// Tells whether there were any that were not looked at.
  bool add_nearest(Proof const& proof);

 private:
  double sensitivity(OnDrive const& drive);

  std::vector<Plant> const& plants_;
  ProveOptions const& options_;
  std::vector<PlanMargin> before_;
  std::vector<std::uint32_t> draws_;
  std::vector<Plant> nearest_;
  std::vector<RegulatorLoop> loops_;
  std::map<std::pair<double, double>, double> sensitivities_;  // by gain and reset time, which few tries move
  double most_sensitivity_;
};

}  // namespace wellproof
