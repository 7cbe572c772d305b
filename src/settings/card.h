#pragma once
// A drive card: what one drive calls our settings, in which units, between which ends and in which steps it takes them,
// where they are found, what it does not have, and how its controller works. A person writes it as a small file from
// the manual in front of them (docs/card.md). It says nothing of the site.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "contract/finding.h"
#include "quantity/quantity.h"
#include "regulator/regulator.h"

namespace wellproof {

/// A second gain has no setting of ours: it is entered as the first, or as its share of it where that is not 1.
inline constexpr std::string_view second_gain_key = "regulator.second_gain";

/// How a drive shows one of our settings: as it is, or as another figure that stands for it.
enum class ShownAs {
  itself,
  below_target,  // a drop shown as the pressure it leads to: target − value
  above_target,  // a pressure shown as what it lies over the target: value − target
  time_over,     // a ramp shown as the time that it takes over a span of speed
};

/// A word of one of our two choices ("closed_runs") and what the drive calls it.
struct CardChoice {
  std::string word;
  std::string label;
};

/// What the drive's list of stops calls one of our kinds of stop.
struct StopLabel {
  std::string label;
  StopCause kind = StopCause::dry_run;
};

/// One line to enter in the drive. Limits and step are those of what the drive shows, in SI of its unit's dimension.
struct CardEntry {
  std::string key;                        // ours: "pressure.target"
  std::string label;                      // the drive's own
  std::string where;                      // where to find it; may be empty
  std::string unit;                       // as the drive shows it: "psi"; empty for a choice and a plain number
  Dimension dimension = Dimension::none;  // of that unit
  double unit_factor = 1;                 // one of the unit in SI
  ShownAs shown = ShownAs::itself;
  double over_hz = 0;  // for time_over: the span of speed
  std::optional<double> least;
  std::optional<double> most;
  std::optional<double> step;       // counted from the least, without one from 0
  std::optional<double> fixed;      // what it is, where it cannot be set
  std::vector<CardChoice> choices;  // for permissive.sense and fault_contact.sense

  bool is_choice() const { return !choices.empty(); }
};

struct Card {
  std::string name;
  std::string note;
  std::vector<CardEntry> entries;          // in the order in which the drive shows them
  std::vector<StopLabel> stops;            // as its list of stops calls them; a kind may have several labels
  std::vector<std::string> lacks;          // keys of ours that the drive does not have, in our order
  Logic logic;                             // as its manual describes it; two_contact_switch is the site's matter
  std::optional<double> sample_rate_hz{};  // how often its controller acts, where the manual says

  /// Null where there is none.
  CardEntry const* entry(std::string_view key) const;
  bool lacking(std::string_view key) const;
};

/// Reads a card file (TOML). All findings at once: unknown keys and words, units of the wrong dimension, ends that are
/// crossed, steps of nothing, keys entered twice, keys of ours neither entered nor said to be lacking.
Result<Card> read_card(std::string_view text, std::string_view file);

}  // namespace wellproof
