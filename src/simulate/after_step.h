#pragma once
// Who looks on while a stretch is passed over.
#include <functional>

#include "regulator/regulator.h"

namespace wellproof {

/// Called with a step's length and what is measured at its end, noise apart.
using AfterStep = std::function<void(double duration_s, Measured const& measured)>;

}  // namespace wellproof
