#pragma once
// What a pump or a motor of its class is like, where nobody has the curve or the plate: on the phone all that is known
// is "a ten-gallon pump, one and a half horse". These are no maker's figures: the curve's shape is that of small
// multi-stage pumps of mixed flow in general, the plate that of two-pole three-phase motors for 4-in wells, both
// common practice without a source. The reader declares the spread that goes with them.
#include <vector>

#include "site/site.h"

namespace wellproof {

/// Best efficiency of a pump end built for this flow; larger pumps are better ones.
/// @param flow_m3_s [m³/s] > 0
/// @return          [1]    0.45 at 5 gpm rising with the logarithm to 0.65 at 40 gpm; held between 0.35 and 0.72
/// Source: common practice, no source
/// Example: typical_pump_efficiency(6.309e-4) == 0.5167 within 1e-3
double typical_pump_efficiency(double flow_m3_s);

/// Head at best-efficiency flow that a shaft power pays for: H = η P / (ρ g Q).
/// @param flow_m3_s     [m³/s] > 0
/// @param most_power_w  [W]    the largest shaft power along the curve
/// @return              [m]
/// Example: typical_head_m(6.309e-4, 1287) == 104.3 within 0.2
double typical_head_m(double flow_m3_s, double most_power_w);

/// The largest shaft power of a pump that lifts this flow to this head: the inverse of typical_head_m.
double typical_most_power_w(double flow_m3_s, double head_m);

/// The head at best-efficiency flow that this many stages give in a 4-in pump turning at this speed: about 6.3 m each
/// at 3450 rpm, with the square of the speed.
double typical_stages_head_m(double stages, double speed_rad_s);

/// A typical curve: head at zero flow 1.32 of that at best-efficiency flow, run-out at 1.55 of that flow; shaft power
/// shut 0.55 of its largest, which is reached at 1.2 of that flow.
/// @param flow_m3_s     [m³/s] best-efficiency flow, > 0
/// @param head_m        [m]    at that flow, > 0
/// @param most_power_w  [W]    largest of the curve, > 0
std::vector<CurvePoint> typical_curve(double flow_m3_s, double head_m, double most_power_w);

/// A typical nameplate.
struct TypicalPlate {
  double service_factor;
  double service_factor_current_a;
  double full_load_current_a;
  double efficiency;    // at rated power
  double power_factor;  // at rated power
  double slip;          // at rated power
};

/// @param power_w   [W] rated, > 0
/// @param voltage_v [V] rated, > 0; currents go with 230 V / voltage
TypicalPlate typical_plate(double power_w, double voltage_v);

/// The smallest usual rating whose service-factor power covers this shaft power.
/// @return [W]
double typical_motor_power_w(double most_shaft_power_w);

/// Best-efficiency flow of a curve: where water power over shaft power is largest, by its points and a parabola through
/// the best and its neighbours.
double best_efficiency_flow_m3_s(std::vector<CurvePoint> const& curve);

/// Head of a curve between its points, straight.
double curve_head_m(std::vector<CurvePoint> const& curve, double flow_m3_s);

/// Largest shaft power of its points.
double most_power_w(std::vector<CurvePoint> const& curve);

}  // namespace wellproof
