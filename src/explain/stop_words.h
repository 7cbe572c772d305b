#pragma once
// What a stop is called: our own word, the plain words of the trade for the same, and, where a card of the drive says
// so, that drive's.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "regulator/regulator.h"

namespace wellproof {

/// A drive's own word for one of our kinds.
struct OwnStopWord {
  std::string said;
  StopCause kind = StopCause::dry_run;
};

/// Every kind, in the order of the reports.
inline constexpr StopCause all_stop_kinds[] = {
    StopCause::dry_run,      StopCause::closed_discharge, StopCause::long_run,
    StopCause::over_current, StopCause::low_volts,        StopCause::drive_hot,
    StopCause::sensor_lost,  StopCause::outside_contact,  StopCause::high_pressure};
inline constexpr std::size_t stop_kinds = 9;

/// "dry run".
std::string_view says(StopCause kind);

/// Small letters and digits only, anything else as single blanks: "Dry-Run!" is "dry run".
std::string plain_words(std::string_view text);

/// The kind that a phrase names, other words around it allowed ("stopped: ran dry"). Own words come first, then the
/// longest of ours.
std::optional<StopCause> stop_kind(std::string_view phrase, std::vector<OwnStopWord> const& own = {});

/// The known word or phrase nearest to one that names no kind; empty if none is near.
std::string nearest_stop_word(std::string_view phrase, std::vector<OwnStopWord> const& own = {});

}  // namespace wellproof
