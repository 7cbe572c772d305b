#pragma once
// What happens to a plant during a run, as data: how it starts, and a script of changes from outside. A scenario knows
// taps, valves, water, volts and wires; it knows nothing of the controller's inside.
#include <cstddef>
#include <string>
#include <vector>

#include "plant/sensor.h"

namespace wellproof {

/// What a change acts on. The meaning of Change::value stands beside.
enum class Act {
  outlet_opening,  // 0 shut … 1 fully open, of Change::outlet
  house_valve,     // opening, 0 … 1
  yard_valve,      // opening, 0 … 1
  supply_share,    // of nominal volts
  static_shift,    // m deeper at rest
  inflow_share,    // of what the formation has
  sensor_fault,    // a SensorFault, as its number
  permissive,      // 1 closed, 0 open
  hand_speed,      // Hz, for Change::lasts_s
  // What wears, breaks or is out of order; units as in Trouble of plant/plant.h.
  wear,
  check_leak,
  hole,           // in the drop pipe, halfway down to the intake
  burst_at_head,  // the same where the pipe leaves the casing
  tank_charge,
  intake_loss,
  sensor_lag,    // added to the sensor's own
  sensor_zero,   // Pa, added to what it says
  sensor_noise,  // Pa, standard deviation, instead of its own
  volts_unbalance,
  supply_droop,  // share of volts that the motor's rated power at the drive's terminals takes: a generator's
  ambient_rise,
};

struct Change {
  double time_s = 0;
  Act act = Act::outlet_opening;
  std::size_t outlet = 0;
  double value = 0;
  double lasts_s = 0;
};

/// How the plant stands at time 0. Pressures at the tee.
struct Start {
  double tee_pressure_pa = 0;
  double level_drop_m = 0;     // below the level at rest
  bool line_empty = false;     // all pipe above the water at rest is drained
  bool after_power_up = true;  // the controller decides afresh; otherwise it is asleep
};

struct Scenario {
  std::string name;  // lower_case, as on the command line
  std::string says;  // one sentence
  double duration_s = 0;
  Start start;
  std::vector<Change> script;  // sorted by time
};

/// Changes that move a value evenly from one to another, in steps of at most a quarter second.
std::vector<Change> ramp(Act act, std::size_t outlet, double from_time_s, double to_time_s, double from_value,
                         double to_value);

}  // namespace wellproof
