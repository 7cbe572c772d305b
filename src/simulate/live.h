#pragma once
// A run that somebody stands in: taps are turned, the water sinks, a setting is moved while it goes, and what comes
// next is not written yet. It is the time loop of run.h, sample by sample, over a script that grows at its end.
#include <cstddef>
#include <cstdint>
#include <vector>

#include "plant/plant.h"
#include "regulator/regulator.h"
#include "simulate/run.h"
#include "simulate/scenario.h"
#include "simulate/stage.h"
#include "simulate/trace.h"

namespace wellproof {

/// What the controller is about, for whoever watches it. A time that is not running is 0.
struct LiveWords {
  Mode mode = Mode::holding;
  std::optional<StopCause> cause;  // of the last stop
  double mode_for_s = 0;           // it has been in this mode
  double rest_left_s = 0;          // resting: until the next try
  double sleep_left_s = 0;         // slow: until the ramp to sleep begins
  double dry_left_s = 0;           // under the dry-run threshold: until it stops
  double closed_left_s = 0;        // under the closed-discharge threshold: until it stops
  double long_run_left_s = 0;      // turning: until the long-run guard stops it; 0 without one
  double filtered_current_a = 0;   // what the guards see
  std::uint32_t tries = 0;         // since the last sleep
};

class LiveRun {
 public:
  /// @param start how it stands at time 0, with what is scripted from the outset; its duration is of no meaning
  LiveRun(Plant plant, Settings const& settings, Logic const& logic, Scenario start, std::uint64_t noise_seed);
  LiveRun(LiveRun const&) = delete;
  LiveRun& operator=(LiveRun const&) = delete;
  LiveRun(LiveRun&&) = delete;
  LiveRun& operator=(LiveRun&&) = delete;
  ~LiveRun() = default;

  /// A change from outside, from now on.
  void act(Act act, std::size_t outlet, double value, double lasts_s = 0);
  /// The water at rest moves, and the level in the well with it at once: as a finger drags it.
  /// @param static_shift_m deeper than the site says; held so that water stays in the well
  void sink(double static_shift_m);
  /// Other settings, from the next sample on.
  void set(Settings const& settings) { settings_ = settings; }
  /// A person's reset: the controller decides afresh, as after power-up.
  void reset();

  /// Carries it on. Ends early only where the method gives way (ending()).
  /// @param record_every_s [s] points at least this far apart are kept in points()
  void advance(double duration_s, double record_every_s);

  /// Points and events since they were taken last.
  std::vector<TracePoint> take_points();
  std::vector<TraceEvent> take_events();

  TracePoint now();
  LiveWords words() const;
  double time_s() const { return stage_.time_s(); }
  double static_shift_m() const { return stage_.carrier().inputs().static_shift_m; }
  double empty_share() const;
  bool check_open() const { return stage_.carrier().modes().check_open; }
  Ending ending() const { return ending_; }
  Plant const& plant() const { return plant_; }
  Settings const& settings() const { return settings_; }
  Logic const& logic() const { return logic_; }

  /// The same beginning, with all that was done to it up to now, under other settings: its points. Where nothing is
  /// going on they lie further apart, for run() passes over that.
  std::vector<TracePoint> again(Settings const& settings, double record_every_s) const;

 private:
  /// What was done that a script cannot hold.
  struct Touch {
    double time_s = 0;
    bool reset = false;
    double static_shift_m = 0;
  };

  void touch(Touch const& touch);
  void sample_now(double record_every_s);
  TracePoint point(double measured_pressure_pa);

  Plant plant_;
  Settings settings_;
  Logic logic_;
  Scenario scenario_;
  RunOptions options_;
  double period_s_;
  Stage stage_;
  RegulatorState regulator_;
  std::uint64_t sample_ = 0;
  Ending ending_ = Ending::finished;
  std::vector<Touch> touches_;
  std::vector<TracePoint> points_;
  std::vector<TraceEvent> events_;
  double recorded_s_ = -1;
};

}  // namespace wellproof
