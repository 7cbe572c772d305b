// Pipes and valves: shut, broken, drained.
#include "proof/hazard_makers.h"

namespace wellproof {
namespace {

/// Water runs out of a break and nobody is there to see it.
Trial runs_away(Plant const& plant, Settings const& settings, char const* name, std::size_t outlet, double opening) {
  double const duration_s = 10 * minute_s + 1.2 * settings.long_run_limit_s;
  TrialDraft d(plant, settings, name, duration_s);
  d.asleep_at_target()
      .draw(outlet, opening, 2 * minute_s, duration_s)
      .stops_within(2 * minute_s, 1.1 * settings.long_run_limit_s,
                    {StopCause::long_run, StopCause::dry_run, StopCause::closed_discharge},
                    "stops when the water runs away")
      .loses_at_most(2 * minute_s, plant.site.limits.water_loss_m3)
      .harms_nothing();
  return d.done();
}

}  // namespace

Trial shut_while_running(Plant const& plant, Settings const& settings) {
  TrialDraft d(plant, settings, "shut_while_running", 10 * minute_s);
  d.asleep_at_target()
      .draw(outlet::house, 0.7, 20, 10 * minute_s)
      .ramp_to(Act::house_valve, 3 * minute_s, 3 * minute_s + 1, 1, 0)
      .no_stop()
      .sleeps_within(3 * minute_s, asleep_limit_s)
      .turns_shut_at_most(3 * minute_s, 10 * minute_s, asleep_limit_s)
      .harms_nothing();
  return d.done();
}

Trial shut_before_sensor(Plant const& plant, Settings const& settings) {
  TrialDraft d(plant, settings, "shut_before_sensor", 12 * minute_s);
  d.asleep_at_target()
      .draw(outlet::house, 0.5, 20, 12 * minute_s)
      .ramp_to(Act::yard_valve, 3 * minute_s, 3 * minute_s + 2, 1, 0)
      .harms_nothing();
  if (plant.site.control == ControlWay::sensor) {
    d.stops_within(3 * minute_s, 2 * minute_s, {StopCause::closed_discharge, StopCause::dry_run},
                   "stops before the shut line harms the pump");
  } else {
    // Under a switch the pump may be off until the tank is down to cut-in: only its turning counts.
    d.turns_shut_at_most(3 * minute_s, 12 * minute_s, 2 * minute_s);
  }
  return d.done();
}

Trial burst_line(Plant const& plant, Settings const& settings) {
  return runs_away(plant, settings, "burst_line", outlet::burst, 1);
}

Trial first_start(Plant const& plant, Settings const& settings) {
  double const duration_s = 2 * settings.fill_time_s + 10 * minute_s;
  TrialDraft d(plant, settings, "first_start", duration_s);
  d.start({.line_empty = true})
      .no_stop()
      .tee_at_least(duration_s - 2 * minute_s, duration_s,
                    settings.pressure_target_pa - settings.pressure_wake_drop_pa - settings.sleep_band_pa - 14e3,
                    "line filled and at pressure in the end")
      .harms_nothing();
  return d.done();
}

Trial valve_partly_closed(Plant const& plant, Settings const& settings) {
  TrialDraft d(plant, settings, "valve_partly_closed", 20 * minute_s);
  d.asleep_at_target()
      .change(0, Act::yard_valve, 0.3)
      .draw(outlet::house, 0.4, 20, 8 * minute_s)
      .draw(outlet::least, 1, 9 * minute_s, 15 * minute_s)
      .no_stop()
      .keeps_outlet(20 + waking_s, 8 * minute_s, felt_share, waking_s)
      .sleeps_within(15 * minute_s, asleep_limit_s)
      .harms_nothing();
  return d.done();
}

Trial burst_far(Plant const& plant, Settings const& settings) {
  return runs_away(plant, settings, "burst_far", outlet::house, 0.35);
}

Trial burst_at_well(Plant const& plant, Settings const& settings) {
  // The pipe parts where it leaves the casing: half its bore is open, and the water runs back down the well.
  double const duration_s = 10 * minute_s + 1.2 * settings.long_run_limit_s;
  double const bore_m2 = plant.up.volume_m3() / plant.up.length_m();
  TrialDraft d(plant, settings, "burst_at_well", duration_s);
  d.asleep_at_target()
      .change(2 * minute_s, Act::burst_at_head, 0.5 * hole_discharge * bore_m2)
      .stops_within(2 * minute_s, 1.1 * settings.long_run_limit_s,
                    {StopCause::long_run, StopCause::dry_run, StopCause::closed_discharge, StopCause::over_current},
                    "stops when the water runs back")
      .harms_nothing();
  return d.done();
}

Trial power_back_on_drained_line(Plant const& plant, Settings const& settings) {
  // The power was gone for days, the line has drained through a tap that somebody left open, and it is open still.
  double const filled_s = 2 * settings.fill_time_s + 8 * minute_s;
  TrialDraft d(plant, settings, "power_back_on_drained_line", filled_s + 4 * minute_s);
  d.start({.line_empty = true})
      .change(0, Act::supply_share, 0)
      .change(30, Act::supply_share, 1)
      .opens(0, outlet::house, 0.1)
      .opens(filled_s, outlet::house, 0)
      .not_stopped_by(filled_s + 4 * minute_s, {StopCause::dry_run, StopCause::closed_discharge, StopCause::long_run,
                                                StopCause::over_current, StopCause::high_pressure})
      .tee_at_least(filled_s - 2 * minute_s, filled_s,
                    settings.pressure_target_pa - settings.pressure_wake_drop_pa - settings.sleep_band_pa - 14e3,
                    "line filled and at pressure again")
      .harms_nothing();
  return d.done();
}

}  // namespace wellproof
