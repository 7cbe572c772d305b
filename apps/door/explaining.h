#pragma once
// From a request to an explanation: what the command answers with, and what asking on at a terminal goes on from.
#include <string>
#include <vector>

#include "contract/finding.h"
#include "door/door.h"
#include "sheet/explain_sheet.h"

namespace wellproof {

/// The explanation, no setting tried yet, with what it takes to try settings once more answers have come.
struct Explaining {
  Explanation explanation;
  std::vector<Plant> plants;
  Settings plan;
  ExplainOptions options;

  /// Tries settings for the cause that leads in an explanation that went on from the one above.
  void try_settings(Explanation& other) const;
};
Result<Explaining> explaining_of(Request const& request, Door::Progress const& progress);

/// As the request wants it written.
Answer explain_answer(Explanation const& explanation, Request const& request);

/// The answer of a check as it is typed: one of its words, or the instrument's value with its unit.
struct TypedAnswer {
  std::size_t check = 0;
  std::optional<std::size_t> answer;
  std::optional<ToldShow> show;
};
Result<TypedAnswer> read_answer(std::string const& check_key, std::string const& answer, Place const& place);

}  // namespace wellproof
