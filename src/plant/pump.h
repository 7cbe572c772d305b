#pragma once
// The pump end: head and shaft power against flow at any speed, worn or new, full of water or drawing air.
#include "plant/curve.h"
#include "plant/slope.h"
#include "site/site.h"

namespace wellproof {

/// A pump prepared from the points of its curve, its tolerance factors and its wear.
///
/// Speed by the affinity laws: flow ∝ n, head ∝ n², power ∝ n³. Wear is inner leakage: H'(Q) = H(Q + w·Q_bep·√(H'/H0)),
/// and the power follows the larger inner flow; it keeps the affinity laws. Near no head the leak is laminar, so that
/// the root keeps a finite slope. Drawing air, the stages pass a homogeneous mixture: with wetness f (volume fraction
/// of water) the head in metres of water is f·H(Q/f) and the power between dry and full is P_dry + f·(P(Q/f) − P_dry).
/// At f = 0 there is no head and only mechanical loss.
///
/// The head falls strictly with flow, also where the points are flat or droop at their start: such points are raised to
/// the head that follows them and a thousandth more. If the last point still has head, the curve goes on to its run-out
/// along H = a − b·Q² through the last two points, to at most three times the last flow, its power as at the last
/// point. Inside, both curves stand on an even grid of 64 pieces with the slopes of the curve through the points:
/// within 0.1 % of the shut-off head, and no search.
///
/// Source:  fritsch_carlson_1980 (curve)
/// Checked: tests/unit/plant/pump_test.cc, tests/law/plant_law_test.cc, tests/reference/pump_reference_test.cc
class Pump {
 public:
  Pump() = default;
  /// @param pump with three points or more, flows from 0 up rising, factors and speed > 0 (require)
  explicit Pump(PumpOf<double> const& pump);

  /// Head against flow at a rotor speed. Flow of either sign; beyond the curve with the slope of its end. That straight
  /// end keeps f·H(Q/f) finite down to f = 0: there the head falls with flow from nothing, so that the flow against no
  /// head is f times the run-out's.
  /// @param rotor_speed_rad_s [rad/s] ≥ 0
  /// @param wetness           [-] 0 to 1
  /// @return                  [m] and [s/m²]
  Sloped head_m(double flow_m3_s, double rotor_speed_rad_s, double wetness) const;

  /// Shaft torque and its slope with rotor speed at constant flow. Beyond the curve the power is that of its end.
  /// @return [N·m] and [N·m·s]
  Sloped torque_n_m(double flow_m3_s, double rotor_speed_rad_s, double wetness) const;
  double shaft_power_w(double flow_m3_s, double rotor_speed_rad_s, double wetness) const;

  /// Flow at which the curve reaches no head, at the curve's speed [m³/s].
  double runout_flow_m3_s() const { return runout_flow_m3_s_; }
  /// Flow of best efficiency at the curve's speed, before wear [m³/s].
  double best_flow_m3_s() const { return best_flow_m3_s_; }
  double curve_speed_rad_s() const { return curve_speed_rad_s_; }
  /// Head at no flow at the curve's speed, after wear [m].
  double shutoff_head_m() const { return shutoff_head_m_; }

  /// Rotor speed at which the pump just holds a head with no flow [rad/s]; 0 if there is none to hold.
  double zero_flow_speed_rad_s(double head_m) const;
  /// Flow against a head at a speed; 0 if it cannot lift that high [m³/s].
  double flow_at_head_m3_s(double head_m, double rotor_speed_rad_s) const;
  /// Rotor speed at which a flow is delivered against a head [rad/s]. Wetness under 0.01 is taken as 0.01; a head below
  /// what any speed can fall to gives the speed at which it falls furthest.
  double speed_for_rad_s(double flow_m3_s, double head_m, double wetness) const;

 private:
  MonotoneCurve head_;
  MonotoneCurve power_;
  double curve_speed_rad_s_ = 0;
  double runout_flow_m3_s_ = 0;
  double best_flow_m3_s_ = 0;
  double shutoff_head_m_ = 0;
  double dry_power_w_ = 0;
};

/// Fraction of water in what the intake takes, by the water standing over it: 0 at the intake, 1 from the least
/// submergence up, smooth between (3x² − 2x³). @return [-] and its slope [1/m]
/// Checked: tests/unit/plant/pump_test.cc
Sloped wetness(double submergence_m, double least_submergence_m);

/// How fast the water held in a pump warms when it turns against a shut line, P/(m·c).
/// @param water_held_m3 [m³] > 0
/// @return              [K/s]
/// Checked: tests/reference/pump_reference_test.cc
/// Example: churning_rate_k_s(418.6, 0.001) == 0.1002 within 1e-3
double churning_rate_k_s(double shaft_power_w, double water_held_m3);

}  // namespace wellproof
