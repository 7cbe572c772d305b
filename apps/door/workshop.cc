#include "door/workshop.h"

#include <exception>

#include <nlohmann/json.hpp>

#include "contract/require.h"
#include "door/commands.h"
#include "door/imposed.h"
#include "door/share.h"
#include "sheet/json.h"

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;

/// What the site and what follows from it hang on.
std::string ground_of(Request request) {
  request.command = "plan";
  request.set.clear();
  request.settings.reset();
  request.sets.clear();
  request.scenario.clear();
  request.draw = 0;
  request.made.clear();
  request.json = false;
  request.report.clear();
  return request_bytes(request);
}

std::string settings_of(Request const& request) {
  std::string all = request.settings ? request.settings->text : "";
  for (auto const& each : request.set) {
    all += '\n' + each;
  }
  return all;
}

}  // namespace

Result<Prepared const*> Workshop::at_hand(Request const& request) {
  auto const ground = ground_of(request);
  if (!kept_ || kept_for_ != ground) {
    kept_.reset();
    Request plain = request;
    plain.set.clear();
    plain.settings.reset();
    auto ready = prepared(plain);
    if (!ready) {
      return tl::unexpected(ready.error());
    }
    kept_ = std::make_unique<Prepared>(std::move(*ready));
    kept_for_ = ground;
    set_for_.clear();
    as_derived_ = kept_->derived;
  }
  auto const wanted = settings_of(request);
  if (wanted != set_for_) {
    auto const imposed = read_imposed(request);
    if (!imposed) {
      return tl::unexpected(imposed.error());
    }
    auto derived = as_derived_;
    if (auto const findings = impose(*imposed, derived, request.units); !findings.empty()) {
      return tl::unexpected(findings);
    }
    kept_->derived = std::move(derived);
    set_for_ = wanted;
  }
  return kept_.get();
}

Answer Workshop::carried_out(std::string_view bytes) {
  auto json = Json::parse(bytes.begin(), bytes.end(), nullptr, false);
  std::string const command = json.is_object() && json.contains("command") && json["command"].is_string()
                                  ? json["command"].get<std::string>()
                                  : "";
  if (command != "live" && command != "share" && command != "derive") {
    return door_.ask(bytes);
  }
  std::string live;
  if (json.contains("live")) {
    live = json["live"].dump();
    json.erase("live");
  }
  auto const request = read_request(json.dump());
  if (!request) {
    return refused(request.error());
  }
  Prepared const* ready = nullptr;
  if (command != "live" || LiveDesk::wants_site(live)) {
    auto const found = at_hand(*request);
    if (!found) {
      return refused(found.error());
    }
    ready = *found;
  }
  if (command == "live") {
    return live_.ask(live, ready, request->seed);
  }
  if (command == "derive") {
    Plan plan;
    plan.site = ready->site;
    plan.derived = ready->derived;
    plan.logic = ready->logic;
    plan.units = request->units;
    plan.map = operating_map(ready->plants, plan.derived.settings);
    plan.outlook = outlook(ready->plants);
    return {exit_code::fine, plan_json(plan), "", {}};
  }
  if (request->first >= request->draws || request->count > request->draws - request->first) {
    return share_command(*request);  // says what is wrong
  }
  return {exit_code::fine, share_text(*ready, request->first, request->count, request->seed, request->units), "", {}};
}

Answer Workshop::ask(std::string_view request) {
  try {
    return carried_out(request);
  } catch (std::exception const& error) {
    return {
        exit_code::machine, "", std::string("wellproof: stopped by a fault of its own: ") + error.what() + "\n", {}};
  }
}

}  // namespace wellproof
