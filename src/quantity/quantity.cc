#include "quantity/quantity.h"

#include <cmath>

#include <fmt/format.h>

#include "quantity/clean_text.h"
#include "quantity/reading.h"

namespace wellproof {

tl::expected<double, TextError> read_quantity(std::string_view text, Dimension dimension) {
  auto const clean = clean_text(text);
  if (!clean) {
    return tl::unexpected(clean.error());
  }
  Stretch const all = trimmed(*clean, {0, clean->signs.size()});
  auto const reading = read_one(*clean, all, dimension);
  if (!reading) {
    return tl::unexpected(reading.error());
  }
  if (!reading->whole && reading->unit == nullptr && dimension != Dimension::none) {
    return tl::unexpected(unit_missing(*clean, *reading, dimension));
  }
  double const value = reading->whole ? *reading->whole : in_si(reading->number, reading->unit, false);
  if (!std::isfinite(value)) {
    return tl::unexpected(clean->error(all.begin, all.end, "a number of an ordinary size"));
  }
  return value;
}

}  // namespace wellproof
