// The drive's power part against published figures.
#include <gtest/gtest.h>

#include <cmath>

#include "plant/drive.h"

namespace wellproof {
namespace {

struct PartLoad {
  double load;
  double efficiency;
};

// Generic efficiency of a 3 hp drive against load, from public guidance on drives in pump and fan systems. The current
// that goes with a load is that of a motor whose no-load current is half its full-load current and at right angles to
// the load's.
constexpr PartLoad part_loads[] = {{0.125, 0.77}, {0.25, 0.86}, {0.5, 0.91}, {0.75, 0.93}, {1, 0.94}};

TEST(SupplyReference, part_load_efficiency_is_within_a_point_of_the_published) {
  constexpr double rated_power_w = 2237;
  constexpr double rated_current_a = 10;
  for (auto const& row : part_loads) {
    double const current_a = rated_current_a * std::sqrt(0.25 + 0.75 * row.load * row.load);
    double const output_w = row.load * rated_power_w;
    double const loss_w = drive_loss_w(output_w, current_a, rated_current_a, rated_power_w, 0.94);
    EXPECT_NEAR(output_w / (output_w + loss_w), row.efficiency, 0.01) << row.load;
  }
}

// mohan_2003 (from memory): a six-pulse rectifier gives 1.35 times the line voltage, and the largest fundamental that a
// bridge makes of a direct voltage without overmodulation, third harmonic added, is 0.707 of it between lines.
TEST(SupplyReference, a_drive_gives_what_rectifier_and_bridge_give) {
  for (double const supply_v : {208.0, 230.0, 480.0}) {
    EXPECT_NEAR(drive_available_v(supply_v), 0.707 * 1.35 * supply_v, 0.001 * supply_v);
  }
}

}  // namespace
}  // namespace wellproof
