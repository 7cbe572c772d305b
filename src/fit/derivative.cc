#include "fit/derivative.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace wellproof {

std::vector<ResponseStage> responses(PumpingTestFit const& fit, RecordFit const& record) {
  LevelRecord const place{record.file, record.distance_m, record.recovered, {}};
  std::vector<ResponseStage> stages;
  double before_m3_s = 0;
  double first_m3_s = 0;
  for (std::size_t i = 0; i < fit.rates.size(); ++i) {
    double const from_s = fit.rates[i].from_s;
    double const until_s = i + 1 < fit.rates.size() ? fit.rates[i + 1].from_s : 1e300;
    double const change_m3_s = fit.rates[i].flow_m3_s - before_m3_s;
    before_m3_s = fit.rates[i].flow_m3_s;
    first_m3_s = first_m3_s > 0 ? first_m3_s : fit.rates[i].flow_m3_s;
    if (change_m3_s == 0) {
      continue;
    }
    std::vector<RateStep> const earlier(fit.rates.begin(), fit.rates.begin() + static_cast<std::ptrdiff_t>(i));
    ResponseStage stage{from_s, {}};
    LevelRecord seen = place;
    seen.recovered = false;
    double const at_stop_m =
        record.recovered ? modelled_m(fit.rates, fit.well, seen, stop_s(fit.rates).value_or(0)) : 0;
    double const scale = first_m3_s / change_m3_s;
    for (auto const& reading : record.readings) {
      if (reading.time_s <= from_s || reading.time_s > until_s) {
        continue;
      }
      double const before_m = modelled_m(earlier, fit.well, seen, reading.time_s);
      auto const response = [&](double level_m) {
        return scale * ((record.recovered ? at_stop_m - level_m : level_m) - before_m);
      };
      stage.points.push_back({reading.time_s - from_s, response(reading.measured_m), response(reading.fitted_m)});
    }
    if (!stage.points.empty()) {
      stages.push_back(std::move(stage));
    }
  }
  return stages;
}

std::vector<Slope> log_derivative(std::vector<double> const& times_s, std::vector<double> const& values_m,
                                  double window) {
  std::vector<Slope> slopes;
  std::size_t const count = std::min(times_s.size(), values_m.size());
  for (std::size_t i = 1; i + 1 < count; ++i) {
    double const at = std::log(times_s[i]);
    std::size_t left = i;
    while (left > 0 && (left == i || at - std::log(times_s[left]) < window)) {
      --left;
    }
    std::size_t right = i;
    while (right + 1 < count && (right == i || std::log(times_s[right]) - at < window)) {
      ++right;
    }
    double const before = at - std::log(times_s[left]);
    double const after = std::log(times_s[right]) - at;
    if (!(before > 0) || !(after > 0)) {
      continue;
    }
    double const rise_before = (values_m[i] - values_m[left]) / before;
    double const rise_after = (values_m[right] - values_m[i]) / after;
    slopes.push_back({times_s[i], (rise_before * after + rise_after * before) / (before + after)});
  }
  return slopes;
}

}  // namespace wellproof
