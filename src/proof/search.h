#pragma once
// Settings by search: from those derived, the ones that matter are moved by the steps in which a drive takes them, as
// long as the smallest margin of the runs that come nearest to failing grows; what does nothing for it goes back to
// where it was derived. The same draws and the same noise stand behind every try, so that a difference is the settings'
// own. A compass search: it asks for no slopes, which margins with stops in them do not have, and it moves on the grid
// of the drive's own steps, where a method with a smooth model of the surface would have to round.
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "proof/prove.h"
#include "settings/card.h"
#include "settings/derive.h"

namespace wellproof {

/// A better point on a grid for a function of whole steps.
struct CompassResult {
  std::vector<int> steps;
  double value = 0;
  std::uint32_t tries = 0;
};

/// Maximises by moving one coordinate at a time, first by many steps, then by fewer down to one; stops when no single
/// step helps or the tries are used up. Never worse than the start.
/// @param value   of a point; the least double where a point is not allowed, which is not counted as a try
/// @param from    where it starts
/// @param widest  steps of the first moves, > 0
/// Source:  kolda_2003, section 3 (coordinate search)
/// Checked: tests/unit/proof/search_test.cc
CompassResult compass_search(std::function<double(std::vector<int> const&)> const& value, std::vector<int> from,
                             int widest, std::uint32_t most_tries);

struct SettingMoved {
  std::string key;
  Dimension dimension = Dimension::none;
  double from = 0;
  double to = 0;
  double derived = 0;     // what it was moved from by itself: for the ceiling that was found
  bool followed = false;  // derived anew for the ceiling that was moved, not moved itself
};

/// What a plain set of common-practice values (settings/common_practice.h) comes to on the same site.
struct CommonPractice {
  double margin = 0;  // smallest of all runs
  std::size_t failing_scenarios = 0;
};

struct SearchResult {
  Settings settings;
  Proof proof;                   // of these settings, over all draws
  double start_margin = 0;       // smallest of all runs, with the settings searched from
  double found_margin = 0;       // and with those found
  std::size_t start_failed = 0;  // runs that fail, over all draws
  std::size_t found_failed = 0;
  std::optional<CommonPractice> common{};  // where it was asked for
  std::vector<SettingMoved> moved;
  std::optional<Derived> anew{};  // where the ceiling was moved: what follows from it, before other settings were moved
  std::vector<std::string> binding;  // scenarios that now have the smallest margins, the tightest first
  std::uint32_t tries = 0;
};

struct SearchOptions {
  ProveOptions prove;
  std::vector<std::string> fixed;  // keys that are not to move: what the user has given
  std::optional<Card> card{};      // of the drive: nothing is tried that it cannot be set to
  std::uint32_t most_tries = 240;
  std::function<void(std::size_t done, std::size_t all)> progress{};  // over the tries; may be empty
};

/// Smallest margin over all runs of a proof.
double smallest_margin(Proof const& proof);

/// @param start       settings to move from; with a card, as its drive has them
/// @param start_proof of them, by options.prove over the same plants
SearchResult search_settings(Site const& site, std::vector<Plant> const& plants, Settings const& start,
                             Proof const& start_proof, SearchOptions const& options);

}  // namespace wellproof
