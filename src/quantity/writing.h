#pragma once
// From SI to text: what write_quantity and write_range share.
#include <optional>
#include <string>

#include "quantity/quantity.h"

namespace wellproof {

/// A number with four significant digits, without trailing zeros, with an exponent only below 1e-5 and from 1e9 on.
std::string write_number(double number);

/// The unit for a quantity of this size: the customary one, but minutes, hours and days for times that are long enough.
CustomaryUnit unit_for_size(double size_si, Dimension dimension, UnitSystem system);

/// The SI unit (°C for temperatures), to fall back on.
CustomaryUnit plain_si_unit(Dimension dimension);

/// How many of the unit it is. `difference` as in in_si.
double in_unit(double value_si, CustomaryUnit const& unit, bool difference);

/// The shortest number that reads back to exactly this value with this unit; nothing if none does.
std::optional<std::string> write_number_exactly(double value_si, CustomaryUnit const& unit, bool difference);

/// The number and its unit.
std::string with_unit(std::string const& number, CustomaryUnit const& unit);

}  // namespace wellproof
