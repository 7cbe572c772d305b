#include "door/live_desk.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include <nlohmann/json.hpp>

#include "contract/nearest.h"
#include "door/commands.h"
#include "plant/outlet.h"
#include "proof/hazard.h"
#include "proof/prove.h"
#include "proof/trial.h"
#include "sheet/words.h"
#include "site/draw.h"

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;

constexpr double longest_s = 7200;  // of one go: whoever waits for it waits some seconds

constexpr std::pair<std::string_view, Act> act_words[] = {{"outlet", Act::outlet_opening},
                                                          {"house_valve", Act::house_valve},
                                                          {"yard_valve", Act::yard_valve},
                                                          {"supply", Act::supply_share},
                                                          {"inflow", Act::inflow_share},
                                                          {"sensor", Act::sensor_fault},
                                                          {"permissive", Act::permissive},
                                                          {"hand", Act::hand_speed},
                                                          {"wear", Act::wear},
                                                          {"check_leak", Act::check_leak},
                                                          {"hole", Act::hole},
                                                          {"tank_charge", Act::tank_charge},
                                                          {"intake", Act::intake_loss}};

Answer wrong(std::string key, std::string found, std::string expected) {
  return refused({{{"request", 0, 0}, std::move(key), std::move(found), std::move(expected), ""}});
}

double figure_of(Json const& of, char const* key, double otherwise) {
  return of.contains(key) && of[key].is_number() ? of[key].get<double>() : otherwise;
}

Json point_of(TracePoint const& p) {
  return {{"t", p.time_s},
          {"tee_pa", p.tee_pressure_pa},
          {"outlet_pa", p.outlet_pressure_pa},
          {"shown_pa", p.measured_pressure_pa},
          {"speed_hz", p.speed_hz},
          {"current_a", p.current_a},
          {"power_w", p.input_power_w},
          {"pumped_m3_s", p.pump_flow_m3_s},
          {"drawn_m3_s", p.drawn_flow_m3_s},
          {"inflow_m3_s", p.inflow_m3_s},
          {"level_m", p.level_depth_m},
          {"wetness", p.wetness},
          {"winding_c", p.winding_c},
          {"mode", word(p.mode)}};
}

Json points_of(std::vector<TracePoint> const& points) {
  Json all = Json::array();
  for (auto const& point : points) {
    all.push_back(point_of(point));
  }
  return all;
}

/// What is drawn beside the run, a list for each: hundreds of points are asked for at once, between two frames.
Json columns_of(std::vector<TracePoint> const& points) {
  constexpr std::pair<char const*, double TracePoint::*> columns[] = {{"t", &TracePoint::time_s},
                                                                      {"tee_pa", &TracePoint::tee_pressure_pa},
                                                                      {"speed_hz", &TracePoint::speed_hz},
                                                                      {"current_a", &TracePoint::current_a},
                                                                      {"pumped_m3_s", &TracePoint::pump_flow_m3_s},
                                                                      {"level_m", &TracePoint::level_depth_m}};
  Json all = Json::object();
  for (auto const& [name, member] : columns) {
    Json& column = all[name] = Json::array();
    for (auto const& point : points) {
      column.push_back(point.*member);
    }
  }
  return all;
}

Json words_of(LiveWords const& words) {
  return {{"mode", word(words.mode)},
          {"cause", words.cause ? Json(word(*words.cause)) : Json(nullptr)},
          {"mode_for_s", words.mode_for_s},
          {"rest_left_s", words.rest_left_s},
          {"sleep_left_s", words.sleep_left_s},
          {"dry_left_s", words.dry_left_s},
          {"closed_left_s", words.closed_left_s},
          {"long_run_left_s", words.long_run_left_s},
          {"filtered_current_a", words.filtered_current_a},
          {"tries", words.tries}};
}

Json pipes_of(Plant const& plant) {
  Json pipes = Json::array();
  for (auto const& run : plant.site.pipes) {
    pipes.push_back({{"place", run.place == PipePlace::drop   ? "drop"
                               : run.place == PipePlace::yard ? "yard"
                                                              : "house"},
                     {"inside_diameter_m", run.inside_diameter_m},
                     {"length_m", run.length_m},
                     {"rise_m", run.rise_m}});
  }
  return pipes;
}

