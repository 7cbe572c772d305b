// What is derived from a site's physics is never worse than what people commonly enter by the motor's power alone, on
// the smallest margin over all scenarios and draws. WP_SITES=200 in the environment looks at so many sites instead of a
// few, from WP_FIRST on, and WP_SAY=1 prints each.
#include <algorithm>
#include <cstdlib>
#include <string>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "law/sized_site.h"
#include "proof/prove.h"
#include "proof/search.h"
#include "settings/common_practice.h"
#include "settings/derive.h"
#include "site/read.h"

namespace wellproof {
namespace {

int from_environment(char const* name, int otherwise) {
  char const* text = std::getenv(name);
  return text == nullptr ? otherwise : std::max(std::atoi(text), 0);
}

ScenarioProof const& tightest(Proof const& proof) {
  return *std::min_element(
      proof.scenarios.begin(), proof.scenarios.end(),
      [](ScenarioProof const& a, ScenarioProof const& b) { return a.worst.margin < b.worst.margin; });
}

TEST(CommonPracticeLaw, NeverBeatsWhatIsDerived) {
  int const sites = from_environment("WP_SITES", 3);
  int const first = from_environment("WP_FIRST", 0);
  bool const say = from_environment("WP_SAY", 0) > 0;
  ProveOptions options;
  options.draws = 8;
  options.insight = false;
  for (int k = first; k < first + sites; ++k) {
    auto const read = read_site(sized_site_text(5000 + static_cast<std::uint64_t>(k)), "sized.toml");
    ASSERT_TRUE(read) << k << ": " << (read ? "" : read.error().front().found);
    auto const plants = draw_plants(read->site, options.seed, 32);
    auto const derived = derive(read->site, plants, UnitSystem::us);
    auto const ours = prove(read->site, plants, derived.settings, options);
    auto const common = prove(read->site, plants, common_practice(plants.front()), options);
    if (say) {
      auto const& a = tightest(ours);
      auto const& b = tightest(common);
      fmt::print("{:4} {:7.3f} {:24} {:7.3f} {:24}{}\n", k, a.worst.margin, a.name, b.worst.margin, b.name,
                 a.worst.margin < b.worst.margin ? " WORSE" : "");
    }
    EXPECT_GE(smallest_margin(ours), smallest_margin(common)) << "site " << k;
  }
}

}  // namespace
}  // namespace wellproof
