#pragma once
// Carrying the plant forward with inputs held: steps as long as accuracy allows, modes flipped at their crossings.
#include <cstdint>
#include <optional>

#include "plant/plant.h"

namespace wellproof {

class Carrier {
 public:
  enum class Outcome {
    stepped,
    chatter,         // modes flip without end
    no_convergence,  // no step is short enough
  };

  /// All that changes.
  struct Moment {
    State y{};
    Modes modes;
    double time_s = 0;
    InflowCourse inflow;
  };

  /// @param drawn     how far the formation is drawn down at the start
  /// @param tolerance relative, see the scales in carry.cc
  Carrier(Plant const& plant, Inputs const& inputs, State const& start, Modes modes, Formation::Drawn const& drawn,
          double tolerance);

  /// New inputs from now on.
  void hold(Inputs const& inputs);
  /// How the speed moves in the mode `followed`.
  void follow(Follow const& follow) { rates_.follow(follow); }
  /// Puts a state and modes in force: the entry and the end of a stretch that is held or followed.
  void put(State const& y, Modes modes);
  /// Back to before a step.
  void back_to(Moment const& moment);
  /// One accepted step, ending at limit_s or before, or at the crossing that flipped a mode.
  Outcome step_towards(double limit_s);
  /// A new sample has begun: flips are counted afresh.
  void count_flips_afresh() { flips_in_a_row_ = 0; }

  Moment const& moment() const { return now_; }
  State const& state() const { return now_.y; }
  Modes modes() const { return now_.modes; }
  double time_s() const { return now_.time_s; }
  Inputs const& inputs() const { return rates_.inputs(); }
  Sloped tee_pressure_pa() { return rates_.tee_pressure_pa(now_.y, now_.modes); }
  State rate() { return rates_.of(now_.y, now_.modes); }
  /// The algebraic values now; worked out once for each instant.
  Reading const& read();

  std::uint64_t steps() const { return steps_; }
  std::uint64_t refused() const { return refused_; }
  std::uint64_t flips() const { return flips_; }

 private:
  bool flip_where_due();
  void flip(bool Modes::*mode, bool to);
  void renew_inflow();

  Plant const* plant_;
  Rates rates_;
  Moment now_;
  std::optional<Reading> reading_;
  double tolerance_;
  double wanted_s_ = 0.05;
  std::uint64_t steps_ = 0;
  std::uint64_t refused_ = 0;
  std::uint64_t flips_ = 0;
  int flips_in_a_row_ = 0;
};

}  // namespace wellproof
