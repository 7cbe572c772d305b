#pragma once
// A site that was read, quantity by quantity, for a form: what it is, its limits, what was given, what was assumed and
// why.
#include <string>

#include "quantity/dimension.h"
#include "site/read.h"

namespace wellproof {

std::string checked_json(SiteRead const& read, UnitSystem units);

}  // namespace wellproof
