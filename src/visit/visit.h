#pragma once
// The acceptance tests of a visit: what to do at a pump that has been set, what to read, and the band in which each
// reading must fall. The bands come from simulating each test on many draws of the site with the settings in force, as
// the meters would show it.
//
// A band reaches from one order statistic of the draws to its mirror image, so that of sites like this one a stated
// share reads inside it, whatever the distribution. Draws are taken as independent; those of the sequence are more even
// than that.
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/dimension.h"
#include "regulator/regulator.h"
#include "regulator/settings.h"
#include "site/site.h"
#include "visit/meter.h"

namespace wellproof {

enum class VisitTestKind {
  at_rest,       // before the first start
  rotation,      // by hand at a stated speed against the shut line
  switch_round,  // a pressure switch: cut-out, cut-in, what lies between
  leak,          // all shut, pump off
  shut_line,     // a valve shut between pump and sensor: the closed-discharge guard
  small_draw,
  full_draw,
  sleep_wake,
  low_water,  // the dry-run guard, without drawing the well down
};

/// One figure to read.
/// no_least    only too much is wrong
/// shared      of the draws, how many show the figure at all; the band is of those
struct VisitReading {
  std::string_view key;   // "full_draw.current"
  std::string_view what;  // "Current"
  Meter meter = Meter::gauge;
  Dimension dimension = Dimension::none;
  double least = 0;
  double middle = 0;
  double most = 0;
  bool no_least = false;
  std::size_t shown = 0;
};

/// What bars a test from being done on this site.
enum class NotDone {
  nothing,
  rating,        // pressure could exceed what a part bears
  never_stops,   // the guard would not act
  does_not_hold  // nothing steady to read
};

struct VisitTest {
  VisitTestKind kind = VisitTestKind::at_rest;
  NotDone not_done = NotDone::nothing;
  std::vector<VisitReading> readings;  // none where it is not done
};

/// What the tests are set up with: chosen so that all draws looked at can do them.
struct VisitPlan {
  bool two_contacts = false;
  double hand_speed_hz = 0;       // of the rotation test; 0: no speed is safe against the shut line …
  double hand_start_pa = 0;       // … begun with no more than this in the tank …
  double hand_time_s = 0;         // … and read after so long, before the water in the pump is hot
  double backwards_most_pa = 0;   // what a pump that turns backwards reaches there at the most
  double leak_wait_s = 0;         // between the two looks at the gauge
  double small_draw_m3_s = 0;     // set with jug and watch
  double full_speed_hz = 0;       // of the full draw: taps are opened until the drive shows it …
  double full_pressure_pa = 0;    // … or, at fixed speed, until the gauge shows this
  double full_time_s = 0;         // and run so long
  double bucket_m3 = 0;           // 5 gal or 20 L
  double jug_m3 = 0;              // 1 qt or 1 L
  double lower_ceiling_hz = 0;    // of the low-water test: the ceiling for the time of the test
  double threshold_above = 1.15;  // … and the dry-run threshold, as a multiple of what is read at full draw
  bool valve_test_safe = true;    // shutting the valve before the sensor exceeds no class of pipe
};

struct Visit {
  VisitPlan plan;
  std::vector<VisitTest> tests;
  std::uint64_t seed = 0;
  std::size_t draws = 0;
  double inside_share = 0;      // of such sites, expected inside each band
  double inside_at_least = 0;   // the same with 95 % confidence
  double all_inside_share = 0;  // of the draws, those of which every reading is inside the bands of all others
};

struct VisitOptions {
  std::uint64_t seed = 1;
  std::uint32_t draws = 128;
  unsigned threads = 1;
  UnitSystem units = UnitSystem::us;  // of bucket, jug and the round figures to set
  Logic logic;
  double inside_share = 0.98;  // wanted; what so many draws give is told
};

/// The tests in the order in which they are done.
/// @param options draws ≥ 8 (require)
/// Source:  wilks_1941 (bands by order statistics); clopper_pearson_1934 (what they hold at the least)
/// Checked: tests/unit/visit/visit_test.cc (bands against new draws)
Visit acceptance_tests(Site const& site, Settings const& settings, VisitOptions const& options);

/// What a visit to one such site would read: a value for each reading of all tests that the way of control has, done or
/// not, in the order of visit_slots(); no number where the site does not show it. The water stands somewhere between
/// the ordinary season and the dry one, and the meters err.
std::vector<double> visit_readings(VisitPlan const& plan, Site const& site, Settings const& settings,
                                   Logic const& logic, std::uint64_t seed, std::uint32_t draw);

/// What is set up, from some draws of the site.
VisitPlan visit_plan(Site const& site, Settings const& settings, VisitOptions const& options);

/// A place for a reading.
struct VisitSlot {
  VisitTestKind test = VisitTestKind::at_rest;
  std::string_view key;
  std::string_view what;
  Meter meter = Meter::gauge;
  Dimension dimension = Dimension::none;
  bool no_least = false;
};
std::vector<VisitSlot> const& visit_slots(bool two_contacts);

std::string_view word(VisitTestKind kind);

/// The place of an order statistic from the ends of the draws, and the share of new draws that the band between it and
/// its mirror image holds on average, (n + 1 − 2·place)/(n + 1).
struct BandPlace {
  std::size_t from_end = 1;
  double inside_share = 0;
};

/// The innermost that holds at least a share of new draws; the outermost where so many draws cannot.
/// @param draws ≥ 1
/// @param inside_share wanted, in (0, 1)
/// Source:  wilks_1941
/// Checked: tests/unit/visit/visit_test.cc
BandPlace band_place(std::size_t draws, double inside_share);

}  // namespace wellproof
