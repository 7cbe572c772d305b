#pragma once
// How near the regulator comes to swinging on a site, as text for a terminal and as JSON.
#include <optional>
#include <string>
#include <vector>

#include "proof/prove.h"
#include "settings/hunting_advice.h"
#include "settings/loops.h"

namespace wellproof {

/// The regulator's margins with one set of settings.
struct RegulatorCheck {
  Settings settings;
  std::vector<RegulatorLoop> loops;  // none: no draw holds the target
  NearestLoops nearest;
  PlanMargin swing;  // under an even draw, in the simulation
};

struct Tuning {
  std::string site_name;
  UnitSystem units = UnitSystem::us;
  std::size_t draws = 0;
  RegulatorCheck as_set;
  std::optional<SwingSeen> seen{};
  std::optional<HuntingAdvice> advice{};
  std::optional<RegulatorCheck> as_advised{};  // where the advice changes something
};

std::string tuning_sheet(Tuning const& tuning, bool colour);
std::string tuning_json(Tuning const& tuning);

}  // namespace wellproof
