#include "simulate/carry.h"

#include <algorithm>
#include <cmath>

#include "plant/root.h"
#include "simulate/step.h"

namespace wellproof {
namespace {

constexpr int most_flips = 24;
constexpr double shortest_step_s = 1e-9;
constexpr double crossing_tolerance_s = 1e-9;
constexpr double near_share = 1e-3;  // of the error that is tolerated: so near is a crossing found

// What a relative tolerance of 1 means for each state: an atmosphere of tank pressure, four metres of level, a hundred
// kelvin; of the flow, which forgets within a second or so, four times the pump's best.
State scales(Plant const& plant, Sloped tee_pressure, double tolerance) {
  constexpr double pressure_pa = 1e5;
  State scale{};
  scale[at::level_depth] = 4 * tolerance;
  scale[at::flow] = 4 * tolerance * plant.pump.best_flow_m3_s();
  scale[at::stored] = tolerance * pressure_pa / tee_pressure.slope;
  scale[at::lagged_pressure] = tolerance * pressure_pa;
  scale[at::winding] = tolerance * 100;
  scale[at::shell] = tolerance * 100;
  scale[at::pump_water] = tolerance * 100;
  scale[at::sink] = tolerance * 100;
  scale[at::integral] = tolerance * 100;
  return scale;
}

}  // namespace

Carrier::Carrier(Plant const& plant, Inputs const& inputs, State const& start, Modes modes,
                 Formation::Drawn const& drawn, double tolerance)
    : plant_(&plant),
      rates_(plant, inputs),
      now_{start, modes, 0, {plant.well, drawn, start[at::level_depth], inputs.static_shift_m, inputs.inflow_share}},
      tolerance_(tolerance) {
  rates_.feed(now_.inflow.line());
}

void Carrier::hold(Inputs const& inputs) {
  bool const other_well =
      inputs.static_shift_m != rates_.inputs().static_shift_m || inputs.inflow_share != rates_.inputs().inflow_share;
  rates_.hold(inputs);
  if (other_well) {
    renew_inflow();
  }
  now_.modes.stalled = now_.modes.stalled && inputs.speed_hz > 0;
  reading_.reset();
}

void Carrier::renew_inflow() {
  now_.inflow.renew(plant_->well, now_.time_s, now_.y[at::inflow_total], now_.y[at::level_depth],
                    rates_.inputs().static_shift_m, rates_.inputs().inflow_share);
  rates_.feed(now_.inflow.line());
}

Reading const& Carrier::read() {
  if (!reading_) {
    reading_ = rates_.read(now_.y, now_.modes);
  }
  return *reading_;
}

void Carrier::put(State const& y, Modes modes) {
  now_.y = y;
  now_.modes = modes;
  reading_.reset();
}

void Carrier::back_to(Moment const& moment) {
  now_ = moment;
  rates_.feed(now_.inflow.line());
  reading_.reset();
}

void Carrier::flip(bool Modes::*mode, bool to) {
  now_.modes.*mode = to;
  ++flips_;
  ++flips_in_a_row_;
}

// Simultaneous changes go in this order: the line is full, the motor stalls, the valve opens, the valve closes. A
// stalled motor does not turn again by itself when the flow has stopped: its torque at rest is far below what breaks it
// down.
bool Carrier::flip_where_due() {
  auto const before = flips_;
  if (!now_.modes.line_full && now_.y[at::empty] <= 0) {
    now_.y[at::empty] = 0;
    flip(&Modes::line_full, true);
  }
  if (!now_.modes.stalled && rates_.stalls(now_.y, now_.modes)) {
    flip(&Modes::stalled, true);
  }
  if (!now_.modes.check_open && rates_.opening_head_m(now_.y, now_.modes) > 0) {
    now_.y[at::flow] = 0;
    flip(&Modes::check_open, true);
  } else if (now_.modes.check_open && (now_.y[at::flow] <= 0 || rates_.yard_shut()) &&
             !(rates_.opening_head_m(now_.y, now_.modes) > 0)) {
    now_.y[at::flow] = 0;
    flip(&Modes::check_open, false);
  }
  return flips_ != before;
}

Carrier::Outcome Carrier::step_towards(double limit_s) {
  reading_.reset();
  if (!now_.modes.held) {
    flip_where_due();
  }
  if (flips_in_a_row_ > most_flips) {
    return Outcome::chatter;
  }
  if (now_.inflow.due(now_.time_s, now_.y[at::level_depth])) {
    renew_inflow();
  }
  limit_s = std::min(limit_s, now_.inflow.ends_s());
  Jacobian jacobian;
  auto const rate = rates_.of(now_.y, now_.modes, &jacobian);
  auto const scale = scales(*plant_, rates_.tee_pressure_pa(now_.y, now_.modes), tolerance_);
  auto const before = now_.y;
  double duration_s = std::min(wanted_s_, limit_s - now_.time_s);
  bool const to_the_limit = duration_s >= limit_s - now_.time_s;
  Step step;
  for (;;) {
    step = rosenbrock_step(rates_, now_.modes, before, rate, jacobian, duration_s, scale);
    if (step.error <= 1) {
      break;
    }
    ++refused_;
    if (!(duration_s > shortest_step_s)) {
      return Outcome::no_convergence;
    }
    duration_s = std::min(next_duration_s(duration_s, step.error), 0.7 * duration_s);
    wanted_s_ = duration_s;
  }
  ++steps_;
  bool crossed = false;
  double const taken_s = duration_s;
  if (!now_.modes.held) {
    // Ends the step where a figure that was positive has come to nothing: at most twice `near` beyond, or as
    // exactly as the clock allows.
    auto const cut = [&](auto const& figure, double near) {
      double const at_start = figure(before);
      double const at_end = figure(step.after);
      if (at_start > 0 && at_end <= 0) {
        Bracket bracket{.low = 0, .high = duration_s, .low_value = at_start + near, .high_value = at_end + near};
        auto const at = [&](double part_s) {
          auto const part = rosenbrock_after(rates_, now_.modes, before, rate, jacobian, part_s);
          double const found = figure(part);
          if (found <= 0) {
            step.after = part;
            duration_s = part_s;
          }
          return found + near;
        };
        if (bracket.high_value < -near) {
          narrow(bracket, at, {.width = crossing_tolerance_s, .value_width = near, .least_share = 0.01});
        }
        crossed = true;
      }
    };
    if (!now_.modes.line_full) {
      cut([](State const& y) { return y[at::empty]; }, near_share * scale[at::stored]);
    }
    if (now_.modes.check_open) {
      // Just opened, the flow starts at nothing: any sign that follows is a crossing.
      cut([&](State const& y) { return &y == &before && y[at::flow] == 0 ? 1e-12 : y[at::flow]; },
          near_share * scale[at::flow]);
    } else {
      // At nothing it is still shut, and any head that follows opens it.
      cut(
          [&](State const& y) {
            double const head_m = rates_.opening_head_m(y, now_.modes);
            return head_m > 0 ? -head_m : std::max(-head_m, 1e-12);
          },
          near_share * scale[at::level_depth]);
    }
  }
  now_.y = step.after;
  now_.time_s = !crossed && duration_s >= taken_s && to_the_limit && taken_s >= limit_s - now_.time_s
                    ? limit_s
                    : now_.time_s + duration_s;
  if (crossed) {
    if (now_.modes.check_open && now_.y[at::flow] < 1e-12) {
      now_.y[at::flow] = std::min(now_.y[at::flow], 0.0);
    }
    if (!flip_where_due()) {
      ++flips_in_a_row_;  // a crossing that changes nothing, again and again, is no progress either
    }
  } else if (taken_s >= wanted_s_ || step.error > 0.5) {
    wanted_s_ = next_duration_s(taken_s, step.error);
  }
  return Outcome::stepped;
}

}  // namespace wellproof
