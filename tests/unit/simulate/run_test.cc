#include <cmath>

#include "unit/simulate/plain_site.h"

namespace wellproof {
namespace {

TEST(Run, WaterAndEnergyAreAccountedFor) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  auto const trace = run(plant, settings, draw_scenario(settings, outlet::house, 0.5, 20, 300, 900));
  EXPECT_EQ(trace.ending, Ending::finished);
  EXPECT_GT(trace.tallies[0].pumped_m3, 0.05);
  EXPECT_LT(trace.balance.water_share, 1e-9);
  EXPECT_LT(trace.balance.energy_share, 1e-6);
}

TEST(Run, HoldsTheTargetWhileWaterIsDrawn) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  RunOptions options;
  options.windows = {{.from_s = 120, .to_s = 300}};
  auto const trace = run(plant, settings, draw_scenario(settings, outlet::house, 0.5, 20, 300, 400), options);
  EXPECT_NEAR(trace.tallies[1].least_tee_pressure_pa, settings.pressure_target_pa, 0.5 * psi_pa);
  EXPECT_NEAR(trace.tallies[1].most_tee_pressure_pa, settings.pressure_target_pa, 0.5 * psi_pa);
}

TEST(Run, SteadySpeedIsTheOneSolvedDirectly) {
  // Two ways to the same figure: the time loop settles where the steady equations say.
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  RunOptions options;
  options.record = true;
  options.record_every_s = 1;
  auto const trace = run(plant, settings, draw_scenario(settings, outlet::house, 0.6, 20, 1200, 1100), options);
  auto const& end = trace.last;
  auto const steady = point_for_flow(plant, end.drawn_flow_m3_s, end.tee_pressure_pa, end.level_depth_m);
  ASSERT_TRUE(steady.reached);
  EXPECT_NEAR(end.speed_hz, steady.speed_hz, 0.01);
  EXPECT_NEAR(end.current_a, steady.motor.current_a, 0.005);
}

TEST(Run, SleepsAfterTheLastTapAndWakesForTheNext) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  auto scenario = draw_scenario(settings, outlet::house, 0.4, 20, 200, 900);
  auto const again = ramp(Act::outlet_opening, outlet::house, 700, 700.5, 0, 0.4);
  scenario.script.insert(scenario.script.end(), again.begin(), again.end());
  auto const trace = run(plant, settings, scenario);
  EXPECT_TRUE(has(trace, RegulatorEvent::Kind::slept));
  EXPECT_EQ(trace.events.back().what.kind, RegulatorEvent::Kind::woke);
  EXPECT_GT(trace.events.back().time_s, 700);
  EXPECT_EQ(trace.tallies[0].starts, 2U);
}

TEST(Run, AnOverdrawnWellSnoresAndPassesWhatTheWellGives) {
  auto const plant = plain_plant();
  auto settings = plain_settings(plant);
  settings.dry_run_amps_below_a = 0;  // no guard: what the plant does by itself
  settings.closed_amps_below_a = 0;
  double const share = 3 * gpm_m3_s / plant.well.flow_for_level_m3_s(plant.site.pump.setting_depth_m);
  auto scenario = draw_scenario(settings, outlet::house, 1, 20, 5000, 3600);
  scenario.script.insert(scenario.script.begin(), {.time_s = 0, .act = Act::inflow_share, .value = share});
  auto const trace = run(plant, settings, scenario);
  ASSERT_EQ(trace.ending, Ending::finished);
  auto const& end = trace.last;
  EXPECT_GT(end.wetness, 0.05);
  EXPECT_LT(end.wetness, 0.95);
  EXPECT_NEAR(end.pump_flow_m3_s, end.inflow_m3_s, 0.01 * end.inflow_m3_s);
  EXPECT_LT(end.tee_pressure_pa, settings.pressure_target_pa);
  double const level_m = plant.well.static_level_depth_m;
  EXPECT_GT(end.current_a, dry_point(plant, end.speed_hz).motor.current_a);
  EXPECT_LT(end.current_a, point_at_speed(plant, end.speed_hz, 0, level_m).motor.current_a);
  EXPECT_LT(trace.statistics.flips, 10U) << "not chattering between wet and dry";
}

