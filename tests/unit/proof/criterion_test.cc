#include "proof/criterion.h"

#include <gtest/gtest.h>

namespace wellproof {
namespace {

using Kind = RegulatorEvent::Kind;

TraceEvent event(double time_s, Kind kind, std::optional<StopCause> cause = std::nullopt) {
  return {time_s, {kind, Mode::holding, cause}};
}

Trace trace_of(std::vector<TraceEvent> events) {
  Trace trace;
  trace.tallies.resize(1);
  trace.tallies[0].window = {.from_s = -1, .to_s = 1000};
  trace.events = std::move(events);
  return trace;
}

TEST(Judge, AStopOfTheRightCauseInTimePasses) {
  Criterion const c{
      .measure = Measure::stopped_within, .limit = 60, .scale = 60, .since_s = 100, .causes = {StopCause::dry_run}};
  auto const right = judge(trace_of({event(130, Kind::stopped, StopCause::dry_run)}), c);
  EXPECT_TRUE(right.passed);
  EXPECT_DOUBLE_EQ(right.value, 30);
  EXPECT_DOUBLE_EQ(right.margin, 0.5);
  EXPECT_FALSE(judge(trace_of({event(130, Kind::stopped, StopCause::long_run)}), c).passed);
  EXPECT_FALSE(judge(trace_of({event(90, Kind::stopped, StopCause::dry_run)}), c).passed);
  EXPECT_FALSE(judge(trace_of({event(170, Kind::stopped, StopCause::dry_run)}), c).passed);
}

TEST(Judge, WhatNeverHappenedFailsHoweverLongTheLimit) {
  Criterion const c{.measure = Measure::stopped_within, .limit = 1e9, .scale = 1e9};
  EXPECT_FALSE(judge(trace_of({}), c).passed);
}

TEST(Judge, APumpThatSleepsAlreadySleepsInNoTime) {
  Criterion const c{.measure = Measure::asleep_within, .limit = 120, .scale = 120, .since_s = 500};
  EXPECT_DOUBLE_EQ(judge(trace_of({event(450, Kind::slept)}), c).value, 0);
  EXPECT_TRUE(judge(trace_of({event(450, Kind::slept)}), c).passed);
  EXPECT_FALSE(judge(trace_of({event(450, Kind::slept), event(480, Kind::woke)}), c).passed);
  EXPECT_DOUBLE_EQ(judge(trace_of({event(480, Kind::woke), event(560, Kind::slept)}), c).value, 60);
  auto asleep = trace_of({});
  asleep.asleep_at_start = true;
  EXPECT_TRUE(judge(asleep, c).passed);
}

TEST(Judge, OneStopIsOneTooMany) {
  Criterion const c{.measure = Measure::no_stop};
  EXPECT_TRUE(judge(trace_of({}), c).passed);
  auto const one = judge(trace_of({event(5, Kind::stopped, StopCause::long_run)}), c);
  EXPECT_FALSE(one.passed);
  EXPECT_LT(one.margin, 0);
}

TEST(Judge, LeastAndMostCountTheirOwnWay) {
  auto trace = trace_of({});
  trace.tallies[0].least_tee_pressure_pa = 300e3;
  trace.tallies[0].most_tee_pressure_pa = 400e3;
  EXPECT_NEAR(judge(trace, {.measure = Measure::least_tee_pressure, .limit = 200e3, .scale = 200e3}).margin, 0.5,
              1e-12);
  EXPECT_FALSE(judge(trace, {.measure = Measure::least_tee_pressure, .limit = 301e3, .scale = 1e3}).passed);
  EXPECT_NEAR(judge(trace, {.measure = Measure::most_tee_pressure, .limit = 800e3, .scale = 800e3}).margin, 0.5, 1e-12);
  EXPECT_FALSE(judge(trace, {.measure = Measure::most_tee_pressure, .limit = 399e3, .scale = 1e3}).passed);
}

TEST(Judge, EachWindowIsJudgedByItself) {
  auto trace = trace_of({});
  trace.tallies.push_back({.window = {.from_s = 10, .to_s = 20}});
  trace.tallies[0].turning_shut_s = 50;
  trace.tallies[1].turning_shut_s = 5;
  EXPECT_DOUBLE_EQ(judge(trace, {.measure = Measure::turning_shut, .window = 1, .limit = 10, .scale = 10}).value, 5);
  EXPECT_FALSE(judge(trace, {.measure = Measure::turning_shut, .window = 0, .limit = 10, .scale = 10}).passed);
}

}  // namespace
}  // namespace wellproof
