
#include <nlohmann/json.hpp>

#include "quantity/customary.h"
#include "sheet/welltest.h"

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;

char const* word(Estimate::Standing standing) {
  switch (standing) {
    case Estimate::Standing::fitted:
      return "fitted";
    case Estimate::Standing::given:
      return "given";
    case Estimate::Standing::assumed:
      return "assumed";
    case Estimate::Standing::none:
      break;
  }
  return "none";
}

Json estimate(Estimate const& of, double scale = 1) {
  if (of.standing == Estimate::Standing::none) {
    return nullptr;
  }
  return {
      {"value", of.value * scale}, {"low", of.low * scale}, {"high", of.high * scale}, {"standing", word(of.standing)}};
}

Json record_of(RecordFit const& record) {
  Json readings = Json::array();
  for (auto const& reading : record.readings) {
    readings.push_back({{"time_s", reading.time_s},
                        {"measured_m", reading.measured_m},
                        {"fitted_m", reading.fitted_m},
                        {"residual_m", reading.measured_m - reading.fitted_m}});
  }
  Json json{{"file", record.file},
            {"distance_m", record.distance_m},
            {"recovered", record.recovered},
            {"rmse_m", record.rmse_m}};
  if (record.alone_transmissivity_m2_s && record.alone_storativity) {
    json["alone"] = {{"T_m2_per_d", estimate(*record.alone_transmissivity_m2_s, day_s)},
                     {"S", estimate(*record.alone_storativity)},
                     {"rmse_m", record.alone_rmse_m}};
  }
  json["readings"] = std::move(readings);
  return json;
}

}  // namespace

std::string welltest_json(WellTest const& test) {
  auto const& fit = test.fit;
  Json rates = Json::array();
  for (auto const& step : fit.rates) {
    rates.push_back({{"from_s", step.from_s}, {"flow_m3_s", step.flow_m3_s}});
  }
  Json notes = Json::array();
  for (auto const& note : fit.notes) {
    notes.push_back({{"key", note.key}, {"says", note.says}});
  }
  Json records = Json::array();
  for (auto const& record : fit.records) {
    records.push_back(record_of(record));
  }
  Json const json{{"T_m2_per_d", estimate(fit.transmissivity_m2_s, day_s)},
                  {"T_m2_per_s", estimate(fit.transmissivity_m2_s)},
                  {"S", estimate(fit.storativity)},
                  {"B_s_per_m2", estimate(fit.linear_loss_s_m2)},
                  {"C_s2_per_m5", estimate(fit.quadratic_loss_s2_m5)},
                  {"storage_radius_m", estimate(fit.storage_radius_m)},
                  {"rmse_m", estimate(fit.rmse_m)},
                  {"tells", {{"T", fit.tells_transmissivity}, {"S", fit.tells_storativity}}},
                  {"residuals", {{"autocorrelation", fit.autocorrelation}, {"widened", fit.widened}}},
                  {"casing_share_at_end", fit.casing_share},
                  {"notes", std::move(notes)},
                  {"rates", std::move(rates)},
                  {"records", std::move(records)}};
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace wellproof
