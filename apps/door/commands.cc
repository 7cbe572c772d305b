#include "door/commands.h"

#include <algorithm>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "contract/nearest.h"
#include "door/checked.h"
#include "door/prepared.h"
#include "door/share.h"
#include "proof/rounding.h"
#include "settings/common_practice.h"
#include "sheet/json.h"
#include "sheet/layout.h"
#include "sheet/map_sheet.h"
#include "sheet/report.h"
#include "sheet/run_sheet.h"
#include "sheet/settings_file.h"
#include "sheet/terminal.h"
#include "sheet/words.h"
#include "site/draw.h"

namespace wellproof {
namespace {

constexpr std::size_t search_of_proofs = 2;  // about as many times as long as the proof before it

/// What follows from the ceiling that a search found in place of what was derived for the one before; what the user has
/// given and what the drive lacks keep their reasons.
void take_reasons(Derived const& anew, Derived& derived) {
  for (std::size_t i = 0; i < derived.reasons.size(); ++i) {
    auto& reason = derived.reasons[i];
    auto const& lacking = derived.not_on_drive;
    if (!reason.imposed && std::find(lacking.begin(), lacking.end(), reason.key) == lacking.end()) {
      reason = anew.reasons[i];
    }
  }
  derived.cautions = anew.cautions;
  derived.rest_curve = anew.rest_curve;
  derived.rest_run_wanted_s = anew.rest_run_wanted_s;
}

CommonPractice common_practice_on(Prepared const& ready, ProveOptions const& options) {
  auto settings = common_practice(ready.plants.front());
  if (ready.drive) {
    settings = on_card(settings, ready.drive->card).settings;
  }
  auto const proof = prove(ready.site.site, ready.plants, settings, options);
  auto const failing = std::count_if(proof.scenarios.begin(), proof.scenarios.end(),
                                     [](ScenarioProof const& scenario) { return scenario.failed > 0; });
  return {smallest_margin(proof), static_cast<std::size_t>(failing)};
}

/// Searches from what was derived and takes what is better; what the user has given stays.
void search_from(Plan& plan, Prepared& ready, ProveOptions const& proving, Door::Progress const& progress) {
  SearchOptions options{.prove = proving, .fixed = {}};
  if (ready.drive) {
    options.card = ready.drive->card;
  }
  options.prove.progress = {};
  options.prove.made = nullptr;  // those are runs of what was derived
  if (progress) {
    options.progress = [&progress](std::size_t done, std::size_t all) {
      progress(all + search_of_proofs * done, (1 + search_of_proofs) * all);
    };
  }
  for (auto const& reason : plan.derived.reasons) {
    if (reason.imposed) {
      options.fixed.push_back(reason.key);
    }
  }
  plan.search = search_settings(plan.site.site, ready.plants, plan.derived.settings, plan.proof, options);
  options.prove.insight = false;
  plan.search->common = common_practice_on(ready, options.prove);
  plan.derived.settings = plan.search->settings;
  plan.proof = plan.search->proof;
  if (plan.search->anew) {
    take_reasons(*plan.search->anew, plan.derived);
  }
  for (auto const& moved : plan.search->moved) {
    for (auto& reason : plan.derived.reasons) {
      if (reason.key == moved.key) {
        auto const shown = [&](double value) {
          return setting_text({moved.key, moved.dimension, ""}, value, plan.units);
        };
        reason.because += moved.followed
                              ? fmt::format(" Was {} before the search moved the ceiling.", shown(moved.from))
                              : fmt::format(" So far what was derived, {}; the search moved it to {}.",
                                            shown(moved.derived), shown(moved.to));
      }
    }
  }
  ready.derived = plan.derived;
  if (ready.drive) {
    auto& drive = *ready.drive;
    drive.derived = plan.derived.settings;
    drive.entered = on_card(drive.derived, drive.card);
    ready.logic.second_gain_share = drive.entered.logic.second_gain_share;
    plan.logic = ready.logic;
  }
  plan.map = operating_map(ready.plants, plan.derived.settings);
  plan.curves = head_curves(ready.plants.front(), plan.derived.settings);
}

Trace recorded_run(Plant const& plant, Prepared const& ready, Trial const& trial, std::uint64_t noise) {
  RunOptions options;
  options.logic = ready.logic;
  options.windows = trial.windows;
  options.record = true;
  options.noise_seed = noise;
  return run(plant, ready.derived.settings, trial.scenario, options);
}

}  // namespace

Answer plan_command(Request const& request, Door::Progress const& progress) {
  auto ready = prepared(request);
  if (!ready) {
    return refused(ready.error());
  }
  return plan_answer(request, std::move(*ready), progress);
}

Answer plan_answer(Request const& request, Prepared ready, Door::Progress const& progress) {
  Plan plan;
  plan.site = ready.site;
  plan.derived = ready.derived;
  plan.logic = ready.logic;
  plan.units = request.units;
  plan.outlook = outlook(ready.plants);
  plan.map = operating_map(ready.plants, plan.derived.settings);
  plan.curves = head_curves(ready.plants.front(), plan.derived.settings);
  auto options = prove_options(request, ready.logic);
  options.progress = progress;
  if (request.search && progress) {
    options.progress = [&progress](std::size_t done, std::size_t all) { progress(done, (1 + search_of_proofs) * all); };
  }
  ProofRuns made;
  if (!request.made.empty()) {
    auto read = read_shares(request.made, request.draws);
    if (!read) {
      return refused(read.error());
    }
    made = std::move(*read);
    options.made = &made;
  }
  // What to measure is told from all runs, which are not made then.
  options.stop_when_certain = request.stop_early;
  options.insight = !request.stop_early;
  plan.proof = prove(plan.site.site, ready.plants, plan.derived.settings, options);
  if (request.search) {
    search_from(plan, ready, options, progress);
    options.logic = ready.logic;
  }
  if (ready.drive) {
    auto const& drive = *ready.drive;
    options.progress = {};
    plan.drive = PlanDrive{request.card->file, drive.card, drive.entered,
                           lost_by_rounding(ready.plants, plan.proof, plan.derived.settings,
                                            without_rounding(drive.derived, drive.card), options)};
  }

  Answer answer;
  answer.exit_code = plan.proof.proven ? exit_code::fine : exit_code::not_proven;
  answer.out = request.json ? plan_json(plan) : terminal_sheet(plan, request.colour);
  if (!request.report.empty()) {
    for (auto const& scenario : plan.proof.scenarios) {
      auto const* const of = hazard(scenario.name);
      if (of != nullptr && scenario.worst.draw < ready.plants.size()) {
        auto const& plant = ready.plants[scenario.worst.draw];
        auto const trial = of->make(plant, plan.derived.settings);
        plan.worst_runs.push_back(
            {scenario.name, recorded_run(plant, ready, trial, noise_seed(request.seed, scenario.worst.draw))});
      }
    }
    answer.files.emplace_back(request.report, html_report(plan));
  }
  if (!request.settings_to.empty()) {
    answer.files.emplace_back(request.settings_to, settings_file(plan));
  }
  return answer;
}

Answer map_command(Request const& request) {
  auto const ready = prepared(request);
  if (!ready) {
    return refused(ready.error());
  }
  auto const map = operating_map(ready->plants, ready->derived.settings);
  auto const& name = ready->site.site.name;
  return {exit_code::fine,
          request.json ? map_json(name, map) : map_sheet(name, map, request.units, request.colour),
          "",
          {}};
}

Answer run_command(Request const& request) {
  auto const* const of = hazard(request.scenario);
  if (of == nullptr) {
    std::vector<std::string_view> names;
    for (auto const& each : hazards()) {
      names.push_back(each.name);
    }
    return refused({{{"", 0, 0},
                     "SCENARIO",
                     "\"" + request.scenario + "\"",
                     fmt::format("one of {}", fmt::join(names, ", ")),
                     nearest_word(request.scenario, names)}});
  }
  auto const ready = prepared(request);
  if (!ready) {
    return refused(ready.error());
  }
  Plant const plant = request.draw < ready->plants.size() ? ready->plants[request.draw]
                                                          : build(draw(ready->site.site, request.seed, request.draw));
  Trial trial = of->make(plant, ready->derived.settings);
  JudgedRun judged;
  judged.site_name = ready->site.site.name;
  judged.scenario = of->name;
  judged.title = of->title;
  judged.says = of->says;
  judged.seed = request.seed;
  judged.draw = request.draw;
  judged.units = request.units;
  judged.trace = recorded_run(plant, *ready, trial, noise_seed(request.seed, request.draw));
  judged.criteria = std::move(trial.criteria);
  for (auto const& criterion : judged.criteria) {
    judged.verdicts.push_back(judge(judged.trace, criterion));
  }
  Answer answer;
  answer.exit_code = judged.passed() ? exit_code::fine : exit_code::not_proven;
  answer.out = request.json ? run_json(judged) : run_sheet(judged, request.colour);
  if (!request.csv.empty()) {
    answer.files.emplace_back(request.csv, run_csv(judged.trace));
  }
  return answer;
}

Answer check_command(Request const& request) {
  auto const site = read_site(request.site.text, request.site.file, request.beside);
  if (!site) {
    return refused(site.error());
  }
  if (request.json) {
    return {exit_code::fine, checked_json(*site, request.units), "", {}};
  }
  auto const& assumptions = site->assumptions;
  std::string out =
      fmt::format("{}: nothing wrong; {} {} assumed{}\n", visible(request.site.file), assumptions.size(),
                  assumptions.size() == 1 ? "quantity is" : "quantities are", assumptions.empty() ? "." : ":");
  out += assumption_list(assumptions, request.units, Paint(request.colour));
  return {exit_code::fine, out, "", {}};
}

Answer scenarios_command(Request const& request) {
  return {exit_code::fine, scenario_list(hazards(), request.colour), "", {}};
}

Answer new_command(Request const& request) {
  return {exit_code::fine, "", "", {{request.starter, starter_site(request.units)}}};
}

}  // namespace wellproof
