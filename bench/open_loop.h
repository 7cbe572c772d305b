#pragma once
// The second plant with its speed and taps held: what a general integrator can run through without a controller.
#include <memory>

#include "cross/cross_site.h"
#include "cross/second_run.h"

namespace wellproof {

inline constexpr double open_loop_s = 600;

struct OpenLoop {
  std::shared_ptr<Plant const> plant;  // the second plant reads from it
  second::Plant2 second;
  second::Values start{};
};

/// From rest at the target, the pump at once at 52 Hz, taps a third open.
inline OpenLoop open_loop() {
  constexpr double speed_hz = 52;
  constexpr double opening = 0.3;
  auto const kept = std::make_shared<Plant const>(cross::made_plant());
  auto const& plant = *kept;
  double const viscosity_m2_s = water_viscosity_m2_s(plant.site.well.water_temperature_c);
  OpenLoop made{kept, second::Plant2(plant, cross::pump_law(), viscosity_m2_s), {}};
  made.second.inputs.openings.assign(plant.outlets.size(), 0);
  made.second.inputs.openings[outlet::house] = opening;
  made.second.inputs.speed_hz = speed_hz;
  auto& y = made.start;
  double const pressure_pa = cross::made_settings(plant).pressure_target_pa;
  y[second::level_depth] = plant.well.static_level_depth_m;
  y[second::stored] = made.second.stored_m3(pressure_pa);
  y[second::lagged_pressure] = pressure_pa;
  y[second::winding] = y[second::shell] = y[second::pump_water] = plant.site.well.water_temperature_c;
  y[second::sink] = plant.site.drive.ambient_c;
  return made;
}

}  // namespace wellproof
