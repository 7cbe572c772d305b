#pragma once
// What changed between two texts, line by line: short and for a person.
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace wellproof {

/// A stretch of lines: kept, or taken out, or put in. Numbers count from 1 in the text that has the line.
struct DiffLine {
  enum class Change { none, out, in };
  Change change = Change::none;
  std::size_t number = 0;
  std::string text;
};

/// The changed lines, each with up to so many unchanged ones around it; empty if the texts are the same. As few lines
/// as can be are called changed, but in texts of which more than some thousand lines differ the whole middle is.
std::vector<DiffLine> line_diff(std::string_view before, std::string_view after, std::size_t around = 1);

}  // namespace wellproof
