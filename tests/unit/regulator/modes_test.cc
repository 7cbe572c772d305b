// Power-up, line fill, permissive, two-contact switch, run by hand, fault contact.
#include <gtest/gtest.h>

#include "unit/regulator/toy.h"

namespace wellproof {
namespace {

using toy::Kind;
using toy::Rig;
using toy::target_pa;

TEST(PowerUp, AnEmptyLineIsFilledAHeldOneSleepsTheRestIsHeld) {
  for (auto const& [share, mode] :
       {std::pair{0.0, Mode::filling}, std::pair{0.49, Mode::filling}, std::pair{0.51, Mode::holding},
        std::pair{0.89, Mode::holding}, std::pair{0.91, Mode::asleep}, std::pair{1.2, Mode::asleep}}) {
    Rig rig;
    rig.feed(share * target_pa, 0, 0.05);
    EXPECT_EQ(rig.state.mode, mode) << share;
    EXPECT_EQ(rig.count(Kind::started), mode == Mode::asleep ? 0 : 1);
  }
}

TEST(PowerUp, WithoutASignalItWaits) {
  Rig rig;
  rig.feed(-200e3, 0, 60);
  EXPECT_EQ(rig.state.mode, Mode::waiting);
  EXPECT_EQ(rig.state.cause, StopCause::sensor_lost);
  EXPECT_EQ(rig.count(Kind::stopped), 0);  // it never ran
}

TEST(Fill, RunsAtFillSpeedAndEndsAtHalfTheTarget) {
  Rig rig;
  rig.feed(0, 4, 60);
  EXPECT_EQ(rig.state.speed_hz, 45);
  rig.feed(0.499 * target_pa, 4, 1);
  EXPECT_EQ(rig.state.mode, Mode::filling);
  rig.feed(0.5 * target_pa, 4, 0.05);
  EXPECT_EQ(rig.state.mode, Mode::holding);
  EXPECT_EQ(rig.count(Kind::filled), 1);
}

TEST(Fill, EndsWithItsTimeAndGoesOnFromItsSpeed) {
  Rig rig;
  rig.feed(0, 4, 300);
  ASSERT_EQ(rig.state.mode, Mode::filling);
  rig.feed(0, 4, 0.05);
  EXPECT_EQ(rig.state.mode, Mode::holding);
  EXPECT_EQ(rig.state.speed_hz, 45);
  EXPECT_EQ(rig.count(Kind::filled), 0);
  rig.feed(0, 5, 0.05);
  EXPECT_GE(rig.state.speed_hz, 45);
  EXPECT_LE(rig.state.speed_hz, 45.5 + 1e-9);
}

TEST(Fill, AnEmptyLineEndsUpHeldWithoutABurstOfPressure) {
  Rig rig;
  rig.plant.pressure_pa = 0;
  rig.plant.line_left_m3 = 0.05;
  rig.settings.speed_floor_hz = 40;
  rig.plant.tap_m3_s = 0.4e-3;
  rig.run(300);
  EXPECT_EQ(rig.count(Kind::filled), 1);
  EXPECT_EQ(rig.state.mode, Mode::holding);
  EXPECT_NEAR(rig.plant.pressure_pa, target_pa, 0.01 * target_pa);
  EXPECT_LT(rig.most_pressure_pa, 1.2 * target_pa);
}

TEST(Permissive, EachSenseIsObeyed) {
  struct Case {
    ContactSense sense;
    bool closed;
    bool runs;
  };
  for (Case const c : {Case{ContactSense::unused, false, true}, Case{ContactSense::unused, true, true},
                       Case{ContactSense::closed_runs, true, true}, Case{ContactSense::closed_runs, false, false},
                       Case{ContactSense::open_runs, false, true}, Case{ContactSense::open_runs, true, false}}) {
    Rig rig;
    rig.settings.permissive_sense = c.sense;
    rig.measured.permissive_closed = c.closed;
    rig.feed(0.8 * target_pa, 5, 10);
    EXPECT_EQ(rig.state.speed_hz > 0, c.runs);
    EXPECT_EQ(rig.state.mode, c.runs ? Mode::holding : Mode::waiting);
  }
}

TEST(Permissive, OpeningStopsARunAtOnceAndClosingDecidesAnew) {
  Rig rig;
  rig.settings.permissive_sense = ContactSense::closed_runs;
  rig.feed(0.8 * target_pa, 5, 10);
  rig.measured.permissive_closed = false;
  rig.feed(0.8 * target_pa, 5, 0.05);
  EXPECT_EQ(rig.state.mode, Mode::waiting);
  EXPECT_EQ(rig.state.cause, StopCause::outside_contact);
  EXPECT_EQ(rig.state.speed_hz, 0);
  EXPECT_EQ(rig.count(Kind::stopped), 1);
  rig.feed(0.2 * target_pa, 0, 100);
  EXPECT_EQ(rig.state.mode, Mode::waiting);
  rig.measured.permissive_closed = true;
  rig.feed(0.2 * target_pa, 0, 0.05);
  EXPECT_EQ(rig.state.mode, Mode::filling);
}

TEST(Permissive, OpeningWhileAsleepIsNoStop) {
  Rig rig;
  rig.settings.permissive_sense = ContactSense::closed_runs;
  rig.feed(target_pa, 0, 1);
  rig.measured.permissive_closed = false;
  rig.feed(target_pa, 0, 1);
  EXPECT_EQ(rig.state.mode, Mode::waiting);
  EXPECT_EQ(rig.count(Kind::stopped), 0);
  rig.measured.permissive_closed = true;
  rig.feed(target_pa, 0, 1);
  EXPECT_EQ(rig.state.mode, Mode::asleep);
}

TEST(Permissive, ClosingDoesNotShortenTheWaitForSteadyVolts) {
  Rig rig;
  rig.settings.permissive_sense = ContactSense::closed_runs;
  rig.feed(0.8 * target_pa, 5, 10);
  rig.measured.supply_share = 0.5;
  rig.feed(0.8 * target_pa, 0, 1);
  rig.measured.supply_share = 1;
  rig.measured.permissive_closed = false;
  rig.feed(0.8 * target_pa, 0, 5);
  rig.measured.permissive_closed = true;
  rig.feed(0.8 * target_pa, 0, 4.9);
  EXPECT_EQ(rig.state.mode, Mode::waiting);
  rig.feed(0.8 * target_pa, 0, 0.3);
  EXPECT_EQ(rig.state.mode, Mode::holding);
}

TEST(Rest, GoesOnThroughALossOfVoltsAndEndsInWaitingIfTheyAreGone) {
  Rig rig = toy::at_ceiling_with_pressure_lost();
  rig.feed(0.7 * target_pa, 3.1, 10);
  ASSERT_EQ(rig.state.mode, Mode::resting);
  double const stopped_s = rig.time_of(Kind::stopped);
  rig.measured.supply_share = 0.3;
  rig.feed(0.7 * target_pa, 0, 100);
  EXPECT_EQ(rig.state.mode, Mode::resting);
  rig.feed(0.7 * target_pa, 0, 510);
  EXPECT_EQ(rig.state.mode, Mode::waiting);
  EXPECT_NEAR(rig.happened.back().time_s - stopped_s, 600, 0.06);
}

TEST(TwoContacts, RunsAtTheCeilingBetweenTheTwoPressures) {
  Rig rig;
  rig.logic.two_contact_switch = true;
  rig.settings.sensor_full_scale_pa = 0;  // there is no sensor
  rig.feed(0.95 * target_pa, 0, 10);
  EXPECT_EQ(rig.state.mode, Mode::asleep);
  rig.feed(target_pa - 35e3, 0, 0.05);
  EXPECT_EQ(rig.count(Kind::woke), 1);
  rig.feed(0.99 * target_pa, 5, 60);
  EXPECT_EQ(rig.state.speed_hz, 60);
  rig.feed(target_pa, 5, 0.05);
  EXPECT_EQ(rig.state.mode, Mode::asleep);
  EXPECT_EQ(rig.state.speed_hz, 0);
  rig.feed(target_pa - 34e3, 0, 60);
  EXPECT_EQ(rig.state.mode, Mode::asleep);
}

TEST(TwoContacts, TheAmpsGuardsActWhileTheContactCalls) {
  Rig rig;
  rig.logic.two_contact_switch = true;
  rig.feed(0.5 * target_pa, 5, 10);
  rig.feed(0.99 * target_pa, 3.1, 20);
  EXPECT_EQ(rig.state.mode, Mode::resting);
  EXPECT_EQ(rig.state.cause, StopCause::dry_run);
}

TEST(Hand, RunsAtItsSpeedForItsTimeThenDecides) {
  Rig rig;
  rig.feed(target_pa, 0, 1);
  rig.state.hand = HandRun{40, rig.next_time_s + 30};
  rig.feed(target_pa, 3, 29);
  EXPECT_EQ(rig.state.mode, Mode::hand);
  EXPECT_EQ(rig.state.speed_hz, 40);
  rig.feed(target_pa, 3, 2);
  EXPECT_EQ(rig.state.mode, Mode::asleep);
  EXPECT_FALSE(rig.state.hand);
}

TEST(Hand, TheAmpsGuardsDoNotActButPressureAndContactDo) {
  Rig rig;
  rig.settings.permissive_sense = ContactSense::closed_runs;
  rig.feed(target_pa, 0, 1);
  rig.state.hand = HandRun{60, 1e6};
  rig.feed(0.5 * target_pa, 1, 200);
  EXPECT_EQ(rig.state.mode, Mode::hand);
  Rig shut = rig;
  shut.feed(630e3, 1, 0.05);
  EXPECT_EQ(shut.state.cause, StopCause::high_pressure);
  EXPECT_EQ(shut.state.speed_hz, 0);
  rig.measured.permissive_closed = false;
  rig.feed(0.5 * target_pa, 1, 0.05);
  EXPECT_EQ(rig.state.cause, StopCause::outside_contact);
  EXPECT_EQ(rig.state.speed_hz, 0);
}

TEST(Hand, AfterItARunThatIsNeededGoesOnWithoutStopping) {
  Rig rig;
  rig.plant.pressure_pa = 0.8 * target_pa;
  rig.plant.tap_m3_s = 0.9e-3;
  rig.run(20);
  rig.state.hand = HandRun{50, rig.next_time_s + 20};
  rig.run(40);
  EXPECT_EQ(rig.state.mode, Mode::holding);
  for (std::size_t i = 100; i < rig.speeds_hz.size(); ++i) {
    EXPECT_GT(rig.speeds_hz[i], 30);
  }
}

TEST(FaultContact, MovesAsItsSenseSays) {
  for (auto sense : {FaultSense::closes_on_stop, FaultSense::opens_on_stop}) {
    bool const closes = sense == FaultSense::closes_on_stop;
    Rig rig;
    rig.settings.fault_contact_sense = sense;
    rig.feed(0.7 * target_pa, 5, 10);
    EXPECT_EQ(rig.fault_contact_closed, !closes);
    rig.feed(0.7 * target_pa, 3, 20);
    ASSERT_EQ(rig.state.mode, Mode::resting);
    EXPECT_EQ(rig.fault_contact_closed, closes);
    rig.feed(target_pa, 0, 600);
    ASSERT_EQ(rig.state.mode, Mode::asleep);
    EXPECT_EQ(rig.fault_contact_closed, !closes);
  }
}

}  // namespace
}  // namespace wellproof
