#include <algorithm>

#include <nlohmann/json.hpp>

#include "quantity/range.h"
#include "sheet/site_fit.h"

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;

Json unknown_of(FittedUnknown const& unknown) {
  return {{"key", unknown.key},
          {"before", write_range_exactly(unknown.before, unknown.dimension, UnitSystem::metric)},
          {"after", write_range_exactly(unknown.after, unknown.dimension, UnitSystem::metric)},
          {"value", unknown.value},
          {"low95", unknown.low},
          {"high95", unknown.high},
          {"shift_sigmas", unknown.shift_sigmas},
          {"width_share", unknown.width_share},
          {"tells", unknown.tells()}};
}

Json sensor_of(FittedSite const& fitted) {
  if (!fitted.fit.sensor) {
    return nullptr;
  }
  auto const& sensor = *fitted.fit.sensor;
  return {{"pairs", sensor.pairs},
          {"zero_pa", sensor.zero_pa},
          {"zero_half95_pa", sensor.zero_half_95_pa},
          {"gain", sensor.gain},
          {"gain_half95", sensor.gain_half_95},
          {"span_known", sensor.span_known},
          {"at_pa", sensor.at_pa},
          {"off_pa", sensor.off_pa},
          {"off_half95_pa", sensor.off_half_95_pa},
          {"trim_now_pa", sensor.trim_now_pa},
          {"trim_pa", sensor.trim_pa},
          {"matters", sensor.matters},
          {"says", sensor_says(fitted)}};
}

}  // namespace

std::string fit_json(FittedSite const& fitted) {
  Json unknowns = Json::array();
  for (auto const& unknown : fitted.fit.unknowns) {
    unknowns.push_back(unknown_of(unknown));
  }
  Json values = Json::array();
  for (auto const& each : fitted.fit.values) {
    auto const& reading = fitted.fit.readings.readings[each.reading];
    auto const& value = reading.values[each.value];
    values.push_back({{"reading", each.reading + 1},
                      {"condition", word(reading.condition)},
                      {"instrument", key(value.instrument)},
                      {"line", value.place.line},
                      {"read", value.value},
                      {"sigma", value.sigma},
                      {"fitted", each.fitted},
                      {"off_sigmas", each.off_sigmas},
                      {"left_out", each.left_out}});
  }
  Json misfits = Json::array();
  for (auto const& misfit : fitted.fit.misfits) {
    auto const& value = fitted.fit.readings.readings[misfit.reading].values[misfit.value];
    bool const explained = !misfit.key.empty();
    misfits.push_back({{"reading", misfit.reading + 1},
                       {"instrument", key(value.instrument)},
                       {"explained_by", explained ? Json(misfit.key) : Json(nullptr)},
                       {"value", explained ? Json(misfit.explained_by) : Json(nullptr)},
                       {"says", misfit_says(fitted, misfit)}});
  }
  Json changes = Json::array();
  for (auto const& change : fitted.changes) {
    Json told{{"key", change.key}, {"now", change.now}, {"anew", change.anew}};
    if (fitted.card) {
      told["label"] = change.label;
      told["where"] = change.where;
      told["shows"] = change.now_text;
      told["enter"] = change.anew_text;
    }
    changes.push_back(std::move(told));
  }
  Json keys = Json::object();
  for (auto const& each : fitted.keys) {
    keys[each.key] = each.value;
  }
  auto const failed_before = [&](std::string const& name) -> Json {
    if (!fitted.proof_before) {
      return nullptr;
    }
    auto const& all = fitted.proof_before->scenarios;
    auto const at = std::find_if(all.begin(), all.end(), [&](ScenarioProof const& one) { return one.name == name; });
    return at == all.end() ? Json(nullptr) : Json(at->failed);
  };
  Json scenarios = Json::array();
  for (auto const& scenario : fitted.proof.scenarios) {
    scenarios.push_back({{"name", scenario.name},
                         {"runs", scenario.runs},
                         {"failed", scenario.failed},
                         {"failed_before", failed_before(scenario.name)}});
  }
  Json const json{{"site", fitted.name},
                  {"settings_stand", fitted.settings_stand()},
                  {"says", stand_says(fitted)},
                  {"settings", fitted.given ? "given" : "derived"},
                  {"drive", fitted.card ? Json(fitted.card->name) : Json(nullptr)},
                  {"converged", fitted.fit.converged},
                  {"sum_of_squares", fitted.fit.sum_of_squares},
                  {"fitted_values", fitted.fit.fitted_values},
                  {"untouched", fitted.fit.untouched},
                  {"sensor", sensor_of(fitted)},
                  {"unknowns", std::move(unknowns)},
                  {"readings", std::move(values)},
                  {"misfits", std::move(misfits)},
                  {"site_file", std::move(keys)},
                  {"written_to", fitted.into.empty() ? Json(nullptr) : Json(fitted.into)},
                  {"setting_changes", std::move(changes)},
                  {"proof", {{"draws", fitted.proof.draws}, {"seed", fitted.proof.seed}, {"scenarios", scenarios}}}};
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace wellproof
