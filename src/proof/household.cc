#include "proof/household.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "quantity/chance.h"
#include "quantity/customary.h"
#include "quantity/inverse_normal.h"

namespace wellproof {
namespace {

/// One fixture: uses a day, middle of duration and flow with the spread of their logarithms, and the hours it is used.
struct Habit {
  Fixture fixture;
  double uses_per_day;
  double median_s;
  double spread;
  double median_m3_s;
  double flow_spread;
  std::array<int, 24> by_hour;  // weights
};

constexpr std::array<int, 24> anybody{2, 1, 0, 1, 0, 1, 5, 8, 10, 14, 9, 9, 10, 9, 11, 8, 8, 9, 8, 7, 7, 9, 5, 3};
constexpr std::array<int, 24> bathing{0, 0, 0, 0, 0, 0, 2, 4, 4, 4, 3, 3, 1, 1, 1, 2, 2, 3, 2, 2, 2, 2, 1, 0};
constexpr std::array<int, 24> by_day{0, 0, 0, 0, 0, 0, 0, 0, 1, 3, 3, 3, 3, 2, 2, 2, 2, 2, 2, 1, 1, 1, 0, 0};

constexpr std::array<Habit, 5> habits{{
    {Fixture::toilet, 20.6, 0.95 * minute_s, 0.30, 2.5 * gpm_m3_s, 0.22, anybody},
    {Fixture::faucet, 30.4, 0.33 * minute_s, 0.80, 0.91 * gpm_m3_s, 0.30, anybody},
    {Fixture::shower, 2.4, 8.5 * minute_s, 0.45, 1.7 * gpm_m3_s, 0.18, bathing},
    {Fixture::washer, 1.6, 4.6 * minute_s, 0.10, 2.86 * gpm_m3_s, 0.08, by_day},
    {Fixture::hose, 2.2, 4.0 * minute_s, 1.00, 3.0 * gpm_m3_s, 0.35, by_day},
}};

/// Cut at three sigma.
double log_normal(Chance& numbers, double median, double spread) {
  constexpr double most_from_half = 0.49865;
  return median * std::exp(spread * inverse_normal(std::clamp(numbers.next() - 0.5, -most_from_half, most_from_half)));
}

/// Second of the day: the hour by its weight, even within it.
double second_of_day(Chance& numbers, std::array<int, 24> const& by_hour) {
  int all = 0;
  for (int const weight : by_hour) {
    all += weight;
  }
  double left = numbers.next() * all;
  for (std::size_t hour = 0; hour < by_hour.size(); ++hour) {
    if (left < by_hour[hour]) {
      return 3600 * (static_cast<double>(hour) + left / by_hour[hour]);
    }
    left -= by_hour[hour];
  }
  return 0.5 * day_s;
}

/// The next day's count: uses come by themselves, so that waits between them are exponential.
int count(Chance& numbers, double mean) {
  int found = 0;
  double reached = -std::log(numbers.next());
  while (reached < mean) {
    ++found;
    reached -= std::log(numbers.next());
  }
  return found;
}

}  // namespace

std::vector<WaterUse> household_uses(std::uint64_t seed, std::uint32_t first_day, std::uint32_t days) {
  std::vector<WaterUse> uses;
  for (std::uint32_t day = first_day; day < first_day + days; ++day) {
    Chance numbers((seed + 1) * 0x2545F4914F6CDD1DU + day);
    for (auto const& habit : habits) {
      for (int left = count(numbers, habit.uses_per_day); left > 0; --left) {
        WaterUse use;
        use.fixture = habit.fixture;
        use.start_s = (day - first_day) * day_s + second_of_day(numbers, habit.by_hour);
        use.duration_s = log_normal(numbers, habit.median_s, habit.spread);
        use.flow_m3_s = log_normal(numbers, habit.median_m3_s, habit.flow_spread);
        uses.push_back(use);
      }
    }
  }
  std::stable_sort(uses.begin(), uses.end(),
                   [](WaterUse const& a, WaterUse const& b) { return a.start_s < b.start_s; });
  return uses;
}

std::vector<DrawnFlow> drawn_together(std::vector<WaterUse> const& uses) {
  struct Turn {
    double time_s;
    std::size_t use;
    bool opens;
  };
  std::vector<Turn> turns;
  for (std::size_t i = 0; i < uses.size(); ++i) {
    turns.push_back({uses[i].start_s, i, true});
    turns.push_back({uses[i].start_s + uses[i].duration_s, i, false});
  }
  std::stable_sort(turns.begin(), turns.end(), [](Turn const& a, Turn const& b) { return a.time_s < b.time_s; });
  // Summed afresh at each turn: when all is shut nothing is left of rounding.
  std::vector<std::size_t> open;
  std::vector<DrawnFlow> flows;
  for (auto const& turn : turns) {
    if (turn.opens) {
      open.push_back(turn.use);
    } else {
      open.erase(std::find(open.begin(), open.end(), turn.use));
    }
    double flow_m3_s = 0;
    for (auto const use : open) {
      flow_m3_s += uses[use].flow_m3_s;
    }
    flows.push_back({turn.time_s, flow_m3_s});
  }
  return flows;
}

}  // namespace wellproof
