#include "proof/insight.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "proof/measuring.h"
#include "proof/rare.h"
#include "proof/sensitivity.h"
#include "site/draw.h"
#include "site/fields.h"

namespace wellproof {
namespace {

constexpr std::size_t least_runs = 32;
constexpr std::size_t most_drivers = 3;
constexpr std::size_t most_worth = 8;
constexpr double quarter = 0.25;

struct Unknown {
  std::string key;
  std::string meaning;
  Dimension dimension = Dimension::none;
  Range range;
};

std::vector<Unknown> unknowns_with_ranges(Site const& site) {
  std::vector<Unknown> found;
  each_field(site, [&](Field const& field, Range const& range) {
    if (!is_fixed(range)) {
      found.push_back({field.key, std::string(field.meaning), field.dimension, range});
    }
  });
  return found;
}

double held(double margin) {
  return std::clamp(margin, -1.0, 1.0);
}

/// Coordinates of each unknown over the draws.
std::vector<std::vector<double>> coordinates_of(std::uint64_t seed, std::size_t draws, std::size_t unknowns) {
  std::vector<std::vector<double>> coordinates(unknowns);
  for (std::size_t k = 0; k < draws; ++k) {
    auto const point = sequence_point(seed, static_cast<std::uint32_t>(k), unknowns);
    for (std::size_t i = 0; i < unknowns; ++i) {
      coordinates[i].push_back(point[i]);
    }
  }
  return coordinates;
}

/// How much of the unit interval an instrument leaves open: its accuracy against the middle half of the range.
double width_left(Measuring const& by, Range const& range) {
  double const half = quantile(range, 1 - quarter) - quantile(range, quarter);
  double const accuracy = by.of_value ? by.accuracy * std::abs(middle(range)) : by.accuracy;
  return half > 0 ? std::min(accuracy / half, 1.0) : 1.0;  // 2·accuracy over half/0.5
}

std::size_t commonest(std::vector<std::size_t> const& hazard_of, std::size_t hazards_count) {
  std::vector<std::size_t> counts(hazards_count, 0);
  for (auto const h : hazard_of) {
    ++counts[h];
  }
  return static_cast<std::size_t>(std::max_element(counts.begin(), counts.end()) - counts.begin());
}

}  // namespace

SmallestMargins smallest_margins(std::vector<std::vector<Outcome>> const& outcomes) {
  SmallestMargins smallest;
  std::size_t draws = outcomes.empty() ? 0 : outcomes.front().size();
  for (auto const& of : outcomes) {
    draws = std::min(draws, of.size());
  }
  for (std::size_t k = 0; k < draws; ++k) {
    std::size_t at = 0;
    for (std::size_t h = 1; h < outcomes.size(); ++h) {
      at = outcomes[h][k].margin < outcomes[at][k].margin ? h : at;
    }
    smallest.margin.push_back(held(outcomes[at][k].margin));
    smallest.hazard.push_back(at);
  }
  return smallest;
}

std::vector<WorthMeasuring> worth_measuring(Site const& site, std::uint64_t seed,
                                            std::vector<std::vector<Outcome>> const& outcomes) {
  auto const smallest = smallest_margins(outcomes);
  auto const names = unknowns_with_ranges(site);
  std::vector<WorthMeasuring> worth;
  if (smallest.margin.size() < least_runs) {
    return worth;
  }
  auto const coordinates = coordinates_of(seed, smallest.margin.size(), names.size());
  double const before = lower_quantile(smallest.margin, lower_bound_share);
  std::string const decides(hazards()[commonest(smallest.hazard, outcomes.size())].name);
  for (auto const& [i, curve] : leading_unknowns(coordinates, smallest.margin)) {
    WorthMeasuring one{.key = names[i].key,
                       .meaning = names[i].meaning,
                       .share = curve.share,
                       .lower_before = before,
                       .lower_after = before,
                       .minutes = 0,
                       .how = {},
                       .scenario = decides};
    if (auto const by = measuring(names[i].key)) {
      one.how = by->how;
      one.minutes = by->minutes;
      one.lower_after = lower_bound_measured(curve, coordinates[i], smallest.margin, width_left(*by, names[i].range),
                                             lower_bound_share);
    }
    worth.push_back(std::move(one));
  }
  if (worth.size() > most_worth) {
    worth.resize(most_worth);
  }
  return worth;
}

std::vector<MarginDriver> margin_drivers(Site const& site, std::uint64_t seed, std::vector<Outcome> const& outcomes) {
  std::vector<MarginDriver> drivers;
  if (outcomes.size() < least_runs) {
    return drivers;
  }
  auto const names = unknown_keys(site);
  std::vector<double> margins;
  margins.reserve(outcomes.size());
  for (auto const& outcome : outcomes) {
    margins.push_back(held(outcome.margin));
  }
  auto const coordinates = coordinates_of(seed, margins.size(), names.size());
  for (auto const& leading : leading_unknowns(coordinates, margins)) {
    drivers.push_back({names[leading.unknown], leading.trend.share});
  }
  if (drivers.size() > most_drivers) {
    drivers.resize(most_drivers);
  }
  return drivers;
}

std::optional<FirstFailure> first_failure_of(Site const& site, Hazard const& hazard, Settings const& settings,
                                             std::vector<Outcome> const& outcomes, ProveOptions const& options) {
  if (outcomes.size() < least_runs || unknowns(site) == 0) {
    return std::nullopt;
  }
  std::vector<std::vector<double>> points;
  std::vector<double> margins;
  for (auto const& outcome : outcomes) {
    points.push_back(sequence_point(options.seed, outcome.draw, unknowns(site)));
    margins.push_back(held(outcome.margin));
  }
  auto const found = rare_failure(
      [&](std::span<double const> point) {
        auto const plant = build(draw(site, point));
        auto const trial = hazard.make(plant, settings);
        RunOptions run_options;
        run_options.logic = options.logic;
        run_options.windows = trial.windows;
        run_options.noise_seed = noise_seed(options.seed, 0);
        auto const outcome = judge_all(run(plant, settings, trial.scenario, run_options), trial.criteria);
        return outcome.passed ? std::max(outcome.margin, 0.0) : std::min(outcome.margin, -1e-9);
      },
      points, margins);
  if (!found) {
    return std::nullopt;
  }
  FirstFailure first{.spreads = found->spreads, .share = found->share, .says = {}};
  auto const names = unknowns_with_ranges(site);
  std::string at;
  for (std::size_t k = 0; k < std::min(most_drivers, found->leads.size()); ++k) {
    auto const& name = names[found->leads[k]];
    at +=
        fmt::format("{}{} {}", at.empty() ? "" : ", ", name.key,
                    write_quantity(quantile(name.range, found->point[found->leads[k]]), name.dimension, options.units));
  }
  first.says = fmt::format("first fails at {}: {:.1f} spreads from the middle, about 1 site in {:.0f}", at,
                           first.spreads, std::round(1 / first.share));
  return first;
}

}  // namespace wellproof
