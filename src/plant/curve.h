#pragma once
// A curve through measured points that neither overshoots nor wiggles between them.
#include <algorithm>
#include <cstddef>
#include <vector>

#include "plant/slope.h"

namespace wellproof {

/// Monotone piecewise cubic through points (fritsch_carlson_1980); straight beyond its ends with the end slopes.
/// Where the points rise or fall monotonically, so does the curve; its slope is continuous. A lookup on an even grid
/// needs no search.
/// Checked: tests/unit/plant/curve_test.cc
class MonotoneCurve {
 public:
  MonotoneCurve() = default;

  /// @param x rising strictly, at least two; y as many (require)
  MonotoneCurve(std::vector<double> const& x, std::vector<double> const& y);

  /// The same with slopes known at the points; they are lowered where they would make the curve overshoot.
  MonotoneCurve(std::vector<double> const& x, std::vector<double> const& y, std::vector<double> slope);

  /// Value and slope at x. The curve must not be empty.
  Sloped at(double x) const;

  double first_x() const { return pieces_.front().x; }
  double last_x() const { return pieces_.back().x; }
  bool empty() const { return pieces_.empty(); }

 private:
  /// A cubic in (x − its own x). The last one is the straight line beyond the last point.
  struct Piece {
    double x = 0;
    double y = 0;
    double slope = 0;
    double second = 0;
    double third = 0;
  };
  std::vector<Piece> pieces_;
  double inverse_step_ = 0;  // 1/step of an even grid, 0 for an uneven one
};

inline Sloped MonotoneCurve::at(double x) const {
  Piece const& first = pieces_.front();
  if (!(x > first.x)) {
    return {first.y + first.slope * (x - first.x), first.slope};
  }
  Piece const& last = pieces_.back();
  if (x >= last.x) {
    return {last.y + last.slope * (x - last.x), last.slope};
  }
  Piece const* piece = nullptr;
  if (inverse_step_ > 0) {
    auto const index = static_cast<std::size_t>((x - first.x) * inverse_step_);
    piece = &pieces_[std::min(index, pieces_.size() - 2)];
  } else {
    piece = &*std::upper_bound(pieces_.begin() + 1, pieces_.end(), x, [](double value, Piece const& candidate) {
      return value < candidate.x;
    }) - 1;
  }
  double const t = x - piece->x;
  return {piece->y + t * (piece->slope + t * (piece->second + t * piece->third)),
          piece->slope + t * (2 * piece->second + t * 3 * piece->third)};
}

}  // namespace wellproof
