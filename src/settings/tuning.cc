#include "settings/tuning.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "contract/require.h"

namespace wellproof {
namespace {

constexpr int points_scanned = 600;

using Loop = std::function<std::complex<double>(double)>;

/// Where f changes sign between two frequencies, on a logarithmic scale.
template <class F>
double crossing(F const& f, double low, double high) {
  bool const rising = f(high) > 0;
  for (int round = 0; round < 60; ++round) {
    double const middle = std::sqrt(low * high);
    ((f(middle) > 0) == rising ? high : low) = middle;
  }
  return std::sqrt(low * high);
}

/// Largest value near a sampled peak, by golden section.
template <class F>
double peak(F const& f, double low, double high) {
  double const share = 1 / std::numbers::phi;
  double left = high - share * (high - low);
  double right = low + share * (high - low);
  double f_left = f(left);
  double f_right = f(right);
  for (int round = 0; round < 60; ++round) {
    if (f_left > f_right) {
      high = right;
      right = left;
      f_right = f_left;
      left = high - share * (high - low);
      f_left = f(left);
    } else {
      low = left;
      left = right;
      f_left = f_right;
      right = low + share * (high - low);
      f_right = f(right);
    }
  }
  return std::max(f_left, f_right);
}

}  // namespace

DelayedLag half_rule(double gain, std::vector<double> time_constants_s, double delay_s) {
  require(!time_constants_s.empty(), "the half rule needs a time constant");
  std::sort(time_constants_s.begin(), time_constants_s.end(), [](double a, double b) { return a > b; });
  DelayedLag reduced{gain, time_constants_s[0], delay_s};
  for (std::size_t i = 1; i < time_constants_s.size(); ++i) {
    double const half_s = i == 1 ? 0.5 * time_constants_s[i] : 0;
    reduced.time_constant_s += half_s;
    reduced.delay_s += time_constants_s[i] - half_s;
  }
  return reduced;
}

PiRule simc(DelayedLag const& plant, double closed_loop_time_s) {
  double const quickness_s = closed_loop_time_s + plant.delay_s;
  return {plant.time_constant_s / (plant.gain * quickness_s), std::min(plant.time_constant_s, 4 * quickness_s)};
}

PiRule simc_integrating(double slope, double delay_s, double closed_loop_time_s) {
  double const quickness_s = closed_loop_time_s + delay_s;
  return {1 / (slope * quickness_s), 4 * quickness_s};
}

std::complex<double> response(DelayedLag const& plant, double angular_1_s) {
  std::complex<double> const s(0, angular_1_s);
  return plant.gain * std::exp(-plant.delay_s * s) / (plant.time_constant_s * s + 1.0);
}

std::complex<double> response(PiRule const& rule, double angular_1_s) {
  return {rule.gain, -rule.gain / (rule.reset_time_s * angular_1_s)};
}

LoopMargins loop_margins(Loop const& loop, double from_1_s, double to_1_s) {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  LoopMargins margins{infinity, infinity, 1, 0, infinity};
  auto const sensitivity = [&](double w) { return 1 / std::abs(1.0 + loop(w)); };
  auto const over_one = [&](double w) { return std::abs(loop(w)) - 1; };
  // The imaginary part changes sign on the negative real axis, which is where the phase passes −180°.
  auto const imaginary = [&](double w) { return loop(w).imag(); };

  double const step = std::pow(to_1_s / from_1_s, 1.0 / points_scanned);
  double best_1_s = from_1_s;
  double before_1_s = from_1_s;
  auto before = loop(before_1_s);
  for (int i = 1; i <= points_scanned; ++i) {
    double const w = from_1_s * std::pow(step, i);
    auto const here = loop(w);
    if (1 / std::abs(1.0 + here) > margins.largest_sensitivity) {
      margins.largest_sensitivity = 1 / std::abs(1.0 + here);
      best_1_s = w;
    }
    if (std::abs(before) >= 1 && std::abs(here) < 1) {
      double const cross_1_s = crossing(over_one, before_1_s, w);
      double const phase_rad = std::arg(-loop(cross_1_s));  // measured from −180°
      double const margin_rad = phase_rad < 0 ? phase_rad + 2 * std::numbers::pi : phase_rad;
      margins.crossover_1_s = cross_1_s;
      margins.phase_margin_deg = std::min(margins.phase_margin_deg, margin_rad * 180 / std::numbers::pi);
      margins.delay_margin_s = std::min(margins.delay_margin_s, margin_rad / cross_1_s);
    }
    if ((before.imag() < 0) != (here.imag() < 0) && here.real() < 0 && before.real() < 0) {
      double const size = std::abs(loop(crossing(imaginary, before_1_s, w)));
      margins.gain_margin = std::min(margins.gain_margin, 1 / size);
    }
    before = here;
    before_1_s = w;
  }
  margins.largest_sensitivity =
      std::max(margins.largest_sensitivity, peak(sensitivity, best_1_s / step, std::min(best_1_s * step, to_1_s)));
  return margins;
}

}  // namespace wellproof
