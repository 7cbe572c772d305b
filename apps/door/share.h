#pragma once
// The runs of a proof as text, so that several hands can make them, each some draws, and one puts them together:
// threads of a browser share no memory. A number reads back as the same number.
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "contract/finding.h"
#include "door/prepared.h"
#include "proof/prove.h"

namespace wellproof {

/// The runs of these draws through every hazard, one object of JSON.
std::string share_text(Prepared const& ready, std::uint32_t first, std::uint32_t count, std::uint64_t seed,
                       UnitSystem units);

/// Shares, an array of such objects in any order, as the runs of a proof of so many draws. Findings where one is
/// missing, comes twice or is no share. Swings that are not all there are left out, and looked for again by the proof.
Result<ProofRuns> read_shares(std::string_view text, std::uint32_t draws);

}  // namespace wellproof
