// What water, pump and motor come to at one instant, of which all rates and readings follow.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "plant/plant.h"

namespace wellproof {
namespace {

constexpr double least_filled_share = 0.05;  // of the line: a column has some weight from the first moment

}  // namespace

double Rates::filled_share(State const& y, Modes modes) const {
  if (modes.line_full || plant_->line_volume_m3 <= 0) {
    return 1;
  }
  return std::clamp(1 - y[at::empty] / plant_->line_volume_m3, least_filled_share, 1.0);
}

// Height from the water in the well to the tee, or, while the line fills, to the front of the water on its way there.
double Rates::lift_m(State const& y, Modes modes) const {
  double const share = filled_share(y, modes);
  double const front_depth_m = plant_->well.static_level_depth_m * (1 - share) - plant_->tee_elevation_m * share;
  return y[at::level_depth] - front_depth_m;
}

double Rates::rotor_speed_rad_s(double flow_m3_s, double wetness_share) {
  if (!running_) {
    return 0;
  }
  auto const load = [&](double speed_rad_s) { return pump_->torque_n_m(flow_m3_s, speed_rad_s, wetness_share); };
  double const slip = fed_.slip_under(load, slip_guess_);
  slip_guess_ = slip < 1 ? slip : usual_slip;
  return fed_.synchronous_speed_rad_s() * (1 - slip);
}

// The frequency at which the motor turns a load at a wanted speed: torque at a given rotor speed rises with frequency.
void Rates::feed_for(double rotor_speed_rad_s, double flow_m3_s, double wetness_share) {
  double const turning_hz = rotor_speed_rad_s * plant_->circuit.pole_pairs / (2 * std::numbers::pi);
  double const asked_n_m = pump_->torque_n_m(flow_m3_s, rotor_speed_rad_s, wetness_share).value;
  auto const excess_n_m = [&](double speed_hz) {
    feed_at(speed_hz);
    return fed_.shaft_torque_n_m(1 - turning_hz / speed_hz).value - asked_n_m;
  };
  double low_hz = turning_hz;
  double high_hz = 1.25 * turning_hz;
  double before_hz = turning_hz * 1.001;
  double excess_before = excess_n_m(before_hz);
  double speed_hz = held_speed_hz_ > low_hz && held_speed_hz_ < high_hz ? held_speed_hz_ : 1.04 * turning_hz;
  for (int round = 0; round < 40; ++round) {
    double const excess = excess_n_m(speed_hz);
    (excess > 0 ? high_hz : low_hz) = speed_hz;
    double next_hz =
        excess != excess_before ? speed_hz - excess * (speed_hz - before_hz) / (excess - excess_before) : speed_hz;
    if (!(next_hz >= low_hz && next_hz <= high_hz)) {
      next_hz = 0.5 * (low_hz + high_hz);
    }
    before_hz = speed_hz;
    excess_before = excess;
    speed_hz = next_hz;
    if (std::abs(speed_hz - before_hz) < 1e-11 * speed_hz) {
      break;
    }
  }
  excess_n_m(speed_hz);
  held_speed_hz_ = speed_hz;
}

Rates::Hydraulics const& Rates::hydraulics(State const& y, Modes modes) {
  std::array<double, 6> const now{y[at::level_depth],
                                  y[at::flow],
                                  y[at::stored],
                                  y[at::empty],
                                  modes.followed ? y[at::lagged_pressure] : 0,
                                  modes.followed ? y[at::integral] : 0};
  if (seen_.valid && seen_.modes == modes && seen_.wet_state == now) {
    return last_;
  }
  seen_ = {now, modes, true};
  motor_.reset();
  known_.reset();
  auto& h = last_;
  h = {};
  h.inflow_m3_s = inflow_.flow_m3_s(y[at::level_depth]);
  h.wet = wetness(plant_->site.pump.setting_depth_m - y[at::level_depth], plant_->site.pump.least_submergence_m);
  h.filled = filled_share(y, modes);
  h.lift_m = lift_m(y, modes);
  if (modes.line_full) {
    h.pressure = tee_pressure_pa(y[at::stored]);
    h.house = house_flow_m3_s(h.pressure.value);
    h.tee = tee_outflow_m3_s(h.pressure.value);
    h.back = hole_m3_s(y[at::level_depth], h.pressure.value);
  }
  if (modes.held) {
    h.flow_m3_s = h.house.value + h.tee.value + h.back.value;
  } else if (modes.check_open && !yard_shut_) {
    h.flow_m3_s = y[at::flow];
  }
  h.loss = plant_->up.loss_m(h.flow_m3_s);
  h.loss.value = h.filled * h.loss.value + local_loss_s2_m5_ * h.flow_m3_s * std::abs(h.flow_m3_s);
  h.loss.slope = h.filled * h.loss.slope + 2 * local_loss_s2_m5_ * std::abs(h.flow_m3_s);
  if (modes.held) {
    double const asked_m = h.lift_m + h.loss.value + h.pressure.value / plant_->weight_n_m3;
    h.rotor_speed_rad_s = pump_->speed_for_rad_s(h.flow_m3_s, asked_m, h.wet.value);
    feed_for(h.rotor_speed_rad_s, h.flow_m3_s, h.wet.value);
    h.speed_hz = held_speed_hz_;
    h.head = {asked_m, 0};
  } else {
    h.speed_hz = inputs_.speed_hz;
    if (modes.followed) {
      h.speed_hz = followed_speed_hz(y, h.pressure);
      feed_at(h.speed_hz);
    }
    h.rotor_speed_rad_s = modes.stalled ? 0 : rotor_speed_rad_s(std::max(h.flow_m3_s, 0.0), h.wet.value);
    if (h.rotor_speed_rad_s > 0) {
      h.head = pump_->head_m(h.flow_m3_s, h.rotor_speed_rad_s, h.wet.value);
    }
    if (!modes.check_open && modes.line_full) {
      add_leak_past_check(h);
    }
  }
  return h;
}

double Rates::opening_head_m(State const& y, Modes modes) {
  if (!running_ || yard_shut_ || modes.stalled) {
    return -1;
  }
  auto const wet =
      wetness(plant_->site.pump.setting_depth_m - y[at::level_depth], plant_->site.pump.least_submergence_m);
  auto const pressure = modes.line_full ? tee_pressure_pa(y[at::stored]) : Sloped{};
  if (modes.followed) {
    seen_.valid = false;
    feed_at(followed_speed_hz(y, pressure));
  }
  // From the same guess each time: a valve that stands at the edge of it is seen on the same side by all who ask.
  double const guess = std::exchange(slip_guess_, usual_slip);
  double const speed_rad_s = rotor_speed_rad_s(0, wet.value);
  slip_guess_ = guess;
  if (speed_rad_s <= 0) {
    return -1;
  }
  return pump_->head_m(0, speed_rad_s, wet.value).value - lift_m(y, modes) - pressure.value / plant_->weight_n_m3;
}

}  // namespace wellproof
