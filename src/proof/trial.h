#pragma once
// Pieces from which the hazards are put together: ways to open and close, and the criteria that several share, each
// with where its limit comes from.
#include <cstddef>

#include "proof/hazard.h"

namespace wellproof {

/// A trial while it is being written: the scenario's script in any order, windows and criteria as they come.
class TrialDraft {
 public:
  TrialDraft(Plant const& plant, Settings const& settings, std::string name, double duration_s);

  /// Starts asleep at the target, as a house is found.
  TrialDraft& asleep_at_target();
  TrialDraft& start(Start const& start);
  /// Opens an outlet for a while; taps take half a second to turn.
  TrialDraft& draw(std::size_t outlet, double opening, double from_s, double to_s);
  TrialDraft& change(double time_s, Act act, double value);
  /// Leaves an outlet as open as this until another change.
  TrialDraft& opens(double time_s, std::size_t outlet, double opening);
  TrialDraft& ramp_to(Act act, double from_s, double to_s, double from_value, double to_value);

  /// From a moment after it wakes, the highest outlet keeps a share of the pressure wanted there, but for some seconds.
  TrialDraft& keeps_outlet(double from_s, double to_s, double share, double spared_s);
  TrialDraft& no_stop();
  /// As no_stop, for some causes and up to a time.
  TrialDraft& not_stopped_by(double to_s, std::vector<StopCause> causes);
  TrialDraft& stops_within(double since_s, double limit_s, std::vector<StopCause> causes, std::string says);
  TrialDraft& sleeps_within(double since_s, double limit_s);
  TrialDraft& turns_shut_at_most(double from_s, double to_s, double limit_s);
  TrialDraft& runs_at_most(double from_s, double to_s, double share);
  TrialDraft& starts_at_most(double from_s, double to_s, double per_hour);
  /// Winding, pressures and the water in the pump stay within what the parts bear, over the whole run.
  TrialDraft& harms_nothing();
  TrialDraft& loses_at_most(double from_s, double volume_m3);
  TrialDraft& tee_at_least(double from_s, double to_s, double pressure_pa, std::string says);

  Trial done();

  double target_pa() const { return settings_.pressure_target_pa; }

 private:
  std::size_t window(Window const& window);

  Plant const& plant_;
  Settings const& settings_;
  Trial trial_;
};

/// The least pressure class of what hangs on the tee: tank, fittings, yard and house pipe [Pa].
double weakest_rating_pa(Plant const& plant);

/// The most pressure at the pump's discharge that the classes of drop and yard pipe bear [Pa].
double pump_pressure_limit_pa(Plant const& plant);

}  // namespace wellproof
