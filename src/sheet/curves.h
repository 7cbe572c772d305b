#pragma once
// Head against flow, as a pump is drawn on paper: what the pump gives at several speeds, and what the site asks for.
#include <vector>

#include "plant/plant.h"
#include "regulator/settings.h"

namespace wellproof {

struct FlowHead {
  double flow_m3_s = 0;
  double head_m = 0;
};

/// What the pump gives with its drive at one frequency. The rotor slips a little behind it, the more the more it works.
struct PumpLine {
  double speed_hz = 0;
  std::vector<FlowHead> points;
};

/// Heads count from the water in the well to the tee, in metres of the well's water.
struct HeadCurves {
  std::vector<PumpLine> pump;           // by rising speed, from the floor to the ceiling
  std::vector<FlowHead> water_at_rest;  // asked for to hold the target with the water at rest
  std::vector<FlowHead> drawn_down;     // the same with the level where the well stands for good at that flow
  double least_draw_m3_s = 0;
  double peak_draw_m3_s = 0;
};

/// Of one plant, the middle draw. Drawn-down levels end at the intake.
HeadCurves head_curves(Plant const& plant, Settings const& settings);

}  // namespace wellproof
