#pragma once
// Samples ahead of the plant. Where a controller can be neither passed over nor followed its samples are computed, but
// the plant need not make a step for each. They are computed on the pressure foreseen, each with its own noise, and the
// plant is then carried over all of them at once, its speed along the line through those that they put out. If it did
// not come out as foreseen nothing of it stays. Checked: tests/cross/run_cross_test.cc (RunCrossNoise),
// tests/unit/simulate/ahead_test.cc
#include <cstdint>

#include "simulate/after_step.h"
#include "simulate/stage.h"

namespace wellproof {

class SamplesAhead {
 public:
  SamplesAhead(Stage& stage, Settings const& settings, Logic const& logic, double period_s)
      : stage_(stage), settings_(settings), logic_(logic), period_s_(period_s), at_once_(most_at_once()) {}

  /// From a sample just computed on, up to one that changes more than the speed, or to the end. The stage is left at
  /// the sample that comes next.
  /// @param sampled what the sample just computed was given
  /// @return how many samples were computed: none where it would not come out as foreseen, and then nothing has changed
  std::uint64_t go(RegulatorState& state, Measured const& sampled, std::uint64_t next_sample, double end_s,
                   AfterStep const& after_step);

 private:
  std::uint64_t most_at_once() const;
  std::uint64_t go_at_once(RegulatorState& state, Measured const& sampled, std::uint64_t next_sample, double end_s,
                           AfterStep const& after_step);
  bool as_foreseen(Foreseen const& foreseen, RegulatorState const& ahead, Measured const& sampled,
                   Measured const& measured) const;

  Stage& stage_;
  Settings const& settings_;
  Logic const& logic_;
  double period_s_;
  std::uint64_t at_once_;  // more after it went well, fewer when it did not
  std::uint64_t not_before_ = 0;
};

}  // namespace wellproof
