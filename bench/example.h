#pragma once
// The examples' sites, drawn and set, and clocks.
#include <cstdint>
#include <string>
#include <vector>

#include "plant/plant.h"
#include "regulator/settings.h"
#include "simulate/scenario.h"
#include "site/site.h"

namespace wellproof {

/// An example drawn and set; without plants where it cannot be read.
struct Example {
  Site site;
  std::vector<Plant> plants;
  Settings settings;
};
Example example(std::string const& name, std::uint32_t draws);

/// The end of a morning's ten minutes, and two days that begin with them: what happens is the same.
Scenario ten_minutes_of(double duration_s, Settings const& settings);

/// Seconds by the clock, and seconds of processor time of this thread.
double wall_s();
double thread_s();

}  // namespace wellproof
