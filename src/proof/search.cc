#include "proof/search.h"

#include <algorithm>
#include <cstdlib>
#include <iterator>
#include <limits>
#include <numeric>

#include "contract/require.h"
#include "proof/moves.h"
#include "proof/shared_out.h"
#include "proof/unseen_margins.h"

namespace wellproof {
namespace {

constexpr double not_allowed = std::numeric_limits<double>::lowest();
constexpr int widest_steps = 8;
constexpr double others_weight = 0.02;  // of the next smallest margins
constexpr std::size_t others = 8;
constexpr double beyond_all = -3;  // a value under that of any settings
constexpr std::size_t runs_at_once = 8;
constexpr int rounds = 4;              // of searching, proving, and adding what then binds
constexpr double worth_moving = 0.01;  // of the smallest margin: for less, settings stay where their reasons put them
constexpr double may_give_back = 0.2;  // of what all moves together gain, for moving less

/// A run that a try is judged by.
struct Tried {
  std::size_t hazard = 0;
  std::uint32_t draw = 0;
  bool operator==(Tried const&) const = default;
};

/// Margins below 0 drawn together to −1, in their order: a run that fails by far shall not outweigh all others.
double in_bounds(double margin) {
  return margin < 0 ? margin / (1 - margin) : std::min(margin, 1.0);
}

double least(std::vector<double> const& margins) {
  return *std::min_element(margins.begin(), margins.end());
}

std::size_t failed_of(std::vector<double> const& margins) {
  return static_cast<std::size_t>(std::count_if(margins.begin(), margins.end(), [](double m) { return m < 0; }));
}

/// The smallest margin, less the share of runs that fail, and a little of the next margins, so that ties have a way
/// out. More runs, of so many in all, can only lower it.
double value_of(std::vector<double> margins, std::size_t of) {
  auto const failed = static_cast<double>(failed_of(margins)) / static_cast<double>(of);
  std::sort(margins.begin(), margins.end());
  std::size_t const count = std::min(others, margins.size());
  double const sum = std::accumulate(margins.begin(), margins.begin() + static_cast<std::ptrdiff_t>(count), 0.0);
  return margins.front() - failed + others_weight * sum / static_cast<double>(count);
}

using Enough = std::function<bool(std::vector<double> const&)>;

/// Margins of the runs in their order, until there are enough of them to tell what is asked.
std::vector<double> margins_of(std::vector<Plant> const& plants, OnDrive const& drive, std::vector<Tried> const& tried,
                               ProveOptions const& options, Enough const& enough) {
  auto each = options;
  each.logic = drive.logic;
  each.threads = 1;
  std::vector<double> margins;
  while (margins.size() < tried.size() && (margins.empty() || !enough(margins))) {
    std::size_t const first = margins.size();
    margins.resize(std::min(first + runs_at_once, tried.size()));
    shared_out(margins.size() - first, options.threads, [&](std::size_t i) {
      auto const& [hazard, draw] = tried[first + i];
      auto const outcome = outcomes_of(hazards()[hazard], plants, {draw}, drive.settings, each).front();
      margins[first + i] = outcome.ending == Ending::finished ? in_bounds(outcome.margin) : -1.0;
    });
  }
  return margins;
}

using MarginsAt = std::function<std::vector<double>(Moves::Steps const&, Enough const&)>;

bool all_of_them(std::vector<double> const& /*margins*/) {
  return false;
}

/// Back towards where they were derived, each as far as the others keep most of what was gained together: what does
/// nothing goes home, and what helps goes no farther than it has to. The ceiling is asked last.
void take_back_idle(Moves::Steps& steps, std::function<bool(Moves::Steps const&)> const& allowed,
                    MarginsAt const& margins_at) {
  auto const found = margins_at(steps, all_of_them);
  double const gained = least(found) - least(margins_at(Moves::Steps(steps.size(), 0), all_of_them));
  double const wanted = least(found) - may_give_back * std::max(0.0, gained);
  auto const falls_short = [&](std::vector<double> const& margins) {
    return failed_of(margins) > failed_of(found) || least(margins) < wanted;
  };
  auto const serves = [&](Moves::Steps const& tried) {
    return allowed(tried) && !falls_short(margins_at(tried, falls_short));
  };
  for (std::size_t i = steps.size(); i-- > 0;) {
    auto tried = steps;
    int too_few = 0;
    tried[i] = 0;
    if (steps[i] == 0 || serves(tried)) {
      steps = tried;
      continue;
    }
    while (std::abs(steps[i] - too_few) > 1) {
      tried[i] = too_few + (steps[i] - too_few) / 2;
      if (serves(tried)) {
        steps = tried;
      } else {
        too_few = tried[i];
      }
    }
  }
}

/// Most tries are told to be no better by the runs that are tightest where they start from.
void tightest_first(std::vector<Tried>& tried, std::vector<double> const& margins) {
  std::vector<std::size_t> order(tried.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return margins[a] < margins[b]; });
  std::vector<Tried> sorted;
  sorted.reserve(tried.size());
  std::transform(order.begin(), order.end(), std::back_inserter(sorted), [&](std::size_t i) { return tried[i]; });
  tried = std::move(sorted);
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

/// The runs that come nearest to failing, of every scenario, besides those tried already. What they leave out the proof
/// of what was found shows, and then it is added. Tells whether there were any.
bool add_tight(std::vector<Tried>& tried, Proof const& proof) {
  std::size_t const before = tried.size();
  for (std::size_t const h : by_tightness(proof)) {
    for (auto const draw : proof.scenarios[h].nearest) {
      Tried const one{h, draw};
      if (std::find(tried.begin(), tried.end(), one) == tried.end()) {
        tried.push_back(one);
      }
    }
  }
  return tried.size() > before;
}

std::size_t failed_runs(Proof const& proof) {
  return std::accumulate(proof.scenarios.begin(), proof.scenarios.end(), std::size_t{0},
                         [](std::size_t sum, ScenarioProof const& scenario) { return sum + scenario.failed; });
}

/// Better proven: fewer runs fail and the worst by no more, or as many and the smallest margin is larger by what is
/// worth moving for.
bool better(Proof const& a, Proof const& b) {
  double const gained = in_bounds(smallest_margin(a)) - in_bounds(smallest_margin(b));
  auto const [now, before] = std::pair{failed_runs(a), failed_runs(b)};
  return now < before ? gained >= 0 : now == before && gained >= worth_moving;
}

std::vector<SettingMoved> moved(Settings const& from, Settings const& to, Settings const& derived,
                                std::vector<Knob> const& knobs, Moves::Steps const& steps) {
  std::vector<SettingMoved> moved;
  each_setting(from, [&](SettingField const& field, double value) {
    bool by_itself = false;
    for (std::size_t i = 0; i < knobs.size(); ++i) {
      by_itself |= knobs[i].key == field.key && steps[i] != 0;
    }
    moved.push_back({std::string(field.key), field.dimension, value, 0, value, !by_itself});
  });
  std::size_t i = 0;
  each_setting(to, [&](SettingField const&, double value) { moved[i++].to = value; });
  i = 0;
  each_setting(derived, [&](SettingField const& field, double value) {
    moved[i].derived = field.key == ceiling_key ? moved[i].from : value;
    ++i;
  });
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

CompassResult compass_search(std::function<double(std::vector<int> const&)> const& value, std::vector<int> from,
                             int widest, std::uint32_t most_tries) {
  require(widest > 0, "a search takes steps");
  CompassResult best{std::move(from), 0, 0};
  auto const tried_value = [&](std::vector<int> const& steps) {
    double const then = value(steps);
    best.tries += then > not_allowed;
    return then;
  };
  best.value = tried_value(best.steps);
  for (int step = widest; step >= 1; step /= 2) {
    bool moved = true;
    while (moved) {
      moved = false;
      for (std::size_t i = 0; i < best.steps.size(); ++i) {
        for (int const way : {step, -step}) {
          if (best.tries >= most_tries) {
            return best;
          }
          auto tried = best.steps;
          tried[i] += way;
          double const then = tried_value(tried);
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
  result.start_failed = failed_runs(start_proof);
  Moves moves(site, plants, start, options.prove, options.fixed, options.card);
  std::vector<Tried> tried;
  add_tight(tried, start_proof);
  std::uint32_t tries = 0;
  UnseenMargins unseen(plants, {start, options.prove.logic}, start_proof, options.prove);
  auto const allowed = [&](Moves::Steps const& steps) {
    return moves.allows(steps) && unseen.kept_by(moves.at(steps));
  };
  MarginsAt const margins_at = [&](Moves::Steps const& steps, Enough const& enough) {
    return margins_of(plants, moves.at(steps), tried, options.prove, enough);
  };
  double best_value = not_allowed;
  double floor = 0;  // none may fail by more than the worst does where a round starts
  auto const value = [&](Moves::Steps const& steps) {
    if (!allowed(steps)) {
      return not_allowed;
    }
    if (options.progress) {
      options.progress(std::min(++tries, options.most_tries), options.most_tries);
    }
    // What cannot be the best is not looked at to its end.
    auto const is_no_better = [&](std::vector<double> const& margins) {
      return least(margins) < floor || value_of(margins, tried.size()) <= best_value;
    };
    auto const margins = margins_at(steps, is_no_better);
    double const now = least(margins) < floor ? beyond_all : value_of(margins, tried.size());
    best_value = std::max(best_value, now);
    return now;
  };

  Moves::Steps best(moves.knobs().size(), 0);
  std::uint32_t left = options.most_tries;
  for (int round = 0; round < rounds && left > 0; ++round) {
    auto const from = margins_at(best, all_of_them);
    floor = least(from);
    tightest_first(tried, from);
    best_value = not_allowed;
    auto found = compass_search(value, best, widest_steps, round + 1 < rounds ? (left + 1) / 2 : left);
    left -= std::min(left, found.tries);
    result.tries += found.tries;
    take_back_idle(found.steps, allowed, margins_at);
    if (found.steps == best) {
      break;
    }
    // What was gained on the runs looked at has to hold on all of them.
    auto const drive = moves.at(found.steps);
    auto prove_options = options.prove;
    prove_options.logic = drive.logic;
    auto proof = prove(site, plants, drive.settings, prove_options);
    bool const more_runs = add_tight(tried, proof);
    bool const more_draws = unseen.add_nearest(proof);
    if (better(proof, result.proof) && unseen.kept_by(proof)) {
      best = found.steps;
      result.settings = drive.settings;
      result.proof = std::move(proof);
    } else if (!more_runs && !more_draws) {
      break;
    }
  }
  result.found_margin = smallest_margin(result.proof);
  result.found_failed = failed_runs(result.proof);
  if (auto const* const anew = moves.anew(best)) {
    result.anew = *anew;
  }
  result.moved = moved(start, result.settings, result.anew ? result.anew->settings : start, moves.knobs(), best);
  result.binding = binding(result.proof);
  return result;
}

}  // namespace wellproof
