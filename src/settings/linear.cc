#include "settings/linear.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>

#include <Eigen/Dense>

#include "plant/operating.h"
#include "settings/study.h"

namespace wellproof {
namespace {

// The states that matter here, by their place in the plant's state.
constexpr std::array<std::size_t, 3> places{at::flow, at::stored, at::lagged_pressure};
// Small steps for the slopes: well above rounding, well below what bends the laws.
constexpr double speed_step_hz = 0.02;
constexpr std::array<double, 3> steps{2e-7, 1e-7, 10.0};
constexpr double least_time_constant_s = 1e-6;

Eigen::Matrix3d matrix(LinearPlant const& plant) {
  Eigen::Matrix3d m;
  for (int i = 0; i < 3; ++i) {
    for (int j = 0; j < 3; ++j) {
      m(i, j) = plant.by_state[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)];
    }
  }
  return m;
}

Eigen::Vector3d input(LinearPlant const& plant) {
  return {plant.by_speed[0], plant.by_speed[1], plant.by_speed[2]};
}

}  // namespace

// By Cramer's rule, for no more than the last of the three is asked.
std::complex<double> LinearPlant::response_pa_hz(double angular_1_s) const {
  Eigen::Matrix3cd system = -matrix(*this).cast<std::complex<double>>();
  system.diagonal().array() += std::complex<double>(0, angular_1_s);
  Eigen::Matrix3cd driven = system;
  driven.col(2) = input(*this).cast<std::complex<double>>();
  return driven.determinant() / system.determinant();
}

double LinearPlant::steady_pa_hz() const {
  return (-matrix(*this)).partialPivLu().solve(input(*this))(2);
}

std::vector<double> LinearPlant::time_constants_s() const {
  Eigen::EigenSolver<Eigen::Matrix3d> const solver(matrix(*this), false);
  std::vector<double> found;
  for (int i = 0; i < 3; ++i) {
    double const size_1_s = std::abs(solver.eigenvalues()(i));
    found.push_back(size_1_s > 0 ? std::max(1 / size_1_s, least_time_constant_s) : 1 / least_time_constant_s);
  }
  std::sort(found.begin(), found.end(), std::greater<>());
  return found;
}

LinearPlant linear_plant(Plant const& plant, double flow_m3_s, bool regulated, double tee_pressure_pa,
                         double level_depth_m) {
  // One outlet stands for all that is open: it passes this flow at this pressure.
  Plant drawn = plant;
  double const outlet_pa = std::max(outlet_pressure_pa(plant, tee_pressure_pa, flow_m3_s), 1e4);
  drawn.outlets[outlet::house] = {.nominal_flow_m3_s = flow_m3_s,
                                  .nominal_pressure_pa = regulated ? 0.5 * outlet_pa : outlet_pa,
                                  .regulated = regulated,
                                  .place = OutletPlace::house};
  auto const steady = point_for_flow(drawn, flow_m3_s, tee_pressure_pa, level_depth_m);
  LinearPlant linear;
  linear.reached = steady.reached && steady.speed_hz > 0;
  if (!linear.reached) {
    return linear;
  }
  Inputs inputs;
  inputs.openings.assign(drawn.outlets.size(), 0.0);
  inputs.openings[outlet::house] = 1;
  inputs.speed_hz = steady.speed_hz;
  Modes const modes{.check_open = true, .line_full = true, .held = false};
  State y{};
  y[at::level_depth] = level_depth_m;
  y[at::flow] = flow_m3_s;
  y[at::stored] = stored_m3(drawn, tee_pressure_pa);
  y[at::lagged_pressure] = tee_pressure_pa;

  Rates rates(drawn, inputs);
  auto const slopes = [&](State const& above, State const& below, double step, std::size_t row) {
    return (above[places[row]] - below[places[row]]) / (2 * step);
  };
  for (std::size_t j = 0; j < 3; ++j) {
    State up = y;
    State down = y;
    up[places[j]] += steps[j];
    down[places[j]] -= steps[j];
    State const above = rates.of(up, modes);
    State const below = rates.of(down, modes);
    for (std::size_t i = 0; i < 3; ++i) {
      linear.by_state[i][j] = slopes(above, below, steps[j], i);
    }
  }
  inputs.speed_hz = steady.speed_hz + speed_step_hz;
  rates.hold(inputs);
  State const above = rates.of(y, modes);
  inputs.speed_hz = steady.speed_hz - speed_step_hz;
  rates.hold(inputs);
  State const below = rates.of(y, modes);
  for (std::size_t i = 0; i < 3; ++i) {
    linear.by_speed[i] = slopes(above, below, speed_step_hz, i);
  }
  // A sensor without lag keeps no state of its own: it follows at once.
  if (linear.by_state[2][2] == 0) {
    constexpr double at_once_1_s = 1e3;
    linear.by_state[2] = {0, at_once_1_s * wellproof::tee_pressure_pa(drawn, y[at::stored]).slope, -at_once_1_s};
  }
  return linear;
}

}  // namespace wellproof
