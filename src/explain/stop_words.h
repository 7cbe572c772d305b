#pragma once
// What a stop is called: our own word, the plain words of the trade for the same, and, where a card of the drive says
// so, that drive's.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "settings/card.h"

namespace wellproof {

/// "dry run".
std::string_view says(StopCause kind);

/// Small letters and digits only, anything else as single blanks: "Dry-Run!" is "dry run".
std::string plain_words(std::string_view text);

/// The kind that a phrase names, other words around it allowed ("stopped: ran dry"): by the longest words known.
std::optional<StopCause> stop_kind(std::string_view phrase);

/// The kind that the longest of a drive's labels in the line names, in small or capital letters. The label is taken out
/// of the line: a number in it ("S01") tells no time.
std::optional<StopCause> take_label(std::string& line, std::vector<StopLabel> const& own);

/// The known word or phrase nearest to one that names no kind; empty if none is near.
std::string nearest_stop_word(std::string_view phrase, std::vector<StopLabel> const& own = {});

}  // namespace wellproof
