#pragma once
// The sentences that terminal sheet, report and JSON share.
#include <cstddef>
#include <string>
#include <vector>

#include "sheet/plan.h"

namespace wellproof {

/// Its name, or a word for one that has none.
std::string site_name(SiteRead const& read);
/// The site in one line: water, pump, motor, tank.
std::string site_in_one_line(SiteRead const& read, UnitSystem units);

/// "PROVEN" or "NOT PROVEN".
std::string verdict_word(Proof const& proof);
/// What stands behind it, in figures.
std::string verdict_says(Proof const& proof);
/// Settings that could not be set well, as a sentence; empty if there are none.
std::string infeasible_says(Derived const& derived);

/// The command that runs the worst case of a scenario again, without the settings that were imposed.
std::string replay_command(Proof const& proof, ScenarioProof const& scenario);

/// A moment of a run: "1:02:33.5".
std::string clock_text(double time_s);
/// An event of a run as words: "stops: dry run; rests before the next try".
std::string event_says(RegulatorEvent const& event);
/// Events as they are told: a round of two to four that merely repeats itself (wakes, eases down, sleeps) is told once.
struct ToldEvent {
  double time_s = 0;
  std::string says;
  std::size_t round = 0;  // of so many events, this the last, the same came again …
  std::size_t again = 0;  // … so many times more, …
  double again_until_s = 0;
};
std::vector<ToldEvent> told_events(std::vector<TraceEvent> const& events);
/// "these two 9 times more, until 0:09:19.9"; empty where nothing repeats.
std::string again_says(ToldEvent const& event);
/// A word of code as one reads it: "dry_run" as "dry run".
std::string spoken(std::string_view word);

/// A figure of a criterion in its unit.
std::string figure(double value_si, Measure measure, UnitSystem units);
/// What is measured: "least pressure at the tank's tee".
std::string_view says(Measure measure);
/// "at least" or "at most".
std::string_view bound_words(Measure measure);

/// "1 scenario", "2 scenarios".
std::string plural(std::size_t count, std::string_view one);
/// A rate as a percentage with the digits that matter: "2.3 %".
std::string percent(double share);
/// A margin with two decimals and its sign.
std::string margin_text(double margin);

/// A setting's value in a person's units; the power that a guard looks at in watts, as a meter shows it.
std::string setting_text(SettingField const& field, double value_si, UnitSystem units);

/// The settings as texts, in the order of entry; the two choices last. What the drive does not have is left out.
struct SettingLine {
  std::string key;
  double value = 0;  // SI; of no meaning for a choice
  bool choice = false;
  std::string text;  // value in customary units, or the choice's word
  std::string meaning;
  SettingReason reason;
};
std::vector<SettingLine> setting_lines(Derived const& derived, UnitSystem units);

/// The cautions that hold on every site, in the order in which the work is done.
std::vector<Caution> const& standing_cautions();
/// These, then what follows from this site's figures.
std::vector<Caution> all_cautions(Derived const& derived);

}  // namespace wellproof
