// Who computes the bands of a visit, or the worlds of causes, does not show in them.
#include <vector>

#include <gtest/gtest.h>

#include "explain/fault.h"
#include "explain/world.h"
#include "unit/settings/settings_sites.h"
#include "visit/visit.h"

namespace wellproof {
namespace {

/// A site, draws of it and the settings derived for them.
struct Standing {
  Site site = site_of(SiteText{});
  std::vector<Plant> plants = draw_plants(site, 1, 16);
  Settings settings = derive(site, plants, UnitSystem::us).settings;
};

TEST(Threads, DoNotShowInTheBandsOfAVisit) {
  Standing const one;
  VisitOptions options;
  options.draws = 16;
  auto const alone = acceptance_tests(one.site, one.settings, options);
  options.threads = 3;
  auto const crew = acceptance_tests(one.site, one.settings, options);
  ASSERT_FALSE(alone.tests.empty());
  ASSERT_EQ(alone.tests.size(), crew.tests.size());
  for (std::size_t t = 0; t < alone.tests.size(); ++t) {
    ASSERT_EQ(alone.tests[t].readings.size(), crew.tests[t].readings.size());
    for (std::size_t r = 0; r < alone.tests[t].readings.size(); ++r) {
      auto const& band = alone.tests[t].readings[r];
      auto const& other = crew.tests[t].readings[r];
      EXPECT_EQ(band.key, other.key);
      EXPECT_EQ(band.least, other.least) << band.key;
      EXPECT_EQ(band.most, other.most) << band.key;
    }
  }
}

TEST(Threads, DoNotShowInTheWorldsOfCauses) {
  Standing const site;
  WorldOptions options;
  options.draws = 2;
  std::vector<std::size_t> const causes{fault_place("valve_shut"), fault_place("line_burst"), faults().size()};
  std::vector<World> one;
  std::vector<World> three;
  options.threads = 1;
  add_worlds(one, site.plants, site.settings, options, causes, 0);
  options.threads = 3;
  add_worlds(three, site.plants, site.settings, options, causes, 0);
  ASSERT_EQ(one.size(), 6U);
  ASSERT_EQ(one.size(), three.size());
  for (std::size_t i = 0; i < one.size(); ++i) {
    EXPECT_EQ(one[i].shows, three[i].shows);
    EXPECT_EQ(one[i].stops.size(), three[i].stops.size());
  }
}

}  // namespace
}  // namespace wellproof
