#pragma once
// What a run leaves behind: events, running tallies for the criteria, balances of water and energy, and, if asked for,
// samples to draw.
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "regulator/regulator.h"

namespace wellproof {

struct TracePoint {
  double time_s = 0;
  double tee_pressure_pa = 0;
  double outlet_pressure_pa = 0;
  double measured_pressure_pa = 0;
  double speed_hz = 0;
  double current_a = 0;
  double input_power_w = 0;  // at the drive's terminals
  double pump_flow_m3_s = 0;
  double drawn_flow_m3_s = 0;  // all outlets
  double inflow_m3_s = 0;
  double level_depth_m = 0;
  double wetness = 1;
  double winding_c = 0;
  double pump_water_c = 0;
  double sink_c = 0;
  Mode mode = Mode::holding;
};

struct TraceEvent {
  double time_s = 0;
  RegulatorEvent what;
};

/// A span of the run that is watched by itself, and the pressures below which its time counts as served badly.
struct Window {
  double from_s = 0;
  double to_s = 0;
  double outlet_wanted_pa = 0;
  double tee_wanted_pa = 0;
};

/// What was seen within a window; times are of simulated time.
struct Tally {
  Window window;
  double least_tee_pressure_pa = 0;
  double most_tee_pressure_pa = 0;
  double least_outlet_pressure_pa = 0;
  double most_pump_pressure_pa = 0;
  double most_current_a = 0;
  double most_winding_c = 0;
  double most_pump_water_c = 0;
  double most_sink_c = 0;
  double deepest_level_m = 0;
  double least_wetness = 1;
  double pumped_m3 = 0;
  double drawn_m3 = 0;
  double inflow_m3 = 0;
  double running_s = 0;              // time with the pump turning
  double turning_shut_s = 0;         // time with it turning and no flow
  double below_outlet_wanted_s = 0;  // time with the highest outlet below Window::outlet_wanted_pa
  double below_tee_wanted_s = 0;     // time with the tee below Window::tee_wanted_pa
  std::uint32_t starts = 0;
};

enum class Ending { finished, chatter, no_convergence };
std::string_view word(Ending ending);

/// How a run went by itself.
struct RunStatistics {
  std::uint64_t samples = 0;  // controller's samples computed
  std::uint64_t steps = 0;    // accepted steps of the integrator
  std::uint64_t refused_steps = 0;
  std::uint64_t flips = 0;  // changes of mode of the plant
  double stretched_s = 0;   // simulated time passed over without samples
};

/// What should be nothing: water and energy that appeared or vanished, as a share of what was pumped and taken.
struct Balance {
  double water_share = 0;
  double energy_share = 0;
};

struct Trace {
  std::vector<TracePoint> points;  // empty unless asked for
  std::vector<TraceEvent> events;
  std::vector<Tally> tallies;        // the whole run first, then the windows asked for
  std::vector<TracePoint> at_stops;  // the instant before each stop
  Balance balance;
  RunStatistics statistics;
  Ending ending = Ending::finished;
  bool asleep_at_start = false;
  TracePoint last;
};

}  // namespace wellproof
