#include "door/settings_json.h"

#include <string>

#include <nlohmann/json.hpp>

namespace wellproof {

nlohmann::ordered_json settings_json(Settings const& settings) {
  auto json = nlohmann::ordered_json::object();
  each_setting(settings, [&](SettingField const& field, double value) { json[std::string(field.key)] = value; });
  return json;
}

}  // namespace wellproof
