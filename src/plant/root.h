#pragma once
// Where a value that falls through nothing does so, between two places of which one is before and one is after.
#include <algorithm>

namespace wellproof {

/// A place where the value is still positive, and one where it is so no longer.
struct Bracket {
  double low = 0;
  double high = 0;
  double low_value = 0;   // > 0
  double high_value = 0;  // ≤ 0
};

struct Narrowing {
  double width = 0;           // ends when the places are no further apart,
  double value_width = 0;     // or when a value is this near to nothing
  double least_share = 0.02;  // no place is taken nearer than this share of the width to either end
  int most_rounds = 60;
};

/// Narrows a bracket by false position, the value of an end that stays twice halved (the Illinois rule).
/// @param value callable: place → value
/// @return the place taken last
/// Source:  dowell_jarratt_1971
/// Checked: tests/unit/plant/root_test.cc
template <class Value>
double narrow(Bracket& bracket, Value const& value, Narrowing const& until) {
  int side = 0;
  double middle = bracket.high;
  for (int round = 0; round < until.most_rounds && bracket.high - bracket.low > until.width; ++round) {
    double const share = bracket.low_value / (bracket.low_value - bracket.high_value);
    middle = bracket.low + (bracket.high - bracket.low) * std::clamp(share, until.least_share, 1 - until.least_share);
    double const found = value(middle);
    if (found > 0) {
      bracket.low = middle;
      bracket.low_value = found;
      bracket.high_value *= side == 1 ? 0.5 : 1;
      side = 1;
    } else {
      bracket.high = middle;
      bracket.high_value = found;
      bracket.low_value *= side == -1 ? 0.5 : 1;
      side = -1;
    }
    if (found <= until.value_width && found >= -until.value_width) {
      break;
    }
  }
  return middle;
}

}  // namespace wellproof
