// The pump: its curve, its wear, air in it, and the ways of asking it backwards.
#include "plant/pump.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "contract/require.h"

namespace wellproof {
namespace {

constexpr double curve_speed_rad_s = 361;

/// An invented pump of ten gallons a minute's class, one and a half horsepower.
PumpOf<double> invented() {
  PumpOf<double> pump;
  pump.curve = {{0, 95, 500}, {2e-4, 93, 620}, {4e-4, 86, 740}, {6e-4, 72, 820}, {8e-4, 50, 850}, {1e-3, 20, 830}};
  pump.curve_speed_rad_s = curve_speed_rad_s;
  pump.flow_factor = 1;
  pump.head_factor = 1;
  pump.power_factor = 1;
  pump.dry_power_fraction = 0.3;
  pump.rated_power_w = 850;
  return pump;
}

PumpOf<double> worn(double wear) {
  auto pump = invented();
  pump.wear = wear;
  return pump;
}

TEST(Pump, passes_through_its_points) {
  Pump const pump(invented());
  for (auto const& point : invented().curve) {
    EXPECT_NEAR(pump.head_m(point.flow_m3_s, curve_speed_rad_s, 1).value, point.head_m, 1e-3 * 95);
    EXPECT_NEAR(pump.shaft_power_w(point.flow_m3_s, curve_speed_rad_s, 1), point.shaft_power_w, 1e-3 * 850);
  }
}

TEST(Pump, takes_its_tolerance_factors_on_flow_head_and_power) {
  auto given = invented();
  given.flow_factor = 1.09;
  given.head_factor = 0.93;
  given.power_factor = 1.05;
  Pump const pump(given);
  EXPECT_NEAR(pump.head_m(1.09 * 4e-4, curve_speed_rad_s, 1).value, 0.93 * 86, 1e-3 * 95);
  EXPECT_NEAR(pump.shaft_power_w(1.09 * 4e-4, curve_speed_rad_s, 1), 1.05 * 740, 1e-3 * 850);
  EXPECT_NEAR(pump.shutoff_head_m(), 0.93 * 95, 1e-9);
}

TEST(Pump, falls_with_flow_everywhere) {
  for (double const wear : {0.0, 0.1, 0.6}) {
    Pump const pump(worn(wear));
    double before = pump.head_m(-3e-4, curve_speed_rad_s, 1).value;
    for (int i = -29; i < 200; ++i) {
      auto const here = pump.head_m(i * 1e-5, curve_speed_rad_s, 1);
      EXPECT_LT(here.value, before) << "wear " << wear << " at " << i * 1e-5;
      EXPECT_LT(here.slope, 0) << "wear " << wear << " at " << i * 1e-5;
      before = here.value;
    }
  }
}

TEST(Pump, with_a_drooping_start_still_falls) {
  auto drooping = invented();
  drooping.curve[0].head_m = 90;
  Pump const pump(drooping);
  EXPECT_GT(pump.shutoff_head_m(), pump.head_m(1e-4, curve_speed_rad_s, 1).value);
  EXPECT_NEAR(pump.shutoff_head_m(), 93, 0.2);
  EXPECT_LT(pump.head_m(0, curve_speed_rad_s, 1).slope, 0);
}

TEST(Pump, with_flat_points_still_falls) {
  auto flat = invented();
  for (auto& point : flat.curve) {
    point.head_m = 50;
  }
  Pump const pump(flat);
  EXPECT_GT(pump.head_m(0, curve_speed_rad_s, 1).value, pump.head_m(9e-4, curve_speed_rad_s, 1).value);
  EXPECT_NEAR(pump.runout_flow_m3_s(), 3e-3, 1e-9);
}

TEST(Pump, runs_out_where_the_parabola_of_its_last_points_does) {
  // H = a − b·Q² through (0.8, 50) and (1.0, 20): b = 30/0.36, a = 20 + 30/0.36, root of a/b
  double const expected_m3_s = 1e-3 * std::sqrt((20 + 30 / 0.36) / (30 / 0.36));
  Pump const pump(invented());
  EXPECT_NEAR(pump.runout_flow_m3_s(), expected_m3_s, 1e-9);
  EXPECT_NEAR(pump.head_m(pump.runout_flow_m3_s(), curve_speed_rad_s, 1).value, 0, 1e-9);
}

TEST(Pump, whose_points_pass_below_no_head_runs_out_between_them) {
  auto below = invented();
  below.curve.back().head_m = -10;
  Pump const pump(below);
  EXPECT_GT(pump.runout_flow_m3_s(), 8e-4);
  EXPECT_LT(pump.runout_flow_m3_s(), 1e-3);
  EXPECT_NEAR(pump.head_m(pump.runout_flow_m3_s(), curve_speed_rad_s, 1).value, 0, 1e-9);
}

TEST(Pump, is_best_where_flow_times_head_over_power_is_largest) {
  Pump const pump(invented());
  auto const merit = [&](double flow_m3_s) {
    return flow_m3_s * pump.head_m(flow_m3_s, curve_speed_rad_s, 1).value /
           pump.shaft_power_w(flow_m3_s, curve_speed_rad_s, 1);
  };
  for (int i = 1; i < 110; ++i) {
    EXPECT_LE(merit(i * 1e-5), merit(pump.best_flow_m3_s()) * (1 + 1e-4));
  }
}

TEST(WornPump, delivers_the_head_of_a_larger_inner_flow) {
  Pump const fresh(worn(0));
  Pump const old(worn(0.2));
  for (double const flow_m3_s : {0.0, 2e-4, 5e-4, 8e-4}) {
    double const head_m = old.head_m(flow_m3_s, curve_speed_rad_s, 1).value;
    double const inner_m3_s = flow_m3_s + 0.2 * fresh.best_flow_m3_s() * std::sqrt(head_m / 95);
    // The leak is laminar in the last hundredth of the head, which shifts it a little above.
    EXPECT_NEAR(head_m, fresh.head_m(inner_m3_s, curve_speed_rad_s, 1).value, 1e-3 * 95);
    EXPECT_NEAR(old.shaft_power_w(flow_m3_s, curve_speed_rad_s, 1),
                fresh.shaft_power_w(inner_m3_s, curve_speed_rad_s, 1), 1e-3 * 850);
  }
}

TEST(WornPump, has_no_ripple_in_its_slopes) {
  // The slope at a point is that of the chord about it, everywhere but at the kinks of the points themselves.
  for (double const wear : {0.0, 0.3, 0.6}) {
    Pump const pump(worn(wear));
    double const reach_m3_s = 0.004 * pump.runout_flow_m3_s();
    for (int i = 2; i <= 95; ++i) {
      double const flow_m3_s = 0.01 * i * pump.runout_flow_m3_s();
      auto const head_m = [&](double q) { return pump.head_m(q, curve_speed_rad_s, 1); };
      auto const power_w = [&](double q) { return pump.shaft_power_w(q, curve_speed_rad_s, 1); };
      double const chord_s_m2 =
          (head_m(flow_m3_s + 4 * reach_m3_s).value - head_m(flow_m3_s - 4 * reach_m3_s).value) / (8 * reach_m3_s);
      EXPECT_NEAR(head_m(flow_m3_s).slope, chord_s_m2, 0.06 * std::abs(chord_s_m2) + 0.02 * 95 / 1e-3)
          << "wear " << wear << ", " << i << " % of run-out";
      auto const power_slope = [&](double q) {
        return (power_w(q + reach_m3_s) - power_w(q - reach_m3_s)) / (2 * reach_m3_s);
      };
      double const power_chord =
          (power_w(flow_m3_s + 4 * reach_m3_s) - power_w(flow_m3_s - 4 * reach_m3_s)) / (8 * reach_m3_s);
      EXPECT_NEAR(power_slope(flow_m3_s), power_chord, 0.05 * std::abs(power_chord) + 0.01 * 850 / 1e-3)
          << "wear " << wear << ", " << i << " % of run-out";
    }
  }
}

TEST(WornPump, leaks_nothing_where_it_has_no_head) {
  EXPECT_NEAR(Pump(worn(0.4)).runout_flow_m3_s(), Pump(worn(0)).runout_flow_m3_s(), 1e-9);
}

TEST(Pump, that_draws_only_air_has_no_head_and_only_its_mechanical_loss) {
  Pump const pump(invented());
  EXPECT_EQ(pump.head_m(0, curve_speed_rad_s, 0).value, 0);
  EXPECT_NEAR(pump.shaft_power_w(0, curve_speed_rad_s, 0), 0.3 * 850, 1e-9);
}

TEST(Pump, that_draws_air_flows_its_wetness_times_run_out_against_no_head) {
  Pump const pump(invented());
  for (double const wet : {1.0, 0.5, 0.1, 1e-3, 1e-9}) {
    double const flow_m3_s = wet * pump.runout_flow_m3_s();
    EXPECT_NEAR(pump.head_m(flow_m3_s, curve_speed_rad_s, wet).value, 0, 1e-9) << wet;
    EXPECT_LT(pump.head_m(2 * flow_m3_s, curve_speed_rad_s, wet).value, 0) << wet;
  }
}

TEST(Pump, stays_finite_at_rest_and_dry) {
  Pump const pump(invented());
  for (double const speed_rad_s : {0.0, 1e-300, 1e-9, 361.0}) {
    for (double const wet : {0.0, 1e-300, 1e-9, 1.0}) {
      for (double const flow_m3_s : {-1e-3, 0.0, 1e-300, 1e-3, 1.0}) {
        auto const head = pump.head_m(flow_m3_s, speed_rad_s, wet);
        auto const torque = pump.torque_n_m(flow_m3_s, speed_rad_s, wet);
        EXPECT_TRUE(std::isfinite(head.value) && std::isfinite(head.slope)) << speed_rad_s << " " << wet;
        EXPECT_TRUE(std::isfinite(torque.value) && std::isfinite(torque.slope)) << speed_rad_s << " " << wet;
      }
    }
  }
}

TEST(Pump, just_holds_a_head_at_its_zero_flow_speed) {
  Pump const pump(worn(0.1));
  double const speed_rad_s = pump.zero_flow_speed_rad_s(60);
  EXPECT_NEAR(pump.head_m(0, speed_rad_s, 1).value, 60, 1e-9);
  EXPECT_EQ(pump.zero_flow_speed_rad_s(-3), 0);
}

TEST(Pump, cannot_lift_above_its_shut_off_head) {
  Pump const pump(invented());
  EXPECT_EQ(pump.flow_at_head_m3_s(96, curve_speed_rad_s), 0);
  EXPECT_EQ(pump.flow_at_head_m3_s(1, 0), 0);
}

TEST(Pump, asked_back_for_its_flow_gives_it) {
  Pump const pump(worn(0.1));
  for (double const speed_rad_s : {200.0, 361.0, 450.0}) {
    for (double const flow_m3_s : {1e-5, 3e-4, 5e-4, 1.5e-3}) {
      double const head_m = pump.head_m(flow_m3_s, speed_rad_s, 1).value;
      EXPECT_NEAR(pump.flow_at_head_m3_s(head_m, speed_rad_s), flow_m3_s, 1e-10);
    }
  }
}

TEST(Pump, turns_at_the_speed_it_is_asked_back_for) {
  Pump const pump(worn(0.1));
  for (double const wet : {1.0, 0.6}) {
    for (double const head_m : {0.0, 5.0, 60.0, 140.0}) {
      for (double const flow_m3_s : {1e-5, 4e-4, 9e-4}) {
        double const speed_rad_s = pump.speed_for_rad_s(flow_m3_s, head_m, wet);
        EXPECT_NEAR(pump.head_m(flow_m3_s, speed_rad_s, wet).value, head_m, 1e-8) << flow_m3_s << " " << head_m;
      }
    }
    EXPECT_NEAR(pump.speed_for_rad_s(0, 60, 1), pump.zero_flow_speed_rad_s(60), 1e-8);
  }
}

TEST(Pump, refuses_fewer_than_three_points) {
  auto two = invented();
  two.curve.resize(2);
  EXPECT_THROW(Pump{two}, ContractBroken);
}

TEST(Wetness, goes_from_none_at_the_intake_to_full_at_the_least_submergence) {
  EXPECT_EQ(wetness(-1, 0.6).value, 0);
  EXPECT_EQ(wetness(0, 0.6).value, 0);
  EXPECT_DOUBLE_EQ(wetness(0.3, 0.6).value, 0.5);
  EXPECT_EQ(wetness(0.6, 0.6).value, 1);
  EXPECT_EQ(wetness(9, 0.6).slope, 0);
}

TEST(Wetness, without_a_least_submergence_is_all_or_nothing) {
  EXPECT_EQ(wetness(0, 0).value, 0);
  EXPECT_EQ(wetness(0.01, 0).value, 1);
}

}  // namespace
}  // namespace wellproof
