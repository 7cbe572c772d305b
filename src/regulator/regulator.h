#pragma once
// What a drive's controller does at each sample: hold the pressure by PI, sleep and wake, guard the pump, fill an empty
// line, rest and try again. It knows measured values and settings, never the plant.
//
// Order within a sample: contacts and faults of signal and supply; a run by hand; high pressure; guards; the mode's own
// business (fill, hold, ease to sleep, rest, wake); current limit; ramps. At most one of them changes the mode.
//
// What it reads is the signal, held within the ends that a working sensor can say, plus trim. A pump that starts is
// given 0 Hz at the sample that decides it and rises from the next on, so that the length of the sleep before does not
// matter.
#include <cstdint>
#include <limits>
#include <optional>
#include <string_view>

#include "regulator/settings.h"

namespace wellproof {

/// What the guards against a dry pump and a shut line look at. A drive that reckons the motor's input power tells a dry
/// pump from a loaded one better: the magnetising current, which is most of what a dry pump draws, carries none of it.
enum class GuardBy { current, power };

/// Where they look. near_ceiling: at nearly full speed with the pressure lost. any_speed: whenever the drive regulates
/// or fills, by one fixed threshold, whatever speed and pressure are. That costs: ordinary work at low speed loads a
/// motor less than a dry pump at full speed may.
enum class GuardWhere { near_ceiling, any_speed };

/// How it is found that nobody draws. slow_speed: the speed has stayed at or under one that is set. nudge: at whatever
/// speed, when the pressure has been held for the hold time the drive lets the speed fall and watches whether the
/// pressure falls with it; where somebody draws it does, and the drive tries again after the next hold time.
enum class SleepTest { slow_speed, nudge };

/// When a second gain acts in place of the first.
enum class SecondGain { none, below_speed, large_error };

/// How the controller works, apart from what is set in it. The defaults are those of a plain drive; a drive card may
/// say otherwise.
struct Logic {
  bool two_contact_switch = false;     // fixed speed between two pressures instead of PI on a sensor
  double guard_speed_share = 0.97;     // amps guards act only from this share of the speed ceiling up …
  double guard_pressure_share = 0.97;  // … and only while pressure is below this share of the target
  double current_filter_s = 1.0;       // time constant on the current that the guards see
  double start_speed_hz = 30;          // passed in at most start_time_s on the way up and down (thrust bearing)
  double start_time_s = 1.0;
  double sensor_low_share = -0.05;  // of full scale: a signal below or above is no pressure
  double sensor_high_share = 1.10;
  double sensor_fault_delay_s = 0.5;
  double low_volts_share = 0.75;      // of nominal supply: off at once
  double supply_return_delay_s = 10;  // steady supply before it starts again
  double overcurrent_share = 1.5;     // of the current limit, for overcurrent_delay_s: the motor does not turn
  double overcurrent_delay_s = 3;
  double high_pressure_rest_s = 10;  // at least, after a stop on high pressure
  double sink_limit_c = 90;
  double full_line_share = 0.5;  // of the target: from here the line counts as full
  GuardBy guard_by = GuardBy::current;
  GuardWhere guard_where = GuardWhere::near_ceiling;
  SleepTest sleep_test = SleepTest::slow_speed;
  double rest_growth = 1;  // each further rest before the next sleep is so many times as long as the one before …
  double longest_rest_s = 86400;  // … up to this
  bool long_run_guard = true;
  bool line_fill = true;
  SecondGain second_gain = SecondGain::none;
  double second_gain_below_hz = 0;  // for below_speed
  double second_gain_error_pa = 0;  // for large_error: with more pressure missing or over than this
  double second_gain_share = 1;     // of the first gain
};

/// Whether a setting means anything to a controller that works so: by the load that its guards look at, how it finds
/// sleep, and what it does not have.
bool applies(Logic const& logic, std::string_view key);

enum class Mode {
  waiting,  // permissive open, supply or sensor lost; starts by itself when they return
  asleep,   // pressure holds, pump off
  filling,  // at fill speed on an empty line
  holding,  // PI (or fixed speed between two contacts)
  easing,   // the slow ramp down to sleep
  resting,  // after a guard acted, until the next try
  stopped,  // for good, until a person resets it
  hand,     // at a set speed for a set time
};

enum class StopCause {
  dry_run,
  closed_discharge,
  long_run,
  over_current,
  low_volts,
  drive_hot,
  sensor_lost,
  outside_contact,
  high_pressure,
};

/// Every cause, in the order of the reports.
inline constexpr StopCause all_stop_kinds[] = {
    StopCause::dry_run,      StopCause::closed_discharge, StopCause::long_run,
    StopCause::over_current, StopCause::low_volts,        StopCause::drive_hot,
    StopCause::sensor_lost,  StopCause::outside_contact,  StopCause::high_pressure};
inline constexpr std::size_t stop_kinds = std::size(all_stop_kinds);

std::string_view word(Mode mode);
std::string_view word(StopCause cause);

/// What the drive knows at a sample.
struct Measured {
  double time_s = 0;
  double pressure_pa = 0;  // the sensor's signal scaled by its true span, before trim
  double current_a = 0;
  double power_w = 0;       // the motor's input at the drive's terminals
  double supply_share = 1;  // of nominal volts
  double sink_c = 25;
  bool permissive_closed = true;
};

/// A person's command for a run by hand.
struct HandRun {
  double speed_hz = 0;
  double until_time_s = 0;
};

/// All that the controller remembers. Timers are kept as the time at which they started, so that a stretch of time can
/// be passed over without touching them.
struct RegulatorState {
  Mode mode = Mode::holding;
  bool powered_up = false;  // the first sample after power decides between fill and hold
  double speed_hz = 0;      // commanded now
  double integral_hz = 0;
  double last_time_s = 0;
  double filtered_current_a = 0;
  double filtered_power_w = 0;
  double mode_since_s = 0;
  double running_since_s = 0;
  std::optional<double> slow_since_s;  // at or under the sleep speed with pressure held
  std::optional<double> dry_since_s;   // filtered load under the threshold, gate open
  std::optional<double> closed_since_s;
  std::optional<double> overcurrent_since_s;
  std::optional<double> sensor_bad_since_s;
  std::optional<double> supply_good_since_s;  // waiting: supply and signal are back
  double eased_from_hz = 0;                   // speed at which the last ramp to sleep began
  double filtered_speed_hz = 0;               // while holding
  double filtered_error_pa = 0;               // while holding and easing
  bool second_gain = false;                   // the second gain acts
  std::optional<double> settled_since_s;      // holding: no error to speak of, nothing left for the integral to do
  std::optional<StopCause> cause;             // of the last stop
  std::uint32_t tries = 0;                    // restarts after a rest since the last sleep
  std::optional<HandRun> hand;
};

/// What changed at this sample.
struct RegulatorEvent {
  enum class Kind { started, slept, woke, stopped, retried, filled, gave_up_sleep, mode } kind = Kind::mode;
  Mode mode = Mode::holding;
  std::optional<StopCause> cause;
};

/// One sample. Returns the speed to put out until the next (0: off), and what changed.
struct Command {
  double speed_hz = 0;
  bool fault_contact_closed = false;
  std::optional<RegulatorEvent> event;
};
Command sample(Settings const& settings, Logic const& logic, RegulatorState& state, Measured const& measured);

/// What the controller would go on doing at every sample while the measured values stay inside these limits: then the
/// samples need not be computed one by one. Contacts and a person's commands are taken to stay as they are. The first
/// sample at or after until_time_s, and the first with a value outside its limits, must be computed.
struct Calm {
  enum class Kind {
    none,     // ask at each sample
    steady,   // the speed put out stays what it is
    holding,  // it will hold the pressure where it is, by whatever speed that takes
  };
  static constexpr double infinity = std::numeric_limits<double>::infinity();
  Kind kind = Kind::none;
  double until_time_s = infinity;        // a timer ends
  double least_pressure_pa = -infinity;  // of Measured::pressure_pa
  double most_pressure_pa = infinity;
  double least_current_a = -infinity;
  double most_current_a = infinity;
  double least_power_w = -infinity;
  double most_power_w = infinity;
  double least_supply_share = -infinity;
  double most_supply_share = infinity;
  double least_sink_c = -infinity;
  double most_sink_c = infinity;
  double least_speed_hz = 0;  // for holding: outside, a timer starts or a limit is met
  double most_speed_hz = infinity;
};
Calm calm(Settings const& settings, Logic const& logic, RegulatorState const& state, Measured const& measured);

/// After a stretch: the filters have settled on what was measured last (what drifts loses its filter's lag); for a
/// holding stretch the speed is now this, and the integral has moved as far as the speed. The time of these values
/// becomes the time of the last sample: give the sample time before the next one, or the next one's own and it finds no
/// time passed. Timers run on untouched.
void resume(Settings const& settings, Logic const& logic, RegulatorState& state, Measured const& measured,
            double speed_hz);

}  // namespace wellproof
