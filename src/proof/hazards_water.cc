// The well and what it gives.
#include <algorithm>

#include "plant/operating.h"
#include "proof/hazard_makers.h"

namespace wellproof {
namespace {

/// The share of the formation that leaves a part of what the pump would deliver at full speed at the target.
double share_for_inflow(Plant const& plant, Settings const& settings, double part) {
  auto const full =
      point_at_speed(plant, settings.speed_ceiling_hz, settings.pressure_target_pa, plant.site.pump.setting_depth_m);
  double const most_m3_s = plant.well.flow_for_level_m3_s(plant.site.pump.setting_depth_m);
  double const wanted_m3_s = part * (full.reached ? full.flow_m3_s : plant.pump.best_flow_m3_s());
  return most_m3_s > 0 ? std::min(1.0, wanted_m3_s / most_m3_s) : 1.0;
}

Start drawn_down(Plant const& plant, Settings const& settings) {
  double const over_intake_m = plant.site.pump.setting_depth_m - plant.well.static_level_depth_m;
  return {.tee_pressure_pa = settings.pressure_target_pa,
          .level_drop_m = std::max(0.0, over_intake_m - 2 * plant.site.pump.least_submergence_m),
          .after_power_up = false};
}

}  // namespace

Trial overdrawn_well(Plant const& plant, Settings const& settings) {
  // A well that gives a third of what the pump would deliver, drawn down already, under a full draw: it snores.
  TrialDraft d(plant, settings, "overdrawn_well", 30 * minute_s);
  d.start(drawn_down(plant, settings))
      .change(0, Act::inflow_share, share_for_inflow(plant, settings, 1.0 / 3))
      .draw(outlet::house, 1, 20, 30 * minute_s)
      .stops_within(20, 15 * minute_s, {StopCause::dry_run, StopCause::closed_discharge},
                    "stops when the well is overdrawn")
      .harms_nothing();
  return d.done();
}

Trial water_lost(Plant const& plant, Settings const& settings) {
  TrialDraft d(plant, settings, "water_lost", 20 * minute_s);
  d.start(drawn_down(plant, settings))
      .change(0, Act::inflow_share, 0)
      .draw(outlet::house, 0.6, 20, 20 * minute_s)
      .stops_within(20, 8 * minute_s, {StopCause::dry_run, StopCause::closed_discharge}, "stops when the pump runs dry")
      .harms_nothing();
  return d.done();
}

Trial summer_fall(Plant const& plant, Settings const& settings) {
  // A summer in four hours: the water at rest falls to the intake, and now and then somebody draws. What a fall that
  // slow does is the same at each level, however long it takes to get there.
  double const fall_s = 4 * hour_s;
  double const end_s = 5 * hour_s;
  double const step_s = 5 * minute_s;
  double const fall_m = std::max(0.0, plant.site.pump.setting_depth_m - plant.well.static_level_depth_m);
  TrialDraft d(plant, settings, "summer_fall", end_s);
  d.asleep_at_target();
  for (int step = 1; step * step_s <= fall_s; ++step) {
    d.change(step * step_s, Act::static_shift, fall_m * step * step_s / fall_s);
  }
  for (int minute = 1; minute * minute_s < fall_s; minute += 35) {
    d.draw(outlet::house, 0.3, minute * minute_s, (minute + 3) * minute_s);
  }
  d.draw(outlet::house, 0.5, fall_s, end_s);  // a tap is left open on what the casing still holds
  d.not_stopped_by(hour_s, {})
      .keeps_outlet(minute_s + waking_s, 4 * minute_s, felt_share, waking_s)
      .stops_within(0.5 * fall_s, end_s - 0.5 * fall_s, {StopCause::dry_run, StopCause::closed_discharge},
                    "stops when the water is gone")
      .harms_nothing();
  return d.done();
}

Trial clogged_intake(Plant const& plant, Settings const& settings) {
  // Slime closes the screen while water is drawn: the loss grows threefold twice a minute until next to nothing passes.
  // That suction lost this way draws vapour too is left out.
  TrialDraft d(plant, settings, "clogged_intake", 25 * minute_s);
  d.asleep_at_target().draw(outlet::house, 0.5, 20, 25 * minute_s);
  double time_s = 2 * minute_s;
  double loss_factor = 3;
  while (loss_factor < 1e9) {
    d.change(time_s, Act::intake_loss, loss_factor);
    loss_factor *= 3;
    time_s += 30;
  }
  d.stops_within(2 * minute_s, 15 * minute_s, {StopCause::dry_run, StopCause::closed_discharge},
                 "stops when the intake is closed")
      .harms_nothing();
  return d.done();
}

}  // namespace wellproof
