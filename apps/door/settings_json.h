#pragma once
// Settings as JSON, as several answers have them.
#include <string>

#include <nlohmann/json.hpp>

#include "regulator/settings.h"

namespace wellproof {

/// Each numeric setting by its key, SI.
inline nlohmann::ordered_json settings_json(Settings const& settings) {
  auto json = nlohmann::ordered_json::object();
  each_setting(settings, [&](SettingField const& field, double value) { json[std::string(field.key)] = value; });
  return json;
}

}  // namespace wellproof
