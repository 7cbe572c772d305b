#include "proof/rounding.h"

#include <algorithm>
#include <span>

#include "proof/margins.h"

namespace wellproof {
namespace {

/// Smallest margin over all draws, given up at the first that fails.
double smallest_margin_if_held(Hazard const& hazard, std::vector<Plant> const& plants, ScenarioProof const& failed,
                               Settings const& settings, ProveOptions const& options) {
  auto const least = [](std::vector<Outcome> const& outcomes) {
    double margin = 1e9;
    for (auto const& outcome : outcomes) {
      margin = std::min(margin, outcome.passed ? outcome.margin : std::min(outcome.margin, -1e-9));
    }
    return margin;
  };
  double const of_worst = least(outcomes_of(hazard, plants, {failed.worst.draw}, settings, options));
  if (of_worst < 0) {
    return of_worst;
  }
  std::vector<std::uint32_t> others;
  for (std::uint32_t draw = 0; draw < options.draws; ++draw) {
    if (draw != failed.worst.draw) {
      others.push_back(draw);
    }
  }
  return std::min(of_worst, least(outcomes_of(hazard, plants, others, settings, options)));
}

}  // namespace

std::vector<RoundingLoss> lost_by_rounding(std::vector<Plant> const& plants, Proof const& proof,
                                           Settings const& entered, Settings const& derived,
                                           ProveOptions const& options) {
  std::vector<RoundingLoss> losses;
  if (entered == derived) {
    return losses;
  }
  for (auto const& scenario : proof.scenarios) {
    auto const* const of = hazard(scenario.name);
    if (scenario.failed == 0 || of == nullptr) {
      continue;
    }
    double const margin = smallest_margin_if_held(*of, plants, scenario, derived, options);
    if (margin >= 0) {
      losses.push_back({.name = scenario.name, .derived = margin, .entered = scenario.worst.margin});
    }
  }
  auto const drawn = std::span(plants).first(options.draws);
  auto const compare = [&](PlanMargin const& before, PlanMargin const& after) {
    if (before.value && after.value && *before.value >= 0 && *after.value < 0) {
      losses.push_back({before.key, *before.value, *after.value, true, before.dimension});
    }
  };
  compare(false_stop_margin(drawn, derived, options.logic, options.units),
          false_stop_margin(drawn, entered, options.logic, options.units));
  compare(harm_margin(drawn, derived, options.logic, options.units),
          harm_margin(drawn, entered, options.logic, options.units));
  compare(sleep_margin(drawn, derived, options.logic, options.units),
          sleep_margin(drawn, entered, options.logic, options.units));
  return losses;
}

}  // namespace wellproof
