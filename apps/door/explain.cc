#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "contract/nearest.h"
#include "door/commands.h"
#include "door/explaining.h"
#include "door/prepared.h"
#include "explain/changed.h"
#include "explain/told_time.h"
#include "fit/readings.h"
#include "quantity/quantity.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

void append(Findings& to, Findings const& more) {
  to.insert(to.end(), more.begin(), more.end());
}

std::vector<std::string_view> cause_keys() {
  std::vector<std::string_view> keys;
  for (auto const& fault : faults()) {
    keys.push_back(fault.key);
  }
  keys.push_back(none_key);
  return keys;
}

/// "CAUSE=SHARE" of the command line.
std::vector<PriorShare> read_priors(std::vector<std::string> const& typed, Findings& findings) {
  Place const place{"--prior", 0, 0};
  std::vector<PriorShare> priors;
  auto const keys = cause_keys();
  double sum = 0;
  for (auto const& each : typed) {
    auto const sign = each.find('=');
    std::string const key = each.substr(0, sign);
    if (sign == std::string::npos) {
      findings.push_back({place, "", "\"" + each + "\"", "CAUSE=SHARE, as tank_charge_lost=0.2", ""});
      continue;
    }
    if (std::find(keys.begin(), keys.end(), key) == keys.end()) {
      findings.push_back(
          {place, "", "\"" + key + "\"", fmt::format("one of {}", fmt::join(keys, ", ")), nearest_word(key, keys)});
      continue;
    }
    auto const share = read_quantity(each.substr(sign + 1), Dimension::none);
    if (!share || *share < 0 || *share > 1) {
      findings.push_back(
          {place, key, "\"" + each.substr(sign + 1) + "\"", "a share from 0 to 1, or as a percentage", ""});
      continue;
    }
    sum += *share;
    priors.push_back({key, *share});
  }
  if (sum > 1) {
    findings.push_back({place, "", fmt::format("shares that are {:.3g} together", sum), "at most 1", ""});
  }
  return priors;
}

std::optional<WallClock> clock_of(Request const& request, Findings& findings) {
  if (request.now.empty()) {
    return std::nullopt;
  }
  auto const clock = read_wall_clock(request.now);
  if (!clock) {
    findings.push_back({{"--now", 0, 0}, "", clock.error().found, clock.error().expected, ""});
    return std::nullopt;
  }
  return *clock;
}

/// What came with the request in words, read.
struct Told {
  History history;
  std::vector<PriorShare> priors;
  std::vector<TypedAnswer> answers;
};

Told read_told(Request const& request, Findings& findings) {
  Told told;
  auto const clock = clock_of(request, findings);
  std::vector<StopLabel> labels;
  if (request.card) {
    if (auto const card = read_card(request.card->text, request.card->file)) {
      labels = card->stops;  // what is wrong with a card is found where the settings are derived
    }
  }
  if (auto history = read_history(request.history.text, request.history.file, clock, labels)) {
    told.history = std::move(*history);
  } else {
    append(findings, history.error());
  }
  for (auto const& each : request.symptoms) {
    if (auto const symptom = read_symptom(each, {"--symptom", 0, 0})) {
      told.history.symptoms.push_back(*symptom);
    } else {
      append(findings, symptom.error());
    }
  }
  told.priors = read_priors(request.prior, findings);
  for (auto const& each : request.answers) {
    auto const sign = each.find('=');
    if (auto const answer = read_answer(each.substr(0, sign), sign == std::string::npos ? "" : each.substr(sign + 1),
                                        {"--answer", 0, 0})) {
      told.answers.push_back(*answer);
    } else {
      append(findings, answer.error());
    }
  }
  return told;
}

std::string settings_words(Request const& request, History const& history) {
  std::string out;
  if (!history.settings.empty()) {
    out = fmt::format("{} as found, by {}", history.settings.size(), request.history.file);
  }
  if (request.settings) {
    out += (out.empty() ? "" : "; ") + fmt::format("as in {}", request.settings->file);
  }
  if (!request.set.empty()) {
    out += (out.empty() ? "" : "; ") + fmt::format("{} as given", request.set.size());
  }
  return out.empty() ? "taken as derived for this site" : out + "; the others as derived";
}

}  // namespace

