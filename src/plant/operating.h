#pragma once
// Steady operation of a plant, solved directly: what speed, current and flow belong together when nothing changes.
// These are the figures that settings are derived from.
#include "plant/plant.h"

namespace wellproof {

struct OperatingPoint {
  double speed_hz = 0;
  double flow_m3_s = 0;
  double tee_pressure_pa = 0;
  double level_depth_m = 0;
  double wetness = 1;
  double head_m = 0;
  MotorPoint motor;
  bool reached = false;  // false: the plant cannot be there (head or torque not enough)
};

/// Dry: no water in the pump.
OperatingPoint dry_point(Plant const& plant, double speed_hz, double supply_share = 1);
/// Shut: full of water, no flow.
OperatingPoint shut_point(Plant const& plant, double speed_hz, double supply_share = 1);
/// At a speed, against a tee pressure, with the water at a level: the flow that results.
OperatingPoint point_at_speed(Plant const& plant, double speed_hz, double tee_pressure_pa, double level_depth_m,
                              double supply_share = 1);
/// At a speed, passing a flow, with the water at a level: the tee pressure that results, below 0 where the pump does
/// not lift that flow to the tee.
OperatingPoint point_passing(Plant const& plant, double speed_hz, double flow_m3_s, double level_depth_m,
                             double supply_share = 1);
/// The speed that delivers a flow at a tee pressure.
OperatingPoint point_for_flow(Plant const& plant, double flow_m3_s, double tee_pressure_pa, double level_depth_m,
                              double supply_share = 1);
/// Drive frequency at which the pump just holds the tee pressure with no flow.
double zero_flow_speed_hz(Plant const& plant, double tee_pressure_pa, double level_depth_m, double supply_share = 1);
/// Full speed against lost pressure with the well drawn down: pump passes what the well gives, mixed with air.
OperatingPoint snoring_point(Plant const& plant, double speed_hz, double supply_share = 1, double inflow_share = 1);

}  // namespace wellproof
