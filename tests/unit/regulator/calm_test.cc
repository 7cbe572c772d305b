// A stretch that calm() says nothing happens in may be passed over: what comes after is the same.
#include <gtest/gtest.h>

#include <functional>

#include "unit/regulator/toy.h"

namespace wellproof {
namespace {

using toy::Kind;
using toy::Plant;
using toy::Rig;
using toy::target_pa;

bool inside(Calm const& calm, Measured const& m, double speed_hz) {
  return m.pressure_pa > calm.least_pressure_pa && m.pressure_pa < calm.most_pressure_pa &&
         m.current_a > calm.least_current_a && m.current_a < calm.most_current_a &&
         m.supply_share > calm.least_supply_share && m.supply_share < calm.most_supply_share &&
         m.sink_c > calm.least_sink_c && m.sink_c < calm.most_sink_c &&
         (calm.kind != Calm::Kind::holding || (speed_hz > calm.least_speed_hz && speed_hz < calm.most_speed_hz));
}

// Measured values as a function of time and speed, whoever asks: so that sampling and skipping see the same world.
using World = std::function<Measured(double time_s, double speed_hz)>;

struct Outcome {
  std::vector<toy::Happened> happened;
  int samples = 0;
  double speed_hz = 0;
};

Outcome pass(Settings const& settings, Logic const& logic, World const& world, double end_s, bool skipping) {
  RegulatorState state;
  Outcome outcome;
  for (int k = 0; k * 0.05 < end_s; ++k) {
    Measured const now = world(k * 0.05, state.speed_hz);
    Command const command = sample(settings, logic, state, now);
    ++outcome.samples;
    if (command.event) {
      outcome.happened.push_back({now.time_s, *command.event});
    }
    Calm const still = skipping ? calm(settings, logic, state, now) : Calm{};
    if (still.kind != Calm::Kind::steady) {
      continue;
    }
    int const first = k + 1;
    Measured last = now;
    for (; (k + 1) * 0.05 < end_s; ++k) {
      Measured const next = world((k + 1) * 0.05, state.speed_hz);
      if (next.time_s >= still.until_time_s || !inside(still, next, state.speed_hz)) {
        break;
      }
      last = next;
    }
    if (k + 1 > first) {
      resume(settings, logic, state, last, state.speed_hz);
    }
  }
  outcome.speed_hz = state.speed_hz;
  return outcome;
}

// The same events at the same samples; only the filter's last half percent may shift a guard by a sample.
void expect_same(Settings const& settings, Logic const& logic, World const& world, double end_s, int fewer) {
  Outcome const each = pass(settings, logic, world, end_s, false);
  Outcome const skipped = pass(settings, logic, world, end_s, true);
  ASSERT_EQ(each.happened.size(), skipped.happened.size());
  EXPECT_FALSE(each.happened.empty());
  for (std::size_t i = 0; i < each.happened.size(); ++i) {
    EXPECT_NEAR(each.happened[i].time_s, skipped.happened[i].time_s, 0.0501);
    EXPECT_EQ(each.happened[i].event.kind, skipped.happened[i].event.kind);
    EXPECT_EQ(each.happened[i].event.mode, skipped.happened[i].event.mode);
    EXPECT_EQ(each.happened[i].event.cause, skipped.happened[i].event.cause);
  }
  EXPECT_NEAR(each.speed_hz, skipped.speed_hz, 0.6);
  EXPECT_LT(skipped.samples * fewer, each.samples);
}

double between(double time_s, double from_s, double to_s, double from, double to) {
  double const share = std::clamp((time_s - from_s) / (to_s - from_s), 0.0, 1.0);
  return from + (to - from) * share;
}

TEST(Calm, ASleepSkippedOverWakesAtTheSameSample) {
  World const world = [](double time_s, double speed_hz) {
    Measured m{.time_s = time_s, .pressure_pa = between(time_s, 0, 3600, 1.2 * target_pa, 0.85 * target_pa)};
    m.current_a = speed_hz > 0 ? 5 : 0;
    return m;
  };
  expect_same(toy::settings(), Logic{}, world, 3600, 4);
}

TEST(Calm, DryRunRestAndRetrySkippedOverAreTheSame) {
  World const world = [](double time_s, double speed_hz) {
    Measured m{.time_s = time_s, .pressure_pa = 0.7 * target_pa};
    m.current_a = speed_hz > 0 ? between(time_s, 200, 400, 5.3, 3.0) : 0;
    return m;
  };
  expect_same(toy::settings(), Logic{}, world, 3000, 10);
}

TEST(Calm, ClosedDischargeDelayAndLongRunEndAtTheSameSample) {
  Settings settings = toy::settings();
  settings.long_run_limit_s = 500;
  World const shut = [](double time_s, double speed_hz) {
    Measured m{.time_s = time_s, .pressure_pa = 0.7 * target_pa};
    m.current_a = speed_hz > 0 ? (time_s > 100 ? 4.1 : 5.3) : 0;
    return m;
  };
  expect_same(settings, Logic{}, shut, 600, 10);
  World const open = [](double time_s, double speed_hz) {
    return Measured{.time_s = time_s, .pressure_pa = 0.7 * target_pa, .current_a = speed_hz > 0 ? 5.3 : 0};
  };
  expect_same(settings, Logic{}, open, 600, 10);
}

// A sample that noise puts over the pressure at which the guards look resets their timers; the value without noise says
// that they run. Nothing may be passed over until a sample has started them.
TEST(Calm, NothingIsClaimedUntilATimerRunsThatShould) {
  auto const settings = toy::settings();
  Logic const logic;
  RegulatorState state;
  int k = 0;
  auto const shut = [&](double pressure_pa) {
    return Measured{.time_s = k * 0.05, .pressure_pa = pressure_pa, .current_a = state.speed_hz > 0 ? 4.1 : 0};
  };
  double const gate_pa = logic.guard_pressure_share * target_pa;
  for (; k < 600 && !state.closed_since_s; ++k) {
    sample(settings, logic, state, shut(0.7 * target_pa));
  }
  ASSERT_TRUE(state.closed_since_s);
  for (int const last = k + 200; k < last && calm(settings, logic, state, shut(gate_pa - 500)).kind == Calm::Kind::none;
       ++k) {
    sample(settings, logic, state, shut(gate_pa - 500));
  }
  auto const running = calm(settings, logic, state, shut(gate_pa - 500));
  ASSERT_EQ(running.kind, Calm::Kind::steady);
  EXPECT_DOUBLE_EQ(running.until_time_s, *state.closed_since_s + settings.closed_delay_s);
  // The value has risen out of the gate, and the timer not yet ended.
  EXPECT_EQ(calm(settings, logic, state, shut(gate_pa + 500)).kind, Calm::Kind::none);
  sample(settings, logic, state, shut(gate_pa + 500));
  ASSERT_FALSE(state.closed_since_s);
  ++k;
  EXPECT_EQ(calm(settings, logic, state, shut(gate_pa - 500)).kind, Calm::Kind::none);
  sample(settings, logic, state, shut(gate_pa - 500));
  EXPECT_EQ(calm(settings, logic, state, shut(gate_pa - 500)).kind, Calm::Kind::steady);
}

TEST(Calm, AFillSkippedOverEndsAtTheSameSample) {
  World const world = [](double time_s, double speed_hz) {
    Measured m{.time_s = time_s, .pressure_pa = between(time_s, 150, 200, 0, 0.95 * target_pa)};
    m.current_a = speed_hz > 0 ? 4.2 : 0;
    return m;
  };
  expect_same(toy::settings(), Logic{}, world, 180, 3);
}

TEST(Calm, AFloorSkippedOverSleepsAtTheSameSample) {
  Settings settings = toy::settings();
  settings.sleep_hold_s = 300;
  World const world = [](double time_s, double speed_hz) {
    Measured m{.time_s = time_s, .pressure_pa = time_s < 20 ? 0.8 * target_pa : 1.2 * target_pa};
    m.current_a = speed_hz > 0 ? 4 : 0;
    return m;
  };
  expect_same(settings, Logic{}, world, 600, 5);
}

TEST(Calm, TroublesSkippedOverAreWaitedOutAlike) {
  World const world = [](double time_s, double speed_hz) {
    Measured m{.time_s = time_s, .pressure_pa = 0.8 * target_pa};
    m.current_a = speed_hz > 0 ? 5 : 0;
    m.supply_share = time_s > 50 && time_s < 150 ? 0.6 : 1;
    m.sink_c = time_s > 200 && time_s < 300 ? 95 : between(time_s, 300, 400, 95, 40);
    if (time_s > 500 && time_s < 600) {
      m.pressure_pa = -200e3;
    }
    if (time_s < 200) {
      m.sink_c = 40;
    }
    return m;
  };
  expect_same(toy::settings(), Logic{}, world, 700, 3);
}

TEST(Calm, TwoContactsSkippedOverSwitchAtTheSameSamples) {
  Logic logic;
  logic.two_contact_switch = true;
  World const world = [](double time_s, double speed_hz) {
    double const minute = std::fmod(time_s, 400);
    Measured m{.time_s = time_s};
    m.pressure_pa = minute < 200 ? between(minute, 0, 200, 0.85 * target_pa, 1.05 * target_pa)
                                 : between(minute, 200, 400, 1.05 * target_pa, 0.85 * target_pa);
    m.current_a = speed_hz > 0 ? 5 : 0;
    return m;
  };
  expect_same(toy::settings(), logic, world, 2000, 5);
}

TEST(Calm, NothingIsClaimedOnTheWay) {
  Rig rig;
  rig.feed(0.8 * target_pa, 5, 1);  // starting
  EXPECT_EQ(calm(rig.settings, rig.logic, rig.state, rig.measured).kind, Calm::Kind::none);
  rig.feed(0.8 * target_pa, 5, 30);
  EXPECT_EQ(calm(rig.settings, rig.logic, rig.state, rig.measured).kind, Calm::Kind::steady);
  rig.feed(0.8 * target_pa, 4, 0.05);  // the filter has not arrived
  EXPECT_EQ(calm(rig.settings, rig.logic, rig.state, rig.measured).kind, Calm::Kind::none);
  rig.feed(0.8 * target_pa, 7, 30);  // over the limit
  EXPECT_EQ(calm(rig.settings, rig.logic, rig.state, rig.measured).kind, Calm::Kind::none);
}

TEST(Calm, APressureThatOnlyPassesTheTargetIsNotHeld) {
  Rig rig;
  rig.plant.pressure_pa = 0.8 * target_pa;
  rig.plant.tap_m3_s = 0.6e-3;
  double first_pa = 0;
  for (int i = 0; i < 2000; ++i) {
    rig.run(0.05);
    Calm const still = calm(rig.settings, rig.logic, rig.state, rig.measured);
    if (still.kind == Calm::Kind::holding) {
      first_pa = rig.plant.pressure_pa;
      double const speed_hz = rig.state.speed_hz;
      rig.run(30);
      EXPECT_NEAR(rig.plant.pressure_pa, first_pa, 0.004 * target_pa);
      EXPECT_NEAR(rig.state.speed_hz, speed_hz, 0.1);
      break;
    }
  }
  EXPECT_GT(first_pa, 0);
}

TEST(Calm, AHeldPressureNamesTheSpeedsBetweenWhichItStaysSo) {
  Rig rig;
  rig.plant.pressure_pa = 0.8 * target_pa;
  rig.plant.tap_m3_s = 0.6e-3;
  rig.run(60);
  Calm const still = calm(rig.settings, rig.logic, rig.state, rig.measured);
  ASSERT_EQ(still.kind, Calm::Kind::holding);
  EXPECT_EQ(still.least_speed_hz, rig.settings.sleep_speed_below_hz);
  EXPECT_EQ(still.most_speed_hz, 60);
  EXPECT_DOUBLE_EQ(still.until_time_s, rig.state.running_since_s + rig.settings.long_run_limit_s);
  EXPECT_LT(still.most_pressure_pa, 1.01 * target_pa);
  EXPECT_GT(still.least_pressure_pa, 0.99 * target_pa);
  EXPECT_LE(still.most_current_a, rig.settings.motor_current_limit_a);
}

// A draw that drifts: the speed that holds the pressure is found by the test, and the regulator goes on from it.
TEST(Calm, AfterAHoldingStretchItGoesOnFromTheNewSpeed) {
  Rig rig;
  rig.plant.pressure_pa = 0.8 * target_pa;
  rig.plant.tap_m3_s = 0.6e-3;
  rig.run(60);
  ASSERT_EQ(calm(rig.settings, rig.logic, rig.state, rig.measured).kind, Calm::Kind::holding);
  rig.plant.tap_m3_s = 0.7e-3;
  double const over_pa = 3e11 * 0.7e-3 * 0.7e-3;
  double const speed_hz = Plant::zero_flow_speed_hz(rig.plant.pressure_pa + over_pa);
  rig.measured.current_a = rig.plant.current_a(speed_hz);
  rig.measured.time_s += 1000;
  resume(rig.settings, rig.logic, rig.state, rig.measured, speed_hz);
  rig.next_time_s += 1000;
  rig.forget_extremes();
  rig.run(10);
  EXPECT_EQ(rig.state.mode, Mode::holding);
  EXPECT_NEAR(rig.state.speed_hz, speed_hz, 0.02);
  EXPECT_LT(rig.most_pressure_pa, 1.002 * target_pa);
  EXPECT_GT(rig.least_pressure_pa, 0.998 * target_pa);
}

}  // namespace
}  // namespace wellproof
