#pragma once
// What a plant must live through: an ordinary day and everything that goes wrong. A hazard makes a scenario for one
// drawn plant and says by which criteria the run is judged.
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "plant/plant.h"
#include "proof/criterion.h"
#include "simulate/run.h"
#include "simulate/scenario.h"

namespace wellproof {

/// A hazard made for one plant.
struct Trial {
  Scenario scenario;
  std::vector<Window> windows;
  std::vector<Criterion> criteria;  // window 0 is the whole run
};

struct Hazard {
  std::string_view name;   // "quiet_house_with_leak"
  std::string_view title;  // "A quiet house with a small leak"
  std::string_view says;   // what happens and what must hold, one sentence
  Trial (*make)(Plant const& plant, Settings const& settings);
};

/// All hazards, in the order of the report.
std::vector<Hazard> const& hazards();
/// By name; null if there is none.
Hazard const* hazard(std::string_view name);

}  // namespace wellproof
