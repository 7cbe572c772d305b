// What a proof says each unknown explains of the smallest margin, read off its own runs, against Sobol's first-order
// indices from runs made for them (Saltelli 2010), on the example site.
#include <algorithm>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "folders.h"
#include "proof/insight.h"
#include "proof/sensitivity.h"
#include "settings/derive.h"
#include "site/draw.h"
#include "site/read.h"

namespace wellproof {
namespace {

constexpr std::uint64_t seed = 1;

Outcome outcome_of(Hazard const& hazard, Plant const& plant, Settings const& settings) {
  auto const trial = hazard.make(plant, settings);
  RunOptions options;
  options.windows = trial.windows;
  options.noise_seed = noise_seed(seed, 0);
  return judge_all(run(plant, settings, trial.scenario, options), trial.criteria);
}

TEST(SensitivityLaw, SharesFromAProofsOwnRunsAgreeWithSobolsFirstOrder) {
  constexpr std::uint32_t runs = 256;
  constexpr std::uint32_t base = 96;
  auto const text = example_text("shallow_strong.toml");
  auto const read = read_site(text, "shallow_strong.toml");
  ASSERT_TRUE(read);
  auto const& site = read->site;
  auto const settings = derive(site, draw_plants(site, seed, 64), UnitSystem::us).settings;

  // The scenarios that have the smallest margin of a draw now and then; all others would only cost time.
  std::vector<Hazard const*> binding;
  for (auto const& hazard : hazards()) {
    for (char const* const name : {"burst_far", "clogged_intake"}) {
      if (hazard.name == name) {
        binding.push_back(&hazard);
      }
    }
  }
  auto const smallest = [&](std::span<double const> point) {
    auto const plant = build(draw(site, point));
    double least = 1;
    for (auto const* const hazard : binding) {
      least = std::min(least, outcome_of(*hazard, plant, settings).margin);
    }
    return std::max(least, -1.0);
  };

  std::size_t const count = unknowns(site);
  std::vector<std::vector<double>> coordinates(count);
  std::vector<double> margins;
  for (std::uint32_t k = 0; k < runs; ++k) {
    auto const point = sequence_point(seed, k, count);
    margins.push_back(smallest(point));
    for (std::size_t i = 0; i < count; ++i) {
      coordinates[i].push_back(point[i]);
    }
  }
  auto const sobol = sobol_indices(smallest, count, base, seed + 1);
  auto const keys = unknown_keys(site);
  auto const leading = leading_unknowns(coordinates, margins);
  ASSERT_GE(leading.size(), 1U);
  std::vector<double> shares(count, 0);
  for (auto const& one : leading) {
    shares[one.unknown] = one.trend.share;
  }
  auto const theirs = std::max_element(sobol.first.begin(), sobol.first.end()) - sobol.first.begin();
  EXPECT_EQ(keys[leading.front().unknown], keys[static_cast<std::size_t>(theirs)]);
  EXPECT_GT(sobol.first[leading.front().unknown], 0.5) << "there is something to tell";
  for (std::size_t i = 0; i < count; ++i) {
    EXPECT_NEAR(shares[i], sobol.first[i], 0.08) << keys[i];
  }
}

}  // namespace
}  // namespace wellproof
