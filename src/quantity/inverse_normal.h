#pragma once
// The inverse of the standard normal distribution, in elementary operations only, so that a draw is the same wherever
// the program runs.

namespace wellproof {

/// The deviate below which half of the standard normal distribution plus `from_half` lies.
/// Counted from the middle, so that the two tails mirror each other exactly.
/// @param from_half [-]  probability less 0.5
/// @return          [-]  standard deviations
/// Range:   |from_half| ≤ 0.4999 (four sigma)   Outside: require
/// Source:  wichura_1988, algorithm AS 241, PPND16 (relative accuracy about 1e-16)
/// Checked: tests/unit/quantity/inverse_normal_test.cc
/// Example: inverse_normal(0.475) == 1.959963984540054 within 1e-14
double inverse_normal(double from_half);

}  // namespace wellproof
