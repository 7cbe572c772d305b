#pragma once
// The settings of a plan as a file that --settings and the book read back.
#include <string>

#include "sheet/plan.h"

namespace wellproof {

/// TOML, one line for each setting that the drive has, every digit kept.
std::string settings_file(Plan const& plan);

}  // namespace wellproof
