#pragma once
// Failures too rare for the draws of a proof to meet. In the space where each unknown is a standard normal deviate the
// middle draw lies at the origin; the nearest point at which a scenario fails lies some spreads away, and from that
// distance follows about how often it happens (the first-order reliability method). The direction is guessed from the
// draws that were run and the distance found by bisection along it.
#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace wellproof {

struct RareFailure {
  double spreads = 0;         // distance of the failure found from the middle: the reliability index, or a little more
  double share = 0;           // of sites that fail, to first order: Φ(−spreads)
  std::vector<double> point;  // of the unit cube, where it first fails
  std::vector<std::size_t> leads;  // unknowns that lead there, the strongest first
};

/// Beyond so many spreads nothing is looked for: one in three million.
inline constexpr double farthest_spreads = 5;

/// The nearest failure along the directions that the runs point to; empty if none fails within farthest_spreads, or if
/// the middle fails already. It makes a few dozen runs.
/// @param margin   of a run at a point of the unit cube; < 0 fails
/// @param points   of the runs made
/// @param margins  of these runs
/// Source:  hasofer_lind_1974
/// Checked: tests/unit/proof/rare_test.cc
std::optional<RareFailure> rare_failure(std::function<double(std::span<double const>)> const& margin,
                                        std::vector<std::vector<double>> const& points,
                                        std::vector<double> const& margins);

/// Φ, the standard normal distribution.
double normal_share(double deviate);

}  // namespace wellproof
