#pragma once
// What counts as right in a run, as a figure against a limit.
#include <optional>
#include <string>
#include <vector>

#include "quantity/dimension.h"
#include "simulate/trace.h"

namespace wellproof {

enum class Measure {
  least_tee_pressure,        // Pa ≥ limit, in the window
  least_outlet_pressure,     // Pa ≥ limit
  most_tee_pressure,         // Pa ≤ limit
  most_pump_pressure,        // Pa ≤ limit, at the bottom of the drop pipe
  time_below_outlet_wanted,  // s ≤ limit
  no_stop,                   // stops ≤ limit (0), of any cause
  stopped_within,            // s from `since_s` to the first stop of one of the causes ≤ limit
  asleep_within,             // s from `since_s` to the first sleep ≤ limit
  turning_shut,              // s turning with no flow in the window ≤ limit
  running,                   // s with the pump turning in the window ≤ limit
  starts,                    // starts in the window ≤ limit
  winding,                   // °C ≤ limit
  pump_water,                // °C ≤ limit
  water_lost,                // m³ drawn in the window ≤ limit
};

struct Criterion {
  Measure measure;
  std::size_t window = 0;  // index of Trace::tallies
  double limit = 0;        // SI
  double scale = 1;        // margin 1 means this far inside the limit, > 0
  double since_s = 0;
  std::vector<StopCause> causes{};  // for stopped_within
  std::string says{};               // "keeps 40 psi at the highest outlet"
  std::string source{};             // or "common practice, no source"
};

/// One criterion judged on one run.
struct Verdict {
  bool passed = false;
  double value = 0;   // SI; infinite never: what did not happen has the run's length
  double margin = 0;  // (limit − value)/scale or its mirror: < 0 fails
};

Verdict judge(Trace const& trace, Criterion const& criterion);

Dimension dimension(Measure measure);

}  // namespace wellproof
