#pragma once
// The plain site with its water level and what else is usually not known left open.
#include <gtest/gtest.h>

#include "site/read.h"

namespace wellproof {

inline Site open_site() {
  auto read = read_site(R"(
[site]
name = "Open"
[well]
static_level = "55 .. 65 ft"
specific_capacity = "1 gpm/ft"
casing = "6 in"
depth = "140 ft"
[pump]
setting = "110 ft"
rated_flow = "10 gpm"
[motor]
power = "1.5 hp"
voltage = "230 V"
service_factor_current = "5.9 A"
[supply]
voltage = "240 V"
[tank]
volume = "10 gal"
[sensor]
full_scale = "100 psi"
[demand]
outlet_pressure = "38 psi"
outlet_rise = "10 ft"
least_draw = "1 gpm"
peak_draw = "9 gpm"
)",
                        "open.toml");
  if (!read) {
    for (auto const& finding : read.error()) {
      ADD_FAILURE() << text(finding);
    }
    return {};
  }
  return read->site;
}

}  // namespace wellproof
