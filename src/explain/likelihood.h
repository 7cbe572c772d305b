#pragma once
// How likely a case is in a world. Each world is one point of what a cause may do here; its counts of stops, smoothed
// with those of its cause, say with which shares kinds, hours and gaps would come, and a Dirichlet-multinomial says how
// likely the reported counts then are: a handful of shares seen on one day are not known exactly, and stops of one
// chain do not count as so many witnesses. Instruments have their error and what the site leaves open; a person sees
// a symptom or does not.
#include <vector>

#include "explain/evidence.h"
#include "explain/world.h"

namespace wellproof {

/// Parts of a log-likelihood, so that the answer can be explained.
struct Likelihood {
  double kinds = 0;
  double hours = 0;
  double gaps = 0;
  double symptoms = 0;
  double shows = 0;
  double answers = 0;  // of checks
  double sum() const { return kinds + hours + gaps + symptoms + shows + answers; }
};

/// What all worlds of a cause have in common.
struct CauseShares {
  Pattern pattern;        // summed over its worlds
  std::size_t calls = 0;  // worlds with something to call about
};

/// How worlds are held against a case, prepared once for a set of worlds.
class Holding {
 public:
  explicit Holding(std::vector<World> const& worlds);

  Likelihood of(Evidence const& evidence, World const& world) const;
  /// Of a cause that is not in the library: nothing of what it does is known.
  Likelihood of_none(Evidence const& evidence) const;

  /// Log-density of an instrument's value in a world.
  double of_show(ToldShow const& told, World const& world) const;
  double of_show_in_none(ToldShow const& told) const;
  /// Share of sound plants' spread: what the site leaves open.
  double spread_of(Show show) const { return sound_spread_[static_cast<std::size_t>(show)]; }
  double middle_of(Show show) const { return sound_middle_[static_cast<std::size_t>(show)]; }

 private:
  std::vector<CauseShares> causes_;
  std::array<double, show_count> sound_middle_{};
  std::array<double, show_count> sound_spread_{};
  std::array<double, show_count> all_middle_{};
  std::array<double, show_count> all_spread_{};
};

/// Log-probability of counts under a Dirichlet-multinomial, its multinomial coefficient left out: that is the same in
/// every world.
/// @param counts whole numbers ≥ 0
/// @param shares > 0, together 1
/// @param weight > 0: how many counts the shares are known from, as it were; infinite is a multinomial
/// Source:  mosimann_1962
/// Checked: tests/unit/explain/likelihood_test.cc
double counts_log_likelihood(double const* counts, double const* shares, std::size_t bins, double weight);

/// How surely a person who is asked, or is not, speaks of a symptom.
double symptom_log_likelihood(ToldSymptom const& told, World const& world);
/// Of one that was not spoken of, while others were.
double silence_log_likelihood(Symptom symptom, World const& world);

}  // namespace wellproof