TEST(Run, AShutYardValveEndsAsAStop) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  auto const scenario = with(draw_scenario(settings, outlet::house, 0.5, 20, 900, 800),
                             {.time_s = 200, .act = Act::yard_valve, .value = 0});
  auto const trace = run(plant, settings, scenario);
  EXPECT_TRUE(has_stop(trace, StopCause::closed_discharge));
  EXPECT_FALSE(has_stop(trace, StopCause::dry_run));
  ASSERT_FALSE(trace.at_stops.empty());
  EXPECT_EQ(trace.at_stops.front().pump_flow_m3_s, 0);
  EXPECT_NEAR(trace.at_stops.front().current_a, shut_point(plant, trace.at_stops.front().speed_hz).motor.current_a,
              0.02);
}

TEST(Run, AnEmptyLineFillsInVolumeOverFlow) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  Scenario scenario;
  scenario.duration_s = 600;
  scenario.start = {.line_empty = true};
  RunOptions options;
  options.record = true;
  options.record_every_s = 0.2;
  auto const trace = run(plant, settings, scenario, options);
  EXPECT_LT(trace.balance.water_share, 1e-9);
  auto const pressed = std::find_if(trace.points.begin(), trace.points.end(),
                                    [](TracePoint const& point) { return point.tee_pressure_pa > 1e3; });
  ASSERT_NE(pressed, trace.points.end());
  double pumped_m3 = 0;
  for (auto point = trace.points.begin(); point != pressed; ++point) {
    pumped_m3 += point->pump_flow_m3_s * ((point + 1)->time_s - point->time_s);
  }
  EXPECT_NEAR(pumped_m3, plant.line_volume_m3, 0.05 * plant.line_volume_m3);
}

TEST(Run, AnOutsideContactStopsAndStarts) {
  auto const plant = plain_plant();
  auto settings = plain_settings(plant);
  settings.permissive_sense = ContactSense::closed_runs;
  auto const opens = with(draw_scenario(settings, outlet::house, 0.5, 20, 900, 800),
                          {.time_s = 200, .act = Act::permissive, .value = 0});
  auto const scenario = with(opens, {.time_s = 260, .act = Act::permissive, .value = 1});
  RunOptions options;
  options.windows = {{.from_s = 205, .to_s = 255}, {.from_s = 400, .to_s = 800}};
  auto const trace = run(plant, settings, scenario, options);
  EXPECT_TRUE(has_stop(trace, StopCause::outside_contact));
  EXPECT_EQ(trace.tallies[1].running_s, 0);
  EXPECT_NEAR(trace.tallies[2].running_s, 400, 1);
}

TEST(Run, ByHandItTurnsAtTheSpeedAskedFor) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  auto const scenario = with(draw_scenario(settings, outlet::house, 1, 5, 900, 300),
                             {.time_s = 30, .act = Act::hand_speed, .value = 48, .lasts_s = 60});
  RunOptions options;
  options.record = true;
  options.record_every_s = 1;
  auto const trace = run(plant, settings, scenario, options);
  for (auto const& point : trace.points) {
    if (point.time_s > 40 && point.time_s < 89) {
      EXPECT_NEAR(point.speed_hz, 48, 1e-9) << point.time_s;
    }
  }
}

TEST(Run, BetweenTwoContactsItRunsAtTheCeilingOrNotAtAll) {
  auto const plant = plain_plant();
  auto settings = plain_settings(plant);
  settings.pressure_wake_drop_pa = 15 * psi_pa;
  RunOptions options;
  options.logic.two_contact_switch = true;
  options.record = true;
  options.record_every_s = 5;
  auto const trace = run(plant, settings, draw_scenario(settings, outlet::house, 0.4, 20, 900, 1200), options);
  EXPECT_GT(trace.tallies[0].starts, 2U);
  int at_ceiling = 0;
  for (auto const& point : trace.points) {
    at_ceiling += point.speed_hz == settings.speed_ceiling_hz ? 1 : 0;
    EXPECT_LT(point.tee_pressure_pa, settings.pressure_target_pa + 10 * psi_pa);
  }
  EXPECT_GT(at_ceiling, 3);
}

