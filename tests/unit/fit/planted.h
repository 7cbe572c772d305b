#pragma once
// Pumping tests made from a planted formation and well, with errors of reading of a stated size.
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

#include "fit/fit_pumping_test.h"
#include "quantity/inverse_normal.h"

namespace wellproof {

/// Errors of reading, normal with a standard deviation of one.
class Errors {
 public:
  explicit Errors(std::uint64_t seed) : state_(seed * 0x9E3779B97F4A7C15U + 0xD1B54A32D192ED03U) {}
  double next() {
    state_ ^= state_ << 13U;
    state_ ^= state_ >> 7U;
    state_ ^= state_ << 17U;
    double const from_half = (static_cast<double>(state_ >> 11U) + 0.5) / 9007199254740992.0 - 0.5;
    return inverse_normal(std::clamp(from_half, -0.4999, 0.4999));
  }

 private:
  std::uint64_t state_;
};

/// Times evenly apart in their logarithm, from first to last.
inline std::vector<double> spread_times(double first_s, double last_s, int count) {
  std::vector<double> times_s;
  for (int i = 0; i < count; ++i) {
    times_s.push_back(first_s * std::pow(last_s / first_s, static_cast<double>(i) / (count - 1)));
  }
  return times_s;
}

/// @param error_m of each reading, @param error_share of the drawdown besides
inline LevelRecord planted_record(std::vector<RateStep> const& rates, PumpedWell const& well, double distance_m,
                                  std::vector<double> const& times_s, double error_m, double error_share,
                                  Errors& errors) {
  LevelRecord record{"planted.csv", distance_m, false, {}};
  for (double const time_s : times_s) {
    double const level_m = modelled_m(rates, well, record, time_s);
    record.readings.push_back({time_s, level_m * (1 + error_share * errors.next()) + error_m * errors.next()});
  }
  return record;
}

}  // namespace wellproof
