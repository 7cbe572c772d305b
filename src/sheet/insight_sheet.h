#pragma once
// What the runs tell besides pass and fail, as sections of the terminal sheet and of the report: how far from trouble
// the plan is, in units, where the scenarios that bind would first fail, and what to measure next. Empty where the
// proof tells nothing of it.
#include <string>

#include "sheet/plan.h"

namespace wellproof {

std::string insight_sheet(Plan const& plan, bool colour);
std::string insight_report(Plan const& plan);

}  // namespace wellproof
