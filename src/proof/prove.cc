#include "proof/prove.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <mutex>
#include <span>
#include <tuple>

#include "contract/require.h"
#include "proof/hunting.h"
#include "proof/insight.h"
#include "proof/margins.h"
#include "proof/shared_out.h"
#include "proof/worst_words.h"

namespace wellproof {
namespace {

/// Each run by itself: which draw, which hazard, nothing shared. So results do not depend on who computes them.
Outcome one(Plant const& plant, Settings const& settings, Hazard const& hazard, std::uint32_t draw, Logic const& logic,
            std::uint64_t seed, std::vector<Criterion>* criteria) {
  auto trial = hazard.make(plant, settings);
  RunOptions options;
  options.logic = logic;
  options.windows = trial.windows;
  options.noise_seed = noise_seed(seed, draw);
  auto const trace = run(plant, settings, trial.scenario, options);
  auto outcome = judge_all(trace, trial.criteria);
  outcome.draw = draw;
  if (criteria != nullptr) {
    *criteria = std::move(trial.criteria);
  }
  return outcome;
}

/// Draws after which it is asked whether a scenario has failed: fixed, so that threads change nothing.
constexpr std::uint32_t block_draws = 8;

/// All runs, of each hazard in the order of its draws.
std::vector<std::vector<Outcome>> all_outcomes(std::vector<Plant> const& plants, Settings const& settings,
                                               ProveOptions const& options) {
  auto const& all = hazards();
  std::vector<std::vector<Outcome>> outcomes(all.size());
  std::mutex telling;
  std::size_t done = 0;
  std::uint32_t const block = options.stop_when_certain ? block_draws : options.draws;
  for (std::uint32_t first = 0; first < options.draws; first += block) {
    std::uint32_t const draws = std::min(block, options.draws - first);
    std::vector<std::size_t> open;
    for (std::size_t h = 0; h < all.size(); ++h) {
      if (std::all_of(outcomes[h].begin(), outcomes[h].end(), [](Outcome const& o) { return o.passed; })) {
        open.push_back(h);
        outcomes[h].resize(first + draws);
      } else {
        done += draws;  // not run, and not to be waited for
      }
    }
    shared_out(open.size() * draws, options.threads, [&](std::size_t i) {
      std::size_t const h = open[i / draws];
      auto const draw = static_cast<std::uint32_t>(first + i % draws);
      outcomes[h][draw] = one(plants[draw], settings, all[h], draw, options.logic, options.seed, nullptr);
      if (options.progress) {
        std::lock_guard const lock(telling);
        options.progress(++done, all.size() * options.draws);
      }
    });
  }
  return outcomes;
}

/// What to measure, and where the scenarios with the smallest margins first fail.
void look_into(Site const& site, std::span<Plant const> plants, Settings const& settings, ProveOptions const& options,
               std::vector<std::vector<Outcome>> const& by_hazard, Proof& proof) {
  constexpr std::size_t binding = 3;
  proof.margins.push_back(hunting_margin(plants, settings, options));
  proof.measure = worth_measuring(site, options.seed, by_hazard);
  std::vector<std::size_t> order;
  for (std::size_t h = 0; h < by_hazard.size(); ++h) {
    proof.scenarios[h].drivers = margin_drivers(site, options.seed, by_hazard[h]);
    order.push_back(h);
  }
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return proof.scenarios[a].worst.margin < proof.scenarios[b].worst.margin;
  });
  order.resize(std::min(order.size(), binding));
  std::vector<std::optional<FirstFailure>> found(order.size());
  shared_out(order.size(), options.threads, [&](std::size_t k) {
    found[k] = first_failure_of(site, hazards()[order[k]], settings, by_hazard[order[k]], options);
  });
  for (std::size_t k = 0; k < order.size(); ++k) {
    proof.scenarios[order[k]].first_failure = found[k];
  }
}

}  // namespace

std::uint64_t noise_seed(std::uint64_t seed, std::uint32_t draw) {
  return seed * 1000003 + draw;
}

Outcome judge_all(Trace const& trace, std::vector<Criterion> const& criteria) {
  Outcome outcome;
  outcome.ending = trace.ending;
  outcome.margin = std::numeric_limits<double>::max();
  outcome.passed = trace.ending == Ending::finished;
  for (std::size_t i = 0; i < criteria.size(); ++i) {
    auto const verdict = judge(trace, criteria[i]);
    outcome.passed &= verdict.passed;
    if (criteria[i].measure == Measure::most_tee_pressure || criteria[i].measure == Measure::most_pump_pressure) {
      double const room_pa = distance_to_limit(criteria[i].measure, verdict.value, criteria[i].limit);
      outcome.pressure_room_pa = std::min(outcome.pressure_room_pa.value_or(room_pa), room_pa);
    }
    if (verdict.margin < outcome.margin) {
      outcome.margin = verdict.margin;
      outcome.criterion = i;
      outcome.value = verdict.value;
      outcome.limit = criteria[i].limit;
    }
  }
  return outcome;
}

