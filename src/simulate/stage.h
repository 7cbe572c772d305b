#pragma once
// The plant on stage: carried through time, worked on by the script, looked at through its sensor.
#include <cstdint>
#include <optional>

#include "plant/plant.h"
#include "regulator/following.h"
#include "regulator/regulator.h"
#include "simulate/carry.h"
#include "simulate/run.h"

namespace wellproof {

/// The pressure at a sensor's element a while from now, if that at the tee goes on evenly.
struct Foreseen {
  double tee_pa = 0;
  double slope_pa_s = 0;
  double element_pa = 0;
  double lag_s = 0;
  double element_after_pa(double time_s) const;
};

class Stage {
 public:
  Stage(Plant const& plant, Settings const& settings, Scenario const& scenario, RunOptions const& options);

  /// Over a stretch the noise of single samples is not looked at; its limits are kept away from instead.
  enum class Noise { with, without };

  /// Puts all changes of the script that are due in force. A run by hand that the script asks for is the controller's.
  std::optional<HandRun> change();
  double next_change_s() const;
  /// What the drive is told at this instant.
  Measured measure(Noise noise, std::uint64_t sample);
  /// The drive's output from now on.
  void turn(double speed_hz);

  /// A controller holds the pressure where it is from here on, until it is told to let go; flow and store stand still.
  void hold_pressure();
  /// The speed follows the pressure from here on, as the controller says. Whether that can be: not with a sensor that
  /// has failed, and by a pressure only where water stands to the tee and the signal goes smoothly.
  bool can_follow(Course course) const;
  /// Volts under the load as it is now. False if they have moved so far that a step should have been shorter.
  bool sags_evenly();
  void sag();
  bool droops() const { return supply_droop_ > 0; }
  void follow(Following const& following);
  void let_go();
  /// What the sensor's element has come to, what it comes to if the pressure goes on as it does now, and what the drive
  /// makes of it.
  double element_pressure_pa();
  Foreseen foreseen();
  double scaled_signal_pa(Noise noise, double element_pressure_pa, std::uint64_t sample) const;

  Carrier& carrier() { return carrier_; }
  Carrier const& carrier() const { return carrier_; }
  double time_s() const { return carrier_.time_s(); }
  double speed_hz() const { return inputs_.speed_hz; }
  /// Standard deviation of what the sensor's samples differ by.
  double noise_pa() const { return noise_pa_; }
  double resolution_pa() const { return plant_.site.sensor.resolution_pa; }
  /// What noise moves one sample by, as the drive scales it, before the signal goes by steps.
  double sample_noise_pa(std::uint64_t sample) const;
  /// What noise and steps of the signal move it by at the most, as the drive scales it.
  double signal_reach_pa() const;
  /// The first sample of a step just made that would be noisy enough to lie on or outside two limits, if there is one.
  /// @param from_s, from_element_pa where the step began
  std::optional<double> first_outside_s(double from_s, double from_element_pa, double least_pa, double most_pa,
                                        double period_s);
  State const& start() const { return start_; }

 private:
  double signal_scale() const;
  double sensor_lag_s() const;
  void apply(Change const& change, std::optional<HandRun>& hand);
  void apply_trouble(Change const& change);
  double supply_share_under_load();

  Plant const& plant_;
  Settings const& settings_;
  Scenario const& scenario_;
  std::uint64_t noise_seed_;
  Carrier carrier_;
  State start_;
  Inputs inputs_;
  SensorFault sensor_fault_ = SensorFault::none;
  double stuck_pa_ = 0;
  double noise_pa_ = 0;
  double zero_pa_ = 0;       // what the sensor's zero has drifted by
  double supply_share_ = 1;  // with nothing drawn
  double supply_droop_ = 0;
  bool permissive_closed_ = true;
  std::size_t change_ = 0;
};

/// What should be nothing between two states.
Balance balance(Plant const& plant, State const& from, State const& to);

}  // namespace wellproof
