#include "plant/curve.h"

#include <cmath>

#include "contract/require.h"

namespace wellproof {
namespace {

using Numbers = std::vector<double>;

/// Slope of the chord of each piece.
Numbers chords(Numbers const& x, Numbers const& y) {
  Numbers chord(x.size() - 1);
  for (std::size_t i = 0; i + 1 < x.size(); ++i) {
    chord[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
  }
  return chord;
}

/// Slope at an end of the parabola through three points.
double end_slope(double outer_step, double inner_step, double outer_chord, double inner_chord) {
  return ((2 * outer_step + inner_step) * outer_chord - outer_step * inner_chord) / (outer_step + inner_step);
}

/// Slopes at the points from parabolas through each three neighbours; none at a peak or a trough.
Numbers slopes_from(Numbers const& x, Numbers const& chord) {
  std::size_t const count = x.size();
  if (count == 2) {
    return {chord[0], chord[0]};
  }
  Numbers slope{end_slope(x[1] - x[0], x[2] - x[1], chord[0], chord[1])};
  for (std::size_t i = 1; i + 1 < count; ++i) {
    double const before = x[i] - x[i - 1];
    double const after = x[i + 1] - x[i];
    bool const turns = chord[i - 1] * chord[i] <= 0;
    slope.push_back(turns ? 0 : (after * chord[i - 1] + before * chord[i]) / (before + after));
  }
  slope.push_back(
      end_slope(x[count - 1] - x[count - 2], x[count - 2] - x[count - 3], chord[count - 2], chord[count - 3]));
  return slope;
}

/// Fritsch and Carlson's circle: slopes relative to the chord stay within radius 3, which keeps each piece monotone.
void lower_to_monotone(Numbers const& chord, Numbers& slope) {
  for (std::size_t i = 0; i < chord.size(); ++i) {
    if (chord[i] == 0) {
      slope[i] = 0;
      slope[i + 1] = 0;
      continue;
    }
    double const left = std::max(slope[i] / chord[i], 0.0);
    double const right = std::max(slope[i + 1] / chord[i], 0.0);
    double const radius = std::hypot(left, right);
    double const shrink = radius > 3 ? 3 / radius : 1;
    slope[i] = shrink * left * chord[i];
    slope[i + 1] = shrink * right * chord[i];
  }
}

/// 1/step if the points stand evenly, else 0.
double inverse_of_even_step(Numbers const& x) {
  double const step = (x.back() - x.front()) / static_cast<double>(x.size() - 1);
  for (std::size_t i = 0; i + 1 < x.size(); ++i) {
    if (std::abs(x[i + 1] - x[i] - step) > 1e-9 * step) {
      return 0;
    }
  }
  return 1 / step;
}

void require_points(Numbers const& x, Numbers const& y) {
  require(x.size() >= 2 && x.size() == y.size(), "a curve has two points or more, each with both coordinates");
  for (std::size_t i = 0; i + 1 < x.size(); ++i) {
    require(x[i] < x[i + 1], "the points of a curve stand in rising order");
  }
}

Numbers slopes_of(Numbers const& x, Numbers const& y) {
  require_points(x, y);
  return slopes_from(x, chords(x, y));
}

}  // namespace

MonotoneCurve::MonotoneCurve(std::vector<double> const& x, std::vector<double> const& y)
    : MonotoneCurve(x, y, slopes_of(x, y)) {}

MonotoneCurve::MonotoneCurve(std::vector<double> const& x, std::vector<double> const& y, std::vector<double> slope) {
  require_points(x, y);
  require(slope.size() == x.size(), "a curve has a slope for each point");
  auto const chord = chords(x, y);
  lower_to_monotone(chord, slope);
  pieces_.resize(x.size());
  for (std::size_t i = 0; i < x.size(); ++i) {
    pieces_[i] = {x[i], y[i], slope[i], 0, 0};
    if (i + 1 < x.size()) {
      double const step = x[i + 1] - x[i];
      pieces_[i].second = (3 * chord[i] - 2 * slope[i] - slope[i + 1]) / step;
      pieces_[i].third = (slope[i] + slope[i + 1] - 2 * chord[i]) / (step * step);
    }
  }
  inverse_step_ = inverse_of_even_step(x);
}

}  // namespace wellproof
