#pragma once
// Two sets of settings on the same draws of one site, side by side.
#include <array>
#include <string>
#include <string_view>

#include "proof/prove.h"

namespace wellproof {

/// Words that stand for a set instead of a file's name.
inline constexpr std::string_view derived_set = "derived";
inline constexpr std::string_view common_practice_set = "common_practice";

struct ComparedSet {
  std::string name;  // a file, or one of the words above
  Settings settings;
  Proof proof;
};

struct Compared {
  std::string site_name;
  std::array<ComparedSet, 2> sets;
  UnitSystem units = UnitSystem::us;
  Logic logic{};  // of the drive that both are tried on
};

/// Which of the two does better in a scenario: the one that fails in fewer draws; where they fail alike, the one whose
/// worst margin is larger by what a person would call a difference.
enum class Better { first, second, neither };
Better better(ScenarioProof const& first, ScenarioProof const& second);

std::string compared_sheet(Compared const& compared, bool colour);
std::string compared_json(Compared const& compared);

}  // namespace wellproof
