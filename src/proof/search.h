#pragma once
// Settings by search: from those derived, the ones that matter are moved by the steps in which a drive takes them, as
// long as the smallest margin of the runs that come nearest to failing grows. The same draws and the same noise stand
// behind every try, so that a difference is the settings' own. A compass search: it asks for no slopes, which margins
// with stops in them do not have, and it moves on the grid of the drive's own steps, where a method with a smooth
// model of the surface would have to round.
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "proof/prove.h"
#include "settings/card.h"

namespace wellproof {

/// A better point on a grid for a function of whole steps.
struct CompassResult {
  std::vector<int> steps;  // from the start
  double value = 0;
  std::uint32_t tries = 0;
};

/// Maximises by moving one coordinate at a time, first by many steps, then by fewer down to one; stops when no single
/// step helps or the tries are used up. Never worse than the start.
/// @param value   of a point in whole steps from the start; may be the least double where a point is not allowed
/// @param widest  steps of the first moves, > 0
/// Source:  kolda_2003, section 3 (coordinate search)
/// Checked: tests/unit/proof/search_test.cc
CompassResult compass_search(std::function<double(std::vector<int> const&)> const& value, std::size_t coordinates,
                             int widest, std::uint32_t most_tries);

struct SettingMoved {
  std::string key;
  Dimension dimension = Dimension::none;
  double from = 0;
  double to = 0;
};

struct SearchResult {
  Settings settings;
  Proof proof;                            // of these settings, over all draws
  double start_margin = 0;                // smallest of all runs, with the settings searched from
  double found_margin = 0;                // and with those found
  std::optional<double> common_margin{};  // of a set of common-practice values, where it was asked for
  std::vector<SettingMoved> moved;
  std::vector<std::string> binding;  // scenarios that now have the smallest margins, the tightest first
  std::uint32_t tries = 0;
};

struct SearchOptions {
  ProveOptions prove;
  std::vector<std::string> fixed;  // keys that are not to move: what the user has given
  std::optional<Card> card{};      // of the drive: nothing is tried that it cannot be set to
  std::uint32_t most_tries = 120;
};

/// Smallest margin over all runs of a proof.
double smallest_margin(Proof const& proof);

/// @param start       settings to move from; with a card, as its drive has them
/// @param start_proof of them, by options.prove over the same plants
SearchResult search_settings(Site const& site, std::vector<Plant> const& plants, Settings const& start,
                             Proof const& start_proof, SearchOptions const& options);

}  // namespace wellproof
