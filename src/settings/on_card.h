#pragma once
// Settings as one drive takes them: rounded to its steps on the safe side, held within its ends, without what it lacks.
// The safe side of each key stands in one table (safe_side.h), with its reason.
#include <string>
#include <vector>

#include "regulator/settings.h"
#include "settings/card.h"

namespace wellproof {

/// One line to enter, in the card's order. key may also be second_gain_key (card.h).
struct Rounded {
  std::string key;
  double wanted = 0;      // SI of our key; of no meaning for a choice
  double entered = 0;     // what the drive then works with, SI of our key
  std::string text;       // what is entered, in the drive's unit: "50 psi"; a choice's label
  std::string safe_side;  // "down: …", where it was rounded or clipped
  bool clipped = false;   // an end of the drive's range, a fixed value or a missing choice stood in the way
};

/// A key that the drive does not have, and what that leaves unguarded.
struct Lacking {
  std::string key;
  std::string unguarded;
};

struct OnCard {
  Settings settings;  // as the drive will have them
  Logic logic;        // the card's, with its second gain as it comes out of what is entered
  std::vector<Rounded> entries;
  std::vector<Lacking> lacking;
};

/// Idempotent: settings that a drive has already stay as they are.
/// Checked: tests/unit/settings/on_card_test.cc, tests/law/card_law_test.cc
OnCard on_card(Settings const& settings, Card const& card);

/// The same on a drive that takes any value: without what it lacks, but not rounded. What rounding costs is the
/// difference to this.
Settings without_rounding(Settings const& settings, Card const& card);

}  // namespace wellproof
