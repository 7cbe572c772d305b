#include "sheet/json.h"

#include <nlohmann/json.hpp>

#include "proof/margins.h"
#include "sheet/well_sheet.h"
#include "sheet/words.h"
#include "site/fields.h"

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;

std::string written(Json const& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

Json spread(Spread const& of) {
  return {{"low", of.low}, {"middle", of.middle}, {"high", of.high}};
}

Json map_of(OperatingMap const& map) {
  Json rows = Json::array();
  for (auto const& row : map.rows) {
    rows.push_back({{"speed_hz", row.speed_hz},
                    {"dry_a", spread(row.dry_a)},
                    {"shut_a", spread(row.shut_a)},
                    {"least_draw_a", spread(row.least_draw_a)},
                    {"most_draw_a", spread(row.most_draw_a)},
                    {"dry_w", spread(row.dry_w)},
                    {"shut_w", spread(row.shut_w)},
                    {"least_draw_w", spread(row.least_draw_w)},
                    {"most_draw_w", spread(row.most_draw_w)},
                    {"flow_at_target_m3_s", spread(row.flow_at_target_m3_s)},
                    {"shut_head_m", spread(row.shut_head_m)},
                    {"shut_pressure_pa", spread(row.shut_pressure_pa)}});
  }
  return {{"target_pa", map.target_pa},
          {"zero_flow_speed_hz", spread(map.zero_flow_speed_hz)},
          {"least_draw_speed_hz", spread(map.least_draw_speed_hz)},
          {"rows", std::move(rows)}};
}

Json site_of(SiteRead const& read) {
  Json quantities = Json::object();
  each_field(read.site, [&](Field const& field, Range const& range) {
    quantities[field.key] = write_range_exactly(range, field.dimension, UnitSystem::metric);
  });
  return {{"name", read.site.name}, {"quantities", std::move(quantities)}};
}

Json settings_of(Plan const& plan) {
  Json settings = Json::object();
  for (auto const& line : setting_lines(plan.derived, plan.units)) {
    Json one = Json::object();
    if (!line.choice) {
      one["value"] = line.value;
    } else {
      one["value"] = line.key == permissive_key ? word(plan.derived.settings.permissive_sense)
                                                : word(plan.derived.settings.fault_contact_sense);
    }
    one["text"] = line.text;
    one["because"] = line.reason.because;
    one["feasible"] = line.reason.feasible;
    if (line.reason.imposed) {
      one["imposed"] = true;
    }
    if (!line.reason.stands_in_the_way.empty()) {
      one["stands_in_the_way"] = line.reason.stands_in_the_way;
    }
    if (!line.reason.would_change_it.empty()) {
      one["would_change_it"] = line.reason.would_change_it;
    }
    settings[line.key] = std::move(one);
  }
  return settings;
}

Json drive_of(PlanDrive const& drive) {
  Json entries = Json::array();
  for (auto const& one : drive.entered.entries) {
    auto const* const entry = drive.card.entry(one.key);
    Json line{{"key", one.key}, {"label", entry->label}, {"where", entry->where}, {"enter", one.text}};
    if (!entry->is_choice()) {
      line["derived"] = one.wanted;
      line["entered"] = one.entered;
      line["unit"] = entry->unit;
      // A step of the drive moves ours by as much, but where it shows a ramp as a time.
      line["step"] = entry->step && entry->shown != ShownAs::time_over ? Json(*entry->step) : Json(nullptr);
      line["fixed"] = entry->fixed.has_value();
    }
    line["clipped"] = one.clipped;
    line["rounded"] = one.safe_side;
    entries.push_back(std::move(line));
  }
  Json lacking = Json::array();
  for (auto const& one : drive.entered.lacking) {
    lacking.push_back({{"key", one.key}, {"unguarded", one.unguarded}});
  }
  Json losses = Json::array();
  for (auto const& loss : drive.losses) {
    losses.push_back(
        {{"name", loss.name}, {"of_plan", loss.of_plan}, {"derived", loss.derived}, {"entered", loss.entered}});
  }
  return {{"name", drive.card.name},
          {"entries", std::move(entries)},
          {"lacking", std::move(lacking)},
          {"lost_by_rounding", std::move(losses)}};
}

Json worst_of(ScenarioProof const& scenario) {
  Json worst{{"draw", scenario.worst.draw}, {"passed", scenario.worst.passed}, {"ending", word(scenario.worst.ending)}};
  if (scenario.worst.criterion < scenario.criteria.size()) {
    auto const& criterion = scenario.criteria[scenario.worst.criterion];
    worst["criterion"] = criterion.says.empty() ? std::string(says(criterion.measure)) : criterion.says;
    worst["unit"] = si_unit(dimension(criterion.measure));
  }
  worst["value"] = scenario.worst.value;
  worst["limit"] = scenario.worst.limit;
  if (scenario.worst.criterion < scenario.criteria.size()) {
    auto const measure = scenario.criteria[scenario.worst.criterion].measure;
    worst["distance"] = Json(distance_to_limit(measure, scenario.worst.value, scenario.worst.limit));
    worst["distance_says"] = scenario.distance_says;
  }
  worst["says"] = scenario.worst_says;
  return worst;
}

Json margins_of(Proof const& proof) {
  Json margins = Json::array();
  for (auto const& margin : proof.margins) {
    margins.push_back({{"key", margin.key},
                       {"value", margin.value ? Json(*margin.value) : Json(nullptr)},
                       {"unit", si_unit(margin.dimension)},
                       {"draw", margin.draw},
                       {"says", margin.says}});
  }
  return margins;
}

Json measure_of(Proof const& proof) {
  Json measure = Json::array();
  for (auto const& worth : proof.measure) {
    measure.push_back({{"key", worth.key},
                       {"share", worth.share},
                       {"gain", worth.lower_after - worth.lower_before},
                       {"lower_before", worth.lower_before},
                       {"lower_after", worth.lower_after},
                       {"scenario", worth.scenario},
                       {"how", worth.how},
                       {"minutes", worth.minutes}});
  }
  return measure;
}

Json scenario_of(ScenarioProof const& scenario) {
  Json drivers = Json::array();
  for (auto const& driver : scenario.drivers) {
    drivers.push_back({{"key", driver.key}, {"share", driver.share}});
  }
  Json one{{"name", scenario.name},
           {"title", scenario.title},
           {"runs", scenario.runs},
           {"failed", scenario.failed},
           {"not_computed", scenario.not_computed},
           {"fail_upper95", scenario.fail_upper95},
           {"margin", scenario.worst.margin},
           {"worst", worst_of(scenario)},
           {"drivers", std::move(drivers)}};
  if (scenario.first_failure) {
    one["first_failure"] = {{"spreads", scenario.first_failure->spreads},
                            {"share", scenario.first_failure->share},
                            {"says", scenario.first_failure->says}};
  }
  return one;
}

Json proof_of(Proof const& proof) {
  Json scenarios = Json::array();
  for (auto const& scenario : proof.scenarios) {
    scenarios.push_back(scenario_of(scenario));
  }
  return {{"proven", proof.proven},       {"seed", proof.seed},
          {"draws", proof.draws},         {"scenarios", std::move(scenarios)},
          {"margins", margins_of(proof)}, {"measure", measure_of(proof)}};
}

Json spread(Quantiles const& of) {
  return {{"low", of.low}, {"middle", of.middle}, {"high", of.high}};
}

Json well_of(Plan const& plan) {
  auto const& outlook = plan.outlook;
  Json day = Json::array();
  for (auto const& level : outlook.day) {
    day.push_back({{"time_s", level.time_s}, {"depth_m", spread(level.depth_m)}});
  }
  Json rest = Json::array();
  for (auto const& point : plan.derived.rest_curve) {
    rest.push_back({{"rest_s", point.rest_s}, {"run_s", spread(point.run_s)}});
  }
  return {{"says", well_says(outlook, plan.units)},
          {"safe_yield_m3_s", spread(outlook.safe_yield_m3_s)},
          {"day_use_m3", spread(outlook.day_use_m3)},
          {"day_deepest_m", spread(outlook.deepest_m)},
          {"day_runs_dry", outlook.day_runs_dry},
          {"day", std::move(day)},
          {"storage_m3", spread(outlook.storage_m3)},
          {"overdrawn", outlook.overdrawn},
          {"long_run",
           {{"flow_m3_s", outlook.long_run_flow_m3_s},
            {"wanted_s", outlook.long_run_wanted_s},
            {"lasts_s", spread(outlook.long_run_s)},
            {"too_long", outlook.long_run_too_long}}},
          {"draws", outlook.draws},
          {"run_after_rest", std::move(rest)}};
}

Json search_of(SearchResult const& search) {
  Json moved = Json::array();
  for (auto const& one : search.moved) {
    moved.push_back({{"key", one.key}, {"from", one.from}, {"to", one.to}, {"followed", one.followed}});
  }
  return {{"tries", search.tries},
          {"start_margin", search.start_margin},
          {"found_margin", search.found_margin},
          {"start_failed", search.start_failed},
          {"found_failed", search.found_failed},
          {"common_practice", search.common ? Json{{"margin", search.common->margin},
                                                   {"failing_scenarios", search.common->failing_scenarios}}
                                            : Json(nullptr)},
          {"moved", std::move(moved)},
          {"binding", search.binding}};
}

}  // namespace

