
#include <nlohmann/json.hpp>

#include "door/compared.h"

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;

Json settings_of(Settings const& settings) {
  Json json = Json::object();
  each_setting(settings, [&](SettingField const& field, double value) { json[std::string(field.key)] = value; });
  json[std::string(permissive_key)] = word(settings.permissive_sense);
  json[std::string(fault_contact_key)] = word(settings.fault_contact_sense);
  return json;
}

Json set_of(ComparedSet const& set) {
  Json scenarios = Json::array();
  for (auto const& scenario : set.proof.scenarios) {
    scenarios.push_back({{"name", scenario.name},
                         {"runs", scenario.runs},
                         {"failed", scenario.failed},
                         {"worst_margin", scenario.worst.margin},
                         {"worst_draw", scenario.worst.draw}});
  }
  return {{"name", set.name},
          {"proven", set.proof.proven},
          {"settings_si", settings_of(set.settings)},
          {"scenarios", std::move(scenarios)}};
}

}  // namespace

std::string compared_json(Compared const& compared) {
  auto const& first = compared.sets[0];
  auto const& second = compared.sets[1];
  Json better_in = Json::array();
  for (std::size_t i = 0; i < first.proof.scenarios.size() && i < second.proof.scenarios.size(); ++i) {
    auto const who = better(first.proof.scenarios[i], second.proof.scenarios[i]);
    better_in.push_back({{"name", first.proof.scenarios[i].name},
                         {"better", who == Better::first    ? Json("first")
                                    : who == Better::second ? Json("second")
                                                            : Json(nullptr)}});
  }
  auto const here = settings_of(first.settings);
  auto const there = settings_of(second.settings);
  Json differing = Json::array();
  for (auto const& [key, value] : here.items()) {
    if (value != there[key]) {
      differing.push_back(key);
    }
  }
  Json const json{{"site", compared.site_name},        {"seed", first.proof.seed},
                  {"draws", first.proof.draws},        {"sets", {set_of(first), set_of(second)}},
                  {"better_in", std::move(better_in)}, {"differing_settings", std::move(differing)}};
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace wellproof
