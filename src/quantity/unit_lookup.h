#pragma once
// From what a person wrote for a unit to the unit.
#include <string>
#include <string_view>

#include "quantity/quantity.h"

namespace wellproof {

/// The unit with this plain spelling (clean_text.h), or null. Exact case first; another case is accepted where it can
/// mean one unit only and does not turn milli into mega.
Unit const* find_unit(std::string_view plain, Dimension dimension);

/// The dimension in words of the unit with this plain spelling, whatever its dimension; empty if there is none.
std::string_view dimension_of_unit(std::string_view plain);

/// The spelling of the dimension's units nearest to this one, or empty.
std::string nearest_unit(std::string_view plain, Dimension dimension);

}  // namespace wellproof
