#include "door/share.h"

#include <algorithm>
#include <string>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "door/commands.h"
#include "proof/hazard.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;

Findings no_share(std::string found, std::string expected) {
  return {{{"request", 0, 0}, "made", std::move(found), std::move(expected), ""}};
}

/// What the criterion that came nearest says, and its figure against the limit.
Json words_of(Prepared const& ready, Hazard const& hazard, Outcome const& outcome, UnitSystem units) {
  auto const criteria = hazard.make(ready.plants[outcome.draw], ready.derived.settings).criteria;
  if (outcome.criterion >= criteria.size()) {
    return "";
  }
  auto const& criterion = criteria[outcome.criterion];
  return fmt::format("{}: {}, {} {}", criterion.says, figure(outcome.value, criterion.measure, units),
                     bound_words(criterion.measure), figure(outcome.limit, criterion.measure, units));
}

/// A run that another made; nothing if it is none.
std::optional<Outcome> outcome_of(Json const& run) {
  constexpr std::size_t figures = 7;
  if (!run.is_array() || run.size() != figures + 1 || !run[0].is_number_unsigned() || !run[1].is_boolean() ||
      !run[3].is_number_unsigned() || !run[6].is_number_unsigned() || run[6].get<unsigned>() > 2) {
    return std::nullopt;
  }
  for (std::size_t const i : {2U, 4U, 5U}) {
    if (!run[i].is_number()) {
      return std::nullopt;
    }
  }
  Outcome outcome;
  outcome.draw = run[0].get<std::uint32_t>();
  outcome.passed = run[1].get<bool>();
  outcome.margin = run[2].get<double>();
  outcome.criterion = run[3].get<std::size_t>();
  outcome.value = run[4].get<double>();
  outcome.limit = run[5].get<double>();
  outcome.ending = static_cast<Ending>(run[6].get<int>());
  if (run[figures].is_number()) {
    outcome.pressure_room_pa = run[figures].get<double>();
  }
  return outcome;
}

std::optional<SwingsOfDraw> swings_of(Json const& these) {
  SwingsOfDraw swings;
  if (!these.is_array() || these.size() != swings.size()) {
    return std::nullopt;
  }
  for (std::size_t k = 0; k < swings.size(); ++k) {
    if (!these[k].is_array() || these[k].size() != 2 || !these[k][0].is_number() || !these[k][1].is_number()) {
      return std::nullopt;
    }
    swings[k] = {these[k][0].get<double>(), these[k][1].get<double>()};
  }
  return swings;
}

/// Of the draws looked at, in their order; of none where one is missing.
std::vector<SwingsOfDraw> swings_of(Json const& shares, std::uint32_t draws) {
  std::vector<std::optional<SwingsOfDraw>> found(std::min<std::size_t>(draws, swing_draws));
  for (auto const& share : shares) {
    if (!share.contains("first") || !share["first"].is_number_unsigned() || !share.contains("swings") ||
        !share["swings"].is_array()) {
      continue;
    }
    auto const first = share["first"].get<std::size_t>();
    for (std::size_t i = 0; i < share["swings"].size() && first < found.size() && first + i < found.size(); ++i) {
      found[first + i] = swings_of(share["swings"][i]);
    }
  }
  std::vector<SwingsOfDraw> swings;
  for (auto const& each : found) {
    if (each) {
      swings.push_back(*each);
    }
  }
  return swings.size() == found.size() ? swings : std::vector<SwingsOfDraw>{};
}

}  // namespace

std::string share_text(Prepared const& ready, std::uint32_t first, std::uint32_t count, std::uint64_t seed,
                       UnitSystem units) {
  ProveOptions options;
  options.seed = seed;
  options.logic = ready.logic;
  auto const [outcomes, swings] = prove_share(ready.plants, ready.derived.settings, options, first, count);
  Json runs = Json::object();
  Json says = Json::object();
  for (std::size_t h = 0; h < outcomes.size(); ++h) {
    auto const& hazard = hazards()[h];
    Json& of = runs[std::string(hazard.name)] = Json::array();
    for (auto const& o : outcomes[h]) {
      of.push_back({o.draw, o.passed, o.margin, o.criterion, o.value, o.limit, static_cast<int>(o.ending),
                    o.pressure_room_pa ? Json(*o.pressure_room_pa) : Json(nullptr)});
    }
    auto const worst = std::min_element(outcomes[h].begin(), outcomes[h].end(), [](Outcome const& a, Outcome const& b) {
      return std::pair(a.passed, a.margin) < std::pair(b.passed, b.margin);
    });
    if (worst != outcomes[h].end()) {
      says[std::string(hazard.name)] = words_of(ready, hazard, *worst, units);
    }
  }
  Json swung = Json::array();
  for (auto const& of_draw : swings) {
    Json& these = swung.emplace_back(Json::array());
    for (auto const& swing : of_draw) {
      these.push_back({swing.swing_pa, swing.period_s});
    }
  }
  return Json{{"first", first},
              {"count", count},
              {"runs", std::move(runs)},
              {"swings", std::move(swung)},
              {"worst", std::move(says)}}
      .dump(-1, ' ', false, Json::error_handler_t::replace);
}

Result<ProofRuns> read_shares(std::string_view text, std::uint32_t draws) {
  Json const shares = Json::parse(text.begin(), text.end(), nullptr, false);
  if (!shares.is_array()) {
    return tl::unexpected(no_share("no array", "the answers of share, in an array"));
  }
  std::vector<std::vector<Outcome>> outcomes(hazards().size(), std::vector<Outcome>(draws));
  std::vector<std::vector<char>> there(hazards().size(), std::vector<char>(draws, 0));
  for (auto const& share : shares) {
    for (std::size_t h = 0; h < hazards().size(); ++h) {
      std::string const name(hazards()[h].name);
      if (!share.is_object() || !share.contains("runs") || !share["runs"].is_object() ||
          !share["runs"].contains(name) || !share["runs"][name].is_array()) {
        return tl::unexpected(no_share("a share without " + name, "the runs of every scenario"));
      }
      for (auto const& run : share["runs"][name]) {
        auto const outcome = outcome_of(run);
        if (!outcome || outcome->draw >= draws || there[h][outcome->draw] != 0) {
          return tl::unexpected(no_share(run.dump().substr(0, 80), "one run for each draw"));
        }
        there[h][outcome->draw] = 1;
        outcomes[h][outcome->draw] = *outcome;
      }
    }
  }
  for (auto const& of : there) {
    if (std::find(of.begin(), of.end(), 0) != of.end()) {
      return tl::unexpected(no_share("fewer runs", fmt::format("those of all {} draws", draws)));
    }
  }
  return ProofRuns{std::move(outcomes), swings_of(shares, draws)};
}

Answer share_command(Request const& request) {
  auto const ready = prepared(request);
  if (!ready) {
    return refused(ready.error());
  }
  if (request.first >= request.draws || request.count > request.draws - request.first) {
    return refused({{{"request", 0, 0},
                     "first",
                     fmt::format("{} and the {} from there", request.first, request.count),
                     fmt::format("draws below {}", request.draws),
                     ""}});
  }
  return {exit_code::fine, share_text(*ready, request.first, request.count, request.seed, request.units), "", {}};
}

}  // namespace wellproof
