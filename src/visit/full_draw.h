#pragma once
// The taps of the full draw, opened until the drive shows a speed and left as they are.
#include "plant/plant.h"

namespace wellproof {

/// Flow through taps that are opened until the pump turns with this speed at this pressure at the tee, for so long.
/// @return [m³/s] 0 where the pump gives nothing there
double flow_at_m3_s(Plant const& plant, double speed_hz, double tee_pressure_pa, double lasts_s);

/// The pressure at the tee that such taps, left as they are, come to at another speed [Pa].
double sagged_pressure_pa(Plant const& plant, double speed_hz, double flow_m3_s, double at_pressure_pa, double lasts_s);

}  // namespace wellproof
