
#include <nlohmann/json.hpp>

#include "sheet/visit_words.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;

std::string_view not_done_word(NotDone reason) {
  switch (reason) {
    case NotDone::nothing:
      return "";
    case NotDone::rating:
      return "rating";
    case NotDone::never_stops:
      return "never_stops";
    case NotDone::does_not_hold:
      return "does_not_hold";
  }
  return "";
}

Json ticks(std::vector<TickLine> const& lines) {
  Json json = Json::array();
  for (auto const& line : lines) {
    json.push_back({{"what", line.head}, {"says", line.says}, {"to_read", line.read}});
  }
  return json;
}

Json tests(VisitSheet const& sheet, VisitWords const& words) {
  Json json = Json::array();
  for (std::size_t i = 0; i < sheet.visit.tests.size(); ++i) {
    auto const& test = sheet.visit.tests[i];
    Json readings = Json::array();
    for (auto const& reading : test.readings) {
      readings.push_back({{"key", reading.key},
                          {"what", reading.what},
                          {"meter", says(reading.meter)},
                          {"unit", si_unit(reading.dimension)},
                          {"least", reading.no_least ? Json(nullptr) : Json(reading.least)},
                          {"middle", reading.middle},
                          {"most", reading.most},
                          {"shown_in_draws", reading.shown},
                          {"band", band_text(reading, sheet.units)}});
    }
    Json one{{"test", word(test.kind)}, {"title", words.tests[i].title}, {"steps", words.tests[i].steps}};
    if (test.not_done != NotDone::nothing) {
      one["not_done"] = not_done_word(test.not_done);
    }
    one["readings"] = std::move(readings);
    one["put_back"] = words.tests[i].put_back;
    json.push_back(std::move(one));
  }
  return json;
}

}  // namespace

std::string visit_json(VisitSheet const& sheet) {
  auto const words = visit_words(sheet);
  auto const& visit = sheet.visit;
  auto const& before = sheet.before;
  Json entries = Json::array();
  for (auto const& line : words.entries) {
    entries.push_back({{"label", line.label}, {"where", line.where}, {"value", line.value}, {"note", line.note}});
  }
  Json json{{"site", {{"name", words.name}}},
            {"proven", sheet.proof.proven},
            {"says", words.verdict_says},
            {"safety", ticks(words.safety)},
            {"before_power",
             {{"lines", ticks(words.before_power)},
              {"precharge_pa", before.precharge_pa},
              {"weakest_pa", before.weakest_pa},
              {"relief_most_pa", before.relief_most_pa},
              {"relief_flow_m3_s", before.relief_flow_m3_s},
              {"cable_drop_share", before.cable_drop_share},
              {"insulation_ohm", before.insulation_ohm}}},
            {"entries", std::move(entries)},
            {"unguarded", words.unguarded},
            {"tests", tests(sheet, words)},
            {"bands",
             {{"seed", visit.seed},
              {"draws", visit.draws},
              {"inside_share", visit.inside_share},
              {"inside_at_least", visit.inside_at_least},
              {"all_inside_share", visit.all_inside_share}}}};
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace wellproof
