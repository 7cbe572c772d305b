// Ordinary days.
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numeric>

#include "proof/hazard_makers.h"
#include "proof/household.h"

namespace wellproof {
namespace {

/// What small motors of submersible pumps bear: 300 starts a day up to ¾ hp, 100 above (common practice, no source).
double starts_per_day(Plant const& plant) {
  constexpr double small_w = 0.76 * 745.7;
  return plant.site.motor.power_w < small_w ? 300 : 100;
}

}  // namespace

Trial ordinary_morning(Plant const& plant, Settings const& settings) {
  TrialDraft d(plant, settings, "ordinary_morning", 45 * minute_s);
  d.asleep_at_target()
      .draw(outlet::least, 1, 30, 70)                          // somebody washes hands
      .draw(outlet::house, 0.25, 2 * minute_s, 10 * minute_s)  // a shower
      .draw(outlet::house, 0.2, 11 * minute_s, 12 * minute_s)  // a cistern fills
      .draw(outlet::least, 1, 13 * minute_s, 16 * minute_s)
      .draw(outlet::house, 0.5, 17 * minute_s, 24 * minute_s)  // two showers
      .draw(outlet::least, 1, 19 * minute_s, 20 * minute_s)
      .draw(outlet::house, 0.3, 26 * minute_s, 31 * minute_s)  // the washer
      .draw(outlet::least, 1, 32 * minute_s, 33 * minute_s)
      .no_stop()
      .keeps_outlet(60, 24 * minute_s, felt_share, waking_s)
      .sleeps_within(33 * minute_s, asleep_limit_s)
      .starts_at_most(0, 45 * minute_s, starts_per_hour)
      .harms_nothing();
  return d.done();
}

Trial peak_at_low_water(Plant const& plant, Settings const& settings) {
  // The season's drop is in every draw; on top of it the volts are at the lower end of what a utility may deliver for
  // short (ANSI C84.1 range B is 0.92 of nominal at the service, from memory) against the drawn voltage.
  TrialDraft d(plant, settings, "peak_at_low_water", 10 * minute_s);
  d.asleep_at_target()
      .change(0, Act::supply_share, 0.95)
      .draw(outlet::house, 1, 20, 6 * minute_s)
      .no_stop()
      .keeps_outlet(20 + waking_s, 6 * minute_s, 0.75, waking_s)
      .keeps_outlet(2 * minute_s, 6 * minute_s, 0.9, waking_s)  // the tank is back by then
      .harms_nothing();
  return d.done();
}

Trial least_draw(Plant const& plant, Settings const& settings) {
  TrialDraft d(plant, settings, "least_draw", 40 * minute_s);
  d.asleep_at_target()
      .draw(outlet::least, 1, 20, 35 * minute_s)
      .no_stop()
      .keeps_outlet(minute_s, 35 * minute_s, felt_share, waking_s)
      .starts_at_most(0, 35 * minute_s, starts_per_hour)
      .sleeps_within(35 * minute_s, asleep_limit_s)
      .harms_nothing();
  return d.done();
}

Trial quiet_house(Plant const& plant, Settings const& settings) {
  TrialDraft d(plant, settings, "quiet_house", 8 * hour_s);
  d.asleep_at_target()
      .change(0, Act::outlet_opening, 0)  // the leak is stopped: outlet 0
      .draw(outlet::house, 0.3, 30, 5 * minute_s)
      .no_stop()
      .sleeps_within(5 * minute_s, asleep_limit_s)
      .turns_shut_at_most(5 * minute_s, 8 * hour_s, asleep_limit_s)
      .starts_at_most(10 * minute_s, 8 * hour_s, 0)
      .harms_nothing();
  return d.done();
}

Trial quiet_house_with_leak(Plant const& plant, Settings const& settings) {
  // When the last tap closes the pressure overshoots and it sleeps, whatever is set; the leak tells when it has woken
  // it and the pressure has come back to the target. So the night is long.
  double const night_s = 6 * hour_s;
  TrialDraft d(plant, settings, "quiet_house_with_leak", night_s);
  d.asleep_at_target()
      .draw(outlet::house, 0.3, 30, 5 * minute_s)
      .no_stop()
      .sleeps_within(5 * minute_s, 2 * asleep_limit_s)
      .runs_at_most(10 * minute_s, night_s, 1.0 / 3)
      .starts_at_most(10 * minute_s, night_s, starts_per_hour)
      .harms_nothing();
  return d.done();
}

Trial long_irrigation(Plant const& plant, Settings const& settings) {
  auto const& zones = plant.site.demand.zones;
  double const programme_s =
      std::accumulate(zones.begin(), zones.end(), 0.0, [](double sum, auto const& zone) { return sum + zone.time_s; });
  double const duration_s = std::max(programme_s, plant.site.demand.longest_run_s);
  TrialDraft d(plant, settings, "long_irrigation", duration_s + 10 * minute_s);
  d.asleep_at_target();
  double time_s = minute_s;
  if (zones.empty()) {
    d.draw(outlet::house, 0.5, time_s, time_s + duration_s);
  } else {
    // The programme runs round, stretched to the longest run that counts as legitimate.
    double const stretch = duration_s / programme_s;
    for (std::size_t i = 0; i < zones.size(); ++i) {
      double const until_s = time_s + stretch * zones[i].time_s;
      d.draw(outlet::first_zone + i, 1, time_s, until_s);
      time_s = until_s;
    }
  }
  d.no_stop().keeps_outlet(minute_s + waking_s, minute_s + duration_s, felt_share, 2 * waking_s).harms_nothing();
  return d.done();
}

Trial two_showers_and_zone(Plant const& plant, Settings const& settings) {
  auto const& demand = plant.site.demand;
  auto const largest = std::max_element(demand.zones.begin(), demand.zones.end(),
                                        [](auto const& a, auto const& b) { return a.flow_m3_s < b.flow_m3_s; });
  double const showers_share = 0.5;
  TrialDraft d(plant, settings, "two_showers_and_zone", 20 * minute_s);
  d.asleep_at_target();
  double drawn_m3_s = showers_share * demand.peak_draw_m3_s;
  if (largest != demand.zones.end()) {
    d.draw(outlet::first_zone + static_cast<std::size_t>(largest - demand.zones.begin()), 1, 30, 16 * minute_s);
    drawn_m3_s += largest->flow_m3_s;
  } else {
    d.draw(outlet::least, 1, 30, 16 * minute_s);  // a hose in the yard
    drawn_m3_s += demand.least_draw_m3_s;
  }
  // More than was said to be drawn at once is not promised at full pressure.
  double const share = drawn_m3_s <= demand.peak_draw_m3_s ? felt_share : 0.5;
  d.draw(outlet::house, showers_share, 2 * minute_s, 12 * minute_s)
      .no_stop()
      .keeps_outlet(30 + waking_s, 16 * minute_s, share, waking_s)
      .sleeps_within(16 * minute_s, 1.5 * asleep_limit_s)  // after a long peak the water stands deep
      .harms_nothing();
  return d.done();
}

Trial household_fortnight(Plant const& plant, Settings const& settings) {
  // Two weeks of an invented household. In every draw they would take most of the proof's time; so each draw lives
  // eight hours of the same fortnight, told apart by what was drawn for it, and 128 draws together live it three times.
  constexpr std::uint32_t parts_of_day = 3;
  constexpr std::uint32_t fortnight = 14;
  constexpr std::uint64_t seed = 5;
  double const part_s = 24 * hour_s / parts_of_day;
  auto const part = static_cast<std::uint32_t>(
      std::fmod(std::floor(1e3 * plant.well.static_level_depth_m) + std::floor(1e6 * plant.tank.volume_m3),
                parts_of_day * fortnight));
  double const from_s = part % parts_of_day * part_s;
  double const most_m3_s = plant.site.demand.peak_draw_m3_s;
  auto uses = household_uses(seed, part / parts_of_day, 1);
  for (auto& use : uses) {
    use.duration_s = std::min(use.duration_s, plant.site.demand.longest_run_s);  // as the people there have said
  }
  auto const flows = drawn_together(uses);
  TrialDraft d(plant, settings, "household_fortnight", part_s);
  d.asleep_at_target();
  double turns = 1;
  for (auto const& drawn : flows) {
    if (drawn.time_s > from_s && drawn.time_s < from_s + part_s) {
      d.opens(drawn.time_s - from_s, outlet::house, std::min(1.0, drawn.flow_m3_s / most_m3_s));
      ++turns;
    }
  }
  // A busy evening may have more than a third of the day's starts, as it has of the day's uses.
  double const share = std::max(1.0 / parts_of_day, turns / static_cast<double>(flows.size() + 1));
  d.no_stop()
      .keeps_outlet(minute_s, part_s, felt_share, turns)  // half of the turns open a tap: two seconds each
      .starts_at_most(0, part_s, starts_per_day(plant) * share * parts_of_day / 24.0)
      .harms_nothing();
  return d.done();
}

}  // namespace wellproof