std::string plan_json(Plan const& plan) {
  Json assumptions = Json::array();
  for (auto const& assumption : plan.site.assumptions) {
    assumptions.push_back({{"key", assumption.key},
                           {"range", write_range(assumption.range, assumption.dimension, plan.units)},
                           {"because", assumption.because}});
  }
  Json cautions = Json::array();
  for (auto const& caution : all_cautions(plan.derived)) {
    cautions.push_back({{"key", caution.key}, {"says", caution.says}});
  }
  Json json{{"site", site_of(plan.site)},    {"assumptions", std::move(assumptions)},
            {"settings", settings_of(plan)}, {"cautions", std::move(cautions)},
            {"map", map_of(plan.map)},       {"well", well_of(plan)},
            {"proof", proof_of(plan.proof)}};
  if (plan.drive) {
    json["drive"] = drive_of(*plan.drive);
  }
  if (plan.search) {
    json["search"] = search_of(*plan.search);
  }
  return written(json);
}

std::string map_json(std::string const& site_name, OperatingMap const& map) {
  Json json{{"site", {{"name", site_name}}}};
  json["map"] = map_of(map);
  return written(json);
}

std::string run_json(JudgedRun const& run) {
  Json events = Json::array();
  for (auto const& event : run.trace.events) {
    Json one{{"time_s", event.time_s}, {"mode", word(event.what.mode)}, {"says", event_says(event.what)}};
    if (event.what.cause) {
      one["cause"] = word(*event.what.cause);
    }
    events.push_back(std::move(one));
  }
  Json criteria = Json::array();
  for (std::size_t i = 0; i < run.criteria.size() && i < run.verdicts.size(); ++i) {
    criteria.push_back({{"says", run.criteria[i].says},
                        {"measure", says(run.criteria[i].measure)},
                        {"unit", si_unit(dimension(run.criteria[i].measure))},
                        {"value", run.verdicts[i].value},
                        {"bound", bound_words(run.criteria[i].measure)},
                        {"limit", run.criteria[i].limit},
                        {"margin", run.verdicts[i].margin},
                        {"passed", run.verdicts[i].passed},
                        {"source", run.criteria[i].source}});
  }
  return written({{"site", {{"name", run.site_name}}},
                  {"scenario", run.scenario},
                  {"seed", run.seed},
                  {"draw", run.draw},
                  {"passed", run.passed()},
                  {"ending", word(run.trace.ending)},
                  {"events", std::move(events)},
                  {"criteria", std::move(criteria)}});
}

}  // namespace wellproof
