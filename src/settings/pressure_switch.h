#pragma once
// A pump that a pressure switch controls: it runs at one speed from cut-in to cut-out. The target stands for cut-out,
// target less wake drop for cut-in.
#include "settings/study.h"

namespace wellproof {

/// Cut-in: the highest outlet keeps nine tenths of what is wanted there under the served peak. Cut-out: 20 psi above,
/// as switches come (common practice, no source), more where the tank would give less than a minute's run
/// (pelikan_2006), as far as switches and ratings allow. And the precharge that goes with them. Source:  pelikan_2006
/// Checked: tests/unit/settings/pressure_switch_test.cc
void derive_switch_pressures(Study& study);

/// A pump without a drive turns with its supply: the drive's top frequency is told as the motor's.
bool is_fixed_speed(Study const& study);

/// Floor and ceiling of such a pump, with what speaks against it.
void derive_fixed_speed(Study& study);

}  // namespace wellproof
