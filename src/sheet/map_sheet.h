#pragma once
// The map of steady operation as a text table: what the current means at each speed.
#include <string>

#include "sheet/plan.h"

namespace wellproof {

std::string map_sheet(std::string const& site_name, OperatingMap const& map, UnitSystem units, bool colour);

}  // namespace wellproof
