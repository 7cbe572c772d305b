// What is worn, broken or out of order: each by a law that can be written down beside it, and none of them makes or
// loses water or energy.
#include <cmath>

#include "simulate/carry.h"
#include "unit/simulate/plain_site.h"

namespace wellproof {
namespace {

constexpr double gravity = 9.80665;
constexpr double held_pa = 50 * psi_pa;

Inputs resting(Plant const& plant) {
  Inputs inputs;
  inputs.openings.assign(plant.outlets.size(), 0);
  return inputs;
}

State full_line(Plant const& plant) {
  State y{};
  y[at::level_depth] = plant.well.static_level_depth_m;
  y[at::stored] = stored_m3(plant, held_pa);
  y[at::winding] = y[at::shell] = y[at::pump_water] = plant.site.well.water_temperature_c;
  y[at::sink] = plant.site.drive.ambient_c;
  return y;
}

TEST(Trouble, ACheckValveLeaksBackAsAHoleUnderTheColumn) {
  auto const plant = plain_plant();
  auto inputs = resting(plant);
  inputs.trouble.check_leak_m2 = 1e-6;
  Rates rates(plant, inputs);
  auto const rate = rates.of(full_line(plant), {});
  // Torricelli: the head is the tank's pressure and the column from the water to the tee; the bend of the root near no
  // head takes a tenth of a metre of some fifty.
  double const head_m = held_pa / plant.weight_n_m3 + plant.well.static_level_depth_m + plant.tee_elevation_m;
  double const flow_m3_s = 1e-6 * std::sqrt(2 * gravity * head_m);
  EXPECT_NEAR(-rate[at::stored] / flow_m3_s, 1, 2e-3);
  EXPECT_NEAR(-rate[at::pumped_total] / flow_m3_s, 1, 2e-3);
  EXPECT_LT(rate[at::level_depth], 0) << "the water runs back into the well";
}

TEST(Trouble, AHoleInTheDropPipeSeesTheWaterThatStandsOverIt) {
  auto const plant = plain_plant();
  auto inputs = resting(plant);
  inputs.trouble.hole_m2 = 1e-6;
  auto const flow_m3_s = [&](double depth_m) {
    inputs.trouble.hole_depth_m = depth_m;
    Rates rates(plant, inputs);
    return -rates.of(full_line(plant), {})[at::stored];
  };
  double const rest_m = plant.well.static_level_depth_m;
  // Above the water the head grows with depth; below it the column outside takes back what depth gives.
  double const above = held_pa / plant.weight_n_m3 + plant.tee_elevation_m + 0.5 * rest_m;
  EXPECT_NEAR(flow_m3_s(0.5 * rest_m) / (1e-6 * std::sqrt(2 * gravity * above)), 1, 2e-3);
  EXPECT_NEAR(flow_m3_s(rest_m + 5) / flow_m3_s(rest_m + 10), 1, 1e-9);
}

TEST(Trouble, ATankThatLostChargeKeepsItsWaterAndLosesPressureByBoyle) {
  auto const plant = plain_plant();
  auto inputs = resting(plant);
  inputs.trouble.tank_charge_share = 0.5;
  Rates rates(plant, inputs);
  auto const reading = rates.read(full_line(plant), {});
  double const atmosphere_pa = plant.tank.atmosphere_pa_abs;
  // The stretched pipes take a little of the water when the charge is gone.
  EXPECT_NEAR((reading.tee_pressure_pa + atmosphere_pa) / (0.5 * (held_pa + atmosphere_pa)), 1, 0.01);
}

TEST(Trouble, UnevenVoltsHeatByTwiceTheSquareOfTheirPerCent) {
  // NEMA MG 1: 3 % unbalance heats 18 % more.
  auto const plant = plain_plant();
  auto inputs = resting(plant);
  inputs.speed_hz = 60;
  Modes const open{.check_open = true};
  auto y = full_line(plant);
  y[at::flow] = plant.pump.best_flow_m3_s();
  Rates even(plant, inputs);
  inputs.trouble.volts_unbalance = 0.03;
  Rates uneven(plant, inputs);
  EXPECT_NEAR(uneven.of(y, open)[at::motor_loss] / even.of(y, open)[at::motor_loss], 1.18, 1e-9);
  EXPECT_NEAR(uneven.read(y, open).motor.current_a / even.read(y, open).motor.current_a, 1.24, 1e-9);
  auto const rate = uneven.of(y, open);
  EXPECT_NEAR(
      rate[at::input_energy],
      rate[at::water_energy] + rate[at::pump_loss] + rate[at::motor_loss] + rate[at::cable_loss] + rate[at::drive_loss],
      1e-9 * rate[at::input_energy]);
}

TEST(Trouble, AWornPumpIsThePumpOfASiteWithThatWear) {
  auto site = plain_site();
  auto const sound = build(site);
  site.pump.wear += 0.2;
  auto const worn = build(site);
  auto inputs = resting(sound);
  inputs.speed_hz = 55;
  auto y = full_line(sound);
  y[at::flow] = 0.7 * sound.pump.best_flow_m3_s();
  Modes const open{.check_open = true};
  Rates of_worn(worn, inputs);
  inputs.trouble.wear = 0.2;
  Rates of_sound(sound, inputs);
  EXPECT_DOUBLE_EQ(of_sound.read(y, open).pump_head_m, of_worn.read(y, open).pump_head_m);
  inputs.trouble.wear = 0;
  of_sound.hold(inputs);
  EXPECT_GT(of_sound.read(y, open).pump_head_m, of_worn.read(y, open).pump_head_m) << "mended";
}

TEST(Trouble, AClogTakesVelocityHeads) {
  auto const plant = plain_plant();
  auto inputs = resting(plant);
  inputs.speed_hz = 60;
  auto y = full_line(plant);
  y[at::flow] = plant.pump.best_flow_m3_s();
  Modes const open{.check_open = true};
  auto const rise = [&](double loss_factor) {
    inputs.trouble.intake_loss = loss_factor;
    Rates rates(plant, inputs);
    return rates.of(y, open)[at::flow];
  };
  // K·v²/2g over the column's inertance, with v in the column's mean bore.
  double const inertance_s2_m2 = plant.up.inertance_s2_m2();
  double const area_m2 = plant.up.length_m() / (gravity * inertance_s2_m2);
  double const velocity_m_s = y[at::flow] / area_m2;
  EXPECT_NEAR(rise(0) - rise(100), 100 * velocity_m_s * velocity_m_s / (2 * gravity) / inertance_s2_m2, 1e-9);
}

TEST(Trouble, APluggedPortFollowsWithItsLag) {
  auto const plant = plain_plant();
  auto inputs = resting(plant);
  inputs.trouble.added_lag_s = 300;
  Rates rates(plant, inputs);
  auto y = full_line(plant);
  y[at::lagged_pressure] = 0.5 * held_pa;
  double const lag_s = 300 + plant.site.sensor.lag_s;
  EXPECT_NEAR(rates.of(y, {})[at::lagged_pressure], 0.5 * held_pa / lag_s, 1e-6 * held_pa / lag_s);
}

TEST(Trouble, AHotDayLiftsTheSinkByAsMuch) {
  auto const plant = plain_plant();
  auto inputs = resting(plant);
  inputs.trouble.ambient_rise_k = 15;
  Rates rates(plant, inputs);
  auto y = full_line(plant);
  EXPECT_GT(rates.of(y, {})[at::sink], 0);
  y[at::sink] += 15;
  EXPECT_NEAR(rates.of(y, {})[at::sink], 0, 1e-12);
}

struct Case {
  char const* name;
  Act act;
  double value;
};

class TroubleRun : public testing::TestWithParam<Case> {};

TEST_P(TroubleRun, MakesNoWaterAndNoEnergy) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  Scenario scenario;
  scenario.duration_s = 1200;
  scenario.start = {.tee_pressure_pa = settings.pressure_target_pa, .after_power_up = false};
  scenario.script = {{.time_s = 0, .act = Act::outlet_opening, .outlet = outlet::leak, .value = 0},
                     {.time_s = 20, .act = GetParam().act, .value = GetParam().value},
                     {.time_s = 100, .act = Act::outlet_opening, .outlet = outlet::house, .value = 0.5},
                     {.time_s = 500, .act = Act::outlet_opening, .outlet = outlet::house, .value = 0}};
  for (auto const sampling : {Sampling::each, Sampling::ahead, Sampling::calm}) {
    RunOptions options;
    options.sampling = sampling;
    auto const trace = run(plant, settings, scenario, options);
    EXPECT_EQ(trace.ending, Ending::finished);
    EXPECT_LT(trace.balance.water_share, 1e-6);
    EXPECT_LT(trace.balance.energy_share, 1e-6);
    EXPECT_GT(trace.tallies[0].drawn_m3, 0.1) << "it drew water";
  }
}

INSTANTIATE_TEST_SUITE_P(Each, TroubleRun,
                         testing::Values(Case{"wear", Act::wear, 0.2}, Case{"check", Act::check_leak, 1e-6},
                                         Case{"hole", Act::hole, 3e-6}, Case{"charge", Act::tank_charge, 0.3},
                                         Case{"intake", Act::intake_loss, 50}, Case{"lag", Act::sensor_lag, 20},
                                         Case{"zero", Act::sensor_zero, 1e4}, Case{"noise", Act::sensor_noise, 5e3},
                                         Case{"unbalance", Act::volts_unbalance, 0.03},
                                         Case{"droop", Act::supply_droop, 0.1}, Case{"ambient", Act::ambient_rise, 20}),
                         [](auto const& one) { return one.param.name; });

TEST(Trouble, AGeneratorSagsByItsLoad) {
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  Scenario scenario;
  scenario.duration_s = 200;
  scenario.start = {.tee_pressure_pa = settings.pressure_target_pa, .after_power_up = false};
  scenario.script = {{.time_s = 0, .act = Act::supply_droop, .value = 0.5},
                     {.time_s = 10, .act = Act::outlet_opening, .outlet = outlet::house, .value = 1}};
  // Half of the volts at rated power is under the share at which the drive lets go.
  EXPECT_TRUE(has_stop(run(plant, settings, scenario), StopCause::low_volts));
  scenario.script[0].value = 0.05;
  EXPECT_FALSE(has_stop(run(plant, settings, scenario), StopCause::low_volts));
}

TEST(Trouble, AnIntakeThatClogsAtOnceDoesNotStallTheMotor) {
  // What it would take to hold the pressure through a clog is more speed than there is; trying must leave no trace.
  auto const plant = plain_plant();
  auto const settings = plain_settings(plant);
  auto const scenario = with(draw_scenario(settings, outlet::house, 0.5, 10, 400, 400),
                             {.time_s = 200, .act = Act::intake_loss, .value = 1e6});
  auto const trace = run(plant, settings, scenario);
  EXPECT_FALSE(has_stop(trace, StopCause::over_current));
  EXPECT_TRUE(has_stop(trace, StopCause::closed_discharge) || has_stop(trace, StopCause::dry_run));
}

}  // namespace
}  // namespace wellproof
