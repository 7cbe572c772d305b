#include "proof/unseen_margins.h"

#include <gtest/gtest.h>

#include "settings/derive.h"
#include "unit/proof/open_site.h"

namespace wellproof {
namespace {

TEST(UnseenMargins, AreKeptByTheStartAndNotByWhatSpendsThem) {
  auto const site = open_site();
  auto const plants = draw_plants(site, 1, 8);
  auto const start = derive(site, plants, UnitSystem::us).settings;
  ProveOptions options;
  options.draws = 8;
  options.insight = false;
  auto const proof = prove(site, plants, start, options);
  UnseenMargins unseen(plants, {start, {}}, proof, options);
  EXPECT_TRUE(unseen.kept_by({start, {}}));
  EXPECT_TRUE(unseen.kept_by(proof));
  EXPECT_FALSE(unseen.add_nearest(proof)) << "those are known";

  auto strong = start;
  strong.regulator_gain_hz_pa *= 20;
  strong.regulator_reset_time_s /= 20;
  EXPECT_FALSE(unseen.kept_by({strong, {}})) << "it would swing";

  auto late = start;
  late.dry_run_delay_s += 60;
  EXPECT_FALSE(unseen.kept_by({late, {}})) << "a bearing is harmed";

  auto hasty = start;
  hasty.closed_amps_below_a += 0.5;
  EXPECT_FALSE(unseen.kept_by({hasty, {}})) << "it would stop for nothing";
  EXPECT_FALSE(unseen.kept_by(prove(site, plants, hasty, options)));

  auto sleepless = start;
  sleepless.sleep_speed_below_hz -= 1;
  EXPECT_FALSE(unseen.kept_by({sleepless, {}}));
}

}  // namespace
}  // namespace wellproof
