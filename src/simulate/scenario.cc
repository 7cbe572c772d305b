#include "simulate/scenario.h"

#include <algorithm>
#include <cmath>

namespace wellproof {

std::vector<Change> ramp(Act act, std::size_t outlet, double from_time_s, double to_time_s, double from_value,
                         double to_value) {
  constexpr double step_s = 0.25;
  auto const steps = std::max(1, static_cast<int>(std::ceil((to_time_s - from_time_s) / step_s)));
  std::vector<Change> changes;
  for (int i = 1; i <= steps; ++i) {
    double const share = static_cast<double>(i) / steps;
    changes.push_back({.time_s = from_time_s + share * (to_time_s - from_time_s),
                       .act = act,
                       .outlet = outlet,
                       .value = from_value + share * (to_value - from_value)});
  }
  return changes;
}

}  // namespace wellproof
