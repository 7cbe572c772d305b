#include "fit/pumping_test.h"

namespace wellproof {

std::optional<double> stop_s(std::vector<RateStep> const& rates) {
  if (rates.size() < 2 || rates.back().flow_m3_s > 0) {
    return std::nullopt;
  }
  return rates.back().from_s;
}

}  // namespace wellproof
