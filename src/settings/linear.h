#pragma once
// A plant near one way of running it, as three straight-line balances: the column's flow, the water in tank and pipes,
// the sensor. The well's level moves in minutes and is held. Input is the drive's speed, output what the sensor says.
#include <array>
#include <complex>
#include <vector>

#include "plant/plant.h"

namespace wellproof {

struct LinearPlant {
  std::array<std::array<double, 3>, 3> by_state{};  // flow, stored water, lagged pressure
  std::array<double, 3> by_speed{};
  bool reached = false;  // the plant can be run so

  /// What the sensor says for each Hz, at an angular frequency [Pa/Hz].
  std::complex<double> response_pa_hz(double angular_1_s) const;
  /// The same at rest.
  double steady_pa_hz() const;
  /// Magnitudes of the inverse eigenvalues, the largest first [s].
  std::vector<double> time_constants_s() const;
};

/// Around a draw of the whole house held at a tee pressure.
/// @param flow_m3_s      > 0
/// @param regulated      true: fixtures that keep their flow; false: openings that follow the pressure
/// @param level_depth_m  of the water in the well
/// Checked: tests/unit/settings/linear_test.cc
LinearPlant linear_plant(Plant const& plant, double flow_m3_s, bool regulated, double tee_pressure_pa,
                         double level_depth_m);

}  // namespace wellproof
