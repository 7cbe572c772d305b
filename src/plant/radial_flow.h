#pragma once
// Drawdown around a pumped well in a confined formation of wide extent: what a pumping test is read by, and what the
// well of a site must come near to. Drawdown is how far the water stands below its level at rest, positive down.
#include <span>

namespace wellproof {

/// The well function W(u), the exponential integral.
/// @param u [-] > 0 (require): r²S/4Tt
/// Source:  theis_1935
/// Checked: tests/reference/radial_flow_reference_test.cc
/// Example: theis_well_function(1) == 0.2193839344 within 1e-9
double theis_well_function(double u);

/// Drawdown at a distance from a thin well pumped at a constant rate since time 0.
/// @param transmissivity_m2_s [m²/s] > 0 (require)
/// @param storativity         [-] > 0 (require)
/// @param distance_m          [m] > 0 (require)
/// @param time_s              [s] up to 0: no drawdown yet
/// @return                    [m]
/// Source:  theis_1935
/// Checked: tests/reference/radial_flow_reference_test.cc
/// Example: theis_drawdown_m(9.12e-3, 4.5e-3, 1.7e-4, 30, 3600) == 0.882792772 within 1e-8
double theis_drawdown_m(double flow_m3_s, double transmissivity_m2_s, double storativity, double distance_m,
                        double time_s);

/// The same by its straight line on a logarithmic axis of time.
/// Range:   u below 0.01 within 0.25 % of Theis; below 0 early on, where it does not hold
/// Source:  cooper_jacob_1946
/// Checked: tests/reference/radial_flow_reference_test.cc
/// Example: cooper_jacob_drawdown_m(9.12e-3, 4.5e-3, 1.7e-4, 30, 3600) == 0.882412204 within 1e-8
double cooper_jacob_drawdown_m(double flow_m3_s, double transmissivity_m2_s, double storativity, double distance_m,
                               double time_s);

/// A rate of pumping that holds from here until the next one begins. Before the first the well rests.
struct RateStep {
  double from_s = 0;
  double flow_m3_s = 0;  // 0: pumping has stopped, the level recovers
};

/// Drawdown at a distance from a thin well whose rate changes in steps, each answered from its beginning on; after the
/// last rate of zero this is recovery.
/// @param rates in the order of time
/// @return      [m]
/// Source:  theis_1935
/// Checked: tests/reference/radial_flow_reference_test.cc
double theis_drawdown_m(std::span<RateStep const> rates, double transmissivity_m2_s, double storativity,
                        double distance_m, double time_s);

/// F(u, α) of a well that stores water in its casing, by inversion of its Laplace transform; with a thin skin around
/// the bore, and at a distance.
/// @param u_well         [-] > 0 (require): r_w²S/4Tt
/// @param storage_ratio  [-] > 0 (require): α = r_w²S/r_c²
/// @param skin           [-] ≥ 0 (require): 2πT times the linear well loss
/// @param distance_ratio [-] ≥ 1 (require): distance over the bore's radius; from the pumped well itself where it is 1,
///                       with the skin's loss
/// Range:   within 1e-5 of the tabulated grid, relatively; α from 1e-5 to 0.1, u from 1e-8 to 10
/// Source:  papadopulos_cooper_1967; the skin after agarwal_1970; the inversion by stehfest_1970, 14 terms
/// Checked: tests/reference/radial_flow_reference_test.cc
/// Example: large_well_function(1e-3, 1e-3, 0, 1) == 0.906879 within 1e-4
double large_well_function(double u_well, double storage_ratio, double skin, double distance_ratio);

/// A formation and the well pumped in it.
struct PumpedWell {
  double transmissivity_m2_s = 0;   // > 0
  double storativity = 0;           // > 0
  double well_radius_m = 0;         // > 0: of the bore where water enters
  double casing_radius_m = 0;       // of the casing where the level moves; 0: nothing is stored in it
  double linear_loss_s_m2 = 0;      // ≥ 0: B of B·Q + C·Q²
  double quadratic_loss_s2_m5 = 0;  // ≥ 0: C
};

/// Drawdown inside the pumped well: formation, casing storage and the well's own loss B·Q + C·Q² with Q what flows in
/// from the formation. Rates are superposed; the quadratic loss enters a change of rate by its secant, so that it is
/// exact once the casing has settled and the casing never gives more than it holds.
/// @param rates in the order of time, each ≥ 0 (require)
/// @return      [m]
/// Source:  papadopulos_cooper_1967, jacob_1947
/// Checked: tests/reference/radial_flow_reference_test.cc
double pumped_well_drawdown_m(std::span<RateStep const> rates, PumpedWell const& well, double time_s);

/// Drawdown at a distance from a pumped well that stores water in its casing.
/// @param distance_m [m] ≥ the well's radius (require)
/// @return           [m]
/// Source:  papadopulos_cooper_1967
/// Checked: tests/reference/radial_flow_reference_test.cc
double drawdown_beside_m(std::span<RateStep const> rates, PumpedWell const& well, double distance_m, double time_s);

}  // namespace wellproof
