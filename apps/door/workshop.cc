#include "door/workshop.h"

#include <exception>
#include <utility>

#include <nlohmann/json.hpp>

#include "contract/require.h"
#include "door/commands.h"
#include "door/derived_text.h"
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
  request.derived.clear();
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
    auto ready = groundwork(request, read_derived(request.derived, ground));
    if (!ready) {
      return tl::unexpected(ready.error());
    }
    kept_ = std::make_unique<Prepared>(std::move(*ready));
    kept_for_ = ground;
    set_for_.reset();
    as_derived_ = kept_->derived;
  }
  auto const wanted = settings_of(request);
  if (wanted != set_for_) {
    auto const imposed = read_imposed(request);
    if (!imposed) {
      return tl::unexpected(imposed.error());
    }
    set_for_.reset();
    kept_->derived = as_derived_;
    if (auto const findings = settle(*kept_, *imposed, request.units); !findings.empty()) {
      return tl::unexpected(findings);
    }
    set_for_ = wanted;
  }
  return kept_.get();
}

Answer Workshop::explained(Request request) {
  auto const typed = std::exchange(request.answers, {});
  auto const told = request_bytes(request);
  if (!explaining_ || explained_for_ != told) {
    explaining_.reset();
    auto begun = explaining_of(request, progress_);
    if (!begun) {
      return refused(begun.error());
    }
    explaining_ = std::move(*begun);
    explained_for_ = told;
  }
  auto explanation = explaining_->explanation;
  for (auto const& each : typed) {
    auto const sign = each.find('=');
    auto const answer =
        read_answer(each.substr(0, sign), sign == std::string::npos ? "" : each.substr(sign + 1), {"--answer", 0, 0});
    if (!answer) {
      return refused(answer.error());
    }
    if (answer->answer) {
      explanation.explained.take({answer->check, *answer->answer});
    } else {
      explanation.explained.take(answer->check, *answer->show);
    }
  }
  explaining_->try_settings(explanation);
  return explain_answer(explanation, request);
}

Answer Workshop::carried_out(std::string_view bytes) {
  auto json = Json::parse(bytes.begin(), bytes.end(), nullptr, false);
  std::string const command = json.is_object() && json.contains("command") && json["command"].is_string()
                                  ? json["command"].get<std::string>()
                                  : "";
  bool const is_of_shares = command == "plan" && json.contains("options") && json["options"].contains("made");
  if (command != "live" && command != "share" && command != "derive" && command != "explain" && !is_of_shares) {
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
  if (command == "explain") {
    return explained(*request);
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
  if (command == "plan") {
    return plan_answer(*request, *ready, progress_);
  }
  if (command == "derive") {
    Plan plan;
    plan.site = ready->site;
    plan.derived = ready->derived;
    plan.logic = ready->logic;
    plan.units = request->units;
    plan.map = operating_map(ready->plants, plan.derived.settings);
    plan.outlook = outlook(ready->plants);
    if (ready->drive) {
      plan.drive = PlanDrive{request->card->file, ready->drive->card, ready->drive->entered, {}};
    }
    return {exit_code::fine, plan_json(plan), "", {{"derived", derived_text(as_derived_, kept_for_)}}};
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
