#pragma once
// What the runs of a proof tell besides pass and fail: which unknown is worth measuring, and how far away the failures
// lie that no draw met.
#include <vector>

#include "proof/prove.h"

namespace wellproof {

/// The share of sites that a lower bound on the margin leaves out.
inline constexpr double lower_bound_share = 0.05;

/// The smallest margin of each draw over all hazards, held within ±1, and which hazard it came from.
struct SmallestMargins {
  std::vector<double> margin;
  std::vector<std::size_t> hazard;
};
/// @param outcomes of each hazard, the same number of draws or more each; as many count as all have
SmallestMargins smallest_margins(std::vector<std::vector<Outcome>> const& outcomes);

/// Unknowns that explain more of the smallest margin's spread than chance would, the strongest first.
std::vector<WorthMeasuring> worth_measuring(Site const& site, std::uint64_t seed,
                                            std::vector<std::vector<Outcome>> const& outcomes);

/// The same shares for the margin of one hazard, at most three.
std::vector<MarginDriver> margin_drivers(Site const& site, std::uint64_t seed, std::vector<Outcome> const& outcomes);

/// Where a hazard would first fail, from its runs and some more.
std::optional<FirstFailure> first_failure_of(Site const& site, Hazard const& hazard, Settings const& settings,
                                             std::vector<Outcome> const& outcomes, ProveOptions const& options);

}  // namespace wellproof
