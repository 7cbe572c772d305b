#pragma once
// The map of steady operation: over speed, what the motor takes dry, shut, at the least and at the most draw, what flow
// the pump gives at the target, what head it holds.
#include <vector>

#include "plant/plant.h"
#include "regulator/settings.h"

namespace wellproof {

/// Lowest, middle and highest over the draws.
struct Spread {
  double low = 0;
  double middle = 0;
  double high = 0;
};

struct MapRow {
  double speed_hz = 0;
  Spread dry_a;
  Spread shut_a;
  Spread least_draw_a;  // at the flow of the least draw, whatever pressure that gives
  Spread most_draw_a;   // at the most the pump can pass with the tee at the wake pressure, or the peak draw if less
  Spread dry_w;         // the motor's input, as a drive that guards by power sees it
  Spread shut_w;
  Spread least_draw_w;
  Spread most_draw_w;
  Spread flow_at_target_m3_s;
  Spread shut_head_m;
  Spread shut_pressure_pa;  // at the tee
};

struct OperatingMap {
  std::vector<MapRow> rows;   // 30 to 80 Hz by 1 Hz (not above the drive's top frequency)
  Spread zero_flow_speed_hz;  // at the target with the water at rest
  Spread least_draw_speed_hz;
  double target_pa = 0;
};

OperatingMap operating_map(std::vector<Plant> const& plants, Settings const& settings);

}  // namespace wellproof
