#pragma once
// What a person at the well can look at, read or ask, how long that takes, and how likely each answer is in each world.
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "explain/likelihood.h"

namespace wellproof {

/// One of the answers that a check can have.
struct CheckAnswer {
  std::string_view word;  // as it is typed: "low", "yes", "wet"
  std::string_view says;  // "lower than a sound plant shows"
};

/// A check is of an instrument, with the answers low, usual and high against a sound plant, or of the eye.
struct Check {
  std::string_view key;    // "watch_gauge"
  std::string_view title;  // "Watch the gauge for ten minutes with all taps shut"
  std::string_view how;    // what to mind
  double minutes = 0;      // common practice, no source
  std::optional<Show> show;
  std::vector<CheckAnswer> answers;
  /// Of one for the eye: the answer that speaks for a cause, and how surely; other causes give the first answer.
  struct Sign {
    std::string_view fault;
    std::size_t answer = 0;
    double share = 0;
  };
  std::vector<Sign> signs;
};

std::vector<Check> const& checks();
/// By key; past the end if there is none.
std::size_t check_place(std::string_view key);

/// A check that has been answered: one of its answers, or the instrument's value.
struct ToldAnswer {
  std::size_t check = 0;
  std::size_t answer = 0;
};

/// Where low ends and high begins, for a check of an instrument.
struct UsualBand {
  double low = 0;
  double high = 0;
};
UsualBand usual_band(Show show, Holding const& holding);

/// Probability of each answer in a world; together 1. For a null world that of a cause that is in no list.
std::vector<double> answer_shares(Check const& check, Holding const& holding, World const* world);

}  // namespace wellproof
