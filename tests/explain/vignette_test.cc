// Ten calls as they come, each with the cause that a person of the trade would name first (common practice, no source).
#include <cstdlib>
#include <string>

#include <gtest/gtest.h>

#include "explain/changed.h"
#include "explain/rank.h"
#include "settings/derive.h"
#include "unit/settings/settings_sites.h"

namespace wellproof {
namespace {

/// The worlds of one site, made once. WP_EXPLAIN_DRAWS asks for more of each cause than the everyday few.
struct Site1 {
  Settings settings;
  std::vector<World> worlds;
};

Site1 const& site_1() {
  static Site1 const made = [] {
    auto const* const asked = std::getenv("WP_EXPLAIN_DRAWS");  // NOLINT(concurrency-mt-unsafe): before any thread
    WorldOptions options;
    options.draws = asked != nullptr ? static_cast<std::uint32_t>(std::atoi(asked)) : 8;
    options.threads = 2;
    auto const site = site_of(SiteText{});
    auto const plants = draw_plants(site, 1, std::max(8U, options.draws));
    Site1 one;
    one.settings = derive(site, plants, UnitSystem::us).settings;
    one.worlds = make_worlds(plants, one.settings, options);
    return one;
  }();
  return made;
}

struct Vignette {
  char const* name;
  std::string told;
  std::string_view leader;
  std::vector<ToldAnswer> answers{};
  std::vector<ToldShow> shows{};
};

void expect_leader(Vignette const& vignette) {
  auto const history = read_history("now: 2026-08-14 18:30\n" + vignette.told, vignette.name, std::nullopt);
  ASSERT_TRUE(history) << text(history.error().front());
  Holding const holding(site_1().worlds);
  auto evidence = evidence_of(*history, nullptr, site_1().settings);
  evidence.shows.insert(evidence.shows.end(), vignette.shows.begin(), vignette.shows.end());
  auto const ranking =
      rank(site_1().worlds, holding, evidence, shares_after(changes_speak(history->changed), {}), vignette.answers);
  std::string order;
  for (std::size_t i = 0; i < 3; ++i) {
    order += std::string(key_of(ranking.causes[i])) + " " + std::to_string(ranking.causes[i].posterior) + "; ";
  }
  EXPECT_EQ(key_of(ranking.causes.front()), vignette.leader) << vignette.name << ": " << order;
}

TEST(vignettes, signal_breaks_for_moments_at_any_hour) {
  expect_leader({"wire", "sensor lost 2h ago\nsensor lost 1d 5h ago\nsensor lost 1d 6h ago\nsensor lost 3d 11h ago\n",
                 "sensor_wire"});
}

TEST(vignettes, neighbours_had_no_light_either) {
  expect_leader({"outage", "power lost 3d 2h ago\npower lost 9d 14h ago\n", "power_outages"});
}

TEST(vignettes, low_volts_every_evening) {
  expect_leader({"volts",
                 "low volts yesterday 6:10 pm\nlow volts yesterday 7:40 pm\nlow volts yesterday 9 pm\n"
                 "low volts Aug 12, 5:30 pm\nlow volts Aug 12, 8 pm\nlow volts today 4:50 pm\n"
                 "display: 205 V, tap open\n",
                 "volts_low"});
}

TEST(vignettes, a_float_says_no) {
  expect_leader(
      {"contact", "float switch 5h ago\nfloat switch 1d 4h ago\nfloat switch 1d 7h ago\n", "outside_contact"});
}

TEST(vignettes, a_drive_in_the_sun) {
  expect_leader({"sun",
                 "drive too hot yesterday 3:20 pm\ndrive too hot Aug 12, 2:40 pm\ndrive too hot today 2 pm\n"
                 "symptom: hot\ndisplay: 84 °C, tap open\n",
                 "drive_heated"});
}

TEST(vignettes, somebody_shut_the_valve) {
  std::string told;
  double const gap_h = site_1().settings.dry_run_rest_s / 3600 + 0.1;
  for (int i = 1; i <= 12; ++i) {
    told += "closed discharge " + std::to_string(static_cast<int>(60 * gap_h * i)) + " min ago\n";
  }
  expect_leader({"valve", told + "symptom: no water\nchanged: the plumber put in a filter\n", "valve_shut"});
}

TEST(vignettes, wet_ground_and_a_pump_that_runs_away) {
  expect_leader(
      {"burst", "long run 2h ago\nlong run 5h ago\nlong run 8h ago\nsymptom: wet ground, no water\n", "line_burst"});
}

TEST(vignettes, starts_all_night_and_the_water_stays_behind_the_valve) {
  expect_leader({"check valve",
                 "symptom: cycles every 15 min, no air\nkeeps: 20\n",
                 "check_valve_leaks",
                 {{check_place("watch_gauge_shut"), 2}}});
}

TEST(vignettes, deep_in_a_dry_summer_with_air_at_the_taps) {
  std::string told;
  for (auto const* const when : {"today 7:10 am", "yesterday 7:30 pm", "yesterday 7:05 am", "Aug 12, 8 pm"}) {
    told += std::string("dry run ") + when + "\n";
  }
  expect_leader({"level", told + "symptom: air at taps\n", "level_fallen", {}, {{Show::rest_level, 28, 0.15}}});
}

TEST(vignettes, a_motor_that_hums_and_takes_too_much) {
  expect_leader({"drag", "symptom: noisy, sand, hot\ndisplay: 8.5 A, tap open\n", "pump_dragging"});
}

}  // namespace
}  // namespace wellproof
