#include "settings/quantiles.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "contract/require.h"

namespace wellproof {

Quantiles quantiles(std::vector<double> values) {
  require(!values.empty(), "quantiles are of something");
  std::sort(values.begin(), values.end());
  auto const at = [&](double share) {
    auto const place = static_cast<std::size_t>(std::ceil(share * static_cast<double>(values.size())));
    return values[std::clamp<std::size_t>(place, 1, values.size()) - 1];
  };
  return {at(0.05), at(0.5), at(0.95)};
}

}  // namespace wellproof
