#include <string>

#include <fmt/format.h>

#include "door/imposed.h"
#include "quantity/quantity.h"
#include "settings/derive.h"

namespace wellproof {

Findings impose(std::vector<Imposed> const& imposed, Derived& derived, UnitSystem units) {
  auto const mark = [&](Imposed const& one, std::string const& derived_text) {
    for (auto& reason : derived.reasons) {
      if (reason.key == one.key) {
        reason.imposed = true;
        reason.because =
            "Given. Derived it would be " + derived_text + (reason.because.empty() ? "." : ": ") + reason.because;
      }
    }
  };
  for (auto const& one : imposed) {
    if (one.key == permissive_key) {
      mark(one, std::string(word(derived.settings.permissive_sense)));
      derived.settings.permissive_sense =
          contact_sense(std::get<std::string>(one.value)).value_or(ContactSense::unused);
    } else if (one.key == fault_contact_key) {
      mark(one, std::string(word(derived.settings.fault_contact_sense)));
      derived.settings.fault_contact_sense =
          fault_sense(std::get<std::string>(one.value)).value_or(FaultSense::closes_on_stop);
    } else {
      each_setting(derived.settings, [&](SettingField const& field, double& value) {
        if (field.key == one.key) {
          mark(one, write_quantity(value, field.dimension, units));
          value = std::get<double>(one.value);
        }
      });
    }
  }
  if (!imposed.empty()) {
    derived.cautions.push_back(
        {"given_settings",
         fmt::format("{} given and not derived; the others were derived without regard to {}.",
                     imposed.size() == 1 ? "One setting was" : fmt::format("{} settings were", imposed.size()),
                     imposed.size() == 1 ? "it" : "them")});
  }
  Findings findings;
  auto const& s = derived.settings;
  if (!imposed.empty() && !(s.speed_floor_hz <= s.speed_ceiling_hz)) {
    findings.push_back({{"settings", 0, 0},
                        "speed.floor",
                        "\"" + write_quantity(s.speed_floor_hz, Dimension::frequency, units) + "\"",
                        "at most the ceiling of " + write_quantity(s.speed_ceiling_hz, Dimension::frequency, units),
                        ""});
  }
  return findings;
}

}  // namespace wellproof
