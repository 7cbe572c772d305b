// The plant while a controller is followed: its speed by its state.
#include <algorithm>

#include "plant/plant.h"

namespace wellproof {
namespace {

// Below this no controller is followed; a step on trial may look there.
constexpr double least_followed_hz = 1;

}  // namespace

void Rates::follow(Follow const& follow) {
  follow_ = follow;
  seen_.valid = false;
}

double Rates::followed_error_pa(State const& y, Sloped pressure) const {
  return follow_.reference_pa - (lags() ? y[at::lagged_pressure] : pressure.value);
}

double Rates::followed_speed_hz(State const& y, Sloped pressure) const {
  return std::max(y[at::integral] + follow_.gain_hz_pa * followed_error_pa(y, pressure), least_followed_hz);
}

// The rotor goes with the drive's output; at one flow the head goes as f²·H(Q/f), with 2·H − Q·H' for each share of f.
void Rates::add_following(Jacobian& j, Modes modes, double per_inertance_m2_s2) const {
  auto const& h = last_;
  j.flow_by_integral = per_inertance_m2_s2 * (2 * h.head.value - h.flow_m3_s * h.head.slope) / h.speed_hz;
  double const integral_by_pressure = -follow_.gain_hz_pa * follow_.reset_1_s;
  double const flow_by_pressure = -follow_.gain_hz_pa * j.flow_by_integral;
  if (lags()) {
    j.flow_by_lag = flow_by_pressure;
    j.integral_by_lag = integral_by_pressure;
  } else if (modes.line_full) {
    j.fast[1][2] += flow_by_pressure * h.pressure.slope;
    j.integral_by_stored = integral_by_pressure * h.pressure.slope;
  }
}

}  // namespace wellproof
