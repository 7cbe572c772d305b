#include "door/derived_text.h"

#include <array>
#include <limits>
#include <stdexcept>

#include <nlohmann/json.hpp>

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;

/// FNV-1a of 64 bits (Fowler, Noll, Vo): which ground it was, in few bytes.
std::string mark_of(std::string_view ground) {
  std::uint64_t mark = 14695981039346656037U;
  for (char const sign : ground) {
    mark = (mark ^ static_cast<unsigned char>(sign)) * 1099511628211U;
  }
  return std::to_string(mark);
}

/// JSON has no infinity.
Json number(double value) {
  return value < std::numeric_limits<double>::infinity() ? Json(value) : Json(nullptr);
}

double number(Json const& value) {
  return value.is_null() ? std::numeric_limits<double>::infinity() : value.get<double>();
}

Derived derived_of(Json const& json) {
  Derived derived;
  auto& s = derived.settings;
  each_setting(s, [&](SettingField const& field, double& value) {
    value = json.at("settings").at(std::string(field.key)).get<double>();
  });
  s.permissive_sense = std::array{ContactSense::unused, ContactSense::closed_runs, ContactSense::open_runs}.at(
      json.at("permissive_sense").get<std::size_t>());
  s.fault_contact_sense = std::array{FaultSense::closes_on_stop, FaultSense::opens_on_stop}.at(
      json.at("fault_contact_sense").get<std::size_t>());
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
  Json settings = Json::object();
  each_setting(derived.settings,
               [&](SettingField const& field, double value) { settings[std::string(field.key)] = value; });
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
    curve.push_back({number(p.rest_s), number(p.run_s.low), number(p.run_s.middle), number(p.run_s.high)});
  }
  return Json{{"of", mark_of(ground)},
              {"settings", std::move(settings)},
              {"permissive_sense", static_cast<int>(derived.settings.permissive_sense)},
              {"fault_contact_sense", static_cast<int>(derived.settings.fault_contact_sense)},
              {"reasons", std::move(reasons)},
              {"cautions", std::move(cautions)},
              {"rest_curve", std::move(curve)},
              {"not_on_drive", derived.not_on_drive},
              {"rest_run_wanted_s", number(derived.rest_run_wanted_s)}}
      .dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::optional<Derived> read_derived(std::string_view text, std::string_view ground) {
  Json const json = Json::parse(text.begin(), text.end(), nullptr, false);
  if (!json.is_object()) {
    return std::nullopt;
  }
  try {
    if (json.at("of").get<std::string>() == mark_of(ground)) {
      return derived_of(json);
    }
  } catch (Json::exception const&) {  // something is missing, or of another kind
  } catch (std::out_of_range const&) {
  }
  return std::nullopt;
}

}  // namespace wellproof
