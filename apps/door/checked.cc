#include "door/checked.h"

#include <cmath>
#include <map>

#include <nlohmann/json.hpp>

#include "quantity/quantity.h"
#include "quantity/range.h"
#include "site/fields.h"

namespace wellproof {

std::string checked_json(SiteRead const& read, UnitSystem units) {
  using Json = nlohmann::ordered_json;
  std::map<std::string, Assumption const*> assumed;
  for (auto const& each : read.assumptions) {
    assumed[each.key] = &each;
  }
  Json quantities = Json::array();
  each_field(read.site, [&](Field const& field, Range const& range) {
    auto const unit = customary_unit(field.dimension, units);
    auto const taken = assumed.find(field.key);
    Json one{{"key", field.key},
             {"meaning", field.meaning},
             {"text", write_range(range, field.dimension, units)},
             {"unit", unit.spelling},
             {"factor", unit.factor},
             {"offset", unit.offset},
             {"low", lowest(range)},
             {"middle", middle(range)},
             {"high", highest(range)},
             {"least", write_quantity(field.least, field.dimension, units)},
             {"most", write_quantity(field.most, field.dimension, units)},
             {"given", taken == assumed.end()}};
    if (taken != assumed.end()) {
      one["because"] = taken->second->because;
    }
    quantities.push_back(std::move(one));
  });
  Json pipes = Json::array();
  for (auto const& run : read.site.pipes) {
    pipes.push_back({{"place", run.place == PipePlace::drop   ? "drop"
                               : run.place == PipePlace::yard ? "yard"
                                                              : "house"},
                     {"kind", run.kind},
                     {"size", run.size}});
  }
  Json zones = Json::array();
  for (auto const& zone : read.site.demand.zones) {
    zones.push_back(zone.name);
  }
  Json const json{{"name", read.site.name},
                  {"pipes", std::move(pipes)},
                  {"zones", std::move(zones)},
                  {"quantities", std::move(quantities)}};
  return json.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace wellproof
