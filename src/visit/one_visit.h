#pragma once
// A visit to one plant: what its instruments would show in each test.
#include <vector>

#include "plant/plant.h"
#include "visit/visit.h"

namespace wellproof {

/// A draw of the site as it stands on the day of the visit.
/// @param season_share of the season's drop: 0 in an ordinary season, 1 in the dry one
Plant visited_plant(Site const& site, std::uint64_t seed, std::uint32_t draw, double season_share);

/// The point of a draw's own chances: the season first, then the error of each reading.
std::vector<double> visit_point(std::uint64_t seed, std::uint32_t draw, std::size_t readings);

}  // namespace wellproof
