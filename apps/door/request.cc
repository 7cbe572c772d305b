#include "door/request.h"

#include <limits>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "contract/nearest.h"

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;

/// The texts of a pumping test, by their keys.
constexpr std::pair<char const*, std::string PumpingTestText::*> test_texts[] = {
    {"step", &PumpingTestText::step},
    {"stop", &PumpingTestText::stop},
    {"casing", &PumpingTestText::casing},
    {"bore", &PumpingTestText::bore},
    {"static_level", &PumpingTestText::static_level},
    {"storativity", &PumpingTestText::storativity},
    {"time_unit", &PumpingTestText::time_unit},
    {"level_unit", &PumpingTestText::level_unit}};

/// The options that are texts, by their keys.
constexpr std::pair<char const*, std::string Request::*> option_texts[] = {{"scenario", &Request::scenario},
                                                                           {"report", &Request::report},
                                                                           {"csv", &Request::csv},
                                                                           {"starter", &Request::starter},
                                                                           {"into", &Request::into},
                                                                           {"made", &Request::made},
                                                                           {"derived", &Request::derived},
                                                                           {"html", &Request::html},
                                                                           {"text", &Request::text},
                                                                           {"swing", &Request::swing},
                                                                           {"period", &Request::period},
                                                                           {"now", &Request::now},
                                                                           {"settings_to", &Request::settings_to}};

/// Walks a request and gathers what is wrong with it.
class RequestReader {
 public:
  Findings findings;

  void fault(std::string const& key, std::string found, std::string expected, std::string nearest = "") {
    findings.push_back({{"request", 0, 0}, key, std::move(found), std::move(expected), std::move(nearest)});
  }

  void text(Json const& of, char const* key, std::string& into) {
    if (of.contains(key)) {
      if (of[key].is_string()) {
        into = of[key].get<std::string>();
      } else {
        fault(key, of[key].type_name(), "a text");
      }
    }
  }

  void flag(Json const& of, char const* key, bool& into) {
    if (of.contains(key)) {
      if (of[key].is_boolean()) {
        into = of[key].get<bool>();
      } else {
        fault(key, of[key].type_name(), "true or false");
      }
    }
  }

  template <class N>
  void number(Json const& of, char const* key, N least, N most, N& into) {
    if (!of.contains(key)) {
      return;
    }
    if (of[key].is_number_unsigned()) {
      auto const value = of[key].get<std::uint64_t>();
      if (value >= least && value <= most) {
        into = static_cast<N>(value);
        return;
      }
    }
    fault(key, of[key].dump(), fmt::format("a whole number from {} to {}", least, most));
  }

  NamedText named_text(Json const& of, std::string const& key) {
    NamedText named;
    if (!of.is_object()) {
      fault(key, of.type_name(), "an object with file and text");
      return named;
    }
    text(of, "file", named.file);
    text(of, "text", named.text);
    return named;
  }

  void site(Json const& of, Request& request) {
    request.site = named_text(of, "site");
    if (!of.is_object() || !of.contains("beside")) {
      return;
    }
    if (!of["beside"].is_array()) {
      fault("beside", of["beside"].type_name(), "a list");
      return;
    }
    for (auto const& each : of["beside"]) {
      Beside beside;
      if (each.is_object()) {
        text(each, "name", beside.name);
        text(each, "text", beside.text);
      } else {
        fault("beside", each.type_name(), "an object with name and text");
      }
      request.beside.push_back(std::move(beside));
    }
  }

  void test(Json const& of, PumpingTestText& into) {
    if (!of.is_object()) {
      fault("test", of.type_name(), "an object with records and rates");
      return;
    }
    for (auto const& [key, member] : test_texts) {
      text(of, key, into.*member);
    }
    if (of.contains("rates")) {
      texts(of["rates"], "rates", into.rates);
    }
    if (!of.contains("records") || !of["records"].is_array()) {
      fault("records", of.contains("records") ? of["records"].type_name() : "nothing", "a list of tables");
      return;
    }
    for (auto const& each : of["records"]) {
      LevelText record;
      if (each.is_object()) {
        text(each, "file", record.file);
        text(each, "text", record.text);
        text(each, "distance", record.distance);
      } else {
        fault("records", each.type_name(), "an object with file, text and distance");
      }
      into.records.push_back(std::move(record));
    }
  }

  void texts(Json const& of, char const* key, std::vector<std::string>& into) {
    if (!of.is_array()) {
      fault(key, of.type_name(), "a list of texts");
      return;
    }
    for (auto const& each : of) {
      if (each.is_string()) {
        into.push_back(each.get<std::string>());
      } else {
        fault(key, each.type_name(), "a text");
      }
    }
  }

