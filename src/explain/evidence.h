#pragma once
// All that is known of a case, in the form in which worlds are held against it.
#include <optional>
#include <string>
#include <vector>

#include "explain/history.h"
#include "explain/pattern.h"
#include "explain/show.h"
#include "fit/readings.h"

namespace wellproof {

/// An instrument's value.
struct ToldShow {
  Show show = Show::half_current;
  double value = 0;  // SI
  double sigma = 0;  // > 0
};

struct Evidence {
  bool has_history = false;  // a list of stops was given, be it empty
  Pattern pattern;
  std::optional<double> since_newest_s;  // from the newest stop to now
  std::vector<ToldSymptom> symptoms;
  std::vector<ToldShow> shows;
};

/// @param readings may be null
/// @param settings as they are in the drive
Evidence evidence_of(History const& history, SiteReadings const* readings, Settings const& settings);

/// What the drive's display said as instruments' values. How far a tap was open nobody knows exactly: speed and current
/// get an error for that.
std::vector<ToldShow> shows_of(History const& history);
std::vector<ToldShow> shows_of(SiteReadings const& readings);

}  // namespace wellproof
