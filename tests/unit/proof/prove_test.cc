#include "proof/prove.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "settings/derive.h"
#include "unit/simulate/plain_site.h"

namespace wellproof {
namespace {

TEST(Hazards, HaveNamesOfTheirOwnAndSayWhatHappens) {
  std::set<std::string_view> names;
  for (auto const& one : hazards()) {
    EXPECT_TRUE(names.insert(one.name).second) << one.name;
    EXPECT_FALSE(one.title.empty());
    EXPECT_FALSE(one.says.empty());
    EXPECT_EQ(hazard(one.name), &one);
  }
  EXPECT_GE(names.size(), 26U);
  EXPECT_EQ(hazard("no_such_day"), nullptr);
}

TEST(Hazards, WriteScriptsInOrderAndCriteriaThatLookAtWindowsThatExist) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  for (auto const& one : hazards()) {
    auto const trial = one.make(plant, settings);
    EXPECT_EQ(trial.scenario.name, one.name);
    EXPECT_FALSE(trial.criteria.empty());
    for (std::size_t i = 1; i < trial.scenario.script.size(); ++i) {
      EXPECT_GE(trial.scenario.script[i].time_s, trial.scenario.script[i - 1].time_s) << one.name;
    }
    for (auto const& window : trial.windows) {
      EXPECT_LT(window.from_s, window.to_s) << one.name;
      EXPECT_LE(window.to_s, trial.scenario.duration_s + 1e-9) << one.name;
    }
    for (auto const& criterion : trial.criteria) {
      EXPECT_LE(criterion.window, trial.windows.size()) << one.name;
      EXPECT_GT(criterion.scale, 0) << one.name << ": " << criterion.says;
      EXPECT_FALSE(criterion.says.empty());
      EXPECT_FALSE(criterion.source.empty()) << one.name << ": " << criterion.says;
    }
  }
}

TEST(Hazards, NobodyInAHouseholdsFortnightDrawsForLongerThanWasStated) {
  auto plant = plain_plant();
  auto const settings = plain_settings(plant);
  // So long a tap stays as it is: no longer than one use lasts, however many there are at once.
  auto const longest_draw_s = [&](double longest_run_s) {
    plant.site.demand.longest_run_s = longest_run_s;
    auto const script = hazard("household_fortnight")->make(plant, settings).scenario.script;
    double longest_s = 0;
    for (std::size_t i = 0; i + 1 < script.size(); ++i) {
      longest_s = std::max(longest_s, script[i].value > 0 ? script[i + 1].time_s - script[i].time_s : 0.0);
    }
    return longest_s;
  };
  EXPECT_GT(longest_draw_s(7200), 61);
  EXPECT_LE(longest_draw_s(60), 61);
}

Outcome outcome_of(char const* name, Plant const& plant, Settings const& settings) {
  auto const trial = hazard(name)->make(plant, settings);
  RunOptions options;
  options.windows = trial.windows;
  return judge_all(run(plant, settings, trial.scenario, options), trial.criteria);
}

TEST(Proof, GuardsThatAreOffLetThePumpRunDry) {
  auto const plant = plain_plant();
  auto settings = plain_settings(plant);
  EXPECT_TRUE(outcome_of("water_lost", plant, settings).passed);
  settings.dry_run_amps_below_a = 0;
  settings.closed_amps_below_a = 0;
  EXPECT_FALSE(outcome_of("water_lost", plant, settings).passed);
}

TEST(Proof, ASleepSpeedBelowTheZeroFlowSpeedNeverSleepsUnderALeak) {
  auto site = plain_site();
  site.demand.leak_m3_s = 0.1 * gpm_m3_s;
  site.tank.volume_m3 = 0.017;  // a small tank: what the last tap left over is gone soon
  auto const plant = build(site);
  auto settings = plain_settings(plant);
  EXPECT_TRUE(outcome_of("quiet_house_with_leak", plant, settings).passed);
  settings.sleep_speed_below_hz -= 2;
  EXPECT_FALSE(outcome_of("quiet_house_with_leak", plant, settings).passed);
}

TEST(Proof, AnAmpsThresholdAboveOrdinaryWorkStopsForNothing) {
  auto const plant = plain_plant();
  auto settings = plain_settings(plant);
  settings.speed_ceiling_hz = 47;  // at its ceiling under the peak, the pressure a little lost
  settings.dry_run_amps_below_a = 0;
  auto const stops = [&](double closed_below_a) {
    settings.closed_amps_below_a = closed_below_a;
    auto const trial = hazard("peak_at_low_water")->make(plant, settings);
    auto const trace = run(plant, settings, trial.scenario);
    return has_stop(trace, StopCause::closed_discharge);
  };
  EXPECT_FALSE(stops(0.5 * settings.motor_current_limit_a));
  EXPECT_TRUE(stops(0.98 * settings.motor_current_limit_a));
}

TEST(Proof, ARunTimeLimitBelowTheLongestRunStopsTheIrrigation) {
  auto const plant = plain_plant();
  auto settings = plain_settings(plant);
  settings.long_run_limit_s = 0.5 * plant.site.demand.longest_run_s;
  EXPECT_FALSE(outcome_of("long_irrigation", plant, settings).passed);
}

TEST(FailureUpper95, IsTheRuleOfThreeForNoFailures) {
  for (std::uint32_t const runs : {16U, 128U, 1000U}) {
    EXPECT_NEAR(failure_upper95(0, runs), 1 - std::pow(0.05, 1.0 / runs), 1e-12);
  }
  EXPECT_EQ(failure_upper95(7, 7), 1);
}

TEST(FailureUpper95, GrowsWithFailuresAndFallsWithRuns) {
  for (std::uint32_t failed = 1; failed < 30; ++failed) {
    EXPECT_GT(failure_upper95(failed, 30), failure_upper95(failed - 1, 30));
    EXPECT_LT(failure_upper95(failed, 60), failure_upper95(failed, 30));
  }
}

}  // namespace
}  // namespace wellproof
