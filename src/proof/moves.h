#pragma once
// What a search may move: settings, by the steps in which a drive takes them, and the ceiling, with which everything
// that rests on it is derived anew. What the user has given and what the drive lacks stays as it is.
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "proof/prove.h"
#include "settings/card.h"
#include "settings/derive.h"

namespace wellproof {

inline constexpr std::string_view ceiling_key = "speed.ceiling";

/// A setting that is moved, the step in which it is entered, and its ends; SI.
struct Knob {
  std::string_view key;
  double step;
  double least;
  double most;
};

/// Settings and the logic of the drive that has them: a second gain is entered in steps of its own.
struct OnDrive {
  Settings settings;
  Logic logic;
};

class Moves {
 public:
  using Steps = std::vector<int>;  // of each knob, from the start

  /// All of these have to outlive it.
  /// @param start settings to move from; with a card, as its drive has them
  /// @param fixed keys that are not to move
  Moves(Site const& site, std::vector<Plant> const& plants, Settings const& start, ProveOptions const& options,
        std::vector<std::string> const& fixed, std::optional<Card> const& card);

  std::vector<Knob> const& knobs() const { return knobs_; }

  /// Whether each knob is within its ends and nothing contradicts itself that does not from the start.
  bool allows(Steps const& steps);

  /// The settings so many steps from the start, as the drive takes them.
  OnDrive at(Steps const& steps);

  /// What was derived for the ceiling so many steps away; null if the ceiling is where it was.
  Derived const* anew(Steps const& steps);

 private:
  int ceiling_steps(Steps const& steps) const;
  Settings base(Steps const& steps);

  Site const& site_;
  std::vector<Plant> const& plants_;
  Settings const& start_;
  ProveOptions const& options_;
  std::vector<std::string> const& fixed_;
  std::optional<Card> const& card_;
  std::vector<Knob> knobs_;
  std::map<int, Derived> derived_;  // by the ceiling's steps
};

}  // namespace wellproof
