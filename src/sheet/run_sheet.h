#pragma once
// One run as text: what happened and when, and how each criterion came out. And its samples as a table for a
// spreadsheet.
#include <string>
#include <vector>

#include "proof/hazard.h"
#include "sheet/plan.h"

namespace wellproof {

std::string run_sheet(JudgedRun const& run, bool colour);

/// The recorded samples as comma-separated values, in SI; the unit is in each column's name. Lines end as in RFC 4180.
std::string run_csv(Trace const& trace);

/// All hazards by name and title.
std::string scenario_list(std::vector<Hazard> const& hazards, bool colour);

}  // namespace wellproof
