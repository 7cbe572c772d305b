#include "explain/world.h"

#include <algorithm>
#include <cmath>
#include <mutex>
#include <numeric>

#include "contract/require.h"
#include "explain/probe.h"
#include "proof/shared_out.h"
#include "quantity/customary.h"
#include "simulate/run.h"

namespace wellproof {
namespace {

// A day need not be as exact as a proof: the drive's samples are computed where its speed moves, and a day has many.
constexpr double coarse_rate_hz = 5;
constexpr double coarse_tolerance = 1e-3;
constexpr Window night{.from_s = hour_s, .to_s = 5 * hour_s};

struct Day {
  std::vector<DayStop> stops;
  double night_running_share = 0;
  double night_starts = 0;
  double most_pressure_pa = 0;
  double most_sink_c = 0;
  double least_wetness = 1;
  double resting_s = 0;
};

/// A household's day with its many small uses drawn three at once, one after the other: the same water at about the
/// same hours, in a third of the starts. What stops a pump is the larger draws.
std::vector<WaterUse> coarse_household(std::uint64_t seed, double share) {
  constexpr double small_m3 = 0.012;  // a cistern and what is less
  constexpr int together = 3;
  auto const all = household_uses(seed, 0, 1);
  std::vector<WaterUse> uses;
  WaterUse gathered;
  double gathered_m3 = 0;
  int count = 0;
  for (auto use : all) {
    use.flow_m3_s *= share;
    double const volume_m3 = use.flow_m3_s * use.duration_s;
    if (volume_m3 > small_m3) {
      uses.push_back(use);
      continue;
    }
    gathered = count == 0 ? use : gathered;
    gathered.flow_m3_s = std::max(gathered.flow_m3_s, use.flow_m3_s);
    gathered_m3 += volume_m3;
    if (++count == together) {
      gathered.duration_s = gathered_m3 / gathered.flow_m3_s;
      uses.push_back(gathered);
      count = 0;
      gathered_m3 = 0;
    }
  }
  return uses;
}

/// The day's draws on the house and its zones as a script.
std::vector<Change> day_script(Faulty const& faulty, std::uint64_t seed) {
  constexpr std::uint64_t household = 1;
  constexpr std::uint64_t programme = 2;
  Plant const& plant = faulty.plant;
  auto uses = coarse_household(seed_of(seed, household, 0), faulty.household_share);
  uses.insert(uses.end(), faulty.uses.begin(), faulty.uses.end());
  std::stable_sort(uses.begin(), uses.end(),
                   [](WaterUse const& a, WaterUse const& b) { return a.start_s < b.start_s; });
  std::vector<Change> script = faulty.lasting;
  script.insert(script.end(), faulty.of_day.begin(), faulty.of_day.end());
  double const most_m3_s = plant.outlets[outlet::house].nominal_flow_m3_s;
  for (auto const& drawn : drawn_together(uses)) {
    script.push_back({.time_s = drawn.time_s,
                      .act = Act::outlet_opening,
                      .outlet = outlet::house,
                      .value = std::min(1.0, drawn.flow_m3_s / most_m3_s)});
  }
  // Lawns are watered on every other day, in the early morning or the evening.
  Chance chance(seed_of(seed, programme, 0));
  auto const& zones = plant.site.demand.zones;
  if (!zones.empty() && chance.says(0.5)) {
    constexpr double begins_h[] = {4, 5, 6, 19, 20, 21};
    double at_s = hour_s * begins_h[chance.one_of(6)];
    for (std::size_t i = 0; i < zones.size(); ++i) {
      script.push_back({.time_s = at_s, .act = Act::outlet_opening, .outlet = outlet::first_zone + i, .value = 1});
      at_s += zones[i].time_s;
      script.push_back({.time_s = at_s, .act = Act::outlet_opening, .outlet = outlet::first_zone + i, .value = 0});
    }
  }
  std::stable_sort(script.begin(), script.end(), [](Change const& a, Change const& b) { return a.time_s < b.time_s; });
  while (!script.empty() && script.back().time_s >= day_long_s) {
    script.pop_back();
  }
  return script;
}

/// The script from a time on, with what was in force by then put at its beginning.
std::vector<Change> from_time(std::vector<Change> const& script, double from_s) {
  std::vector<Change> rest;
  for (auto const& change : script) {
    if (change.time_s <= from_s) {
      auto const same = std::find_if(rest.begin(), rest.end(), [&](Change const& other) {
        return other.act == change.act && other.outlet == change.outlet;
      });
      if (same != rest.end()) {
        rest.erase(same);
      }
    }
    rest.push_back(change);
    rest.back().time_s = std::max(0.0, change.time_s - from_s);
  }
  return rest;
}

/// When a person sets a drive going again that has stopped for good: some time after, in waking hours.
double set_going_again_s(double stopped_s, Chance& chance) {
  double const noticed_s = stopped_s + chance.by_size(5, 180) * minute_s;
  double const hour = std::fmod(noticed_s / hour_s, 24.0);
  return hour < 6.5 ? noticed_s + (6.5 - hour + chance.between(0, 1.5)) * hour_s : noticed_s;
}

void take_stops(Trace const& trace, double from_s, Day& day) {
  for (auto const& event : trace.events) {
    bool const is_stop = event.what.kind == RegulatorEvent::Kind::stopped ||
                         (event.what.kind == RegulatorEvent::Kind::mode && event.what.mode == Mode::waiting);
    if (is_stop && event.what.cause) {
      day.stops.push_back({from_s + event.time_s, *event.what.cause});
    }
  }
}

Day live_day(Faulty const& faulty, Logic const& logic, std::uint64_t seed) {
  constexpr int most_parts = 6;
  constexpr std::uint64_t reset = 3;
  Day day;
  auto const script = day_script(faulty, seed);
  Plant plant = faulty.plant;
  plant.site.drive.sample_rate_hz = std::min(plant.site.drive.sample_rate_hz, coarse_rate_hz);
  Chance chance(seed_of(seed, reset, 0));
  double from_s = 0;
  Start start{.tee_pressure_pa = faulty.settings.pressure_target_pa, .after_power_up = false};
  for (int part = 0; part < most_parts && from_s < day_long_s - minute_s; ++part) {
    Scenario scenario;
    scenario.duration_s = day_long_s - from_s;
    scenario.start = start;
    scenario.script = from_time(script, from_s);
    RunOptions options;
    options.logic = logic;
    options.noise_seed = seed;
    options.tolerance = coarse_tolerance;
    if (part == 0) {
      options.windows = {night};
    }
    auto const trace = run(plant, faulty.settings, scenario, options);
    take_stops(trace, from_s, day);
    auto const& whole = trace.tallies.front();
    day.most_pressure_pa = std::max(day.most_pressure_pa, whole.most_tee_pressure_pa);
    day.most_sink_c = std::max(day.most_sink_c, whole.most_sink_c);
    day.least_wetness = std::min(day.least_wetness, whole.least_wetness);
    if (part == 0) {
      auto const& quiet = trace.tallies.back();
      day.night_running_share = quiet.running_s / (night.to_s - night.from_s);
      day.night_starts = quiet.starts;
    }
    auto const ended = std::find_if(trace.events.begin(), trace.events.end(),
                                    [](TraceEvent const& event) { return event.what.mode == Mode::stopped; });
    if (ended == trace.events.end()) {
      break;
    }
    from_s = set_going_again_s(from_s + ended->time_s, chance);
    start = {.tee_pressure_pa = std::max(0.0, trace.last.tee_pressure_pa),
             .level_drop_m = std::max(0.0, trace.last.level_depth_m - faulty.plant.well.static_level_depth_m),
             .after_power_up = true};
  }
  return day;
}

void at_least(double& share, double other) {
  share = std::max(share, other);
}

/// What a person notices of the day and of the looking.
void notice(Day const& day, Probe const& probe, Faulty const& faulty, World& world) {
  auto const feel = [&](Symptom symptom) -> double& { return world.feels[static_cast<std::size_t>(symptom)]; };
  double const target_pa = faulty.settings.pressure_target_pa;
  constexpr double often_starts = 8;  // in a quiet night's four hours
  bool const always = day.night_running_share > 0.9;
  if (always) {
    at_least(feel(Symptom::never_sleeps), 0.85);
  } else if (day.night_starts >= often_starts) {
    at_least(feel(Symptom::cycles), 0.75);
    world.cycle_s = (night.to_s - night.from_s) / day.night_starts;
  }
  if (probe.half_pressure_pa < 0.25 * target_pa) {
    at_least(feel(Symptom::no_water), 0.8);
  } else if (probe.half_pressure_pa < 0.8 * target_pa) {
    at_least(feel(Symptom::no_pressure), 0.85);
  } else if (probe.full_pressure_pa < 0.5 * target_pa) {
    at_least(feel(Symptom::no_pressure), 0.4);
  }
  constexpr double swings_share = 0.05;
  if (probe.swing_pa > swings_share * target_pa) {
    at_least(feel(Symptom::hunts), 0.75);
    world.swing_pa = probe.swing_pa;
  }
  if (probe.half_pressure_pa > 1.15 * target_pa) {
    at_least(feel(Symptom::high_pressure), 0.6);
  }
  if (day.most_sink_c > 75) {
    at_least(feel(Symptom::hot), 0.6);
  }
  if (day.least_wetness < 0.9) {
    at_least(feel(Symptom::air), 0.5);
    at_least(feel(Symptom::noisy), 0.3);
  }
}

}  // namespace

Faulty put_fault(Plant const& plant, Settings const& settings, std::size_t fault, std::uint64_t seed) {
  Faulty faulty;
  faulty.plant = plant;
  faulty.settings = settings;
  if (fault < faults().size()) {
    Chance chance(seed);
    faults()[fault].put(faulty, chance);
    if (!chance.says(faulty.day_share) && faulty.there_now) {
      faulty.there_now = false;  // a day without it
    }
  }
  return faulty;
}

World live_through(Faulty const& faulty, std::size_t fault, RetryGap const& retry, Logic const& logic,
                   std::uint64_t seed) {
  World world;
  world.fault = fault;
  world.severity = faulty.severity;
  world.day_share = faulty.day_share;
  world.contact_wired = faulty.contact_wired;
  auto const day = live_day(faulty, logic, seed);
  auto const probe = probed(faulty, logic, seed);
  world.stops = day.stops;
  world.pattern = pattern_of(day.stops, faulty.day_share, retry);
  world.feels = faulty.feels;
  notice(day, probe, faulty, world);
  world.shows = probe.shows;
  double most = 0;
  for (auto const symptom :
       {Symptom::no_pressure, Symptom::no_water, Symptom::never_sleeps, Symptom::cycles, Symptom::hunts,
        Symptom::high_pressure, Symptom::hot, Symptom::noisy, Symptom::air, Symptom::sand, Symptom::wet_ground}) {
    most = std::max(most, world.feels[static_cast<std::size_t>(symptom)]);
  }
  constexpr double felt = 0.35;
  world.calls = !world.stops.empty() || most > felt;
  return world;
}

std::vector<DayStop> stops_of_day(Faulty const& faulty, Logic const& logic, std::uint64_t seed) {
  return live_day(faulty, logic, seed).stops;
}

void add_worlds(std::vector<World>& worlds, std::vector<Plant> const& plants, Settings const& settings,
                WorldOptions const& options, std::vector<std::size_t> const& causes, std::uint32_t from_draw) {
  require(plants.size() >= options.draws && options.draws >= from_draw, "worlds need as many plants as draws");
  std::size_t const each = options.draws - from_draw;
  std::size_t const before = worlds.size();
  worlds.resize(before + causes.size() * each);
  std::mutex telling;
  std::size_t done = 0;
  auto const retry = retry_gap(settings);
  shared_out(causes.size() * each, options.threads, [&](std::size_t i) {
    World& world = worlds[before + i];
    std::size_t const fault = causes[i / each];
    auto const draw = from_draw + static_cast<std::uint32_t>(i % each);
    auto const seed = seed_of(options.seed, fault, draw);
    world = live_through(put_fault(plants[draw], settings, fault, seed), fault, retry, options.logic, seed);
    world.draw = draw;
    if (options.progress) {
      std::lock_guard const lock(telling);
      options.progress(++done, causes.size() * each);
    }
  });
}

std::vector<World> make_worlds(std::vector<Plant> const& plants, Settings const& settings,
                               WorldOptions const& options) {
  std::vector<std::size_t> causes(faults().size() + 1);
  std::iota(causes.begin(), causes.end(), std::size_t{0});
  std::vector<World> worlds;
  add_worlds(worlds, plants, settings, options, causes, 0);
  return worlds;
}

Faulty faulty_of(World const& world, std::vector<Plant> const& plants, Settings const& settings, std::uint64_t seed) {
  return put_fault(plants[world.draw], settings, world.fault, seed_of(seed, world.fault, world.draw));
}

}  // namespace wellproof
