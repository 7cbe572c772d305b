#pragma once
// What a text must be before the TOML parser may see it: of a sane size, in UTF-8, letters beyond ASCII only in quotes
// and comments, no line that nests without end. What the parser itself would answer with a crash is answered here in
// words.
#include <optional>
#include <string_view>

#include "contract/finding.h"

namespace wellproof {

/// The first thing that bars the text from being parsed at all.
std::optional<Finding> stopping_finding(std::string_view text, std::string_view file);

}  // namespace wellproof
