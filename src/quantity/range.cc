#include "quantity/range.h"

#include <algorithm>
#include <cmath>

#include "contract/require.h"
#include "quantity/customary.h"
#include "quantity/inverse_normal.h"

namespace wellproof {
namespace {

constexpr double cut_sigmas = 3.0;
// The part of a normal distribution within three sigma: erf(3/√2).
constexpr double part_within_cut = 0.99730020393673981;

double sigma(Normal const& normal) {
  return normal.half_width_95 / sigmas_of_95;
}

double quantile_of(Fixed const& fixed, double /*u*/) {
  return fixed.value;
}

double quantile_of(Normal const& normal, double u) {
  double deviate = cut_sigmas;
  if (u <= 0) {
    deviate = -cut_sigmas;
  } else if (u < 1) {
    deviate = std::clamp(inverse_normal((u - 0.5) * part_within_cut), -cut_sigmas, cut_sigmas);
  }
  return normal.mean + deviate * sigma(normal);
}

double quantile_of(Even const& even, double u) {
  return u < 1 ? std::min(even.low + u * (even.high - even.low), even.high) : even.high;
}

// Each half is a parabola in the probability; each is measured from its own end, so that the ends come out exactly.
double quantile_of(Triangular const& triangular, double u) {
  double const width = triangular.high - triangular.low;
  double const below = triangular.mode - triangular.low;
  double const above = triangular.high - triangular.mode;
  double const part_below = below / width;
  if (u < part_below) {
    return std::min(triangular.low + width * std::sqrt(u * part_below), triangular.mode);
  }
  return std::max(triangular.high - width * std::sqrt((1 - u) * (above / width)), triangular.mode);
}

}  // namespace

double quantile(Range const& range, double u) {
  require(u >= 0 && u <= 1, "a quantile is asked for a fraction from 0 to 1");
  return std::visit([u](auto const& distribution) { return quantile_of(distribution, u); }, range);
}

double lowest(Range const& range) {
  return quantile(range, 0);
}

double highest(Range const& range) {
  return quantile(range, 1);
}

double middle(Range const& range) {
  return quantile(range, 0.5);
}

bool is_fixed(Range const& range) {
  return std::holds_alternative<Fixed>(range);
}

}  // namespace wellproof
