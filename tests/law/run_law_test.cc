// What must hold of every run, whatever the site, the settings and the hazard: nothing becomes a not-a-number, water
// and energy are neither made nor lost, the water never falls below the intake, the run ends as it should. And: whether
// samples are passed over does not show in what it says.
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "law/random_site.h"
#include "plant/operating.h"
#include "proof/prove.h"
#include "site/read.h"
#include "unit/settings/settings_sites.h"

namespace wellproof {
namespace {

constexpr double psi_pa = 6894.757;

Site random_site(std::uint64_t seed) {
  auto const read = read_site(random_site_text(seed), "random.toml");
  if (!read) {
    ADD_FAILURE() << "seed " << seed << " is no valid site";
    return {};
  }
  return read->site;
}

/// Settings as somebody might enter them who looked at one plant and got some of them wrong: no use for a proof, enough
/// to drive a plant everywhere.
Settings rough_settings(Plant const& plant, RandomNumbers& random) {
  auto const& site = plant.site;
  double const rest_m = plant.well.static_level_depth_m;
  Settings s;
  s.pressure_target_pa =
      std::min(site.demand.outlet_pressure_pa + plant.weight_n_m3 * site.demand.outlet_rise_m + psi_pa,
               0.8 * site.sensor.full_scale_pa);
  s.pressure_wake_drop_pa = random.between(2, 10) * psi_pa;
  s.pressure_stop_above_pa =
      std::min(s.pressure_target_pa + random.between(10, 40) * psi_pa, site.sensor.full_scale_pa);
  s.sensor_full_scale_pa = site.sensor.full_scale_pa;
  s.motor_current_limit_a = site.motor.service_factor_current_a * random.between(0.9, 1.1);
  s.speed_floor_hz = random.between(25, 35);
  s.speed_ceiling_hz = site.drive.top_frequency_hz;
  s.speed_ramp_up_hz_s = random.between(3, 30);
  s.speed_ramp_down_hz_s = random.between(3, 30);
  s.regulator_gain_hz_pa = 1e-4 * std::pow(10, random.between(-1, 1));
  s.regulator_reset_time_s = std::pow(10, random.between(-0.5, 1.3));
  s.sleep_speed_below_hz = zero_flow_speed_hz(plant, s.pressure_target_pa, rest_m) + random.between(-1, 3);
  s.sleep_hold_s = random.between(2, 30);
  s.sleep_band_pa = random.between(0.5, 5) * psi_pa;
  s.sleep_ramp_hz_s = random.between(0.05, 2);
  s.dry_run_amps_below_a = dry_point(plant, s.speed_ceiling_hz).motor.current_a * random.between(0.95, 1.2);
  s.dry_run_delay_s = random.between(1, 20);
  s.dry_run_rest_s = random.between(60, 3600);
  s.closed_amps_below_a = shut_point(plant, s.speed_ceiling_hz).motor.current_a * random.between(0.95, 1.1);
  s.closed_delay_s = random.between(1, 20);
  s.long_run_limit_s = random.between(600, 7200);
  s.fill_time_s = random.between(30, 600);
  s.fill_speed_hz = random.between(0.6, 1) * s.speed_ceiling_hz;
  return s;
}

void expect_finite(TracePoint const& p) {
  for (double const figure : {p.time_s, p.tee_pressure_pa, p.outlet_pressure_pa, p.measured_pressure_pa, p.speed_hz,
                              p.current_a, p.input_power_w, p.pump_flow_m3_s, p.drawn_flow_m3_s, p.inflow_m3_s,
                              p.level_depth_m, p.wetness, p.winding_c, p.pump_water_c, p.sink_c}) {
    ASSERT_TRUE(std::isfinite(figure)) << "at " << p.time_s << " s";
  }
  EXPECT_GE(p.pump_flow_m3_s, 0) << "at " << p.time_s << " s";
  EXPECT_GE(p.drawn_flow_m3_s, 0);
  // An emptying line stops at nothing within the integrator's tolerance: of volume, which without gas in the tank is
  // some kilopascals.
  EXPECT_GE(p.tee_pressure_pa, -1e4);
  EXPECT_GE(p.wetness, 0);
  EXPECT_LE(p.wetness, 1);
}

void expect_finite(Tally const& t) {
  for (double const figure : {t.least_tee_pressure_pa, t.most_tee_pressure_pa, t.least_outlet_pressure_pa,
                              t.most_pump_pressure_pa, t.most_current_a, t.most_winding_c, t.most_pump_water_c,
                              t.most_sink_c, t.deepest_level_m, t.least_wetness, t.pumped_m3, t.drawn_m3, t.inflow_m3,
                              t.running_s, t.turning_shut_s, t.below_outlet_wanted_s, t.below_tee_wanted_s}) {
    ASSERT_TRUE(std::isfinite(figure));
  }
  EXPECT_LE(t.turning_shut_s, t.running_s);
  EXPECT_LE(t.least_tee_pressure_pa, t.most_tee_pressure_pa);
}

// The pump takes in no water below its intake. What a step may overshoot by, and what runs out of the bore by itself
// (a formation at rest below), are allowed for.
constexpr double level_slack_m = 1e-3;

void expect_sound(Plant const& plant, Settings const& settings, Trial const& trial, Trace const& trace) {
  EXPECT_EQ(trace.ending, Ending::finished) << word(trace.ending) << " at " << trace.last.time_s << " s";
  EXPECT_NEAR(trace.last.time_s, trial.scenario.duration_s, 1e-6);
  // No hanging at a corner of the laws, and no more steps over a stretch than samples would have taken.
  double const samples =
      static_cast<double>(trace.statistics.samples) + trace.statistics.stretched_s * plant.site.drive.sample_rate_hz;
  EXPECT_LE(static_cast<double>(trace.statistics.steps), 20 * samples + 5000);
  EXPECT_LE(trace.balance.water_share, 1e-6);
  EXPECT_LE(trace.balance.energy_share, 1e-6);
  for (auto const& point : trace.points) {
    expect_finite(point);
    EXPECT_LE(point.speed_hz, settings.speed_ceiling_hz + 1e-9);
  }
  for (auto const& tally : trace.tallies) {
    expect_finite(tally);
  }
  ASSERT_EQ(trace.tallies.size(), 1 + trial.windows.size());
  double fallen_m = 0;
  for (auto const& change : trial.scenario.script) {
    fallen_m = change.act == Act::static_shift ? std::max(fallen_m, change.value) : fallen_m;
  }
  double const start_m = plant.well.static_level_depth_m + trial.scenario.start.level_drop_m + fallen_m;
  // Where the level at rest falls to the intake, what the formation has not yet recovered stands below it.
  double const unrecovered_m = 0.05 * fallen_m;
  EXPECT_LE(trace.tallies.front().deepest_level_m,
            std::max(plant.site.pump.setting_depth_m, start_m) + unrecovered_m + level_slack_m);
  double before_s = 0;
  for (auto const& event : trace.events) {
    EXPECT_GE(event.time_s, before_s);
    before_s = event.time_s;
  }
  auto const outcome = judge_all(trace, trial.criteria);
  EXPECT_TRUE(std::isfinite(outcome.margin));
  EXPECT_TRUE(std::isfinite(outcome.value));
}

/// Site `seed` under one hazard; each fortieth with its own derived settings.
void one_run(std::uint64_t seed) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  RandomNumbers random(seed);
  auto const site = random_site(seed);
  bool const derived = seed % 40 == 0;
  auto const plants = draw_plants(site, seed, derived ? 8 : 1);
  auto const& plant = plants[derived ? seed / 40 % 8 : 0];
  auto const settings = derived ? derive(site, plants, UnitSystem::us).settings : rough_settings(plant, random);
  auto const& hazard = hazards()[random.bits() % hazards().size()];
  SCOPED_TRACE(std::string(hazard.name) + (derived ? ", derived settings" : ", rough settings"));
  auto const trial = hazard.make(plant, settings);
  RunOptions options;
  options.logic.two_contact_switch = site.control == ControlWay::pressure_switch;
  options.windows = trial.windows;
  options.record = true;
  options.record_every_s = 5;
  options.sampling = seed % 8 != 1 || trial.scenario.duration_s > 3600 ? Sampling::calm : Sampling::each;
  options.noise_seed = seed;
  expect_sound(plant, settings, trial, run(plant, settings, trial.scenario, options));
}

void five_hundred_from(std::uint64_t first) {
  for (std::uint64_t seed = first; seed < first + 500; ++seed) {
    one_run(seed);
    if (testing::Test::HasFailure()) {
      return;  // the first one tells enough
    }
  }
}

TEST(RunLaw, IsSoundOnRandomSites0To499) {
  five_hundred_from(0);
}
TEST(RunLaw, IsSoundOnRandomSites500To999) {
  five_hundred_from(500);
}
TEST(RunLaw, IsSoundOnRandomSites1000To1499) {
  five_hundred_from(1000);
}
TEST(RunLaw, IsSoundOnRandomSites1500To1999) {
  five_hundred_from(1500);
}

// ---- how a run is computed does not show

std::vector<std::string> told(Trace const& trace) {
  std::vector<std::string> out;
  for (auto const& event : trace.events) {
    out.push_back(std::to_string(static_cast<int>(event.what.kind)) + " " + std::string(word(event.what.mode)));
  }
  return out;
}

/// The same things happened, and with the same time between them. Where a cycle repeats, each begins where the one
/// before ended, so that it is the time between that is alike.
bool alike_in_time(Trace const& a, Trace const& b) {
  if (told(a) != told(b)) {
    return false;
  }
  double a_s = 0;
  double b_s = 0;
  for (std::size_t i = 0; i < a.events.size(); ++i) {
    double const gap_s = b.events[i].time_s - b_s;
    if (std::abs(a.events[i].time_s - a_s - gap_s) > std::max(1.5, 0.1 * gap_s)) {
      return false;
    }
    a_s = a.events[i].time_s;
    b_s = b.events[i].time_s;
  }
  return true;
}

/// Runs of a site's plant under every hazard that is not too long to be sampled all the way, its sensor still so that a
/// stretch has nothing to smooth over. Returns how many there were, in how many the same things happened at the same
/// times, and how many were judged the same.
struct Alike {
  int runs = 0;
  int same_events = 0;
  int same_verdicts = 0;
};
Alike expect_same_stretched(Site const& site, std::uint64_t seed, std::uint32_t draw, Logic const& logic = {}) {
  auto plants = draw_plants(site, seed, 8);
  for (auto& plant : plants) {
    plant.site.sensor.noise_pa = 0;
    plant.site.sensor.resolution_pa = 0;
  }
  auto const& plant = plants[draw];
  auto const settings = derive(site, plants, UnitSystem::us, logic).settings;
  Alike alike;
  for (auto const& hazard : hazards()) {
    auto const trial = hazard.make(plant, settings);
    if (trial.scenario.duration_s > 3600) {
      continue;
    }
    SCOPED_TRACE("seed " + std::to_string(seed) + ", " + std::string(hazard.name));
    RunOptions options;
    options.logic = logic;
    options.logic.two_contact_switch = site.control == ControlWay::pressure_switch;
    options.windows = trial.windows;
    auto const stretched = run(plant, settings, trial.scenario, options);
    options.sampling = Sampling::each;
    auto const sampled = run(plant, settings, trial.scenario, options);
    EXPECT_EQ(sampled.statistics.stretched_s, 0);
    bool const same = alike_in_time(stretched, sampled);
    ++alike.runs;
    alike.same_events += same ? 1 : 0;
    bool same_verdicts = true;
    for (auto const& criterion : trial.criteria) {
      auto const a = judge(stretched, criterion);
      auto const b = judge(sampled, criterion);
      same_verdicts = same_verdicts && a.passed == b.passed;
      bool const on_the_edge = std::abs(a.margin - b.margin) < 0.02;
      EXPECT_TRUE(!same || a.passed == b.passed || on_the_edge)
          << criterion.says << ": " << a.value << " and " << b.value;
      EXPECT_TRUE(!same || std::abs(a.margin - b.margin) <= std::max(0.1, 0.1 * std::abs(b.margin)))
          << criterion.says << ": " << a.margin << " and " << b.margin;
    }
    alike.same_verdicts += same_verdicts ? 1 : 0;
  }
  return alike;
}

// Where the same things happen, every verdict is the same, but for a figure that lies on its limit. A plant on the edge
// between two things (a guard's threshold, sleep or not) may go one way or the other and then parts ways: one run in
// twelve at most, and of these few tell.
TEST(RunLaw, SaysTheSameWithStretchesAndWithout) {
  auto all = expect_same_stretched(site_of({}), 1, 0);
  for (std::uint64_t seed = 0; seed < 12; ++seed) {
    auto const one = expect_same_stretched(random_site(seed), seed, static_cast<std::uint32_t>(seed % 8));
    all.runs += one.runs;
    all.same_events += one.same_events;
    all.same_verdicts += one.same_verdicts;
  }
  EXPECT_GT(all.runs, 100);
  EXPECT_LE(12 * (all.runs - all.same_events), all.runs) << all.same_events << " of " << all.runs;
  EXPECT_LE(50 * (all.runs - all.same_verdicts), all.runs) << all.same_verdicts << " of " << all.runs;
}

// The same for controllers that work otherwise.
std::vector<Logic> other_logics() {
  Logic any_speed;
  any_speed.guard_where = GuardWhere::any_speed;
  Logic nudge;
  nudge.guard_by = GuardBy::power;
  nudge.sleep_test = SleepTest::nudge;
  nudge.rest_growth = 2;
  nudge.longest_rest_s = 7200;
  nudge.long_run_guard = false;
  Logic two_gains;
  two_gains.second_gain = SecondGain::below_speed;
  two_gains.second_gain_below_hz = 42;
  two_gains.second_gain_share = 0.6;
  two_gains.line_fill = false;
  Logic by_error;
  by_error.guard_by = GuardBy::power;
  by_error.guard_where = GuardWhere::any_speed;
  by_error.second_gain = SecondGain::large_error;
  by_error.second_gain_error_pa = 2e4;
  by_error.second_gain_share = 1.5;
  return {any_speed, nudge, two_gains, by_error};
}

TEST(RunLaw, SaysTheSameWithStretchesAndWithoutWhateverTheLogic) {
  Alike all;
  for (auto const& logic : other_logics()) {
    for (std::uint64_t seed = 0; seed < 2; ++seed) {
      auto const one = expect_same_stretched(seed == 0 ? site_of({}) : random_site(seed + 40), seed,
                                             static_cast<std::uint32_t>(seed % 8), logic);
      all.runs += one.runs;
      all.same_events += one.same_events;
      all.same_verdicts += one.same_verdicts;
    }
  }
  EXPECT_GT(all.runs, 100);
  EXPECT_LE(12 * (all.runs - all.same_events), all.runs) << all.same_events << " of " << all.runs;
  EXPECT_LE(50 * (all.runs - all.same_verdicts), all.runs) << all.same_verdicts << " of " << all.runs;
}

}  // namespace
}  // namespace wellproof
