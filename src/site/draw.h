#pragma once
// Drawing one possible truth from what is known, by a point of a scrambled Sobol sequence. Draw k of a seed is the same
// whatever else is drawn, so that one command replays it.
#include <cstdint>
#include <span>
#include <vector>

#include "site/site.h"

namespace wellproof {

/// How many coordinates a draw of this site takes: one for each quantity that is no fixed number.
std::size_t unknowns(Site const& site);

/// Keys of these coordinates, in order.
std::vector<std::string> unknown_keys(Site const& site);

/// The truth at a point of the unit cube.
/// @param point unknowns(site) numbers in [0, 1]
DrawnSite draw(Site const& site, std::span<double const> point);

/// Point k of the sequence: Sobol with hashed Owen scrambling (Sobol 1967; Joe & Kuo 2008; Burley 2020).
/// Point 0 is the middle of everything.
std::vector<double> sequence_point(std::uint64_t seed, std::uint32_t index, std::size_t dimensions);

/// draw(site, sequence_point(seed, index, unknowns(site)))
DrawnSite draw(Site const& site, std::uint64_t seed, std::uint32_t index);

}  // namespace wellproof
