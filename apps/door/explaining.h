#pragma once
// From a request to an explanation: what the command answers with, and what asking on at a terminal goes on from.
#include <string>

#include "contract/finding.h"
#include "door/door.h"
#include "sheet/explain_sheet.h"

namespace wellproof {

Result<Explanation> explanation_of(Request const& request, Door::Progress const& progress);

/// The answer of a check as it is typed: one of its words, or the instrument's value with its unit.
struct TypedAnswer {
  std::size_t check = 0;
  std::optional<std::size_t> answer;
  std::optional<ToldShow> show;
};
Result<TypedAnswer> read_answer(std::string const& check_key, std::string const& answer, Place const& place);

}  // namespace wellproof
