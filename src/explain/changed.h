#pragma once
// What changed lately, in a few words, as more or less of a cause's share before the stops are looked at.
#include <string>
#include <vector>

#include "explain/rank.h"

namespace wellproof {

/// A cause that a told change makes likelier or less likely, and by how much its odds rise or fall (common practice, no
/// source).
struct ChangeSpeaks {
  std::string said;
  std::string_view fault;
  double factor = 1;
};
std::vector<ChangeSpeaks> changes_speak(std::vector<std::string> const& changed);

/// The library's shares with these factors. What the user says of a share stays as it is said.
std::vector<PriorShare> shares_after(std::vector<ChangeSpeaks> const& speaking, std::vector<PriorShare> const& said);

}  // namespace wellproof
