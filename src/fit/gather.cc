#include "fit/gather.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace wellproof {

LevelRecord gathered(LevelRecord const& record, std::vector<RateStep> const& rates) {
  if (record.readings.size() <= many_readings) {
    return record;
  }
  constexpr double to_a_decade = 40;
  LevelRecord few{record.file, record.distance_m, record.recovered, {}};
  std::size_t stage = 0;
  std::size_t last_stage = 0;
  long last_stretch = 0;
  double count = 0;
  double time_sum_s = 0;
  double drawdown_sum_m = 0;
  auto const close = [&] {
    if (count > 0) {
      few.readings.push_back({time_sum_s / count, drawdown_sum_m / count});
    }
    count = 0;
    time_sum_s = 0;
    drawdown_sum_m = 0;
  };
  for (auto const& reading : record.readings) {
    while (stage + 1 < rates.size() && rates[stage + 1].from_s < reading.time_s) {
      ++stage;
    }
    double const since_s = std::max(reading.time_s - rates[stage].from_s, 1e-3);
    long const stretch = std::lround(std::floor(std::log10(since_s) * to_a_decade));
    if (stretch != last_stretch || stage != last_stage) {
      close();
    }
    last_stretch = stretch;
    last_stage = stage;
    count += 1;
    time_sum_s += reading.time_s;
    drawdown_sum_m += reading.drawdown_m;
  }
  close();
  return few;
}

}  // namespace wellproof
