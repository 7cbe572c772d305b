#include "visit/visit.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "contract/require.h"
#include "proof/prove.h"
#include "proof/shared_out.h"

namespace wellproof {
namespace {

using D = Dimension;
using K = VisitTestKind;
using M = Meter;

/// A figure that fewer of the draws show makes no band.
constexpr double least_shown_share = 0.25;

bool can_be_done(VisitPlan const& plan, VisitTestKind kind) {
  switch (kind) {
    case K::rotation:
      return plan.hand_speed_hz > 0;
    case K::shut_line:
      return plan.valve_test_safe;
    case K::low_water:
      return plan.two_contacts || plan.lower_ceiling_hz > 0;
    default:
      return true;
  }
}

/// The values of one reading over the draws, those that are shown, in order.
std::vector<double> shown_values(std::vector<std::vector<double>> const& visits, std::size_t slot) {
  std::vector<double> values;
  for (auto const& visit : visits) {
    if (std::isfinite(visit[slot])) {
      values.push_back(visit[slot]);
    }
  }
  std::sort(values.begin(), values.end());
  return values;
}

VisitReading reading_of(VisitSlot const& slot, std::vector<double> const& values, double inside_share) {
  auto const place = band_place(values.size(), inside_share).from_end;
  VisitReading reading{.key = slot.key, .what = slot.what, .meter = slot.meter, .dimension = slot.dimension};
  reading.no_least = slot.no_least;
  reading.shown = values.size();
  reading.least = values[place - 1];
  reading.middle = values[values.size() / 2];
  reading.most = values[values.size() - place];
  return reading;
}

/// Whether the band of all other draws would hold this one's value: it is none of the outermost itself.
bool inside_of_others(VisitReading const& reading, double value) {
  return !std::isfinite(value) || (value < reading.most && (reading.no_least || value > reading.least));
}

NotDone why_not(VisitPlan const& plan, VisitTestKind kind, bool shown) {
  if (can_be_done(plan, kind)) {
    bool const guard = kind == K::shut_line || kind == K::low_water;
    return shown ? NotDone::nothing : guard ? NotDone::never_stops : NotDone::does_not_hold;
  }
  return kind == K::low_water ? NotDone::does_not_hold : NotDone::rating;
}

}  // namespace

std::string_view word(VisitTestKind kind) {
  switch (kind) {
    case K::at_rest:
      return "at_rest";
    case K::rotation:
      return "rotation";
    case K::switch_round:
      return "switch_round";
    case K::leak:
      return "leak";
    case K::shut_line:
      return "shut_line";
    case K::small_draw:
      return "small_draw";
    case K::full_draw:
      return "full_draw";
    case K::sleep_wake:
      return "sleep_wake";
    case K::low_water:
      return "low_water";
  }
  return "";
}

std::vector<VisitSlot> const& visit_slots(bool two_contacts) {
  static std::vector<VisitSlot> const sensor{
      {K::at_rest, "at_rest.level", "Water level", M::sounder, D::length},
      {K::at_rest, "at_rest.volts", "Supply", M::voltmeter, D::voltage},
      {K::at_rest, "at_rest.drive_pressure", "Pressure, line open to the air", M::drive_pressure, D::pressure},
      {K::rotation, "rotation.gauge", "Pressure", M::gauge, D::pressure},
      {K::rotation, "rotation.current", "Current", M::clamp, D::current},
      {K::rotation, "rotation.power", "Input power", M::drive_power, D::power},
      {K::leak, "leak.fall", "Fall of pressure", M::gauge_fall, D::pressure, true},
      {K::small_draw, "small_draw.drive_pressure", "Pressure", M::drive_pressure, D::pressure},
      {K::small_draw, "small_draw.swing", "Swing of pressure in a minute", M::drive_pressure, D::pressure, true},
      {K::small_draw, "small_draw.speed", "Speed", M::drive_speed, D::frequency},
      {K::small_draw, "small_draw.current", "Current", M::clamp, D::current},
      {K::small_draw, "small_draw.spell", "Time from start to start", M::watch, D::time},
      {K::full_draw, "full_draw.drive_pressure", "Pressure", M::drive_pressure, D::pressure},
      {K::full_draw, "full_draw.gauge", "Pressure", M::gauge, D::pressure},
      {K::full_draw, "full_draw.current", "Current", M::clamp, D::current},
      {K::full_draw, "full_draw.power", "Input power", M::drive_power, D::power},
      {K::full_draw, "full_draw.bucket_time", "Time to fill the bucket", M::bucket_time, D::time},
      {K::full_draw, "full_draw.level", "Water level", M::sounder, D::length},
      {K::sleep_wake, "sleep_wake.sleep_time", "Time until the pump is off", M::watch, D::time},
      {K::sleep_wake, "sleep_wake.wake_pressure", "Pressure as it starts", M::drive_pressure, D::pressure},
      {K::sleep_wake, "sleep_wake.drawn", "Water until it starts", M::bucket_volume, D::volume},
      {K::shut_line, "shut_line.stop_time", "Time until it stops", M::watch, D::time},
      {K::shut_line, "shut_line.current", "Current just before", M::clamp, D::current},
      {K::low_water, "low_water.stop_time", "Time from start to stop", M::watch, D::time},
  };
  static std::vector<VisitSlot> const contacts{
      {K::at_rest, "at_rest.level", "Water level", M::sounder, D::length},
      {K::at_rest, "at_rest.volts", "Supply", M::voltmeter, D::voltage},
      {K::switch_round, "switch_round.cut_in", "Pressure as the pump starts", M::gauge, D::pressure},
      {K::switch_round, "switch_round.cut_out", "Pressure as it stops", M::gauge, D::pressure},
      {K::switch_round, "switch_round.fill_time", "Time from start to stop", M::watch, D::time},
      {K::switch_round, "switch_round.drawn", "Water from stop to start", M::bucket_volume, D::volume},
      {K::switch_round, "switch_round.current", "Current just before it stops", M::clamp, D::current},
      {K::leak, "leak.fall", "Fall of pressure", M::gauge_fall, D::pressure, true},
      {K::full_draw, "full_draw.current", "Current", M::clamp, D::current},
      {K::full_draw, "full_draw.bucket_time", "Time to fill the bucket", M::bucket_time, D::time},
      {K::full_draw, "full_draw.level", "Water level", M::sounder, D::length},
      {K::low_water, "low_water.stop_time", "Time from start to stop", M::watch, D::time},
  };
  return two_contacts ? contacts : sensor;
}

BandPlace band_place(std::size_t draws, double inside_share) {
  require(draws >= 1, "a band is of draws");
  auto const all = static_cast<double>(draws) + 1;
  auto const place = static_cast<std::size_t>(std::max(std::floor(0.5 * all * (1 - inside_share) + 1e-9), 1.0));
  return {place, std::max(all - 2 * static_cast<double>(place), 0.0) / all};
}

Visit acceptance_tests(Site const& site, Settings const& settings, VisitOptions const& options) {
  require(options.draws >= 8, "bands are of eight draws at least");
  Visit visit;
  visit.plan = visit_plan(site, settings, options);
  visit.seed = options.seed;
  visit.draws = options.draws;
  auto const place = band_place(options.draws, options.inside_share);
  visit.inside_share = place.inside_share;
  visit.inside_at_least = 1 - failure_upper95(static_cast<std::uint32_t>(2 * place.from_end - 1), options.draws);

  std::vector<std::vector<double>> visits(options.draws);
  shared_out(options.draws, options.threads, [&](std::size_t i) {
    visits[i] = visit_readings(visit.plan, site, settings, options.logic, options.seed, static_cast<std::uint32_t>(i));
  });

  auto const& slots = visit_slots(visit.plan.two_contacts);
  std::vector<char> all_inside(options.draws, 1);
  for (std::size_t i = 0; i < slots.size(); ++i) {
    if (visit.tests.empty() || visit.tests.back().kind != slots[i].test) {
      visit.tests.push_back({.kind = slots[i].test, .not_done = NotDone::nothing, .readings = {}});
    }
    auto& test = visit.tests.back();
    auto const values = shown_values(visits, i);
    bool const shown = static_cast<double>(values.size()) >= least_shown_share * static_cast<double>(options.draws);
    if (shown && can_be_done(visit.plan, test.kind)) {
      test.readings.push_back(reading_of(slots[i], values, options.inside_share));
      test.not_done = NotDone::nothing;
      for (std::size_t k = 0; k < visits.size(); ++k) {
        all_inside[k] = all_inside[k] != 0 && inside_of_others(test.readings.back(), visits[k][i]) ? 1 : 0;
      }
    } else if (test.readings.empty()) {
      test.not_done = why_not(visit.plan, test.kind, shown);
    }
  }
  visit.all_inside_share =
      static_cast<double>(std::count(all_inside.begin(), all_inside.end(), 1)) / static_cast<double>(options.draws);
  return visit;
}

}  // namespace wellproof
