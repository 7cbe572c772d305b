#pragma once
// Pipe running full: what friction and fittings take from the head, how heavy the water in it is to move, how much it
// holds. A path is the runs that the same flow passes one after the other, prepared as one law.
#include <vector>

#include "plant/curve.h"
#include "plant/slope.h"
#include "site/site.h"

namespace wellproof {

/// Darcy friction factor over laminar, transitional and turbulent flow.
/// @param reynolds           [-] > 0
/// @param relative_roughness [-] 0 (smooth) to 0.05
/// Range:   as published; within 4 % of Colebrook where the flow is turbulent
/// Source:  churchill_1977
/// Checked: tests/reference/pipe_reference_test.cc
/// Example: friction_factor(1000, 0) == 0.064 within 1e-6
double friction_factor(double reynolds, double relative_roughness);

/// Head lost to friction in a straight round pipe running full, Darcy-Weisbach with Churchill's factor.
/// @param flow_m3_s [m³/s] any sign; the head takes it
/// @param length_m  [m] ≥ 0
/// @param diameter_m [m] > 0, inside
/// @param roughness_m [m] ≥ 0; 0 is smooth
/// @param viscosity_m2_s [m²/s] > 0, kinematic
/// @return          [m] of the water flowing
/// Source:  churchill_1977
/// Checked: tests/reference/pipe_reference_test.cc
/// Example: friction_head_m(1e-6, 100, 0.02, 0, 1e-6) == 0.0025967 within 1e-4
double friction_head_m(double flow_m3_s, double length_m, double diameter_m, double roughness_m, double viscosity_m2_s);

/// Head lost in fittings, K·v²/2g.
/// @param loss_factor [-] sum of K
/// @return            [m], the sign of the flow
/// Checked: tests/unit/plant/pipe_test.cc
/// Example: minor_head_m(0.001, 0.03, 2) == 0.204086 within 1e-5
double minor_head_m(double flow_m3_s, double diameter_m, double loss_factor);

/// Head lost to friction after Hazen and Williams, for where only C is known: turbulent water near 15 °C.
/// @param coefficient C [-], 150 for new plastic
/// @return            [m], the sign of the flow
/// Source:  williams_hazen_1905
/// Checked: tests/reference/pipe_reference_test.cc
/// Example: hazen_williams_head_m(6.309e-4, 30.48, 0.0266446, 150) == 1.68 within 0.03
double hazen_williams_head_m(double flow_m3_s, double length_m, double diameter_m, double coefficient);

/// Runs in series as one law of flow, prepared once for a plant.
/// Checked: tests/unit/plant/pipe_test.cc
class Path {
 public:
  Path() = default;
  /// @param runs           none: no loss, no inertance
  /// @param viscosity_m2_s [m²/s] > 0 (require), of the well's water
  /// @param most_flow_m3_s [m³/s] > 0 (require): the law is tabulated up to here; beyond it the resistance goes on in a
  ///                       straight line of the root of the flow
  Path(std::vector<PipeRunOf<double>> const& runs, double viscosity_m2_s, double most_flow_m3_s);

  /// Head lost at a flow of either sign, and its slope [s/m²]. Within 0.1 % of the sum over the runs; exact in the
  /// limit of no flow, where the flow is laminar and the slope finite.
  Sloped loss_m(double flow_m3_s) const;
  /// Σ L/(g·A) [s²/m²]: head that it takes to speed the flow up, for each m³/s in a second.
  double inertance_s2_m2() const { return inertance_s2_m2_; }
  double volume_m3() const { return volume_m3_; }
  double rise_m() const { return rise_m_; }
  double length_m() const { return length_m_; }
  /// Smallest pressure class of the runs [Pa]; 1e9 if none states one.
  double rating_pa() const { return rating_pa_; }

 private:
  MonotoneCurve resistance_by_root_flow_;  // loss/flow against sqrt(flow): odd and linear at rest by its form
  double inertance_s2_m2_ = 0;
  double volume_m3_ = 0;
  double rise_m_ = 0;
  double length_m_ = 0;
  double rating_pa_ = 1e9;
};

/// Largest rise of pressure when a flow is stopped at once, ρ·a·Δv.
/// @return [Pa]
/// Source:  joukowsky_1898
/// Checked: tests/reference/pipe_reference_test.cc
/// Example: joukowsky_pa(1000, 1200, 1) == 1.2e6 within 1e-6
double joukowsky_pa(double density_kg_m3, double wave_speed_m_s, double speed_change_m_s);

/// Speed of a pressure wave in a thin-walled pipe.
/// @param bulk_pa modulus of the water, @param young_pa of the wall, @param wall_m its thickness
/// @return [m/s]
/// Source:  wylie_streeter_1993
/// Checked: tests/reference/pipe_reference_test.cc
/// Example: wave_speed_m_s(2.2e9, 1000, 0.5, 0.01, 200e9) == 1191.37 within 0.05
double wave_speed_m_s(double bulk_pa, double density_kg_m3, double diameter_m, double wall_m, double young_pa);

}  // namespace wellproof
