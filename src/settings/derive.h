#pragma once
// Settings computed from the site's own physics, each with the reason in figures. What cannot be set well says so, what
// stands in the way, and what would change it.
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "plant/plant.h"
#include "regulator/regulator.h"
#include "settings/quantiles.h"
#include "site/site.h"

namespace wellproof {

/// Why a setting has its value.
struct SettingReason {
  std::string key;
  std::string because;  // one or two sentences that name the figures it rests on, in the asked units
  bool feasible = true;
  std::string stands_in_the_way;  // if not feasible
  std::string would_change_it;    // what to change on the site
  bool imposed = false;           // by the user, not derived
};

/// Something that whoever acts on the plan has to know.
struct Caution {
  std::string key;  // "relief_valve", "stored_charge", …
  std::string says;
};

/// What a rest after the well was overdrawn brings: how long the peak can be drawn again, over the draws.
struct RestPoint {
  double rest_s = 0;
  Quantiles run_s;
};

struct Derived {
  Settings settings;
  std::vector<SettingReason> reasons;       // in the order of each_setting, then the two choices
  std::vector<Caution> cautions;            // those that follow from this site's figures
  std::vector<RestPoint> rest_curve;        // empty if no draw runs dry
  std::vector<std::string> not_on_drive{};  // keys of settings that the drive does not have
  double rest_run_wanted_s = 0;             // the run that the rest is to allow, in the draw that asks for most
};

/// Draws of a site built into plants: what derivation and proof look at.
std::vector<Plant> draw_plants(Site const& site, std::uint64_t seed, std::uint32_t count);

/// What the other settings are derived from. Where a drive takes these only in steps, they are derived from what it
/// takes.
struct Bounds {
  double target_pa = 0;
  double full_scale_pa = 0;
  double current_limit_a = 0;
  double floor_hz = 0;
  double ceiling_hz = 0;
  bool operator==(Bounds const&) const = default;
};
Bounds bounds_of(Settings const& settings);
void put_bounds(Settings& settings, Bounds const& bounds);

/// @param plants draws of the site, the first the middle one; at least 8
/// @param logic  how the drive's controller works
/// @param given  bounds to derive the others from, in place of those derived
Derived derive(Site const& site, std::vector<Plant> const& plants, UnitSystem units, Logic const& logic = {},
               std::optional<Bounds> const& given = std::nullopt);

}  // namespace wellproof
