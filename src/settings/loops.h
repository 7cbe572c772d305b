#pragma once
// The regulator's loops on a site: each draw, at rest and drawn down, with a little, half and all of the served peak
// flowing, as a straight-line plant behind the delay of a controller that samples.
#include <complex>
#include <vector>

#include "regulator/settings.h"
#include "settings/linear.h"
#include "settings/tuning.h"

namespace wellproof {

struct RegulatorLoop {
  LinearPlant plant;
  double sample_rate_hz = 20;
  std::size_t draw = 0;
  double flow_m3_s = 0;
  double level_depth_m = 0;

  // Half a sample for the hold, half for the integral that looks back.
  double delay_s() const { return 1 / sample_rate_hz; }
  /// What the sensor says for each Hz, the delay in it [Pa/Hz].
  std::complex<double> response_pa_hz(double angular_1_s) const;
};

/// Those that the plants can be run in at all; none where no draw holds the target.
std::vector<RegulatorLoop> loops_of(std::vector<Plant> const& plants, Settings const& settings);

/// Three standard deviations of the sensor's noise in one sample may move the speed so far (common practice, no
/// source).
inline constexpr double noise_may_move_speed_hz = 0.5;
/// Largest gain that keeps to it in every draw; huge where there is no noise.
double most_gain_for_noise_hz_pa(std::vector<Plant> const& plants);

/// Margins of one loop with the gain and the reset time of these settings.
/// Checked: tests/cross/octave_margins_test.cc
LoopMargins margins_with(RegulatorLoop const& loop, Settings const& settings);

/// The loops that come nearest to swinging, each by its own measure. The loops must not be none.
struct NearestLoops {
  std::size_t by_sensitivity = 0;
  std::size_t by_gain = 0;
  std::size_t by_phase = 0;
  std::size_t by_delay = 0;
  std::vector<LoopMargins> margins;  // of each loop
};
NearestLoops nearest_loops(std::vector<RegulatorLoop> const& loops, Settings const& settings);

}  // namespace wellproof