Json settings_of(Settings const& settings) {
  Json all = Json::object();
  each_setting(settings, [&](SettingField const& field, double value) { all[std::string(field.key)] = value; });
  return all;
}

/// What there is to draw: the plant as it stands, in one truth.
Json scene_of(LiveRun const& run) {
  auto const& plant = run.plant();
  auto const& site = plant.site;
  Json outlets = Json::array();
  for (auto const& each : plant.outlets) {
    outlets.push_back({{"flow_m3_s", each.nominal_flow_m3_s}, {"pressure_pa", each.nominal_pressure_pa}});
  }
  Json zones = Json::array();
  for (auto const& zone : site.demand.zones) {
    zones.push_back(zone.name);
  }
  return {{"name", site.name},
          {"static_level_m", plant.well.static_level_depth_m},
          {"well_depth_m", site.well.depth_m},
          {"casing_m", site.well.casing_diameter_m},
          {"fracture_m", site.well.fracture_depth_m},
          {"setting_m", site.pump.setting_depth_m},
          {"pump_diameter_m", site.pump.outside_diameter_m},
          {"submergence_m", site.pump.least_submergence_m},
          {"tank_elevation_m", plant.tee_elevation_m},
          {"outlet_rise_m", site.demand.outlet_rise_m},
          {"outlet_wanted_pa", site.demand.outlet_pressure_pa},
          {"tank_volume_m3", site.tank.volume_m3},
          {"precharge_pa", site.tank.precharge_pa},
          {"rating_pa", Json(weakest_rating_pa(plant))},
          {"relief_pa", site.limits.relief_pa},
          {"top_hz", site.drive.top_frequency_hz},
          {"sample_hz", site.drive.sample_rate_hz},
          {"plate_a", site.motor.service_factor_current_a},
          {"winding_limit_c", site.motor.winding_limit_c},
          {"best_flow_m3_s", plant.pump.best_flow_m3_s()},
          {"guard_speed_share", run.logic().guard_speed_share},
          {"guard_pressure_share", run.logic().guard_pressure_share},
          {"guards_any_speed", run.logic().guard_where == GuardWhere::any_speed},
          {"guards_by_power", run.logic().guard_by == GuardBy::power},
          {"sleeps_by_speed", run.logic().sleep_test == SleepTest::slow_speed},
          {"two_contacts", run.logic().two_contact_switch},
          {"outlets", std::move(outlets)},
          {"zones", std::move(zones)},
          {"pipes", pipes_of(plant)}};
}

Answer told(LiveRun& run, bool with_scene) {
  Json events = Json::array();
  for (auto const& event : run.take_events()) {
    events.push_back({{"t", event.time_s},
                      {"mode", word(event.what.mode)},
                      {"kind", static_cast<int>(event.what.kind)},
                      {"cause", event.what.cause ? Json(word(*event.what.cause)) : Json(nullptr)},
                      {"says", event_says(event.what)}});
  }
  Json json{{"now", point_of(run.now())},
            {"words", words_of(run.words())},
            {"shift_m", run.static_shift_m()},
            {"empty", run.empty_share()},
            {"check_open", run.check_open()},
            {"ending", word(run.ending())},
            {"points", points_of(run.take_points())},
            {"events", std::move(events)}};
  if (with_scene) {
    json["scene"] = scene_of(run);
    json["settings"] = settings_of(run.settings());
  }
  return {exit_code::fine, json.dump(-1, ' ', false, Json::error_handler_t::replace), "", {}};
}

