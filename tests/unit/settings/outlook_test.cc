// What the owner may draw.
#include "settings/outlook.h"

#include <gtest/gtest.h>

#include <cmath>

#include "settings/derive.h"
#include "unit/settings/settings_sites.h"

namespace wellproof {
namespace {

constexpr double gpm_m3_s = 6.30902e-5;
constexpr double day_s = 86400;

DrawnSite house() {
  DrawnSite site;
  site.demand.daily_use_m3 = 0.6;
  site.demand.peak_draw_m3_s = 6e-4;
  return site;
}

double water_m3(std::vector<DayDraw> const& day) {
  double sum = 0;
  for (auto const& draw : day) {
    sum += draw.flow_m3_s * (draw.to_s - draw.from_s);
  }
  return sum;
}

TEST(OwnDay, HoldsTheHousesWaterAndTheZones) {
  auto site = house();
  EXPECT_NEAR(water_m3(own_day(site)), 0.6, 1e-12);
  site.demand.zones.resize(2);
  site.demand.zones[0].flow_m3_s = 3e-4;
  site.demand.zones[0].time_s = 3600;
  site.demand.zones[1].flow_m3_s = 2e-4;
  site.demand.zones[1].time_s = 22 * 3600;  // past midnight
  EXPECT_NEAR(water_m3(own_day(site)), 0.6 + 0.3 * 3.6 + 0.2 * 79.2, 1e-9);
}

TEST(OwnDay, GoesFromMidnightToMidnightWithoutOverlap) {
  auto site = house();
  site.demand.zones.resize(1);
  site.demand.zones[0].flow_m3_s = 3e-4;
  site.demand.zones[0].time_s = 21 * 3600;
  double before_s = 0;
  double most_m3_s = 0;
  for (auto const& draw : own_day(site)) {
    EXPECT_GE(draw.from_s, before_s);
    EXPECT_GT(draw.to_s, draw.from_s);
    before_s = draw.to_s;
    most_m3_s = std::max(most_m3_s, draw.flow_m3_s);
  }
  EXPECT_LE(before_s, day_s);
  EXPECT_GT(most_m3_s, site.demand.peak_draw_m3_s);
}

TEST(Outlook, AWellThatIsStrongNeedsNothing) {
  auto const plants = draw_plants(site_of({}), 1, 16);
  auto const out = outlook(plants);
  EXPECT_EQ(out.draws, 16U);
  EXPECT_EQ(out.day_runs_dry, 0U);
  EXPECT_EQ(out.overdrawn, 0U);
  EXPECT_EQ(out.storage_m3.high, 0);
  EXPECT_EQ(out.day.size(), 145U);
  EXPECT_GT(out.safe_yield_m3_s.low * day_s, out.day_use_m3.high);
  for (auto const& level : out.day) {
    EXPECT_LE(level.depth_m.low, level.depth_m.middle);
    EXPECT_LE(level.depth_m.middle, level.depth_m.high);
    EXPECT_LE(level.depth_m.high, out.deepest_m.high + 1e-9);
  }
}

Plant weak_plant(double share) {
  auto plant = draw_plants(site_of({}), 1, 1).front();
  auto const& site = plant.site;
  double const use_m3_s = site.demand.daily_use_m3 / day_s;
  double const wet_m = site.pump.setting_depth_m - site.pump.least_submergence_m;
  double const has_m3_s = plant.well.flow_for_level_m3_s(wet_m, 100 * day_s);
  // A formation in proportion, and a bore that holds little.
  plant.well.formation =
      Formation(plant.well.formation.transmissivity_m2_s() * share * use_m3_s / has_m3_s,
                site.well.storativity * share * use_m3_s / has_m3_s, site.well.casing_diameter_m / 2);
  plant.well.quadratic_loss_s2_m5 = 0;
  plant.well.bore_area_m2 = 1e-3;
  return plant;
}

// A well that gives twice what is used, evenly, cannot serve the peaks by itself. A tank fed evenly has to hold what
// the busy hours take ahead of the feed: less than the house's day, more than one burst.
TEST(Outlook, AWellThatGivesEnoughButSlowlyWantsATank) {
  auto const plant = weak_plant(2);
  auto const out = outlook({plant});
  EXPECT_EQ(out.day_runs_dry, 1U);
  EXPECT_EQ(out.overdrawn, 0U);
  EXPECT_GT(out.storage_m3.middle, plant.site.demand.daily_use_m3 / 6);
  EXPECT_LT(out.storage_m3.middle, plant.site.demand.daily_use_m3 / 2);
}

TEST(Outlook, AWellThatGivesLessThanIsUsedIsHelpedByNoTank) {
  auto const out = outlook({weak_plant(0.5)});
  EXPECT_EQ(out.overdrawn, 1U);
  EXPECT_EQ(out.storage_m3.high, 0);
  EXPECT_NEAR(out.safe_yield_m3_s.middle * day_s, 0.5 * out.day_use_m3.middle, 0.1 * out.day_use_m3.middle);
}

TEST(Outlook, TheLongestRunEndsWhereTheCasingAndTheFormationEnd) {
  auto const plant = weak_plant(0.5);
  auto const out = outlook({plant});
  EXPECT_EQ(out.long_run_too_long, 1U);
  auto bore = bore_at_rest(plant.well);
  pump_evenly(plant.well, bore, out.long_run_flow_m3_s, out.long_run_s.middle);
  EXPECT_NEAR(bore.level_depth_m, plant.site.pump.setting_depth_m - plant.site.pump.least_submergence_m, 0.05);
  EXPECT_GT(out.long_run_flow_m3_s, gpm_m3_s);
}

TEST(Quantiles, AreFiveFiftyAndNinetyFivePercent) {
  std::vector<double> values;
  for (int i = 100; i >= 1; --i) {
    values.push_back(i);
  }
  auto const found = quantiles(values);
  EXPECT_EQ(found.low, 5);
  EXPECT_EQ(found.middle, 50);
  EXPECT_EQ(found.high, 95);
  EXPECT_EQ(quantiles({3}).low, 3);
}

}  // namespace
}  // namespace wellproof
