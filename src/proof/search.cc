#include "proof/search.h"

#include <algorithm>
#include <array>
#include <limits>
#include <numeric>
#include <span>

#include <fmt/format.h>

#include "contract/require.h"
#include "proof/margins.h"
#include "proof/shared_out.h"
#include "settings/on_card.h"
#include "settings/study.h"

namespace wellproof {
namespace {

constexpr double not_allowed = std::numeric_limits<double>::lowest();
constexpr std::size_t scenarios_tried = 8;
constexpr int widest_steps = 8;
constexpr double others_weight = 0.02;  // of the next smallest margins, so that ties have a way out
constexpr std::size_t others = 8;
constexpr std::size_t plan_margin_draws = 16;
constexpr double most_power_w = 20000;
constexpr int rounds = 3;  // of searching, proving, and adding what then binds

/// A setting that is moved, and the step in which it is entered.
struct Knob {
  std::string_view key;
  double step;
  double least;
  double most;
};

/// Whether a drive has it to set; its steps become those of the drive where these are the wider ones.
bool can_move(Knob& knob, std::optional<Card> const& card) {
  if (!card) {
    return true;
  }
  auto const* const entry = card->entry(knob.key);
  if (entry == nullptr || entry->fixed) {
    return false;
  }
  if (entry->step && entry->shown != ShownAs::time_over) {
    knob.step = std::max(knob.step, *entry->step);
  }
  return true;
}

std::vector<Knob> knobs_of(Settings const& start, SearchOptions const& options) {
  double const gain_step_hz_pa = std::max(0.05 * start.regulator_gain_hz_pa, 1e-9);
  double const pressure_step = pressure_step_pa(options.prove.units);
  std::vector<Knob> all{
      {"pressure.wake_drop", pressure_step, pressure_step, 0.5 * start.pressure_target_pa},
      {"regulator.gain", gain_step_hz_pa, gain_step_hz_pa, 40 * gain_step_hz_pa},
      {"regulator.reset_time", 0.1, 0.3, 60},
      {"sleep.speed_below", 0.1, start.speed_floor_hz, start.speed_ceiling_hz},
      {"sleep.hold", 1, 1, 110},
      {"sleep.ramp", 0.05, 0.05, 10},
      {"dry_run.amps_below", 0.05, 0.05, start.motor_current_limit_a},
      {"dry_run.power_below", 10, 10, most_power_w},
      {"dry_run.delay", 1, 1, 60},
      {"closed.amps_below", 0.05, 0.05, start.motor_current_limit_a},
      {"closed.power_below", 10, 10, most_power_w},
      {"closed.delay", 1, 1, 120},
  };
  std::vector<Knob> knobs;
  for (auto& knob : all) {
    double now = 0;
    each_setting(start, [&](SettingField const& field, double value) { now = field.key == knob.key ? value : now; });
    bool const given = std::find(options.fixed.begin(), options.fixed.end(), knob.key) != options.fixed.end();
    // What is off stays off, and what acts on nothing stays as it is.
    if (!given && now > 0 && applies(options.prove.logic, knob.key) && can_move(knob, options.card)) {
      knobs.push_back(knob);
    }
  }
  return knobs;
}

/// Settings and the logic of the drive that has them: a second gain is entered in steps of its own.
struct OnDrive {
  Settings settings;
  Logic logic;
};

OnDrive entered(Settings const& settings, SearchOptions const& options) {
  if (!options.card) {
    return {settings, options.prove.logic};
  }
  auto const on = on_card(settings, *options.card);
  auto logic = on.logic;
  logic.two_contact_switch = options.prove.logic.two_contact_switch;
  return {on.settings, logic};
}

/// The settings so many steps from the start; which are held within their limits, and on the steps of a drive.
OnDrive moved_by(Settings const& start, std::vector<Knob> const& knobs, std::vector<int> const& steps,
                 SearchOptions const& options) {
  Settings settings = start;
  each_setting(settings, [&](SettingField const& field, double& value) {
    for (std::size_t i = 0; i < knobs.size(); ++i) {
      if (field.key == knobs[i].key && steps[i] != 0) {
        value = std::clamp(value + steps[i] * knobs[i].step, knobs[i].least, knobs[i].most);
      }
    }
  });
  return entered(settings, options);
}

bool sensible(Settings const& s) {
  auto const ordered = [](double dry, double closed) { return dry <= 0 || closed <= 0 || dry < closed; };
  return ordered(s.dry_run_amps_below_a, s.closed_amps_below_a) &&
         ordered(s.dry_run_power_below_w, s.closed_power_below_w) && s.sleep_band_pa < s.pressure_wake_drop_pa;
}

/// A run that a try is judged by.
struct Tried {
  std::size_t hazard = 0;
  std::uint32_t draw = 0;
  bool operator==(Tried const&) const = default;
};

Outcome outcome_of(std::vector<Plant> const& plants, OnDrive const& drive, Tried const& tried,
                   ProveOptions const& options) {
  auto const trial = hazards()[tried.hazard].make(plants[tried.draw], drive.settings);
  RunOptions run_options;
  run_options.logic = drive.logic;
  run_options.windows = trial.windows;
  run_options.noise_seed = noise_seed(options.seed, tried.draw);
  return judge_all(run(plants[tried.draw], drive.settings, trial.scenario, run_options), trial.criteria);
}

std::vector<double> margins_of(std::vector<Plant> const& plants, OnDrive const& drive, std::vector<Tried> const& tried,
                               ProveOptions const& options) {
  std::vector<double> margins(tried.size());
  shared_out(tried.size(), options.threads, [&](std::size_t i) {
    auto const outcome = outcome_of(plants, drive, tried[i], options);
    margins[i] = outcome.ending == Ending::finished ? std::clamp(outcome.margin, -1.0, 1.0) : -1.0;
  });
  return margins;
}

/// The smallest margin, and a little of the next ones.
double value_of(std::vector<double> margins) {
  std::sort(margins.begin(), margins.end());
  double sum = 0;
  std::size_t const count = std::min(others, margins.size());
  for (std::size_t i = 0; i < count; ++i) {
    sum += margins[i];
  }
  return margins.front() + others_weight * sum / static_cast<double>(count);
}

/// The scenarios in the order of their worst margins, the tightest first.
std::vector<std::size_t> by_tightness(Proof const& proof) {
  std::vector<std::size_t> order(proof.scenarios.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return proof.scenarios[a].worst.margin < proof.scenarios[b].worst.margin;
  });
  return order;
}

/// The runs that come nearest to failing, of the scenarios that are tightest, besides those tried already. What they
/// leave out the proof of what was found shows, and then it is added. Tells whether there were any.
bool add_tight(std::vector<Tried>& tried, Proof const& proof) {
  std::size_t const before = tried.size();
  auto order = by_tightness(proof);
  order.resize(std::min(order.size(), scenarios_tried));
  for (std::size_t const h : order) {
    for (auto const draw : proof.scenarios[h].nearest) {
      Tried const one{h, draw};
      if (std::find(tried.begin(), tried.end(), one) == tried.end()) {
        tried.push_back(one);
      }
    }
  }
  return tried.size() > before;
}

/// Better proven: fewer runs fail, or as many and the smallest margin is larger.
bool better(Proof const& a, Proof const& b) {
  auto const failed = [](Proof const& proof) {
    std::size_t sum = 0;
    for (auto const& scenario : proof.scenarios) {
      sum += scenario.failed;
    }
    return sum;
  };
  return failed(a) != failed(b) ? failed(a) < failed(b) : smallest_margin(a) > smallest_margin(b);
}

/// The margins that no run shows: a stop for nothing and harm must not come nearer than nothing by searching.
bool keeps_plan_margins(std::span<Plant const> plants, Settings const& settings, Settings const& start,
                        ProveOptions const& options) {
  auto const kept = [](PlanMargin const& now, PlanMargin const& before) {
    return !now.value || *now.value >= std::min(0.0, before.value.value_or(0.0));
  };
  return kept(false_stop_margin(plants, settings, options.logic, options.units),
              false_stop_margin(plants, start, options.logic, options.units)) &&
         kept(harm_margin(plants, settings, options.logic, options.units),
              harm_margin(plants, start, options.logic, options.units)) &&
         kept(sleep_margin(plants, settings, options.logic, options.units),
              sleep_margin(plants, start, options.logic, options.units));
}

std::vector<SettingMoved> moves(Settings const& from, Settings const& to) {
  std::vector<SettingMoved> moved;
  each_setting(from, [&](SettingField const& field, double value) {
    moved.push_back({std::string(field.key), field.dimension, value, 0});
  });
  std::size_t i = 0;
  each_setting(to, [&](SettingField const&, double value) { moved[i++].to = value; });
  moved.erase(std::remove_if(moved.begin(), moved.end(), [](SettingMoved const& m) { return m.from == m.to; }),
              moved.end());
  return moved;
}

std::vector<std::string> binding(Proof const& proof) {
  constexpr std::size_t named = 3;
  std::vector<std::string> names;
  for (std::size_t const h : by_tightness(proof)) {
    if (names.size() < named) {
      names.push_back(proof.scenarios[h].name);
    }
  }
  return names;
}

}  // namespace

