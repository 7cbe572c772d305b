#pragma once
// A history of stops explained, as a sheet shows it: what was told, the causes ranked with what speaks for and against
// each, the next check, and which setting would have avoided the stops.
#include <string>
#include <vector>

#include "explain/explain.h"
#include "explain/history.h"
#include "quantity/dimension.h"
#include "settings/derive.h"

namespace wellproof {

struct Explanation {
  std::string site_name;
  UnitSystem units = UnitSystem::us;
  History history;
  Explained explained;
  Settings settings;             // as found in the drive
  std::string settings_from;     // "as derived for the site", or what was given
  std::vector<Remedy> remedies;  // of the leading cause
  std::vector<std::string> notes;
};

std::string explain_sheet(Explanation const& explanation, bool colour);
std::string explain_json(Explanation const& explanation);
/// One HTML file with the chart of the stops; no script, no date.
std::string explain_report(Explanation const& explanation);

/// One thing that speaks for a cause, or against it.
struct Speaking {
  bool for_it = true;
  double weight = 0;  // by how many times it changes the odds against the others, as a natural logarithm
  std::string says;
};

/// What speaks for and against, the strongest first.
std::vector<Speaking> speaking(Explanation const& explanation, RankedCause const& cause);
/// The leader in one sentence, or that nothing leads.
std::string leader_says(Explanation const& explanation);
/// What was told in a line: "11 stops in 3 d 4 h: 11 dry run".
std::string history_says(Explanation const& explanation);
/// How bad it would be in the world that fits best: "the well gives … 0.8 gpm".
std::string severity_says(Explanation const& explanation, RankedCause const& cause);
/// An answer of a check as it is seen: "below 41 psi", or its words.
std::string answer_seen(Explanation const& explanation, Question const& question, std::size_t answer);
/// What each answer of a check would mean, in the order of the answers.
std::vector<std::string> answers_say(Explanation const& explanation, Question const& question);
/// The remedies that help, in sentences; the first says that none does.
std::vector<std::string> remedies_say(Explanation const& explanation);
/// Always to be said with an answer like this.
std::vector<Caution> explain_cautions(Explanation const& explanation);

/// The chart of the stops: days against time of day, and the rest after each stop (explain_figure.cc).
std::string stops_figure(Explanation const& explanation);

/// A share with its error: "62 ± 4 %".
std::string share_text(double share, double error);

}  // namespace wellproof
