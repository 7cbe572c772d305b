#pragma once
// The sheet as text of 80 columns, for a terminal or a plain printer: the verdict, the settings in the order of entry
// with their reasons, what was assumed, what was run, and what to mind.
#include <string>
#include <vector>

#include "sheet/layout.h"
#include "sheet/plan.h"

namespace wellproof {

std::string terminal_sheet(Plan const& plan, bool colour);

/// Each assumption with its range and reason.
std::string assumption_list(std::vector<Assumption> const& list, UnitSystem units, Paint const& paint);

}  // namespace wellproof
