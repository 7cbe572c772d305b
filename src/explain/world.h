#pragma once
// Worlds: for each cause, draws of the site with the cause put into them, each lived through for a day of the household
// and looked at with instruments. They do not hang on what was told, so that one set of worlds serves any history.
#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "explain/fault.h"
#include "explain/pattern.h"
#include "explain/show.h"
#include "regulator/regulator.h"
#include "site/site.h"

namespace wellproof {

struct World {
  std::size_t fault = 0;  // place in faults(); past the end: nothing is wrong
  std::uint32_t draw = 0;
  Severity severity;
  double day_share = 1;
  bool contact_wired = false;
  std::vector<DayStop> stops;  // of one day
  Pattern pattern;
  std::array<double, symptom_count> feels{};  // how surely a person notices
  std::optional<double> cycle_s;              // interval of starts in a quiet night
  std::optional<double> swing_pa;             // of the pressure at even draw
  Shows shows;                                // what instruments show
  bool calls = false;                         // there is something to call about
};

struct WorldOptions {
  std::uint64_t seed = 1;
  std::uint32_t draws = 48;  // of each cause
  unsigned threads = 1;
  Logic logic;
  std::function<void(std::size_t done, std::size_t all)> progress;  // from one thread at a time; may be empty
};

/// What a faulty plant does on one day, and what it shows.
/// @param fault place in faults(), or past the end for a sound plant
/// @param retry that the pattern of stops is held against
World live_through(Faulty const& faulty, std::size_t fault, RetryGap const& retry, Logic const& logic,
                   std::uint64_t seed);

/// The stops of its day only.
std::vector<DayStop> stops_of_day(Faulty const& faulty, Logic const& logic, std::uint64_t seed);

/// A plant with a fault put into it, how bad by lot.
Faulty put_fault(Plant const& plant, Settings const& settings, std::size_t fault, std::uint64_t seed);

/// Worlds of every cause and of none, in that order, options.draws of each.
/// @param plants at least options.draws draws of the site
std::vector<World> make_worlds(std::vector<Plant> const& plants, Settings const& settings, WorldOptions const& options);

/// More worlds of some causes: the draws from `from_draw` up to options.draws, after those that there are.
void add_worlds(std::vector<World>& worlds, std::vector<Plant> const& plants, Settings const& settings,
                WorldOptions const& options, std::vector<std::size_t> const& causes, std::uint32_t from_draw);

/// The faulty plant behind a world, as it was made.
Faulty faulty_of(World const& world, std::vector<Plant> const& plants, Settings const& settings, std::uint64_t seed);

}  // namespace wellproof
