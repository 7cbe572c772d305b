#pragma once
// A stretch over which the controller is calm (regulator/regulator.h): it would do the same at every sample, so that
// the plant is carried to the next thing that can happen, by steps as long as accuracy allows.
#include <cstdint>

#include "simulate/after_step.h"
#include "simulate/stage.h"

namespace wellproof {

struct CalmStretch {
  Calm limits;
  std::uint64_t next_sample = 0;  // the first that is not computed yet
  double period_s = 0;
  double end_s = 0;  // on a sample
};

/// Limits by which noise does not count: where the pressure is held it moves the speed. Where the speed stays each
/// sample is given its own noise, and the limits stay.
Calm clear_of_noise(Calm limits, Stage const& stage, Settings const& settings);

/// Whether the plant stands inside the limits, and, to be held, has settled.
bool may_pass(Stage& stage, CalmStretch const& stretch, Measured const& measured);

/// Carries the stage on until the end, or to the last sample before a limit.
Carrier::Outcome pass(Stage& stage, CalmStretch const& stretch, AfterStep const& after_step);

}  // namespace wellproof