Result<TypedAnswer> read_answer(std::string const& check_key, std::string const& answer, Place const& place) {
  std::size_t const place_of_check = check_place(check_key);
  if (place_of_check >= checks().size()) {
    std::vector<std::string_view> keys;
    for (auto const& check : checks()) {
      keys.push_back(check.key);
    }
    return tl::unexpected(Findings{{place, "", "\"" + check_key + "\"", fmt::format("one of {}", fmt::join(keys, ", ")),
                                    nearest_word(check_key, keys)}});
  }
  auto const& check = checks()[place_of_check];
  TypedAnswer typed;
  typed.check = place_of_check;
  std::vector<std::string_view> words;
  for (std::size_t a = 0; a < check.answers.size(); ++a) {
    words.push_back(check.answers[a].word);
    if (plain_words(answer) == plain_words(check.answers[a].word)) {
      typed.answer = a;
      return typed;
    }
  }
  if (check.show) {
    if (auto const value = read_quantity(answer, dimension_of(*check.show))) {
      constexpr double half_width_sigmas = 1.96;
      typed.show = ToldShow{*check.show, *value, usual_error(*check.show, *value) / half_width_sigmas};
      return typed;
    }
  }
  return tl::unexpected(Findings{{place, std::string(check.key), "\"" + answer + "\"",
                                  fmt::format("{}{}", fmt::join(words, ", "),
                                              check.show && dimension_of(*check.show) != Dimension::none
                                                  ? fmt::format(", or {} as \"{}\"", name(dimension_of(*check.show)),
                                                                example(dimension_of(*check.show)))
                                                  : ""),
                                  nearest_word(answer, words)}});
}

Result<Explaining> explaining_of(Request const& request, Door::Progress const& progress) {
  Findings findings;
  auto told = read_told(request, findings);
  Request with = request;
  with.set.insert(with.set.end(), told.history.settings.begin(), told.history.settings.end());
  auto const imposed = read_imposed(with);
  auto ready = groundwork(with);
  if (!imposed) {
    append(findings, imposed.error());
  }
  if (!ready) {
    append(findings, ready.error());
  }
  if (!ready || !imposed) {
    return tl::unexpected(findings);
  }
  auto planned = *ready;
  append(findings, settle(planned, {}, request.units));
  append(findings, settle(*ready, *imposed, request.units));
  auto const& site = ready->site.site;
  std::optional<SiteReadings> readings;
  if (!request.readings.file.empty()) {
    if (auto read = read_readings(request.readings.text, request.readings.file, site)) {
      readings = std::move(*read);
    } else {
      append(findings, read.error());
    }
  }
  if (!findings.empty()) {
    return tl::unexpected(findings);
  }
  auto const& settings = ready->derived.settings;
  auto const speaking = changes_speak(told.history.changed);
  auto evidence = evidence_of(told.history, readings ? &*readings : nullptr, settings);
  std::vector<ToldAnswer> answers;
  for (auto const& answer : told.answers) {
    if (answer.answer) {
      answers.push_back({answer.check, *answer.answer});
    } else {
      evidence.shows.push_back(*answer.show);
    }
  }
  ExplainOptions options;
  options.seed = request.seed;
  options.draws = request.draws;
  options.threads = request.threads;
  options.logic = ready->logic;
  options.priors = shares_after(speaking, told.priors);
  options.progress = progress;
  Explanation explanation{.site_name = site_name(ready->site),
                          .units = request.units,
                          .history = told.history,
                          .explained = Explained(ready->plants, settings, evidence, answers, options),
                          .settings = settings,
                          .settings_from = settings_words(request, told.history),
                          .remedies = {},
                          .notes = told.history.notes};
  for (auto const& change : speaking) {
    bool const likelier = change.factor >= 1;
    explanation.notes.push_back(fmt::format("\"{}\": the odds of \"{}\" are taken as {:.0f} times {} beforehand.",
                                            change.said, faults()[fault_place(change.fault)].title,
                                            likelier ? change.factor : 1 / change.factor,
                                            likelier ? "higher" : "lower"));
  }
  options.progress = {};
  return Explaining{std::move(explanation), ready->plants, planned.derived.settings, options};
}

void Explaining::try_settings(Explanation& other) const {
  other.remedies = remedies(other.explained, plants, other.settings, plan, options);
}

Answer explain_answer(Explanation const& explanation, Request const& request) {
  Answer answer;
  answer.out = request.json ? explain_json(explanation) : explain_sheet(explanation, request.colour);
  if (!request.report.empty()) {
    answer.files.emplace_back(request.report, explain_report(explanation));
  }
  return answer;
}

Answer explain_command(Request const& request, Door::Progress const& progress) {
  auto explaining = explaining_of(request, progress);
  if (!explaining) {
    return refused(explaining.error());
  }
  explaining->try_settings(explaining->explanation);
  return explain_answer(explaining->explanation, request);
}

}  // namespace wellproof
