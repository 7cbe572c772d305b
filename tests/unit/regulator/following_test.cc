// A controller that is followed: what is said of all samples at once holds for each, and the timer on a slow speed is
// kept as the samples themselves would.
#include "regulator/following.h"

#include <cstdint>

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
    double const pressure_pa = places.between(0.9, 1.1) * toy::target_pa;
    double const speed_hz = places.between(31, 61);
    double const error_pa = places.between(-3e4, 3e4);
    double const wide = places.between(0, 1);
    Span const pressures{pressure_pa - 1e4 * wide, pressure_pa + 1e4 * wide};
    Span const speeds{speed_hz - 4 * wide, speed_hz + 4 * wide};
    Span const errors{error_pa - 2e3 * wide, error_pa + 2e3 * wide};
    double const filtered_hz = speed_hz + places.between(-2, 2);
    Span const filtered_speeds{filtered_hz - 2 * wide, filtered_hz + 2 * wide};
    auto const all = outlook(settings, logic, state, pressures, speeds, filtered_speeds, errors);
    passing += all.passes ? 1 : 0;
    slow += all.slow.value_or(false) ? 1 : 0;
    fast += all.slow.value_or(true) ? 0 : 1;
    for (int k = 0; k < 10; ++k) {
      Measured one;
      one.pressure_pa = places.between(pressures.least, pressures.most);
      double const one_hz = places.between(speeds.least, speeds.most);
      double const one_error_pa = places.between(errors.least, errors.most);
      if (all.passes) {
        EXPECT_TRUE(passes_over(settings, logic, state, one, one_hz, one_error_pa));
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
