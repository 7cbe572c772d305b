#include "explain/rank.h"

#include <numeric>

#include <gtest/gtest.h>

#include "unit/explain/worlds.h"

namespace wellproof {
namespace {

Settings const plain_settings = [] {
  Settings settings;
  settings.dry_run_rest_s = 3600;
  return settings;
}();

Evidence told(StopCause kind, int stops) {
  return evidence_of(history_of(kind, stops, 3600), nullptr, plain_settings);
}

double sum(Ranking const& ranking) {
  return std::accumulate(ranking.causes.begin(), ranking.causes.end(), 0.0,
                         [](double all, RankedCause const& cause) { return all + cause.posterior; });
}

TEST(rank, puts_first_what_makes_such_stops) {
  auto const worlds = worlds_of_three();
  Holding const holding(worlds);
  EXPECT_EQ(key_of(rank(worlds, holding, told(StopCause::sensor_lost, 5)).causes.front()), "sensor_wire");
  auto const dry = rank(worlds, holding, told(StopCause::dry_run, 5));
  EXPECT_LT(posterior_of(dry, "sensor_wire"), 0.05);
  EXPECT_NEAR(sum(dry), 1, 1e-12);
}

TEST(rank, lets_a_reading_separate_what_the_stops_do_not) {
  auto const worlds = worlds_of_three();
  Holding const holding(worlds);
  auto evidence = told(StopCause::dry_run, 5);
  evidence.shows = {{Show::half_current, 5.0, 0.1}};
  EXPECT_EQ(key_of(rank(worlds, holding, evidence).causes.front()), "level_fallen");
  evidence.shows = {{Show::half_current, 3.0, 0.1}};
  EXPECT_EQ(key_of(rank(worlds, holding, evidence).causes.front()), "yield_fallen");
}

TEST(rank, thinks_of_none_where_nothing_fits) {
  auto const worlds = worlds_of_three();
  Holding const holding(worlds);
  auto history = history_of(StopCause::outside_contact, 6, 70000);
  for (auto& stop : history.stops) {
    stop.time_of_day_s.reset();
  }
  auto const other = evidence_of(history, nullptr, plain_settings);
  EXPECT_EQ(key_of(rank(worlds, holding, other).causes.front()), none_key);
}

TEST(rank, follows_a_prior_that_is_said) {
  auto const worlds = worlds_of_three();
  Holding const holding(worlds);
  auto const evidence = told(StopCause::dry_run, 5);
  double const before = posterior_of(rank(worlds, holding, evidence), "level_fallen");
  auto const after = rank(worlds, holding, evidence, {{"level_fallen", 0.9}});
  EXPECT_GT(posterior_of(after, "level_fallen"), before);
  EXPECT_EQ(posterior_of(rank(worlds, holding, evidence, {{"level_fallen", 0}}), "level_fallen"), 0);
  EXPECT_NEAR(sum(after), 1, 1e-12);
}

TEST(rank, gives_the_prior_back_where_nothing_was_told) {
  auto const worlds = worlds_of_three();
  Holding const holding(worlds);
  auto const ranking = rank(worlds, holding, Evidence{});
  double const ratio = posterior_of(ranking, "yield_fallen") / posterior_of(ranking, "level_fallen");
  EXPECT_NEAR(ratio, faults()[fault_place("yield_fallen")].share / faults()[fault_place("level_fallen")].share, 1e-9);
}

TEST(rank, bears_one_stop_two_hundred_and_readings_that_contradict_each_other) {
  auto const worlds = worlds_of_three();
  Holding const holding(worlds);
  EXPECT_NEAR(sum(rank(worlds, holding, told(StopCause::dry_run, 1))), 1, 1e-9);
  EXPECT_NEAR(sum(rank(worlds, holding, told(StopCause::dry_run, 200))), 1, 1e-9);
  auto evidence = told(StopCause::dry_run, 5);
  evidence.shows = {{Show::half_current, 3.0, 0.05}, {Show::half_current, 30.0, 0.05}};
  auto const ranking = rank(worlds, holding, evidence);
  EXPECT_NEAR(sum(ranking), 1, 1e-9);
  for (auto const& cause : ranking.causes) {
    EXPECT_GE(cause.posterior, 0);
    EXPECT_GE(cause.posterior_error, 0);
  }
}

TEST(rank, shares_the_posterior_out_over_the_worlds) {
  auto const worlds = worlds_of_three();
  Holding const holding(worlds);
  auto const ranking = rank(worlds, holding, told(StopCause::dry_run, 3));
  double const all = std::accumulate(ranking.weights.begin(), ranking.weights.end(), 0.0);
  EXPECT_NEAR(all, 1 - posterior_of(ranking, none_key), 1e-9);
}

}  // namespace
}  // namespace wellproof
