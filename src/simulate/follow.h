#pragma once
// A stretch over which the controller is followed (regulator/following.h): the plant is carried by steps of its own
// length with the speed moving evenly, and the samples in between are only looked at. Each is given its own noise, so
// that a comparison that noise decides is met at the sample that meets it.
#include <cstdint>

#include "regulator/following.h"
#include "simulate/after_step.h"
#include "simulate/stage.h"

namespace wellproof {

struct FollowedStretch {
  Following following;
  std::uint64_t next_sample = 0;  // the first that is not computed yet
  double period_s = 0;
  double end_s = 0;  // on a sample
};

/// Carries the stage on until the end, or to the last sample before something changes. The controller's state is left
/// ready for the sample that comes next.
Carrier::Outcome follow(Stage& stage, Settings const& settings, Logic const& logic, RegulatorState& state,
                        FollowedStretch const& stretch, AfterStep const& after_step);

}  // namespace wellproof
