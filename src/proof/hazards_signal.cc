// Supply, sensor and contacts.
#include "proof/hazard_makers.h"

namespace wellproof {
namespace {

/// A pressure switch has no signal that could be lost: its contact stays open or shut, and under it the pump may be off
/// when something happens.
bool has_sensor(Plant const& plant) {
  return plant.site.control == ControlWay::sensor;
}

Trial sensor_failed(Plant const& plant, Settings const& settings, char const* name, SensorFault fault) {
  TrialDraft d(plant, settings, name, 8 * minute_s);
  d.asleep_at_target()
      .draw(outlet::house, 0.4, 20, 8 * minute_s)
      .change(3 * minute_s, Act::sensor_fault, static_cast<double>(fault))
      .harms_nothing();
  if (has_sensor(plant)) {
    d.stops_within(3 * minute_s, 10, {StopCause::sensor_lost}, "stops when the sensor is lost");
  }
  return d.done();
}

}  // namespace

Trial supply_sag(Plant const& plant, Settings const& settings) {
  TrialDraft d(plant, settings, "supply_sag", 20 * minute_s);
  d.asleep_at_target()
      .draw(outlet::house, 0.5, 20, 18 * minute_s)
      .change(3 * minute_s, Act::supply_share, 0.85)
      .change(8 * minute_s, Act::supply_share, 0)
      .change(8 * minute_s + 40, Act::supply_share, 1)
      .keeps_outlet(11 * minute_s, 18 * minute_s, felt_share, waking_s)
      .harms_nothing();
  if (has_sensor(plant)) {
    d.stops_within(8 * minute_s, 5, {StopCause::low_volts}, "lets go when the supply is lost");
  }
  return d.done();
}

Trial sensor_failed_low(Plant const& plant, Settings const& settings) {
  return sensor_failed(plant, settings, "sensor_failed_low", SensorFault::open);
}

Trial sensor_failed_high(Plant const& plant, Settings const& settings) {
  return sensor_failed(plant, settings, "sensor_failed_high", SensorFault::shorted);
}

Trial generator_feeds(Plant const& plant, Settings const& settings) {
  // A small generator sags by a tenth under the motor's rated power. Its frequency sags too, which a drive's rectifier
  // does not see.
  TrialDraft d(plant, settings, "generator_feeds", 12 * minute_s);
  d.asleep_at_target()
      .change(0, Act::supply_droop, 0.1)
      .draw(outlet::house, 0.8, 20, 8 * minute_s)
      .no_stop()
      .keeps_outlet(20 + waking_s, 8 * minute_s, 0.75, waking_s)
      .sleeps_within(8 * minute_s, asleep_limit_s)
      .harms_nothing();
  return d.done();
}

Trial sensor_drifts(Plant const& plant, Settings const& settings) {
  // Its zero sinks by one part in a hundred of the span, as some years bring; here in two hours. Pressure then stands
  // higher than anybody thinks.
  double const drift_pa = -0.01 * plant.site.sensor.full_scale_pa;
  double const drift_s = 2 * hour_s;
  double const end_s = 130 * minute_s;
  TrialDraft d(plant, settings, "sensor_drifts", end_s);
  d.asleep_at_target();
  for (int minute = 1; minute * minute_s <= drift_s; ++minute) {
    d.change(minute * minute_s, Act::sensor_zero, drift_pa * minute * minute_s / drift_s);
  }
  double last_s = 0;
  for (int minute = 5; minute * minute_s < end_s - 10 * minute_s; minute += 28) {
    last_s = (minute + 3) * minute_s;
    d.draw(outlet::house, 0.3, minute * minute_s, last_s);
  }
  d.no_stop()
      .sleeps_within(last_s, 2 * asleep_limit_s)  // it is to sleep, if not at once
      .starts_at_most(0, end_s, starts_per_hour)
      .keeps_outlet(5 * minute_s + waking_s, last_s, felt_share, 5 * waking_s)
      .harms_nothing();
  return d.done();
}

Trial sensor_port_plugged(Plant const& plant, Settings const& settings) {
  // Scale closes the sensor's port to a pinhole: it shows what the pressure was two minutes ago. No setting can know.
  // What must hold is what does not hang on the sensor: the relief valve, the ratings, the motor's heat.
  TrialDraft d(plant, settings, "sensor_port_plugged", 25 * minute_s);
  d.asleep_at_target()
      .change(minute_s, Act::sensor_lag, 120)
      .draw(outlet::house, 0.5, 2 * minute_s, 8 * minute_s)
      .draw(outlet::least, 1, 9 * minute_s, 12 * minute_s)
      .harms_nothing();
  return d.done();
}

Trial sensor_noisy(Plant const& plant, Settings const& settings) {
  TrialDraft d(plant, settings, "sensor_noisy", 15 * minute_s);
  d.asleep_at_target()
      .change(0, Act::sensor_noise, 0.005 * plant.site.sensor.full_scale_pa)
      .draw(outlet::house, 0.4, 20, 5 * minute_s)
      .draw(outlet::least, 1, 6 * minute_s, 9 * minute_s)
      .no_stop()
      .keeps_outlet(20 + waking_s, 5 * minute_s, felt_share, waking_s)
      .sleeps_within(9 * minute_s, 2 * asleep_limit_s)
      .starts_at_most(0, 15 * minute_s, starts_per_hour)
      .harms_nothing();
  return d.done();
}

Trial contact_opens(Plant const& plant, Settings const& settings) {
  // A float switch or a flood contact says no for five minutes. Where it is not wired, nothing may come of it.
  double const says_no = settings.permissive_sense == ContactSense::open_runs ? 1 : 0;
  double const no_s = 3 * minute_s;
  double const yes_s = 8 * minute_s;
  TrialDraft d(plant, settings, "contact_opens", 14 * minute_s);
  d.asleep_at_target()
      .change(0, Act::permissive, 1 - says_no)
      .draw(outlet::house, 0.5, 20, 12 * minute_s)
      .change(no_s, Act::permissive, says_no)
      .change(yes_s, Act::permissive, 1 - says_no);
  if (settings.permissive_sense == ContactSense::unused) {
    d.no_stop().keeps_outlet(20 + waking_s, 12 * minute_s, felt_share, waking_s);
  } else {
    d.stops_within(no_s, 2, {StopCause::outside_contact}, "lets go when the contact says no")
        .keeps_outlet(yes_s + minute_s, 12 * minute_s, felt_share, waking_s);
  }
  d.harms_nothing();
  return d.done();
}

}  // namespace wellproof
