#include "simulate/carry.h"

#include <cmath>

#include "unit/simulate/plain_site.h"

namespace wellproof {
namespace {

/// A pump that turns against a shut valve, with nothing drawn and the well at rest: nothing changes.
struct Standing {
  Plant plant = plain_plant();
  Inputs inputs;
  State y{};

  Standing() {
    inputs.speed_hz = 50;
    inputs.openings.assign(plant.outlets.size(), 0);
    y[at::level_depth] = plant.well.static_level_depth_m;
    y[at::winding] = y[at::shell] = y[at::pump_water] = plant.site.well.water_temperature_c;
    y[at::sink] = plant.site.drive.ambient_c;
  }

  double opening_head_m(double stored) {
    y[at::stored] = stored;
    return Rates(plant, inputs).opening_head_m(y, {});
  }

  /// What is stored where the valve is about to open: the least at which it stays shut.
  double edge_m3() {
    double low = stored_m3(plant, 20 * psi_pa);
    double high = stored_m3(plant, 140 * psi_pa);
    EXPECT_GT(opening_head_m(low), 0);
    EXPECT_LT(opening_head_m(high), 0);
    while (std::nextafter(low, high) < high) {
      double const middle = 0.5 * (low + high);
      (opening_head_m(middle) > 0 ? low : high) = middle;
    }
    return high;
  }

  Carrier carried(double stored) {
    constexpr int most_steps = 1000;
    y[at::stored] = stored;
    Carrier carrier(plant, inputs, y, {}, {}, 1e-4);
    for (int step = 0; step < most_steps && carrier.time_s() < 60; ++step) {
      carrier.count_flips_afresh();
      EXPECT_EQ(carrier.step_towards(60), Carrier::Outcome::stepped);
    }
    EXPECT_DOUBLE_EQ(carrier.time_s(), 60);
    return carrier;
  }
};

TEST(Carry, AValveAtTheEdgeOfOpeningStaysShutAndHoldsNobodyUp) {
  Standing standing;
  double stored = standing.edge_m3();
  for (int place = 0; place < 40; ++place) {
    EXPECT_FALSE(standing.carried(stored).modes().check_open) << place;
    stored = std::nextafter(stored, 1.0);
  }
}

TEST(Carry, AValveJustPastTheEdgeOpens) {
  Standing standing;
  double const stored = standing.edge_m3();
  auto const carrier = standing.carried(stored * (1 - 1e-3));
  EXPECT_GT(carrier.state()[at::pumped_total], 0);
}

}  // namespace
}  // namespace wellproof
