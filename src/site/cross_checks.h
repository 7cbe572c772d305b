#pragma once
// Values that are each right but cannot be right together: a pump hung deeper than the well, a plate whose amps do not
// agree with its power, a precharge above the pressure wanted.
#include "site/entered.h"

namespace wellproof {

/// Adds findings. Looks only at what the file gives; `given` holds the keys of quantities that were read.
void check_together(Entered& entered, Site const& site, std::set<std::string, std::less<>> const& given);

}  // namespace wellproof
