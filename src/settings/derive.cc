#include "settings/derive.h"

#include <algorithm>
#include <utility>

#include "contract/require.h"
#include "settings/study.h"
#include "site/draw.h"

namespace wellproof {

std::vector<Plant> draw_plants(Site const& site, std::uint64_t seed, std::uint32_t count) {
  std::vector<Plant> plants;
  plants.reserve(count);
  for (std::uint32_t i = 0; i < count; ++i) {
    plants.push_back(build(draw(site, seed, i)));
  }
  return plants;
}

Bounds bounds_of(Settings const& settings) {
  return {.target_pa = settings.pressure_target_pa,
          .full_scale_pa = settings.sensor_full_scale_pa,
          .current_limit_a = settings.motor_current_limit_a,
          .floor_hz = settings.speed_floor_hz,
          .ceiling_hz = settings.speed_ceiling_hz};
}

void put_bounds(Settings& settings, Bounds const& bounds) {
  settings.pressure_target_pa = bounds.target_pa;
  settings.sensor_full_scale_pa = bounds.full_scale_pa;
  settings.motor_current_limit_a = bounds.current_limit_a;
  settings.speed_floor_hz = bounds.floor_hz;
  settings.speed_ceiling_hz = bounds.ceiling_hz;
}

Derived derive(Site const& site, std::vector<Plant> const& plants, UnitSystem units, Logic const& logic,
               std::optional<Bounds> const& given) {
  require(plants.size() >= 8, "settings are derived from eight draws at least");
  Study study{.site = site,
              .plants = plants,
              .units = units,
              .logic = logic,
              .settings = {},
              .reasons = {},
              .cautions = {},
              .rest_curve = {}};
  study.logic.two_contact_switch = site.control == ControlWay::pressure_switch;

  derive_sensor(study);
  derive_target(study);
  if (given) {
    study.settings.pressure_target_pa = given->target_pa;
    study.settings.sensor_full_scale_pa = given->full_scale_pa;
  }
  derive_limits(study);
  if (given) {
    put_bounds(study.settings, *given);
  }
  check_target(study);
  derive_ramps(study);
  derive_regulator(study);
  derive_sleep(study);
  derive_guards(study);
  derive_rest(study);
  derive_fill_and_time(study);
  derive_stop_above(study);
  derive_choices(study);
  note_what_does_not_apply(study);
  add_cautions(study);

  // Reasons were found in the order in which settings need each other; they are given in the order of entry.
  Derived derived{.settings = study.settings,
                  .reasons = {},
                  .cautions = std::move(study.cautions),
                  .rest_curve = std::move(study.rest_curve),
                  .not_on_drive = std::move(study.not_on_drive),
                  .rest_run_wanted_s = study.rest_run_wanted_s};
  auto const take = [&](std::string_view key) {
    auto const found = std::find_if(study.reasons.begin(), study.reasons.end(),
                                    [&](SettingReason const& reason) { return reason.key == key; });
    require(found != study.reasons.end(), "each setting has its reason");
    derived.reasons.push_back(*found);
  };
  each_setting(study.settings, [&](SettingField const& field, double) { take(field.key); });
  take(permissive_key);
  take(fault_contact_key);
  return derived;
}

}  // namespace wellproof