TEST(Run, PassingOverQuietTimeChangesNothingThatMatters) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  auto const scenario = draw_scenario(settings, outlet::house, 0.6, 20, 1200, 3600);
  RunOptions every;
  every.sampling = Sampling::each;
  auto const passed_over = run(plant, settings, scenario);
  auto const sampled = run(plant, settings, scenario, every);
  EXPECT_GT(passed_over.statistics.stretched_s, 2000);
  EXPECT_EQ(sampled.statistics.stretched_s, 0);
  ASSERT_EQ(passed_over.events.size(), sampled.events.size());
  for (std::size_t i = 0; i < sampled.events.size(); ++i) {
    EXPECT_EQ(passed_over.events[i].what.kind, sampled.events[i].what.kind);
    EXPECT_NEAR(passed_over.events[i].time_s, sampled.events[i].time_s, 1.0) << i;
  }
  // The pressure is held where it had settled, within 0.2 % of the target; the flow goes with its root.
  EXPECT_NEAR(passed_over.tallies[0].pumped_m3, sampled.tallies[0].pumped_m3, 2e-3 * sampled.tallies[0].pumped_m3);
  EXPECT_NEAR(passed_over.tallies[0].most_winding_c, sampled.tallies[0].most_winding_c, 0.3);
}

TEST(Run, TheSameRunTwiceIsTheSameToTheLastBit) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  auto const scenario = draw_scenario(settings, outlet::house, 0.5, 20, 200, 600);
  auto const first = run(plant, settings, scenario);
  auto const second = run(plant, settings, scenario);
  EXPECT_EQ(first.last.tee_pressure_pa, second.last.tee_pressure_pa);
  EXPECT_EQ(first.last.level_depth_m, second.last.level_depth_m);
  EXPECT_EQ(first.tallies[0].pumped_m3, second.tallies[0].pumped_m3);
}

TEST(Run, ADetachedSensorStopsThePump) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  for (auto const fault : {SensorFault::open, SensorFault::shorted}) {
    auto const scenario = with(draw_scenario(settings, outlet::house, 0.5, 20, 900, 300),
                               {.time_s = 100, .act = Act::sensor_fault, .value = static_cast<double>(fault)});
    auto const trace = run(plant, settings, scenario);
    EXPECT_TRUE(has_stop(trace, StopCause::sensor_lost));
    EXPECT_EQ(trace.last.speed_hz, 0);
  }
}

TEST(Run, AMotorThatStallsStandsUntilTheDriveLetsGo) {
  auto site = plain_site();
  site.supply.voltage_v *= 0.33;  // a ninth of the torque
  auto const plant = build(site);
  auto settings = plain_settings(plain_plant());
  settings.motor_current_limit_a = 5;
  RunOptions options;
  options.logic.low_volts_share = 0.2;
  options.record = true;
  options.record_every_s = 0.1;
  auto const trace = run(plant, settings, draw_scenario(settings, outlet::house, 1, 20, 900, 300), options);
  EXPECT_EQ(trace.ending, Ending::finished);
  EXPECT_TRUE(has_stop(trace, StopCause::over_current));
  EXPECT_LT(trace.statistics.steps, 50000U);
  double most_a = 0;
  for (auto const& point : trace.points) {
    most_a = std::max(most_a, point.current_a);
  }
  EXPECT_GT(most_a, 1.5 * settings.motor_current_limit_a);
  EXPECT_EQ(trace.last.speed_hz, 0);
}

TEST(Ramp, EndsExactlyWhereItShould) {
  auto const changes = ramp(Act::house_valve, 0, 10, 12, 1, 0);
  ASSERT_EQ(changes.size(), 8U);
  EXPECT_EQ(changes.back().time_s, 12);
  EXPECT_EQ(changes.back().value, 0);
  for (std::size_t i = 1; i < changes.size(); ++i) {
    EXPECT_LT(changes[i].value, changes[i - 1].value);
    EXPECT_LE(changes[i].time_s - changes[i - 1].time_s, 0.25 + 1e-12);
  }
}

}  // namespace
}  // namespace wellproof
