#pragma once
// The points of a pump's curve as a person gives them: a list in the site file or a table of comma-separated values in
// a file beside it, whose heads name quantity and unit ("flow_gpm,head_ft,power_hp").
#include <string_view>
#include <vector>

#include "site/entered.h"
#include "site/read.h"

namespace wellproof {

/// Points of [pump] curve or curve_file, in order of flow. Empty if there is none or it is wrong; then with findings:
/// too few points, flow not rising, head not falling, more water power than shaft power.
std::vector<CurvePoint> read_curve(Entered& entered, std::vector<Beside> const& beside);

}  // namespace wellproof
