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
  std::string name;
  std::string told;
  std::string_view leader;
  std::vector<ToldAnswer> answers{};
  std::vector<ToldShow> shows{};
};

void expect_leader(Vignette const& vignette) {
  auto const history = read_history("now: 2026-08-14 18:30\n" + vignette.told, vignette.name, std::nullopt);
  ASSERT_TRUE(history) << vignette.name << ": " << text(history.error().front());
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

std::vector<Vignette> vignettes() {
  double const gap_h = site_1().settings.dry_run_rest_s / 3600 + 0.1;
  std::string shut_again_and_again;
  for (int i = 1; i <= 12; ++i) {
    shut_again_and_again += "closed discharge " + std::to_string(static_cast<int>(60 * gap_h * i)) + " min ago\n";
  }
  std::string dry_at_busy_hours;
  for (auto const* const when : {"today 7:10 am", "yesterday 7:30 pm", "yesterday 7:05 am", "Aug 12, 8 pm"}) {
    dry_at_busy_hours += std::string("dry run ") + when + "\n";
  }
  return {
      {"the signal breaks for moments at any hour",
       "sensor lost 2h ago\nsensor lost 1d 5h ago\nsensor lost 1d 6h ago\nsensor lost 3d 11h ago\n", "sensor_wire"},
      {"the neighbours had no light either", "power lost 3d 2h ago\npower lost 9d 14h ago\n", "power_outages"},
      {"low volts every evening",
       "low volts yesterday 6:10 pm\nlow volts yesterday 7:40 pm\nlow volts yesterday 9 pm\n"
       "low volts Aug 12, 5:30 pm\nlow volts Aug 12, 8 pm\nlow volts today 4:50 pm\n"
       "display: 205 V, tap open\n",
       "volts_low"},
      {"a float says no", "float switch 5h ago\nfloat switch 1d 4h ago\nfloat switch 1d 7h ago\n", "outside_contact"},
      {"a drive in the sun",
       "drive too hot yesterday 3:20 pm\ndrive too hot Aug 12, 2:40 pm\ndrive too hot today 2 pm\n"
       "symptom: hot\ndisplay: 84 °C, tap open\n",
       "drive_heated"},
      {"somebody shut the valve", shut_again_and_again + "symptom: no water\nchanged: the plumber put in a filter\n",
       "valve_shut"},
      {"wet ground and a pump that runs away",
       "long run 2h ago\nlong run 5h ago\nlong run 8h ago\nsymptom: wet ground, no water\n", "line_burst"},
      {"starts all night, and the water stays behind the valve",
       "symptom: cycles every 15 min, no air\nkeeps: 20\n",
       "check_valve_leaks",
       {{check_place("watch_gauge_shut"), 2}}},
      {"deep in a dry summer, with air at the taps",
       dry_at_busy_hours + "symptom: air at taps\n",
       "level_fallen",
       {},
       {{Show::rest_level, 28, 0.15}}},
      {"a motor that hums and takes too much", "symptom: noisy, sand, hot\ndisplay: 8.5 A, tap open\n",
       "pump_dragging"},
  };
}

// One test, since making the worlds takes nearly all of its time.
TEST(vignettes, each_has_the_leader_that_the_trade_would_name) {
  auto const all = vignettes();
  ASSERT_EQ(all.size(), 10U);
  for (auto const& each : all) {
    expect_leader(each);
  }
}

}  // namespace
}  // namespace wellproof
