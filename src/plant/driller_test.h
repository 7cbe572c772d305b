#pragma once
// What a driller writes down (so much pumped for so long, and where the level then stood) told as the transmissivity of
// the formation.

namespace wellproof {

/// A short pumping test of a well, its own loss and the formation's storativity taken as known.
struct DrillerTest {
  double flow_m3_s = 0;             // > 0
  double time_s = 0;                // > 0
  double drawdown_m = 0;            // > 0
  double storativity = 0;           // > 0
  double well_radius_m = 0;         // > 0
  double bore_area_m2 = 0;          // ≥ 0: of the water that stands in the casing; 0: it is left out
  double linear_loss_s_m2 = 0;      // ≥ 0
  double quadratic_loss_s2_m5 = 0;  // ≥ 0
};

/// Transmissivity from a test, by Theis' equation for the pumped well solved for T by repetition, with the well's loss
/// taken off the drawdown: T = Q/(4π·(s − s_loss))·ln(2.25·T·t/(r_w²·S)). What the casing gave is no part of it.
/// @return [m²/s]; 0 if the loss alone is more than the drawdown
/// Range:   r_w²S/4Tt below 0.01        Outside: overstates T
/// Source:  bradbury_rothschild_1985, without its correction for a bore that does not go all through the formation
/// Checked: tests/reference/formation_reference_test.cc
double repeated_transmissivity_m2_s(DrillerTest const& test);

/// The same with the water that the casing gave (papadopulos_cooper_1967): in a small yield it is most of what was
/// pumped. Equal to the above where it is little.
/// @return [m²/s]; 0 if the casing alone could have fed the test
/// Checked: tests/reference/formation_reference_test.cc
double tested_transmissivity_m2_s(DrillerTest const& test);

}  // namespace wellproof