CompassResult compass_search(std::function<double(std::vector<int> const&)> const& value, std::size_t coordinates,
                             int widest, std::uint32_t most_tries) {
  require(widest > 0, "a search takes steps");
  CompassResult best{std::vector<int>(coordinates, 0), 0, 1};
  best.value = value(best.steps);
  for (int step = widest; step >= 1; step /= 2) {
    bool moved = true;
    while (moved) {
      moved = false;
      for (std::size_t i = 0; i < coordinates; ++i) {
        for (int const way : {step, -step}) {
          if (best.tries >= most_tries) {
            return best;
          }
          auto tried = best.steps;
          tried[i] += way;
          double const then = value(tried);
          ++best.tries;
          if (then > best.value) {
            best.steps = std::move(tried);
            best.value = then;
            moved = true;
            break;
          }
        }
      }
    }
  }
  return best;
}

double smallest_margin(Proof const& proof) {
  double least = std::numeric_limits<double>::max();
  for (auto const& scenario : proof.scenarios) {
    least = std::min(least, scenario.worst.margin);
  }
  return least;
}

SearchResult search_settings(Site const& site, std::vector<Plant> const& plants, Settings const& start,
                             Proof const& start_proof, SearchOptions const& options) {
  SearchResult result;
  result.settings = start;
  result.proof = start_proof;
  result.start_margin = smallest_margin(start_proof);
  auto const knobs = knobs_of(start, options);
  auto const drawn = std::span(plants).first(std::min<std::size_t>(plants.size(), plan_margin_draws));
  std::vector<Tried> tried;
  add_tight(tried, start_proof);
  std::uint32_t left = options.most_tries;
  for (int round = 0; round < rounds && left > 0; ++round) {
    auto const from = result.settings;
    auto const value = [&](std::vector<int> const& steps) {
      auto const drive = moved_by(from, knobs, steps, options);
      if (!sensible(drive.settings) || !keeps_plan_margins(drawn, drive.settings, start, options.prove)) {
        return not_allowed;
      }
      return value_of(margins_of(plants, drive, tried, options.prove));
    };
    auto const found = compass_search(value, knobs.size(), widest_steps, left);
    left -= std::min(left, found.tries);
    result.tries += found.tries;
    auto const drive = moved_by(from, knobs, found.steps, options);
    if (drive.settings == from) {
      break;
    }
    // What was gained on the runs looked at has to hold on all of them.
    auto prove_options = options.prove;
    prove_options.logic = drive.logic;
    auto proof = prove(site, plants, drive.settings, prove_options);
    bool const more_to_see = add_tight(tried, proof);
    if (better(proof, result.proof)) {
      result.settings = drive.settings;
      result.proof = std::move(proof);
    } else if (!more_to_see) {
      break;
    }
  }
  result.found_margin = smallest_margin(result.proof);
  result.moved = moves(start, result.settings);
  result.binding = binding(result.proof);
  return result;
}

}  // namespace wellproof
