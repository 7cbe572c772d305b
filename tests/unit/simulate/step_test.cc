#include "simulate/step.h"

#include <cmath>

#include "unit/simulate/plain_site.h"

namespace wellproof {
namespace {

struct Moving {
  Plant plant = plain_plant();
  Inputs inputs;
  State y{};
  Modes modes{.check_open = true};

  Moving() {
    inputs.speed_hz = 52;
    inputs.openings.assign(plant.outlets.size(), 0);
    inputs.openings[outlet::house] = 0.5;
    y[at::level_depth] = plant.well.static_level_depth_m + 1;
    y[at::flow] = 4 * gpm_m3_s;
    y[at::stored] = stored_m3(plant, 45 * psi_pa);
    y[at::winding] = 30;
    y[at::shell] = 20;
    y[at::pump_water] = 20;
    y[at::sink] = 30;
  }

  State carried(double duration_s, int steps, bool with_jacobian = true) {
    Rates rates(plant, inputs);
    auto state = y;
    for (int i = 0; i < steps; ++i) {
      Jacobian jacobian;
      auto const rate = rates.of(state, modes, &jacobian);
      state = rosenbrock_step(rates, modes, state, rate, with_jacobian ? jacobian : Jacobian{}, duration_s / steps, {})
                  .after;
    }
    return state;
  }
};

TEST(RosenbrockStep, ErrorFallsWithTheSquareOfTheStep) {
  Moving moving;
  auto const fine = moving.carried(0.4, 4096);
  for (auto const place : {at::flow, at::stored, at::level_depth}) {
    double const coarse_error = std::abs(moving.carried(0.4, 16)[place] - fine[place]);
    double const half_error = std::abs(moving.carried(0.4, 32)[place] - fine[place]);
    double const order = std::log2(coarse_error / half_error);
    EXPECT_GT(order, 1.7) << place;
    EXPECT_LT(order, 2.6) << place;
  }
}

TEST(RosenbrockStep, StaysOfSecondOrderWithoutAJacobian) {
  Moving moving;
  auto const fine = moving.carried(0.4, 4096);
  double const coarse_error = std::abs(moving.carried(0.4, 64, false)[at::stored] - fine[at::stored]);
  double const half_error = std::abs(moving.carried(0.4, 128, false)[at::stored] - fine[at::stored]);
  EXPECT_NEAR(std::log2(coarse_error / half_error), 2, 0.4);
}

TEST(RosenbrockStep, KeepsTheSumOfWaterToRounding) {
  Moving moving;
  auto const before = moving.y;
  auto const after = moving.carried(5, 7);
  double const in = after[at::pumped_total] - after[at::drawn_total];
  EXPECT_NEAR(in, after[at::stored] - before[at::stored], 1e-15);
  double const well = after[at::inflow_total] - after[at::pumped_total];
  EXPECT_NEAR(well, -moving.plant.well.bore_area_m2 * (after[at::level_depth] - before[at::level_depth]), 1e-14);
}

TEST(RosenbrockStep, ComesToTheSameWhetherItsErrorIsEstimatedOrNot) {
  Moving moving;
  // Rates begin their searches where the last one ended: each way has its own.
  auto const after = [&](bool judged) {
    Rates rates(moving.plant, moving.inputs);
    Jacobian jacobian;
    auto const rate = rates.of(moving.y, moving.modes, &jacobian);
    return judged ? rosenbrock_step(rates, moving.modes, moving.y, rate, jacobian, 0.3, {}).after
                  : rosenbrock_after(rates, moving.modes, moving.y, rate, jacobian, 0.3);
  };
  EXPECT_EQ(after(true), after(false));
}

TEST(RosenbrockStep, AnHourAtRestIsAFewSteps) {
  Moving moving;
  moving.inputs.speed_hz = 0;
  moving.inputs.openings[outlet::house] = 0;
  moving.modes.check_open = false;
  moving.y[at::flow] = 0;
  auto const once = moving.carried(3600, 12);
  auto const often = moving.carried(3600, 3600);
  EXPECT_NEAR(once[at::level_depth], often[at::level_depth], 2e-3);
  EXPECT_NEAR(once[at::winding], often[at::winding], 0.05);
  EXPECT_EQ(once[at::stored], moving.y[at::stored]);
}

TEST(Rates, JacobianIsTheSlopeOfTheRates) {
  // Against central differences of the rates themselves; slip is left out of it, which moves the flow's own slope a
  // little.
  Moving moving;
  Rates rates(moving.plant, moving.inputs);
  Jacobian jacobian;
  rates.of(moving.y, moving.modes, &jacobian);
  std::array<std::size_t, 3> const places{at::level_depth, at::flow, at::stored};
  std::array<double, 3> const nudges{1e-3, 1e-8, 1e-7};
  for (std::size_t c = 0; c < 3; ++c) {
    auto up = moving.y;
    auto down = moving.y;
    up[places[c]] += nudges[c];
    down[places[c]] -= nudges[c];
    auto const above = rates.of(up, moving.modes);
    auto const below = rates.of(down, moving.modes);
    for (std::size_t r = 0; r < 3; ++r) {
      double const slope = (above[places[r]] - below[places[r]]) / (2 * nudges[c]);
      double const share = r == 1 && c == 1 ? 0.25 : 0.02;
      EXPECT_NEAR(jacobian.fast[r][c], slope, share * std::abs(slope) + 1e-9) << r << " by " << c;
    }
  }
}

}  // namespace
}  // namespace wellproof