/// Empty, or what is wrong with it.
std::optional<Answer> act_on(LiveRun& run, Json const& each) {
  std::string const name =
      each.is_object() && each.contains("act") && each["act"].is_string() ? each["act"].get<std::string>() : "";
  constexpr double none = std::numeric_limits<double>::quiet_NaN();
  double const value = each.is_object() ? figure_of(each, "value", none) : none;
  double const outlet = each.is_object() ? figure_of(each, "outlet", 0) : 0;
  if (!std::isfinite(value)) {
    return wrong("value", "none", "a number");
  }
  if (name == "water") {
    run.sink(value);
    return std::nullopt;
  }
  auto const* const known =
      std::find_if(std::begin(act_words), std::end(act_words), [&](auto const& pair) { return pair.first == name; });
  if (known == std::end(act_words)) {
    return wrong("act", "\"" + name + "\"", "water, outlet, house_valve, yard_valve, supply, inflow, …");
  }
  if (!(outlet >= 0 && outlet < static_cast<double>(run.plant().outlets.size()))) {
    return wrong("outlet", each["outlet"].dump(), "one of the outlets of the scene");
  }
  bool const share =
      known->second != Act::hand_speed && known->second != Act::intake_loss && known->second != Act::sensor_fault;
  double const most = share ? 1.5 : 1000;
  run.act(known->second, static_cast<std::size_t>(outlet), std::clamp(value, 0.0, most),
          std::clamp(figure_of(each, "lasts_s", 0), 0.0, 1e6));
  return std::nullopt;
}

Answer go(LiveRun& run, Json const& what) {
  if (what.contains("acts") && what["acts"].is_array()) {
    for (auto const& each : what["acts"]) {
      if (auto const fault = act_on(run, each)) {
        return *fault;
      }
    }
  }
  double const seconds = figure_of(what, "seconds", 0);
  if (!(seconds >= 0 && seconds <= longest_s)) {
    return wrong("seconds", what.contains("seconds") ? what["seconds"].dump() : "none", "0 to 7200");
  }
  run.advance(seconds, std::clamp(figure_of(what, "every", 0.25), 0.01, 600.0));
  return told(run, false);
}

Json parsed(std::string_view what) {
  return Json::parse(what.begin(), what.end(), nullptr, false);
}

std::string verb(Json const& json) {
  return json.is_object() && json.contains("do") && json["do"].is_string() ? json["do"].get<std::string>() : "";
}

}  // namespace

bool LiveDesk::wants_site(std::string_view what) {
  auto const word = verb(parsed(what));
  return word == "open" || word == "set" || word == "again";
}

Answer LiveDesk::ask(std::string_view what, Prepared const* ready, std::uint64_t seed) {
  auto const json = parsed(what);
  auto const word = verb(json);
  if (word == "open" && ready != nullptr) {
    std::string const name =
        json.contains("scenario") && json["scenario"].is_string() ? json["scenario"].get<std::string>() : "";
    auto const draw = static_cast<std::uint32_t>(std::clamp(figure_of(json, "draw", 0), 0.0, double{most_draws}));
    Plant const plant =
        draw < ready->plants.size() ? ready->plants[draw] : build(wellproof::draw(ready->site.site, seed, draw));
    Scenario start{.name = "live",
                   .says = "",
                   .duration_s = 0,
                   .start = {.tee_pressure_pa = ready->derived.settings.pressure_target_pa, .after_power_up = false},
                   .script = {}};
    if (auto const* const of = hazard(name)) {
      start = of->make(plant, ready->derived.settings).scenario;
    } else if (!name.empty()) {
      return wrong("scenario", "\"" + name + "\"", "one of those that scenarios lists");
    }
    run_ = std::make_unique<LiveRun>(plant, ready->derived.settings, ready->logic, std::move(start),
                                     noise_seed(seed, draw));
    return told(*run_, true);
  }
  if (!run_) {
    return wrong("do", "\"" + word + "\"", "open, before anything else");
  }
  if (word == "go") {
    return go(*run_, json);
  }
  if (word == "reset") {
    run_->reset();
    return told(*run_, false);
  }
  if (word == "set" && ready != nullptr) {
    run_->set(ready->derived.settings);
    return told(*run_, true);
  }
  if (word == "again" && ready != nullptr) {
    auto const points = run_->again(ready->derived.settings, std::clamp(figure_of(json, "every", 1), 0.05, 600.0));
    return {exit_code::fine, Json{{"columns", columns_of(points)}}.dump(), "", {}};
  }
  return wrong("do", "\"" + word + "\"", "open, go, set, again or reset");
}

}  // namespace wellproof
