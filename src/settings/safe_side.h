#pragma once
// To which side each setting is rounded where a drive takes it in steps, and what stays unguarded where a drive does
// not have it. One table, so that a reader can disagree with a line of it.
#include <string_view>
#include <vector>

#include "regulator/regulator.h"

namespace wellproof {

/// nearest: either side costs something, and the proof of the rounded settings decides.
enum class Side { down, nearest, up };

struct SafeSide {
  std::string_view key;
  Side side = Side::nearest;
  std::string_view because;
  std::string_view unguarded;  // where the drive lacks it; empty: no drive can do without
};

/// One for each key of ours, in the order of entry, the two choices last.
std::vector<SafeSide> const& safe_sides();

/// The line of a key, as it stands with a controller that works so. Guards that look at any speed have ordinary work
/// above them and not a shut line, which turns their safe side about.
/// @param key one of ours
SafeSide safe_side(std::string_view key, Logic const& logic);

}  // namespace wellproof
