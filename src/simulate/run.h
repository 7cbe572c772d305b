#pragma once
// The time loop. At time t: the script's changes, then changes of mode, then the controller's sample on the values
// measured just before, then the record, then the plant is integrated to the earliest of next sample, next change and
// end. Rates hold the modes fixed and stay smooth past a crossing; a crossing found in (t0, t1] with its direction ends
// the stretch there, flips the mode and starts anew. What happens at the same time happens in one order: line full,
// motor stalls, check valve opens, check valve closes. More than a few dozen flips within one sample end the run as
// chatter: an answer like any other. While the controller is calm (regulator.h) the plant is carried over many samples
// at once.
#include <cstdint>
#include <vector>

#include "plant/plant.h"
#include "regulator/regulator.h"
#include "simulate/scenario.h"
#include "simulate/trace.h"

namespace wellproof {

/// How the controller's samples are gone through.
enum class Sampling {
  each,   // the plant makes a step for each
  ahead,  // several at once, on the pressure foreseen (simulate/ahead.h)
  calm,   // the same, and those at which a calm controller would do nothing else are passed over
};

struct RunOptions {
  Logic logic;
  std::vector<Window> windows;  // tallied besides the whole run
  bool record = false;          // keep points
  double record_every_s = 0.5;  // at least this far apart
  double tolerance = 2e-4;      // of the integrator, relative to the scales in simulate/carry.cc
  Sampling sampling = Sampling::calm;
  std::uint64_t noise_seed = 0;
};

/// One run. Never throws for what nature does.
Trace run(Plant const& plant, Settings const& settings, Scenario const& scenario, RunOptions const& options = {});

}  // namespace wellproof
