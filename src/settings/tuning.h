#pragma once
// Setting a PI regulator by rule, and how robust the loop then is. The rule is Skogestad's (SIMC): it asks for a plant
// reduced to gain, one time constant and a delay, and for how quick the closed loop shall be. Robustness is the maximum
// sensitivity Ms: the inverse of the shortest distance of the loop's frequency response to −1.
#include <complex>
#include <functional>
#include <vector>

namespace wellproof {

/// gain·exp(−delay·s)/(time_constant·s + 1). The gain is output over input, in the units of the loop at hand.
struct DelayedLag {
  double gain = 1;
  double time_constant_s = 1;
  double delay_s = 0;
};

/// gain·(1 + 1/(reset_time·s)). The gain is input over output.
struct PiRule {
  double gain = 0;
  double reset_time_s = 0;
};

/// Reduces a chain of lags: the largest time constant takes half of the second, the delay takes the other half and all
/// the rest.
/// @param time_constants_s all > 0, in any order; at least one
/// Source:  skogestad_2003, half rule
/// Checked: tests/reference/tuning_reference_test.cc
DelayedLag half_rule(double gain, std::vector<double> time_constants_s, double delay_s);

/// @param closed_loop_time_s the time constant wanted, > −delay; equal to the delay is the rule's tight choice
/// Source:  skogestad_2003, eqs. 23 and 24 for a first-order model
/// Checked: tests/reference/tuning_reference_test.cc
PiRule simc(DelayedLag const& plant, double closed_loop_time_s);

/// For slope·exp(−delay·s)/s. @param slope output's rate for each of the input
/// Checked: tests/reference/tuning_reference_test.cc
PiRule simc_integrating(double slope, double delay_s, double closed_loop_time_s);

std::complex<double> response(DelayedLag const& plant, double angular_1_s);
std::complex<double> response(PiRule const& rule, double angular_1_s);

/// Margins of a loop with integral action. A crossing that does not occur leaves its margin infinite.
struct LoopMargins {
  double gain_margin = 0;  // factor
  double phase_margin_deg = 0;
  double largest_sensitivity = 0;  // Ms
  double crossover_1_s = 0;        // where the loop's gain is one
  double delay_margin_s = 0;       // delay that could be added
};

/// Largest sensitivity that a regulator is set to, with what computing leaves out; skogestad_2003 asks for about 1.6.
inline constexpr double most_sensitivity = 1.7;

/// Scans the loop's frequency response and closes in on what it finds. Range: a loop whose gain falls through one once.
/// @param loop  at an angular frequency [1/s]
/// Checked: tests/reference/tuning_reference_test.cc
LoopMargins loop_margins(std::function<std::complex<double>(double)> const& loop, double from_1_s, double to_1_s);

}  // namespace wellproof
