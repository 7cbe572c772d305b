#include "visit/visit.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include <gtest/gtest.h>

#include "folders.h"
#include "settings/derive.h"
#include "site/read.h"
#include "visit/one_visit.h"

namespace wellproof {
namespace {

constexpr double psi_pa = 6894.757293168;

struct Made {
  Site site;
  Settings settings;
  Logic logic;
};

Made made(std::string const& name, bool on_switch = false) {
  auto text = example_text(name);
  if (on_switch) {
    auto const at = text.find("[site]\n");
    text.insert(at + 7, "control = \"pressure_switch\"\n");
  }
  auto const read = read_site(text, name, {{"deep_weak_curve.csv", example_text("deep_weak_curve.csv")}});
  EXPECT_TRUE(read) << name;
  Made one;
  one.site = read->site;
  one.settings = derive(one.site, draw_plants(one.site, 1, 32), UnitSystem::us).settings;
  one.logic.two_contact_switch = on_switch;
  return one;
}

VisitReading const* reading(Visit const& visit, std::string_view key) {
  for (auto const& test : visit.tests) {
    for (auto const& one : test.readings) {
      if (one.key == key) {
        return &one;
      }
    }
  }
  return nullptr;
}

TEST(band_place, holds_new_draws_by_the_share_that_order_statistics_give) {
  // Wilks 1941: from the least to the most of n draws lies (n − 1)/(n + 1) of what comes, on average.
  EXPECT_EQ(band_place(128, 0.98).from_end, 1U);
  EXPECT_NEAR(band_place(128, 0.98).inside_share, 127.0 / 129, 1e-12);
  EXPECT_EQ(band_place(199, 0.95).from_end, 5U);
  EXPECT_NEAR(band_place(199, 0.95).inside_share, 0.95, 1e-12);
  EXPECT_EQ(band_place(8, 0.98).from_end, 1U);
  EXPECT_NEAR(band_place(8, 0.98).inside_share, 7.0 / 9, 1e-12);
}

// The claim of the bands: of new draws of the site as many read inside as is stated. Bands from several seeds, each
// held against draws of another, so that what one band has by luck is averaged out. WP_VISIT_DRAWS=400 asks for more.
void expect_stated_rate(Made const& one) {
  auto const* const asked = std::getenv("WP_VISIT_DRAWS");  // NOLINT(concurrency-mt-unsafe): before any thread
  std::uint32_t const draws = asked == nullptr ? 24 : static_cast<std::uint32_t>(std::atoi(asked));
  constexpr std::uint64_t seeds = 4;
  VisitOptions options;
  options.logic = one.logic;
  options.draws = draws;
  options.inside_share = 0.9;
  double stated = 0;
  std::size_t inside = 0;
  std::size_t all = 0;
  std::size_t all_inside = 0;
  double all_stated = 0;
  for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
    options.seed = seed;
    auto const visit = acceptance_tests(one.site, one.settings, options);
    stated += visit.inside_share / seeds;
    all_stated += visit.all_inside_share / seeds;
    EXPECT_LT(visit.inside_at_least, visit.inside_share);
    auto const& slots = visit_slots(visit.plan.two_contacts);
    for (std::uint32_t draw = 0; draw < draws; ++draw) {
      auto const read = visit_readings(visit.plan, one.site, one.settings, one.logic, 1000 + seed, draw);
      bool each = true;
      for (std::size_t i = 0; i < slots.size(); ++i) {
        auto const* const band = reading(visit, slots[i].key);
        if (band == nullptr || slots[i].no_least || !std::isfinite(read[i])) {
          continue;
        }
        bool const holds = read[i] >= band->least && read[i] <= band->most;
        ++all;
        inside += holds ? 1 : 0;
        each = each && holds;
      }
      all_inside += each ? 1 : 0;
    }
  }
  ASSERT_GT(all, 700U);
  double const rate = static_cast<double>(inside) / static_cast<double>(all);
  // Readings of one draw hang together, so that only the draws count as independent, and the bands err by as much
  // again: three standard deviations of a binomial share over all new draws, twice over.
  double const error = 3 * std::sqrt(2 * stated * (1 - stated) / (seeds * draws));
  EXPECT_NEAR(rate, stated, error);
  ::testing::Test::RecordProperty("rate", std::to_string(rate));
  ::testing::Test::RecordProperty("stated", std::to_string(stated));
  double const all_rate = static_cast<double>(all_inside) / static_cast<double>(seeds * draws);
  EXPECT_NEAR(all_rate, all_stated, 3 * std::sqrt(2 * 0.25 / (seeds * draws)) + 0.05);
}

TEST(visit_bands, hold_new_draws_of_a_shallow_site_at_the_stated_rate) {
  expect_stated_rate(made("shallow_strong.toml"));
}

TEST(visit_bands, hold_new_draws_of_a_deep_site_at_the_stated_rate) {
  expect_stated_rate(made("deep_weak.toml"));
}

TEST(visit_bands, hold_new_draws_under_a_pressure_switch_at_the_stated_rate) {
  expect_stated_rate(made("shallow_strong.toml", true));
}

TEST(acceptance_tests, hold_the_pressure_that_is_set_and_wake_where_it_is_set) {
  auto const one = made("shallow_strong.toml");
  VisitOptions options;
  options.draws = 32;
  auto const visit = acceptance_tests(one.site, one.settings, options);
  auto const* const held = reading(visit, "full_draw.drive_pressure");
  ASSERT_NE(held, nullptr);
  EXPECT_NEAR(held->middle, one.settings.pressure_target_pa, 0.5 * psi_pa);
  auto const* const woke = reading(visit, "sleep_wake.wake_pressure");
  ASSERT_NE(woke, nullptr);
  EXPECT_NEAR(woke->middle, one.settings.pressure_target_pa - one.settings.pressure_wake_drop_pa, 1 * psi_pa);
  // It sleeps after the hold and the ramp down, and what the guards are given is their delay and the way to it.
  auto const* const sleeps = reading(visit, "sleep_wake.sleep_time");
  ASSERT_NE(sleeps, nullptr);
  EXPECT_GT(sleeps->least, one.settings.sleep_hold_s - 3);
  auto const* const stops = reading(visit, "low_water.stop_time");
  ASSERT_NE(stops, nullptr);
  EXPECT_GT(stops->least, one.settings.dry_run_delay_s - 1.5);
  EXPECT_LT(stops->most, one.settings.dry_run_delay_s + 8);
  // The test of the guard is no dry run: the pump takes more than the derived threshold all the while.
  EXPECT_GT(reading(visit, "full_draw.current")->least, one.settings.dry_run_amps_below_a);
}

TEST(acceptance_tests, find_a_leak_ten_times_the_site_s_outside_the_band) {
  auto const one = made("shallow_strong.toml");
  VisitOptions options;
  options.draws = 32;
  auto const visit = acceptance_tests(one.site, one.settings, options);
  auto leaky = one.site;
  leaky.demand.leak_m3_s = Fixed{10 * highest(one.site.demand.leak_m3_s)};
  auto const read = visit_readings(visit.plan, leaky, one.settings, one.logic, 5, 1);
  auto const& slots = visit_slots(false);
  auto const at = std::find_if(slots.begin(), slots.end(), [](VisitSlot const& s) { return s.key == "leak.fall"; });
  EXPECT_GT(read[static_cast<std::size_t>(at - slots.begin())], reading(visit, "leak.fall")->most);
}

TEST(acceptance_tests, find_a_worn_pump_outside_a_band) {
  auto const one = made("shallow_strong.toml");
  VisitOptions options;
  options.draws = 64;
  auto const visit = acceptance_tests(one.site, one.settings, options);
  auto worn = one.site;
  worn.pump.wear = Fixed{0.45};
  auto const& slots = visit_slots(false);
  int outside = 0;
  auto const read = visit_readings(visit.plan, worn, one.settings, one.logic, 5, 0);
  for (std::size_t i = 0; i < slots.size(); ++i) {
    auto const* const band = reading(visit, slots[i].key);
    outside += band != nullptr && std::isfinite(read[i]) && (read[i] < band->least || read[i] > band->most) ? 1 : 0;
  }
  EXPECT_GE(outside, 1);
}

TEST(acceptance_tests, do_not_ask_for_what_a_part_cannot_bear) {
  auto one = made("shallow_strong.toml");
  for (auto& run : one.site.pipes) {
    run.rating_pa = Fixed{60 * psi_pa};
  }
  VisitOptions options;
  options.draws = 16;
  auto const visit = acceptance_tests(one.site, one.settings, options);
  EXPECT_FALSE(visit.plan.valve_test_safe);
  EXPECT_EQ(reading(visit, "shut_line.stop_time"), nullptr);
  for (auto const& test : visit.tests) {
    if (test.kind == VisitTestKind::shut_line) {
      EXPECT_EQ(test.not_done, NotDone::rating);
    }
  }
}

TEST(visit_plan, keeps_the_rotation_test_below_what_stops_the_pump_and_what_parts_bear) {
  for (auto const* const name : {"shallow_strong.toml", "deep_weak.toml"}) {
    auto const one = made(name);
    VisitOptions options;
    options.draws = 32;
    auto const visit = acceptance_tests(one.site, one.settings, options);
    ASSERT_GT(visit.plan.hand_speed_hz, 0) << name;
    auto const* const gauge = reading(visit, "rotation.gauge");
    ASSERT_NE(gauge, nullptr);
    EXPECT_LT(gauge->most, one.settings.pressure_stop_above_pa);
    EXPECT_LT(visit.plan.backwards_most_pa, gauge->least) << name;
  }
}

}  // namespace
}  // namespace wellproof
