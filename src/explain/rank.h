#pragma once
// Causes by how likely they are behind what was told: prior times the mean likelihood over the cause's worlds, which
// is approximate Bayesian computation with weights in place of a cut. How far the figures would move with other draws
// of worlds is told with them (beaumont_2002).
#include <string>
#include <vector>

#include "explain/check.h"
#include "explain/evidence.h"
#include "explain/likelihood.h"
#include "explain/world.h"

namespace wellproof {

/// A cause's share of calls before anything is known, as the user says it.
struct PriorShare {
  std::string key;  // of a fault, or "none"
  double share = 0;
};

/// The cause that is in no list.
inline constexpr std::string_view none_key = "none";
inline constexpr double none_share = 0.03;

struct RankedCause {
  std::size_t fault = 0;  // place in faults(); past the end: none of these
  double prior = 0;
  double posterior = 0;
  double posterior_error = 0;  // standard error by the draws of worlds
  double log_evidence = 0;
  bool possible = true;          // false: no draw of it gives anything to call about on this site
  std::size_t best_world = 0;    // place of the likeliest in the worlds; of no meaning for none
  Likelihood parts;              // mean over its worlds by weight
  double worlds_that_count = 0;  // effective number of worlds behind the mean
};

struct Ranking {
  std::vector<RankedCause> causes;  // the likeliest first, none of these among them
  std::vector<double> weights;      // of each world: posterior of its cause, shared out over its worlds
};

/// @param answers of checks (check.h), on top of what was told
/// @param priors replace the library's shares, which are then scaled to what is left; may be empty
Ranking rank(std::vector<World> const& worlds, Holding const& holding, Evidence const& evidence,
             std::vector<PriorShare> const& priors = {}, std::vector<ToldAnswer> const& answers = {});

/// "none" or the fault's key; its title.
std::string_view key_of(RankedCause const& cause);
std::string_view title_of(RankedCause const& cause);

}  // namespace wellproof
