#include "site/fixtures.h"

#include <array>

#include "quantity/customary.h"

namespace wellproof {
namespace {

struct Row {
  double units;
  double demand_gpm;
};

// IPC table E103.3(3), flush tanks.
constexpr std::array<Row, 42> rows{
    {{1, 3},     {2, 5},     {3, 6.5},   {4, 8},      {5, 9.4},   {6, 10.7},   {7, 11.8},  {8, 12.8},  {9, 13.7},
     {10, 14.6}, {11, 15.4}, {12, 16},   {13, 16.5},  {14, 17},   {15, 17.5},  {16, 18},   {17, 18.4}, {18, 18.8},
     {19, 19.2}, {20, 19.6}, {25, 21.5}, {30, 23.3},  {35, 24.9}, {40, 26.3},  {45, 27.7}, {50, 29.1}, {60, 32},
     {70, 35},   {80, 38},   {90, 41},   {100, 43.5}, {120, 48},  {140, 52.5}, {160, 57},  {180, 61},  {200, 65},
     {225, 70},  {250, 75},  {275, 80},  {300, 85},   {400, 105}, {500, 124}}};

}  // namespace

std::vector<FixtureKind> const& fixture_kinds() {
  static std::vector<FixtureKind> const kinds{
      {"bathroom_group", "bathroom with tank toilet, lavatory and tub or shower", 3.6},
      {"toilet", "toilet with a tank", 2.2},
      {"lavatory", "lavatory", 0.7},
      {"bathtub", "bathtub", 1.4},
      {"shower", "shower", 1.4},
      {"kitchen_sink", "kitchen sink", 1.4},
      {"dishwasher", "dishwasher", 1.4},
      {"clothes_washer", "clothes washer, 8 lb", 1.4},
      {"laundry_tray", "laundry tray", 1.4},
      {"bidet", "bidet", 2},
  };
  return kinds;
}

double peak_draw_m3_s(double fixture_units) {
  if (!(fixture_units > 0)) {
    return 0;
  }
  Row below{0, 0};
  for (auto const& above : rows) {
    if (fixture_units <= above.units) {
      auto const part = (fixture_units - below.units) / (above.units - below.units);
      return (below.demand_gpm + part * (above.demand_gpm - below.demand_gpm)) * gpm_m3_s;
    }
    below = above;
  }
  return below.demand_gpm * gpm_m3_s;
}

}  // namespace wellproof
