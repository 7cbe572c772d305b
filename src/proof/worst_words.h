#pragma once
// The worst run of a scenario in words.
#include <string>
#include <vector>

#include "proof/prove.h"

namespace wellproof {

/// Which criterion came out worst with which figure, and what was unusual in that draw: the unknowns that go with the
/// margin over all draws (rank correlation), as they stood in this one.
std::string worst_words(Site const& site, std::uint64_t seed, std::vector<Outcome> const& outcomes,
                        Outcome const& worst, std::vector<Criterion> const& criteria, UnitSystem units);

}  // namespace wellproof
