#pragma once
// The settings that people commonly enter without knowing the site: from a table by the motor's power, the same for
// every well. They stand here to be compared with what is derived, not to be used. Every figure is common practice, no
// source; the guards' shares lie in the middle of those met in the trade.
#include "plant/plant.h"
#include "regulator/settings.h"

namespace wellproof {

/// @param plant one draw of the site, for what stands on plates: motor, sensor
/// Checked: tests/unit/settings/common_practice_test.cc
Settings common_practice(Plant const& plant);

}  // namespace wellproof
