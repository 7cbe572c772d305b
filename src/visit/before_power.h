#pragma once
// What is looked at before the drive is powered: the tank's precharge, the relief valve, the cable, the insulation.
#include <string_view>
#include <vector>

#include "plant/plant.h"
#include "regulator/settings.h"

namespace wellproof {

/// Pressures are gauge.
struct BeforePower {
  double precharge_pa = 0;        // to set, with the line open to the air
  bool precharge_told = false;    // by the site file; else by rule
  double weakest_pa = 0;          // the least rating of what hangs on the tee, over the draws
  std::string_view weakest_part;  // "the tank"
  double relief_most_pa = 0;      // to which a relief valve may be set
  // That it has to pass: what the pump gives there at its ceiling or at the supply's frequency, the higher of the two,
  // for a ceiling may be raised. Where it gives none, its flow of best efficiency.
  double relief_flow_m3_s = 0;
  double relief_told_pa = 0;    // by the site file; 0: none
  double cable_drop_share = 0;  // of the motor's volts, at its service-factor current, in the worst draw
  double cable_current_a = 0;   // that current
  double insulation_ohm = 0;    // motor and cable to earth, at the least
};

/// Share of the motor's volts that its cable may drop (nec_2020, informational notes of 210.19: 3 % for a branch).
inline constexpr double cable_drop_limit_share = 0.03;

/// The precharge: what the site file tells where it is one figure below the wake pressure. Else under a pressure switch
/// 2 psi below cut-in (pelikan_2006), and behind a drive 0.7 of the target, at most 0.9 of the wake pressure (common
/// practice, no source). The relief valve: nine tenths of the weakest rating (common practice, no source).
/// @param plants draws of the site, the first the middle one (require: not empty)
/// @param units  in whose steps the pressures to set are told
/// Source:  pelikan_2006, nec_2020, ieee_43
/// Checked: tests/unit/visit/before_power_test.cc
BeforePower before_power(Site const& site, std::vector<Plant> const& plants, Settings const& settings,
                         bool two_contacts, UnitSystem units);

/// Volts between two conductors that a three-phase cable drops, as a share of the motor's: √3·I·R/U, the power factor
/// taken as one, which is the careful side.
/// @param conductor_ohm of one conductor
/// Example: three_phase_drop_share(5.9, 0.3, 230) == 0.013329 within 1e-4
double three_phase_drop_share(double current_a, double conductor_ohm, double voltage_v);

}  // namespace wellproof
