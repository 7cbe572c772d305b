#include "simulate/step.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace wellproof {
namespace {

constexpr double d = 1 / (2 + std::numbers::sqrt2);
constexpr double e32 = 6 + std::numbers::sqrt2;

/// (I − h·d·J), factored once a step: fast block by elimination, the rest follows row by row.
class Solver {
 public:
  Solver(Jacobian const& jacobian, double h)
      : j_(jacobian), hd_(h * d), lag_share_(1 / (1 - hd_ * jacobian.lag_by_lag)) {
    for (std::size_t r = 0; r < 3; ++r) {
      for (std::size_t c = 0; c < 3; ++c) {
        lu_[r][c] = (r == c ? 1.0 : 0.0) - hd_ * j_.fast[r][c];
      }
    }
    // A followed controller: lag and integral in terms of what is stored, put into the row of the flow.
    double const lag_by_stored = lag_share_ * hd_ * j_.lag_by_stored;
    integral_by_stored_ = hd_ * (j_.integral_by_stored + j_.integral_by_lag * lag_by_stored);
    lu_[1][2] -= hd_ * (j_.flow_by_lag * lag_by_stored + j_.flow_by_integral * integral_by_stored_);
    // The diagonal stays at 1 or above (each state relaxes on itself), so no pivoting.
    for (std::size_t p = 0; p < 3; ++p) {
      pivot_share_[p] = 1 / lu_[p][p];
      for (std::size_t r = p + 1; r < 3; ++r) {
        lu_[r][p] *= pivot_share_[p];
        for (std::size_t c = p + 1; c < 3; ++c) {
          lu_[r][c] -= lu_[r][p] * lu_[p][c];
        }
      }
    }
    winding_ = {1 - hd_ * j_.heat[0][0], -hd_ * j_.heat[0][1]};
    shell_ = {-hd_ * j_.heat[1][0], 1 - hd_ * j_.heat[1][1]};
    heat_share_ = 1 / (winding_[0] * shell_[1] - winding_[1] * shell_[0]);
    pump_water_share_ = 1 / (1 - hd_ * j_.pump_water);
    sink_share_ = 1 / (1 - hd_ * j_.sink);
  }

  State solve(State const& right) const {
    State x = right;
    auto& fast0 = x[at::level_depth];
    auto& fast1 = x[at::flow];
    auto& fast2 = x[at::stored];
    double const own_lag = lag_share_ * right[at::lagged_pressure];
    double const own_integral = right[at::integral] + hd_ * j_.integral_by_lag * own_lag;
    fast1 += hd_ * (j_.flow_by_lag * own_lag + j_.flow_by_integral * own_integral);
    fast1 -= lu_[1][0] * fast0;
    fast2 -= lu_[2][0] * fast0 + lu_[2][1] * fast1;
    fast2 *= pivot_share_[2];
    fast1 = (fast1 - lu_[1][2] * fast2) * pivot_share_[1];
    fast0 = (fast0 - lu_[0][1] * fast1 - lu_[0][2] * fast2) * pivot_share_[0];
    auto const follow = [&](std::array<double, 3> const& row) {
      return hd_ * (row[0] * fast0 + row[1] * fast1 + row[2] * fast2);
    };
    x[at::inflow_total] += follow(j_.totals[0]);
    x[at::pumped_total] += follow(j_.totals[1]);
    x[at::drawn_total] += follow(j_.totals[2]);
    x[at::empty] += follow(j_.empty);
    x[at::lagged_pressure] = own_lag + lag_share_ * hd_ * j_.lag_by_stored * fast2;
    x[at::integral] = own_integral + integral_by_stored_ * fast2;
    x[at::winding] = (shell_[1] * right[at::winding] - winding_[1] * right[at::shell]) * heat_share_;
    x[at::shell] = (winding_[0] * right[at::shell] - shell_[0] * right[at::winding]) * heat_share_;
    x[at::pump_water] = right[at::pump_water] * pump_water_share_;
    x[at::sink] = right[at::sink] * sink_share_;
    return x;
  }

 private:
  Jacobian const& j_;
  double hd_;
  double lag_share_;
  double integral_by_stored_ = 0;
  std::array<std::array<double, 3>, 3> lu_{};
  std::array<double, 3> pivot_share_{};
  std::array<double, 2> winding_{};
  std::array<double, 2> shell_{};
  double heat_share_ = 1;
  double pump_water_share_ = 1;
  double sink_share_ = 1;
};

/// What comes before the error is estimated.
struct Stages {
  Stages(Rates& rates, Modes modes, State const& y, State const& rate, Jacobian const& jacobian, double h)
      : solver(jacobian, h), k1(solver.solve(rate)) {
    State middle;
    for (std::size_t i = 0; i < at::count; ++i) {
      middle[i] = y[i] + 0.5 * h * k1[i];
    }
    rate1 = rates.of(middle, modes);
    State right;
    for (std::size_t i = 0; i < at::count; ++i) {
      right[i] = rate1[i] - k1[i];
    }
    k2 = solver.solve(right);
    for (std::size_t i = 0; i < at::count; ++i) {
      k2[i] += k1[i];
      after[i] = y[i] + h * k2[i];
    }
  }

  Solver solver;
  State k1;
  State rate1{};
  State k2{};
  State after{};
};

}  // namespace

State rosenbrock_after(Rates& rates, Modes modes, State const& y, State const& rate, Jacobian const& jacobian,
                       double duration_s) {
  return Stages(rates, modes, y, rate, jacobian, duration_s).after;
}

Step rosenbrock_step(Rates& rates, Modes modes, State const& y, State const& rate, Jacobian const& jacobian,
                     double duration_s, State const& scale) {
  double const h = duration_s;
  Stages const stages(rates, modes, y, rate, jacobian, h);
  auto const& [solver, k1, rate1, k2, after] = stages;
  Step step{.after = after};
  State right;
  auto const rate2 = rates.of(step.after, modes);
  for (std::size_t i = 0; i < at::count; ++i) {
    right[i] = rate2[i] - e32 * (k2[i] - rate1[i]) - 2 * (k1[i] - rate[i]);
  }
  auto const k3 = solver.solve(right);
  // Solved for once more: what the flow settles to within the step is no error, however far off the estimate puts it.
  for (std::size_t i = 0; i < at::count; ++i) {
    right[i] = h / 6 * (k1[i] - 2 * k2[i] + k3[i]);
  }
  auto const error = solver.solve(right);
  for (std::size_t i = 0; i < at::count; ++i) {
    if (scale[i] > 0) {
      step.error = std::max(step.error, std::abs(error[i]) / scale[i]);
    }
  }
  return step;
}

double next_duration_s(double duration_s, double error) {
  constexpr double safety = 0.9;
  double const factor = error > 0 ? safety / std::cbrt(error) : 5.0;
  return duration_s * std::clamp(factor, 0.2, 5.0);
}

}  // namespace wellproof
