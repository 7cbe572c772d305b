#pragma once
// The pressure tank: a cushion of gas behind a diaphragm.
#include "plant/slope.h"
#include "site/site.h"

namespace wellproof {

/// Gas by a polytropic law on absolute pressures. No water in it below its precharge. A lost charge is a lower
/// precharge. Checked: tests/unit/plant/tank_test.cc
struct Tank {
  double volume_m3 = 0;          // > 0
  double precharge_pa = 0;       // gauge
  double exponent = 1;           // 1 to 1.4
  double atmosphere_pa_abs = 0;  // > 0

  /// Gauge pressure with this much water in it, and its slope [Pa/m³].
  /// @param water_m3 [m³] 0 to 0.999 of the volume; beyond either end straight, with the end's slope
  Sloped pressure_pa(double water_m3) const;
  /// Water in it at a gauge pressure [m³]; 0 below the precharge.
  double water_m3(double pressure_pa) const;
};

/// Water a tank gives between two pressures, as a fraction of its volume, isothermal ("drawdown factor").
/// @param high_pa, low_pa, precharge_pa [Pa] gauge; below its precharge the tank is empty
/// @param atmosphere_pa_abs             [Pa] > 0
/// @return                              [-]
/// Source:  pelikan_2006
/// Checked: tests/reference/tank_reference_test.cc
/// Example: drawdown_factor(50, 30, 28, 14.7) == 0.2953 within 1e-4
double drawdown_factor(double high_pa, double low_pa, double precharge_pa, double atmosphere_pa_abs);

}  // namespace wellproof
