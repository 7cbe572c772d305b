#pragma once
// How a figure spreads over the draws.
#include <vector>

namespace wellproof {

/// What 5, 50 and 95 % of the draws do not exceed.
struct Quantiles {
  double low = 0;
  double middle = 0;
  double high = 0;
};

/// @param values not empty; infinite ones count as the largest
Quantiles quantiles(std::vector<double> values);

}  // namespace wellproof
