// A controller that is followed: what is said of all samples at once holds for each, and the timer on a slow speed is
// kept as the samples themselves would.
#include "regulator/following.h"

#include <cstdint>
#include <optional>

#include <gtest/gtest.h>

#include "regulator/sleep.h"
#include "unit/regulator/toy.h"

namespace wellproof {
namespace {

/// Even numbers from a counter, for places to look at.
struct Places {
  std::uint32_t state = 12345;
  double between(double low, double high) {
    state = state * 1664525U + 1013904223U;
    return low + (high - low) * (state >> 8U) / 16777216.0;
  }
};

TEST(Following, WhatIsSaidOfAllSamplesHoldsForEach) {
  Logic const logic;
  auto const settings = toy::settings();
  Places places;
  int passing = 0;
  int slow = 0;
  int fast = 0;
  for (int i = 0; i < 3000; ++i) {
    RegulatorState state;
    state.mode = i % 5 == 0 ? Mode::easing : Mode::holding;
    state.powered_up = true;
    state.integral_hz = places.between(30, 62);
    Following following;
    following.course = i % 4 == 0 ? Course::ramp : i % 4 == 1 ? Course::limit : Course::regulated;
    following.step_hz = following.course == Course::ramp ? places.between(-0.5, 0.5) : 0;
    double const pressure_pa = places.between(0.9, 1.1) * toy::target_pa;
    double const speed_hz = places.between(31, 61);
    double const error_pa = places.between(-3e4, 3e4);
    double const wide = places.between(0, 1);
    Span const pressures{pressure_pa - 1e4 * wide, pressure_pa + 1e4 * wide};
    Span const speeds{speed_hz - 4 * wide, speed_hz + 4 * wide};
    Span const errors{error_pa - 2e3 * wide, error_pa + 2e3 * wide};
    double const filtered_hz = speed_hz + places.between(-2, 2);
    Span const filtered_speeds{filtered_hz - 2 * wide, filtered_hz + 2 * wide};
    auto const all = outlook(settings, logic, state, following, pressures, speeds, filtered_speeds, errors);
    passing += all.passes ? 1 : 0;
    slow += all.slow.value_or(false) ? 1 : 0;
    fast += all.slow.value_or(true) ? 0 : 1;
    for (int k = 0; k < 10; ++k) {
      Measured one;
      one.pressure_pa = places.between(pressures.least, pressures.most);
      double const one_hz = places.between(speeds.least, speeds.most);
      double const one_error_pa = places.between(errors.least, errors.most);
      if (all.passes) {
        EXPECT_TRUE(passes_over(settings, logic, state, following, one, one_hz, one_error_pa));
      }
      if (all.slow) {
        Moment const now = moment(settings, logic, one, 0.0);
        double const one_filtered_hz = places.between(filtered_speeds.least, filtered_speeds.most);
        EXPECT_EQ(is_slow(now, one_filtered_hz, one_error_pa), *all.slow);
      }
    }
  }
  // Each of them was seen often enough to mean something.
  EXPECT_GT(passing, 300);
  EXPECT_GT(slow, 300);
  EXPECT_GT(fast, 300);
}

/// A controller at 50 Hz that holds, a pressure that goes evenly from one value to another, and what becomes of the
/// controller by samples and by one step.
struct Both {
  RegulatorState sampled;
  RegulatorState followed;
  std::optional<Following> following;
  bool on = false;
};
Both both(double speed_hz, double integral_hz, double from_pa, double to_pa, int samples) {
  Logic const logic;
  auto const settings = toy::settings();
  constexpr double period_s = 0.05;
  auto const at = [&](double share, double time_s) {
    Measured one;
    one.time_s = time_s;
    one.pressure_pa = from_pa + share * (to_pa - from_pa);
    one.current_a = 4.5;
    one.power_w = 700;
    return one;
  };
  RegulatorState state;
  state.mode = Mode::holding;
  state.powered_up = true;
  state.speed_hz = speed_hz;
  state.integral_hz = integral_hz;
  state.filtered_speed_hz = speed_hz;
  state.filtered_current_a = 4.5;
  state.filtered_error_pa = toy::target_pa - from_pa;
  state.last_time_s = -period_s;
  auto const first = at(0, 0);
  sample(settings, logic, state, first);
  Both made{state, state, following(settings, logic, state, first, 0, period_s), false};
  for (int i = 1; i <= samples; ++i) {
    sample(settings, logic, made.sampled, at(static_cast<double>(i) / samples, i * period_s));
  }
  if (made.following) {
    double const end_s = samples * period_s;
    double const from_hz = made.following->integral_hz;
    double const to_hz = from_hz + made.following->ramp_hz_s * end_s;
    auto const last = at(1, end_s);
    made.on = follow_on(settings, logic, made.followed, *made.following, first, last, from_hz, to_hz, period_s);
    resume_following(settings, logic, made.followed, *made.following, last, to_hz, 0, end_s, period_s);
    sample(settings, logic, made.followed, last);
  }
  return made;
}

void expect_same(Both const& both, Course course) {
  ASSERT_TRUE(both.following);
  EXPECT_EQ(both.following->course, course);
  EXPECT_TRUE(both.on);
  EXPECT_NEAR(both.followed.speed_hz, both.sampled.speed_hz, 1e-9);
  EXPECT_NEAR(both.followed.integral_hz, both.sampled.integral_hz, 0.02);
  EXPECT_NEAR(both.followed.filtered_speed_hz, both.sampled.filtered_speed_hz, 0.1);
  EXPECT_NEAR(both.followed.filtered_error_pa, both.sampled.filtered_error_pa, 400);
}

TEST(Following, ARampIsThatOfASampledController) {
  double const low_pa = toy::target_pa - 120e3;
  double const high_pa = toy::target_pa + 120e3;
  expect_same(both(42, 58, low_pa, low_pa + 10e3, 20), Course::ramp);
  expect_same(both(58, 42, high_pa, high_pa - 10e3, 20), Course::ramp);
  expect_same(both(6, 50, low_pa, low_pa - 5e3, 10), Course::ramp);  // below the start speed
}

TEST(Following, AMotorThatStandsIsStartedByASample) {
  RegulatorState state;
  state.mode = Mode::holding;
  state.powered_up = true;
  state.integral_hz = 50;
  Measured low;
  low.pressure_pa = 0.7 * toy::target_pa;
  EXPECT_FALSE(following(toy::settings(), {}, state, low, 0, 0.05));
}

TEST(Following, TheIntegralAtALimitIsThatOfASampledController) {
  auto const settings = toy::settings();
  double const floor_hz = settings.speed_floor_hz;
  double const ceiling_hz = settings.speed_ceiling_hz;
  // On its way to its bound, at its bound with the error growing, and with the error falling.
  expect_same(both(ceiling_hz, ceiling_hz - 0.5, toy::target_pa - 90e3, toy::target_pa - 80e3, 20), Course::limit);
  expect_same(both(ceiling_hz, ceiling_hz - 1.35, toy::target_pa - 90e3, toy::target_pa - 99e3, 20), Course::limit);
  expect_same(both(ceiling_hz, ceiling_hz - 1.35, toy::target_pa - 90e3, toy::target_pa - 60e3, 40), Course::limit);
  expect_same(both(floor_hz, floor_hz + 1.8, toy::target_pa + 90e3, toy::target_pa + 80e3, 20), Course::limit);
  expect_same(both(floor_hz, floor_hz + 1.35, toy::target_pa + 90e3, toy::target_pa + 60e3, 40), Course::limit);
}

TEST(Following, TimerOnASlowSpeedEndsAtTheSampleThatASampledControllerWouldEaseAt) {
  Logic const logic;
  auto const settings = toy::settings();
  constexpr double period_s = 0.05;
  // Slow from 1 s on, but for one sample at 4 s.
  auto const speed_hz = [&](double time_s) {
    return time_s < 1 || std::abs(time_s - 4) < 0.5 * period_s ? settings.sleep_speed_below_hz + 1
                                                               : settings.sleep_speed_below_hz - 1;
  };
  RegulatorState state;
  state.mode = Mode::holding;
  double over_s = -1;
  for (int sample = 0; sample < 600 && over_s < 0; ++sample) {
    Measured one;
    one.time_s = sample * period_s;
    one.pressure_pa = toy::target_pa;
    if (!keep_slow(settings, logic, state, one, speed_hz(one.time_s), 0)) {
      over_s = one.time_s;
    }
  }
  EXPECT_NEAR(over_s, 4 + period_s + settings.sleep_hold_s, 0.5 * period_s);
}

}  // namespace
}  // namespace wellproof
