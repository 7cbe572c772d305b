#pragma once
// What is set in a drive. The keys are those of design and file ("sleep.speed_below"); numbers are SI, pressures gauge.
#include <optional>
#include <string_view>

#include "quantity/dimension.h"

namespace wellproof {

/// How an outside contact is understood. unused: it is not wired.
enum class ContactSense { unused, closed_runs, open_runs };

/// Which way the fault contact moves when the drive has stopped by itself.
enum class FaultSense { closes_on_stop, opens_on_stop };

struct Settings {
  double pressure_target_pa = 0;
  double pressure_wake_drop_pa = 0;   // a sleeping pump starts at target − wake drop
  double pressure_stop_above_pa = 0;  // running, it stops at once above this
  double sensor_full_scale_pa = 0;    // what the drive takes the sensor's span to be
  double sensor_trim_pa = 0;          // added to every reading
  double motor_current_limit_a = 0;
  double speed_floor_hz = 0;
  double speed_ceiling_hz = 0;
  double speed_ramp_up_hz_s = 0;
  double speed_ramp_down_hz_s = 0;
  double regulator_gain_hz_pa = 0;
  double regulator_reset_time_s = 0;
  double sleep_speed_below_hz = 0;
  double sleep_hold_s = 0;
  double sleep_band_pa = 0;  // counts on the low side only
  double sleep_ramp_hz_s = 0;
  double dry_run_amps_below_a = 0;
  double dry_run_power_below_w = 0;  // of the motor's input; for a drive that guards by power
  double dry_run_delay_s = 0;
  double dry_run_rest_s = 0;
  double closed_amps_below_a = 0;
  double closed_power_below_w = 0;
  double closed_delay_s = 0;
  double long_run_limit_s = 0;
  double fill_time_s = 0;
  double fill_speed_hz = 0;
  ContactSense permissive_sense = ContactSense::unused;
  FaultSense fault_contact_sense = FaultSense::closes_on_stop;
  bool operator==(Settings const&) const = default;
};

/// A setting as it is named everywhere.
struct SettingField {
  std::string_view key;
  Dimension dimension;
  std::string_view meaning;
};

/// Calls f(SettingField, value) for each numeric setting, in the order of entry.
template <class S, class F>
void each_setting(S& s, F&& f) {
  using D = Dimension;
  f(SettingField{"pressure.target", D::pressure, "pressure to hold at the sensor"}, s.pressure_target_pa);
  f(SettingField{"pressure.wake_drop", D::pressure, "a sleeping pump restarts this far below the target"},
    s.pressure_wake_drop_pa);
  f(SettingField{"pressure.stop_above", D::pressure, "stops at once above this"}, s.pressure_stop_above_pa);
  f(SettingField{"sensor.full_scale", D::pressure, "upper end of the sensor's span"}, s.sensor_full_scale_pa);
  f(SettingField{"sensor.trim", D::pressure, "added to the reading"}, s.sensor_trim_pa);
  f(SettingField{"motor.current_limit", D::current, "most current the motor may take"}, s.motor_current_limit_a);
  f(SettingField{"speed.floor", D::frequency, "slowest speed while running"}, s.speed_floor_hz);
  f(SettingField{"speed.ceiling", D::frequency, "fastest speed"}, s.speed_ceiling_hz);
  f(SettingField{"speed.ramp_up", D::ramp, "fastest rise of speed"}, s.speed_ramp_up_hz_s);
  f(SettingField{"speed.ramp_down", D::ramp, "fastest fall of speed"}, s.speed_ramp_down_hz_s);
  f(SettingField{"regulator.gain", D::regulator_gain, "speed for each step of missing pressure"},
    s.regulator_gain_hz_pa);
  f(SettingField{"regulator.reset_time", D::time, "time in which the lasting error doubles the answer"},
    s.regulator_reset_time_s);
  f(SettingField{"sleep.speed_below", D::frequency, "at or under this speed nobody is thought to draw water"},
    s.sleep_speed_below_hz);
  f(SettingField{"sleep.hold", D::time, "for so long, before the ramp to sleep begins"}, s.sleep_hold_s);
  f(SettingField{"sleep.band", D::pressure, "pressure may fall this far below target on the way to sleep"},
    s.sleep_band_pa);
  f(SettingField{"sleep.ramp", D::ramp, "fall of speed on the way to sleep"}, s.sleep_ramp_hz_s);
  f(SettingField{"dry_run.amps_below", D::current, "under this at full speed the pump has lost its water"},
    s.dry_run_amps_below_a);
  f(SettingField{"dry_run.power_below", D::power, "the same by the motor's input power, where a drive guards by it"},
    s.dry_run_power_below_w);
  f(SettingField{"dry_run.delay", D::time, "for so long, before it stops"}, s.dry_run_delay_s);
  f(SettingField{"dry_run.rest", D::time, "wait before the next try"}, s.dry_run_rest_s);
  f(SettingField{"closed.amps_below", D::current, "under this at full speed the pump turns against a shut line"},
    s.closed_amps_below_a);
  f(SettingField{"closed.power_below", D::power, "the same by the motor's input power, where a drive guards by it"},
    s.closed_power_below_w);
  f(SettingField{"closed.delay", D::time, "for so long, before it stops"}, s.closed_delay_s);
  f(SettingField{"long_run.limit", D::time, "longest run without sleep"}, s.long_run_limit_s);
  f(SettingField{"fill.time", D::time, "line fill: longest time at fill speed"}, s.fill_time_s);
  f(SettingField{"fill.speed", D::frequency, "line fill: speed on an empty line"}, s.fill_speed_hz);
}

/// Beyond these no drive is set; they keep the simulation from figures that mean nothing (common practice, no source).
struct SettingEnds {
  double least = 0;
  double most = 0;
};
SettingEnds ends_of(SettingField const& field);

/// The field of a numeric setting, if the key is one.
std::optional<SettingField> setting_field(std::string_view key);

/// Keys of the two settings that are a choice, and their words.
inline constexpr std::string_view permissive_key = "permissive.sense";
inline constexpr std::string_view fault_contact_key = "fault_contact.sense";
std::string_view word(ContactSense sense);
std::string_view word(FaultSense sense);
std::optional<ContactSense> contact_sense(std::string_view word);
std::optional<FaultSense> fault_sense(std::string_view word);

}  // namespace wellproof
