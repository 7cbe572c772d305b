#pragma once
// Plan, map and run as JSON: numbers in SI that read back to the same doubles, null where there is no number, keys in a
// fixed order.
#include <string>

#include "sheet/plan.h"

namespace wellproof {

std::string plan_json(Plan const& plan);
std::string map_json(std::string const& site_name, OperatingMap const& map);
std::string run_json(JudgedRun const& run);

}  // namespace wellproof
