// Whatever is measured, a controller puts out what a motor can be given.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <limits>

#include "unit/regulator/toy.h"

namespace wellproof {
namespace {

double pick(double least, double most) {
  return least + (most - least) * (*rc::gen::inRange(0, 1'000'001) / 1e6);
}

Settings any_settings() {
  Settings s = toy::settings();
  s.speed_ceiling_hz = pick(40, 80);
  s.speed_floor_hz = pick(10, 50);
  s.speed_ramp_up_hz_s = pick(0.5, 60);
  s.speed_ramp_down_hz_s = pick(0.5, 60);
  s.regulator_gain_hz_pa = pick(0, 1e-2);
  s.regulator_reset_time_s = pick(0, 20);
  s.sleep_speed_below_hz = pick(20, 60);
  s.sleep_hold_s = pick(0, 20);
  s.sleep_band_pa = pick(0, 50e3);
  s.sleep_ramp_hz_s = pick(0, 10);
  s.fill_time_s = pick(0, 20);
  s.fill_speed_hz = pick(0, 90);
  s.dry_run_delay_s = pick(0, 10);
  s.closed_delay_s = pick(0, 10);
  s.dry_run_rest_s = pick(0, 20);
  s.long_run_limit_s = pick(10, 1000);
  s.sensor_trim_pa = pick(-30e3, 30e3);
  s.permissive_sense = *rc::gen::element(ContactSense::unused, ContactSense::closed_runs, ContactSense::open_runs);
  return s;
}

// Mostly what a site gives, now and then nonsense of any size.
double value(double least, double most) {
  if (*rc::gen::inRange(0, 20) == 0) {
    return *rc::gen::element(-1e308, -1e9, 0.0, 1e9, 1e308, std::numeric_limits<double>::infinity());
  }
  return pick(least, most);
}

Measured any_measured(double time_s) {
  Measured m;
  m.time_s = time_s;
  m.pressure_pa = value(-50e3, 800e3);
  m.current_a = value(0, 9);
  m.supply_share = *rc::gen::inRange(0, 15) == 0 ? value(0, 1.2) : 1;
  m.sink_c = *rc::gen::inRange(0, 15) == 0 ? value(0, 120) : 40;
  m.permissive_closed = *rc::gen::inRange(0, 15) != 0;
  return m;
}

RC_GTEST_PROP(RegulatorLaw, TheSpeedIsOffOrUpToTheCeilingAndKeepsItsRampsWhateverIsMeasured, ()) {
  Settings const settings = any_settings();
  Logic logic;
  logic.two_contact_switch = *rc::gen::inRange(0, 5) == 0;
  RegulatorState state;
  double time_s = 0;
  double before_hz = 0;
  for (int i = 0; i < 300; ++i) {
    double const step_s = *rc::gen::element(0.01, 0.05, 0.1, 1.0, 30.0);
    time_s += step_s;
    if (*rc::gen::inRange(0, 60) == 0) {
      state.hand = HandRun{pick(0, 100), time_s + pick(0, 10)};
    }
    Command const command = sample(settings, logic, state, any_measured(time_s));
    RC_ASSERT(std::isfinite(command.speed_hz));
    RC_ASSERT(std::isfinite(state.integral_hz));
    RC_ASSERT(command.speed_hz >= 0);
    RC_ASSERT(command.speed_hz <= settings.speed_ceiling_hz + 1e-9);
    double const start_hz_s = logic.start_speed_hz / logic.start_time_s;
    double const most_hz_s = before_hz < logic.start_speed_hz ? std::max(start_hz_s, settings.speed_ramp_up_hz_s)
                                                              : settings.speed_ramp_up_hz_s;
    RC_ASSERT(command.speed_hz - before_hz <= most_hz_s * step_s + 1e-9);
    RC_ASSERT(command.speed_hz == 0 ||
              command.speed_hz - before_hz >=
                  -std::max(settings.speed_ramp_down_hz_s, settings.sleep_ramp_hz_s) * step_s - 1e-9);
    bool const off = state.mode == Mode::asleep || state.mode == Mode::waiting || state.mode == Mode::resting ||
                     state.mode == Mode::stopped;
    RC_ASSERT(!off || command.speed_hz == 0);
    before_hz = command.speed_hz;
  }
}

RC_GTEST_PROP(RegulatorLaw, WhileCalmTheCommandStaysWhatItIs, ()) {
  Settings settings = any_settings();
  settings.permissive_sense = ContactSense::unused;
  settings.long_run_limit_s = 1e5;
  Logic logic;
  logic.two_contact_switch = *rc::gen::inRange(0, 5) == 0;
  RegulatorState state;
  double time_s = 0;
  bool ran_calmly = false;
  for (int i = 0; i < 60; ++i) {
    if (state.mode == Mode::stopped) {
      state = {};
    }
    Measured m = any_measured(time_s);
    int const stays = *rc::gen::element(1, 20, 400);
    for (int k = 0; k < stays; ++k) {
      m.time_s = time_s;
      sample(settings, logic, state, m);
      time_s += 0.05;
    }
    Calm const still = calm(settings, logic, state, m);
    if (still.kind != Calm::Kind::steady) {
      continue;
    }
    // Values anywhere inside the cell, each drawn anew.
    auto const within = [](double least, double most, double now) {
      return std::isfinite(now)
                 ? pick(std::max(least, now - 0.05 * std::abs(now)), std::min(most, now + 0.05 * std::abs(now)))
                 : now;
    };
    double const speed_hz = state.speed_hz;
    Mode const mode = state.mode;
    ran_calmly = ran_calmly || speed_hz > 0;
    for (int k = 0; k < 40 && time_s < still.until_time_s; ++k) {
      Measured next = m;
      next.time_s = time_s;
      next.pressure_pa = within(still.least_pressure_pa, still.most_pressure_pa, m.pressure_pa);
      next.current_a = within(still.least_current_a, still.most_current_a, m.current_a);
      next.supply_share = within(still.least_supply_share, still.most_supply_share, m.supply_share);
      next.sink_c = within(still.least_sink_c, still.most_sink_c, m.sink_c);
      bool const edge = next.pressure_pa <= still.least_pressure_pa || next.pressure_pa >= still.most_pressure_pa ||
                        next.current_a <= still.least_current_a || next.current_a >= still.most_current_a ||
                        next.supply_share <= still.least_supply_share || next.supply_share >= still.most_supply_share ||
                        next.sink_c <= still.least_sink_c || next.sink_c >= still.most_sink_c;
      if (!edge) {
        Command const command = sample(settings, logic, state, next);
        RC_ASSERT(std::abs(command.speed_hz - speed_hz) < 1e-6);
        RC_ASSERT(state.mode == mode);
        time_s += 0.05;
      }
    }
  }
  RC_CLASSIFY(ran_calmly);
}

RC_GTEST_PROP(RegulatorLaw, HalfTheSamplesChangeTheHeldPressureLittle, ()) {
  double const tap_m3_s = pick(0.45e-3, 0.9e-3);
  auto const pressure_pa = [&](double period_s) {
    toy::Rig rig;
    rig.period_s = period_s;
    rig.plant.pressure_pa = 0.85 * toy::target_pa;
    rig.plant.tap_m3_s = tap_m3_s;
    rig.run(7);
    return rig.plant.pressure_pa;
  };
  RC_ASSERT(std::abs(pressure_pa(0.05) - pressure_pa(0.025)) < 0.015 * toy::target_pa);
}

}  // namespace
}  // namespace wellproof
