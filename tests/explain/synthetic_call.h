#pragma once
// Calls made up by simulation, of sites and faults drawn by lot: what the drive's list would hold, what people would
// notice, which instruments they would read. The cause is known, so that the ranking can be held against it.
#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "explain/evidence.h"
#include "explain/world.h"
#include "quantity/chance.h"
#include "quantity/inverse_normal.h"

namespace wellproof {

struct SyntheticCall {
  std::size_t fault = 0;
  World truth;
  History history;
  std::vector<ToldShow> shows;
};

/// Things that come by lot come at other hours on other days; frost and sun at about the same.
inline std::vector<Change> at_other_hours(std::vector<Change> changes, std::string_view key, Chance& chance) {
  bool const any_hour = key == "power_outages" || key == "sensor_wire" || key == "outside_contact";
  double const reach_s = 3600 * (any_hour ? 12 : key == "volts_low" ? 2 : 0.7);
  bool const pairs = any_hour || key == "volts_low";
  double by_s = 0;
  for (std::size_t i = 0; i < changes.size(); ++i) {
    if (i == 0 || (pairs && i % 2 == 0)) {
      by_s = chance.between(-reach_s, reach_s);
    }
    auto& time_s = changes[i].time_s;
    if (time_s > 0) {
      time_s = any_hour ? std::fmod(time_s + by_s + day_long_s, day_long_s) : std::clamp(time_s + by_s, 0.0, 86399.0);
    }
  }
  return changes;
}

/// An instrument's value with its error.
inline ToldShow read_with_error(Show show, double value, double more_share, Chance& chance) {
  double const sigma = std::hypot(usual_error(show, value) / 1.96, more_share * std::abs(value));
  return {show, value + sigma * inverse_normal(chance.between(-0.499, 0.499)), sigma};
}

/// A call about a fault; nothing if the fault, by this lot, gives nothing to call about.
/// @param plant a draw of the site that no world was made from
inline std::optional<SyntheticCall> synthetic_call(Plant const& plant, Settings const& settings, Logic const& logic,
                                                   std::size_t fault, std::uint64_t seed) {
  Chance chance(seed_of(seed, 5, 5));
  auto faulty = put_fault(plant, settings, fault, seed_of(seed, 6, 6));
  auto const retry = retry_gap(settings);
  SyntheticCall call;
  call.fault = fault;
  call.truth = live_through(faulty, fault, retry, logic, seed_of(seed, 7, 0));
  if (!call.truth.calls) {
    return std::nullopt;
  }
  // Some days, of which some have the trouble; the call comes by day.
  auto const days = static_cast<int>(std::ceil(chance.by_size(0.8, 14)));
  double const call_s = 3600 * chance.between(8, 20);
  std::vector<std::vector<DayStop>> kinds_of_day{call.truth.stops};
  auto const hours = faulty.of_day;
  for (std::uint64_t other = 1; other < 3; ++other) {
    faulty.of_day = at_other_hours(hours, faults()[fault].key, chance);
    kinds_of_day.push_back(live_through(faulty, fault, retry, logic, seed_of(seed, 7, other)).stops);
  }
  call.history.now = wall_clock({2026, 8, 14}, call_s);
  for (int back = days; back >= 0; --back) {
    bool const happens = chance.says(faulty.day_share);
    auto const& stops = kinds_of_day[chance.one_of(3)];
    for (auto const& stop : stops) {
      double const age_s = call_s - stop.time_s + back * day_long_s;
      if (happens && age_s >= 0) {
        call.history.stops.push_back({stop.kind, age_s, stop.time_s, {}, {}});
      }
    }
  }
  constexpr std::size_t keeps[] = {10, 20, 30};
  call.history.keeps = keeps[chance.one_of(3)];
  auto& stops = call.history.stops;
  if (stops.size() > call.history.keeps) {
    stops.erase(stops.begin(), stops.end() - static_cast<std::ptrdiff_t>(call.history.keeps));
  }
  for (auto const symptom : all_symptoms) {
    double const share = call.truth.feels[static_cast<std::size_t>(symptom)];
    if (chance.says(share) ? chance.says(0.8) : chance.says(0.02)) {
      ToldSymptom told{symptom, true, std::nullopt};
      if (symptom == Symptom::cycles && call.truth.cycle_s) {
        told.value = *call.truth.cycle_s * chance.by_size(0.7, 1.4);
      }
      call.history.symptoms.push_back(told);
    }
  }
  if (stops.empty() && call.history.symptoms.empty()) {
    return std::nullopt;
  }
  // What the display shows with a tap open, and one or two things more.
  constexpr double opening_share = 0.08;
  auto const take = [&](Show show, double more = 0) {
    if (auto const& value = of(call.truth.shows, show)) {
      call.shows.push_back(read_with_error(show, *value, more, chance));
    }
  };
  if (chance.says(0.85)) {
    take(Show::half_drive);
    take(Show::half_speed, opening_share);
    take(Show::half_current, opening_share);
  }
  int const more = chance.says(0.5) ? 1 : 2;
  for (int i = 0; i < more; ++i) {
    switch (chance.one_of(6)) {
      case 0:
        take(Show::asleep_gauge);
        take(Show::asleep_drive);
        break;
      case 1:
        take(Show::half_volts);
        break;
      case 2:
      case 3:
        take(Show::fall_all_shut);
        break;
      case 4:
        take(Show::half_sink);
        break;
      default:
        take(Show::fall_valve_shut);
        break;
    }
  }
  return call;
}

}  // namespace wellproof
