
#include <nlohmann/json.hpp>

#include "sheet/explain_sheet.h"

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;

Json causes_of(Explanation const& explanation) {
  Json causes = Json::array();
  for (auto const& cause : explanation.explained.ranking().causes) {
    Json spoken = Json::array();
    for (auto const& each : speaking(explanation, cause)) {
      spoken.push_back({{"for", each.for_it}, {"log_odds", each.weight}, {"says", each.says}});
    }
    causes.push_back({{"key", key_of(cause)},
                      {"title", title_of(cause)},
                      {"prior", cause.prior},
                      {"posterior", cause.posterior},
                      {"posterior_error", cause.posterior_error},
                      {"possible", cause.possible},
                      {"says", cause.fault < faults().size() ? faults()[cause.fault].says : std::string_view()},
                      {"severity", severity_says(explanation, cause)},
                      {"evidence", std::move(spoken)},
                      {"todo", cause.fault < faults().size() ? faults()[cause.fault].todo : std::string_view()}});
  }
  return causes;
}

Json questions_of(Explanation const& explanation) {
  Json questions = Json::array();
  for (auto const& question : explanation.explained.questions()) {
    auto const& check = checks()[question.check];
    Json answers = Json::array();
    for (std::size_t a = 0; a < check.answers.size(); ++a) {
      auto const& meaning = question.answers[a];
      answers.push_back({{"word", check.answers[a].word},
                         {"says", check.answers[a].says},
                         {"seen", answer_seen(explanation, question, a)},
                         {"share", meaning.share},
                         {"leader", meaning.leader < faults().size() ? faults()[meaning.leader].key : none_key},
                         {"leader_posterior", meaning.leader_posterior}});
    }
    Json one{{"key", check.key},
             {"title", check.title},
             {"how", check.how},
             {"minutes", check.minutes},
             {"information_bits", question.information_bits},
             {"answers", std::move(answers)}};
    if (check.show) {
      auto const band = usual_band(*check.show, explanation.explained.holding());
      one["usual"] = {{"unit", si_unit(dimension_of(*check.show))}, {"low", band.low}, {"high", band.high}};
    }
    questions.push_back(std::move(one));
  }
  return questions;
}

}  // namespace

std::string explain_json(Explanation const& explanation) {
  Json stops = Json::array();
  for (auto const& stop : explanation.history.stops) {
    stops.push_back({{"kind", word(stop.kind)},
                     {"age_s", stop.age_s},
                     {"time_of_day_s", stop.time_of_day_s ? Json(*stop.time_of_day_s) : Json(nullptr)}});
  }
  Json remedies = Json::array();
  for (auto const& remedy : explanation.remedies) {
    remedies.push_back({{"key", remedy.key},
                        {"from", remedy.from},
                        {"to", remedy.to},
                        {"as_planned", remedy.to_plan},
                        {"stops_a_day_before", remedy.stops_before},
                        {"stops_a_day_after", remedy.stops_after},
                        {"days", remedy.days},
                        {"helps", remedy.helps()}});
  }
  Json cautions = Json::array();
  for (auto const& caution : explain_cautions(explanation)) {
    cautions.push_back({{"key", caution.key}, {"says", caution.says}});
  }
  auto const& now = explanation.history.now;
  Json const json{{"site", explanation.site_name},
                  {"told", history_says(explanation)},
                  {"now_s", now ? Json(now->since_1970_s) : Json(nullptr)},
                  {"rest_s", explanation.settings.dry_run_rest_s},
                  {"stops", std::move(stops)},
                  {"notes", explanation.notes},
                  {"settings_from", explanation.settings_from},
                  {"says", leader_says(explanation)},
                  {"causes", causes_of(explanation)},
                  {"next", questions_of(explanation)},
                  {"settings_tried", std::move(remedies)},
                  {"settings_say", remedies_say(explanation)},
                  {"cautions", std::move(cautions)},
                  {"worlds", explanation.explained.worlds().size()}};
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace wellproof
