#include "door/derived_text.h"

#include <exception>
#include <limits>

#include <nlohmann/json.hpp>

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;

/// JSON has no infinity and writes nothing for it.
double number(Json const& value) {
  return value.is_null() ? std::numeric_limits<double>::infinity() : value.get<double>();
}

Derived derived_of(Json const& json) {
  Derived derived;
  auto& s = derived.settings;
  each_setting(s, [&](SettingField const& field, double& value) {
    value = json.at("settings").at(std::string(field.key)).get<double>();
  });
  s.permissive_sense = contact_sense(json.at("settings").at(permissive_key).get<std::string>()).value();
  s.fault_contact_sense = fault_sense(json.at("settings").at(fault_contact_key).get<std::string>()).value();
  for (auto const& r : json.at("reasons")) {
    derived.reasons.push_back({.key = r.at(0).get<std::string>(),
                               .because = r.at(1).get<std::string>(),
                               .feasible = r.at(2).get<bool>(),
                               .stands_in_the_way = r.at(3).get<std::string>(),
                               .would_change_it = r.at(4).get<std::string>(),
                               .imposed = r.at(5).get<bool>()});
  }
  for (auto const& c : json.at("cautions")) {
    derived.cautions.push_back({.key = c.at(0).get<std::string>(), .says = c.at(1).get<std::string>()});
  }
  for (auto const& p : json.at("rest_curve")) {
    derived.rest_curve.push_back(
        {.rest_s = number(p.at(0)),
         .run_s = {.low = number(p.at(1)), .middle = number(p.at(2)), .high = number(p.at(3))}});
  }
  derived.not_on_drive = json.at("not_on_drive").get<std::vector<std::string>>();
  derived.rest_run_wanted_s = number(json.at("rest_run_wanted_s"));
  return derived;
}

}  // namespace

std::string derived_text(Derived const& derived, std::string_view ground) {
  Json reasons = Json::array();
  for (auto const& r : derived.reasons) {
    reasons.push_back({r.key, r.because, r.feasible, r.stands_in_the_way, r.would_change_it, r.imposed});
  }
  Json cautions = Json::array();
  for (auto const& c : derived.cautions) {
    cautions.push_back({c.key, c.says});
  }
  Json curve = Json::array();
  for (auto const& p : derived.rest_curve) {
    curve.push_back({p.rest_s, p.run_s.low, p.run_s.middle, p.run_s.high});
  }
  Json settings = Json::object();
  each_setting(derived.settings,
               [&](SettingField const& field, double value) { settings[std::string(field.key)] = value; });
  settings[std::string(permissive_key)] = word(derived.settings.permissive_sense);
  settings[std::string(fault_contact_key)] = word(derived.settings.fault_contact_sense);
  return Json{{"of", ground},
              {"settings", std::move(settings)},
              {"reasons", std::move(reasons)},
              {"cautions", std::move(cautions)},
              {"rest_curve", std::move(curve)},
              {"not_on_drive", derived.not_on_drive},
              {"rest_run_wanted_s", derived.rest_run_wanted_s}}
      .dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::optional<Derived> read_derived(std::string_view text, std::string_view ground) {
  Json const json = Json::parse(text.begin(), text.end(), nullptr, false);
  try {
    return json.at("of") == ground ? std::optional(derived_of(json)) : std::nullopt;
  } catch (std::exception const&) {  // something is missing, of another kind, or no choice there is
    return std::nullopt;
  }
}

}  // namespace wellproof
