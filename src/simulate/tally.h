#pragma once
// What a run notes down while it goes: windows, events, points to draw.
#include "plant/plant.h"
#include "simulate/run.h"

namespace wellproof {

/// The instant as it is recorded.
TracePoint trace_point(double time_s, State const& y, Reading const& reading, double measured_pressure_pa, Mode mode);

class Notes {
 public:
  /// The whole run is tallied first, then each window.
  Notes(std::vector<Window> const& windows, double duration_s, State const& start);

  /// After each step: the instant at its end, and the totals.
  void after_step(double duration_s, TracePoint const& now, State const& y, Reading const& reading);
  void started(double time_s);
  std::vector<Tally> tallies() const { return tallies_; }

 private:
  std::vector<Tally> tallies_;
  std::vector<State> entered_;  // totals when a window began
  std::vector<char> seen_;
  State last_{};
  double last_outlet_pressure_pa_ = 0;  // of the step before
  double last_tee_pressure_pa_ = 0;
};

}  // namespace wellproof
