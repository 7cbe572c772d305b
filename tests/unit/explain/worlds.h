#pragma once
// Worlds made by hand: of each cause some, with a kind of stop of its own and a current of its own.
#include <vector>

#include "explain/rank.h"

namespace wellproof {

/// A world that stops so often a day by one kind, evenly from an hour on, and shows a current.
inline World plain_world(std::size_t fault, StopCause kind, int stops, double from_s, double current_a) {
  World world;
  world.fault = fault;
  world.calls = true;
  for (int i = 0; i < stops; ++i) {
    world.stops.push_back({from_s + i * 3600.0, kind});
  }
  world.pattern = pattern_of(world.stops, 1, {3500, 3700});
  of(world.shows, Show::half_current) = current_a;
  return world;
}

/// A sound plant and its like, so that the site's own spread is known.
inline void add_sound(std::vector<World>& worlds) {
  for (int i = 0; i < 8; ++i) {
    auto world = plain_world(faults().size(), StopCause::dry_run, 0, 0, 4 + 0.02 * i);
    world.calls = false;
    worlds.push_back(world);
  }
}

inline std::vector<World> worlds_of_three() {
  std::vector<World> worlds;
  for (int i = 0; i < 6; ++i) {
    worlds.push_back(plain_world(fault_place("yield_fallen"), StopCause::dry_run, 4 + i, 3600.0 * (2 + i), 3.0));
    worlds.push_back(plain_world(fault_place("level_fallen"), StopCause::dry_run, 4 + i, 3600.0 * (2 + i), 5.0));
    worlds.push_back(plain_world(fault_place("sensor_wire"), StopCause::sensor_lost, 3, 3600.0 * (3 * i), 4.1));
  }
  add_sound(worlds);
  return worlds;
}

inline History history_of(StopCause kind, int stops, double gap_s) {
  History history;
  for (int i = stops; i > 0; --i) {
    history.stops.push_back({kind, i * gap_s, 3600.0 * 4, {}, {}});
  }
  return history;
}

inline double posterior_of(Ranking const& ranking, std::string_view key) {
  for (auto const& cause : ranking.causes) {
    if (key_of(cause) == key) {
      return cause.posterior;
    }
  }
  return -1;
}

}  // namespace wellproof