  void options(Json const& of, Request& request) {
    if (!of.is_object()) {
      fault("options", of.type_name(), "an object");
      return;
    }
    std::vector<std::string_view> known{"sets",    "set",      "settings", "draws",   "draw",       "seed",
                                        "threads", "units",    "first",    "count",   "json",       "colour",
                                        "search",  "symptoms", "prior",    "answers", "stop_early", "card"};
    for (auto const& [key, member] : option_texts) {
      known.emplace_back(key);
    }
    for (auto const& [key, value] : of.items()) {
      bool found = false;
      for (auto const name : known) {
        found = found || name == key;
      }
      if (!found) {
        fault(key, "an unknown option", "one that the door knows", nearest_word(key, known));
      }
    }
    for (auto const& [key, member] : option_texts) {
      text(of, key, request.*member);
    }
    number<std::uint32_t>(of, "first", 0, most_draws, request.first);
    number<std::uint32_t>(of, "count", 1, most_draws, request.count);
    flag(of, "search", request.search);
    flag(of, "stop_early", request.stop_early);
    flag(of, "json", request.json);
    flag(of, "colour", request.colour);
    number<std::uint32_t>(of, "draws", least_draws, most_draws, request.draws);
    number<std::uint32_t>(of, "draw", 0, most_draws, request.draw);
    number<std::uint64_t>(of, "seed", 0, std::numeric_limits<std::uint64_t>::max(), request.seed);
    number<unsigned>(of, "threads", 1, most_threads, request.threads);
    std::string units = "us";
    text(of, "units", units);
    if (units != "us" && units != "metric") {
      fault("units", "\"" + units + "\"", "us or metric");
    }
    request.units = units == "metric" ? UnitSystem::metric : UnitSystem::us;
    for (auto const& [key, into] : {std::pair{"symptoms", &request.symptoms}, std::pair{"prior", &request.prior},
                                    std::pair{"answers", &request.answers}}) {
      if (of.contains(key)) {
        texts(of[key], key, *into);
      }
    }
    if (of.contains("settings")) {
      request.settings = named_text(of["settings"], "settings");
    }
    if (of.contains("card")) {
      request.card = named_text(of["card"], "card");
    }
    if (of.contains("sets")) {
      if (!of["sets"].is_array()) {
        fault("sets", of["sets"].type_name(), "a list of settings files");
        return;
      }
      for (auto const& each : of["sets"]) {
        request.sets.push_back(named_text(each, "sets"));
      }
    }
    if (of.contains("set")) {
      if (!of["set"].is_array()) {
        fault("set", of["set"].type_name(), "a list of KEY=VALUE");
        return;
      }
      for (auto const& each : of["set"]) {
        if (each.is_string()) {
          request.set.push_back(each.get<std::string>());
        } else {
          fault("set", each.type_name(), "KEY=VALUE as a text");
        }
      }
    }
  }
};

}  // namespace

Result<Request> read_request(std::string_view bytes) {
  RequestReader reader;
  Json const json = Json::parse(bytes.begin(), bytes.end(), nullptr, false);
  if (json.is_discarded() || !json.is_object()) {
    reader.fault("", "what is no JSON object", "a request as in door/request.h");
    return tl::unexpected(reader.findings);
  }
  Request request;
  for (auto const& [key, value] : json.items()) {
    if (key == "command") {
      reader.text(json, "command", request.command);
    } else if (key == "site") {
      reader.site(value, request);
    } else if (key == "test") {
      reader.test(value, request.test);
    } else if (key == "readings") {
      request.readings = reader.named_text(value, "readings");
    } else if (key == "history") {
      request.history = reader.named_text(value, "history");
    } else if (key == "options") {
      reader.options(value, request);
    } else {
      reader.fault(key, "an unknown part", "command, site, test, readings, history or options");
    }
  }
  if (!reader.findings.empty()) {
    return tl::unexpected(reader.findings);
  }
  return request;
}

std::string request_bytes(Request const& request) {
  Json site{{"file", request.site.file}, {"text", request.site.text}, {"beside", Json::array()}};
  for (auto const& beside : request.beside) {
    site["beside"].push_back({{"name", beside.name}, {"text", beside.text}});
  }
  Json options{{"set", request.set},         {"draws", request.draws},
               {"draw", request.draw},       {"seed", request.seed},
               {"threads", request.threads}, {"units", request.units == UnitSystem::us ? "us" : "metric"},
               {"search", request.search},   {"stop_early", request.stop_early},
               {"json", request.json},       {"colour", request.colour}};
  for (auto const& [key, member] : option_texts) {
    options[key] = request.*member;
  }
  if (request.command == "share") {
    options["first"] = request.first;
    options["count"] = request.count;
  }
  if (request.settings) {
    options["settings"] = {{"file", request.settings->file}, {"text", request.settings->text}};
  }
  if (request.command == "explain") {
    options["symptoms"] = request.symptoms;
    options["prior"] = request.prior;
    options["answers"] = request.answers;
  }
  if (request.card) {
    options["card"] = {{"file", request.card->file}, {"text", request.card->text}};
  }
  for (auto const& set : request.sets) {
    options["sets"].push_back({{"file", set.file}, {"text", set.text}});
  }
  Json json{{"command", request.command}, {"site", std::move(site)}, {"options", std::move(options)}};
  if (!request.readings.file.empty()) {
    json["readings"] = {{"file", request.readings.file}, {"text", request.readings.text}};
  }
  if (!request.history.file.empty()) {
    json["history"] = {{"file", request.history.file}, {"text", request.history.text}};
  }
  if (!request.test.records.empty()) {
    Json test{{"rates", request.test.rates}, {"records", Json::array()}};
    for (auto const& [key, member] : test_texts) {
      test[key] = request.test.*member;
    }
    for (auto const& record : request.test.records) {
      test["records"].push_back({{"file", record.file}, {"text", record.text}, {"distance", record.distance}});
    }
    json["test"] = std::move(test);
  }
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string answer_bytes(Answer const& answer) {
  Json files = Json::array();
  for (auto const& [name, text] : answer.files) {
    files.push_back({{"name", name}, {"text", text}});
  }
  Json json{{"exit_code", answer.exit_code}, {"out", answer.out}, {"err", answer.err}, {"files", std::move(files)}};
  for (auto const& finding : answer.findings) {
    json["findings"].push_back({{"file", finding.place.file},
                                {"line", finding.place.line},
                                {"column", finding.place.column},
                                {"key", finding.key},
                                {"found", finding.found},
                                {"expected", finding.expected},
                                {"nearest", finding.nearest}});
  }
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace wellproof