Proof prove(Site const& site, std::vector<Plant> const& plants, Settings const& settings, ProveOptions const& options) {
  require(plants.size() >= options.draws && options.draws > 0, "a proof needs as many plants as draws");
  auto const& all = hazards();
  auto const by_hazard = options.made != nullptr ? options.made->outcomes : all_outcomes(plants, settings, options);
  require(by_hazard.size() == all.size(), "the runs of a proof are of every hazard");

  Proof proof;
  proof.seed = options.seed;
  proof.draws = options.draws;
  proof.proven = true;
  for (std::size_t h = 0; h < all.size(); ++h) {
    auto const& these = by_hazard[h];
    ScenarioProof s;
    s.name = all[h].name;
    s.title = all[h].title;
    s.runs = static_cast<std::uint32_t>(these.size());
    s.failed = static_cast<std::uint32_t>(
        std::count_if(these.begin(), these.end(), [](Outcome const& o) { return !o.passed; }));
    s.not_computed = static_cast<std::uint32_t>(
        std::count_if(these.begin(), these.end(), [](Outcome const& o) { return o.ending != Ending::finished; }));
    s.fail_upper95 = failure_upper95(s.failed, s.runs);
    auto ranked = these;
    auto const two = ranked.begin() + static_cast<std::ptrdiff_t>(std::min<std::size_t>(2, ranked.size()));
    std::partial_sort(ranked.begin(), two, ranked.end(), [](Outcome const& a, Outcome const& b) {
      return std::tuple(a.passed, a.margin, a.draw) < std::tuple(b.passed, b.margin, b.draw);
    });
    s.worst = ranked.front();
    std::for_each(ranked.begin(), two, [&](Outcome const& o) { s.nearest.push_back(o.draw); });
    auto trial = all[h].make(plants[s.worst.draw], settings);
    s.criteria = std::move(trial.criteria);
    s.worst_says = worst_words(site, options.seed, these, s.worst, s.criteria, options.units);
    if (s.worst.criterion < s.criteria.size()) {
      s.distance_says = distance_words(s.criteria[s.worst.criterion].measure, s.worst, options.units);
    }
    proof.proven &= s.failed == 0;
    proof.scenarios.push_back(std::move(s));
  }
  auto const drawn = std::span(plants).first(options.draws);
  proof.margins = {false_stop_margin(drawn, settings, options.logic, options.units),
                   harm_margin(drawn, settings, options.logic, options.units), rating_margin(by_hazard, options.units),
                   sleep_margin(drawn, settings, options.logic, options.units)};
  if (options.insight) {
    look_into(site, drawn, settings, options, by_hazard, proof);
  }
  return proof;
}

ProofRuns prove_share(std::vector<Plant> const& plants, Settings const& settings, ProveOptions const& options,
                      std::uint32_t first, std::uint32_t count) {
  require(plants.size() >= first && plants.size() - first >= count, "a share of a proof is of draws that are there");
  ProofRuns runs;
  for (auto const& each : hazards()) {
    auto& these = runs.outcomes.emplace_back();
    for (std::uint32_t draw = first; draw < first + count; ++draw) {
      these.push_back(one(plants[draw], settings, each, draw, options.logic, options.seed, nullptr));
    }
  }
  for (std::uint32_t draw = first; draw < std::min<std::uint32_t>(first + count, swing_draws); ++draw) {
    if (!options.logic.two_contact_switch) {  // which does not regulate
      runs.swings.push_back(
          swings_while_drawing(plants[draw], settings, options.logic, noise_seed(options.seed, draw)));
    }
  }
  return runs;
}

std::vector<Outcome> outcomes_of(Hazard const& hazard, std::vector<Plant> const& plants,
                                 std::vector<std::uint32_t> const& draws, Settings const& settings,
                                 ProveOptions const& options) {
  std::vector<Outcome> outcomes(draws.size());
  shared_out(draws.size(), options.threads, [&](std::size_t i) {
    outcomes[i] = one(plants[draws[i]], settings, hazard, draws[i], options.logic, options.seed, nullptr);
  });
  return outcomes;
}

double failure_upper95(std::uint32_t failed, std::uint32_t runs) {
  require(runs > 0 && failed <= runs, "a failure rate is of runs that were made");
  if (failed == runs) {
    return 1;
  }
  // The upper bound p solves P(at most `failed` of `runs` | p) = 5 %; the sum falls with p.
  auto const at_most = [&](double p) {
    double const log_odds = std::log(p) - std::log1p(-p);
    double log_term = runs * std::log1p(-p);
    double sum = std::exp(log_term);
    for (std::uint32_t k = 1; k <= failed; ++k) {
      log_term += std::log(static_cast<double>(runs - k + 1) / k) + log_odds;
      sum += std::exp(log_term);
    }
    return sum;
  };
  double low = 0;
  double high = 1;
  for (int round = 0; round < 60; ++round) {
    double const middle = 0.5 * (low + high);
    (at_most(middle) > 0.05 ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace wellproof
