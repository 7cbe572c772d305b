#include "proof/worst_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "site/draw.h"
#include "site/fields.h"

namespace wellproof {
namespace {

constexpr std::size_t told = 3;
constexpr double least_correlation = 0.2;

std::vector<double> ranks(std::vector<double> const& values) {
  std::vector<std::size_t> order(values.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return values[a] < values[b]; });
  std::vector<double> rank(values.size());
  for (std::size_t i = 0; i < order.size();) {
    std::size_t end = i;
    while (end < order.size() && values[order[end]] == values[order[i]]) {
      ++end;
    }
    for (std::size_t k = i; k < end; ++k) {
      rank[order[k]] = 0.5 * static_cast<double>(i + end - 1);
    }
    i = end;
  }
  return rank;
}

double correlation(std::vector<double> const& a, std::vector<double> const& b) {
  double const mean = 0.5 * static_cast<double>(a.size() - 1);
  double ab = 0;
  double aa = 0;
  double bb = 0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    ab += (a[i] - mean) * (b[i] - mean);
    aa += (a[i] - mean) * (a[i] - mean);
    bb += (b[i] - mean) * (b[i] - mean);
  }
  return aa > 0 && bb > 0 ? ab / std::sqrt(aa * bb) : 0;
}

struct Unknown {
  std::string key;
  Dimension dimension;
};

std::vector<Unknown> unknowns_of(Site const& site) {
  std::vector<Unknown> found;
  each_field(site, [&](Field const& field, Range const& range) {
    if (!is_fixed(range)) {
      found.push_back({field.key, field.dimension});
    }
  });
  return found;
}

std::string drawn_value(DrawnSite const& drawn, std::string const& key, UnitSystem units) {
  std::string value;
  each_field(drawn, [&](Field const& field, double number) {
    if (field.key == key) {
      value = write_quantity(number, field.dimension, units);
    }
  });
  return value;
}

std::string figures(Criterion const& c, Outcome const& worst, UnitSystem units) {
  if (worst.ending != Ending::finished) {
    return fmt::format("the run ended as {}", word(worst.ending));
  }
  auto const dimension = wellproof::dimension(c.measure);
  return fmt::format("{}: {} against {}", c.says, write_quantity(worst.value, dimension, units),
                     write_quantity(c.limit, dimension, units));
}

}  // namespace

std::string worst_words(Site const& site, std::uint64_t seed, std::vector<Outcome> const& outcomes,
                        Outcome const& worst, std::vector<Criterion> const& criteria, UnitSystem units) {
  auto says = fmt::format("draw {}: {}", worst.draw, figures(criteria[worst.criterion], worst, units));
  auto const names = unknowns_of(site);
  std::vector<double> margins;
  std::vector<std::vector<double>> coordinates(names.size());
  for (auto const& outcome : outcomes) {
    margins.push_back(outcome.margin);
    auto const point = sequence_point(seed, outcome.draw, names.size());
    for (std::size_t i = 0; i < names.size(); ++i) {
      coordinates[i].push_back(point[i]);
    }
  }
  auto const margin_ranks = ranks(margins);
  std::vector<std::pair<double, std::size_t>> strength;
  for (std::size_t i = 0; i < names.size(); ++i) {
    strength.emplace_back(-std::abs(correlation(ranks(coordinates[i]), margin_ranks)), i);
  }
  std::sort(strength.begin(), strength.end());
  auto const drawn = draw(site, seed, worst.draw);
  std::string with;
  for (std::size_t k = 0; k < std::min(told, strength.size()); ++k) {
    if (-strength[k].first >= least_correlation) {
      auto const& name = names[strength[k].second];
      with += fmt::format("{}{} {}", with.empty() ? " with " : ", ", name.key, drawn_value(drawn, name.key, units));
    }
  }
  return says + with;
}

}  // namespace wellproof
