#include "plant/pump.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "contract/require.h"
#include "plant/water.h"

namespace wellproof {
namespace {

using Points = std::vector<CurvePoint>;

constexpr int grid_pieces = 64;
constexpr double least_fall = 1e-3;         // of the greatest head over the whole curve
constexpr double laminar_leak_head = 0.01;  // of the shut-off head: below it the inner leak is no longer ∝ √H
constexpr double least_wetness = 0.01;      // for finding a speed
constexpr double furthest_runout = 3;       // times the last flow of the points

/// The points of this very pump.
Points scaled(PumpOf<double> const& pump) {
  require(pump.curve.size() >= 3, "a pump's curve has three points or more");
  require(pump.flow_factor > 0 && pump.head_factor > 0 && pump.power_factor > 0 && pump.curve_speed_rad_s > 0,
          "a pump's factors and the speed of its curve are positive");
  require(pump.curve.front().flow_m3_s >= 0, "a pump's curve begins at no flow or above");
  Points points = pump.curve;
  for (auto& point : points) {
    point.flow_m3_s *= pump.flow_factor;
    point.head_m *= pump.head_factor;
    point.shaft_power_w *= pump.power_factor;
  }
  return points;
}

/// Raises points that do not stand above the next one: a drooping start would let one head have two flows.
void make_falling(Points& points) {
  double greatest_m = 0;
  for (auto const& point : points) {
    greatest_m = std::max(greatest_m, point.head_m);
  }
  require(greatest_m > 0, "a pump's curve has head somewhere");
  double const fall_m = 2 * least_fall * greatest_m;
  double const span_m3_s = points.back().flow_m3_s - points.front().flow_m3_s;
  for (std::size_t i = points.size() - 1; i-- > 0;) {
    double const share = (points[i + 1].flow_m3_s - points[i].flow_m3_s) / span_m3_s;
    points[i].head_m = std::max(points[i].head_m, points[i + 1].head_m + fall_m * share);
  }
}

/// Goes on to where no head is left, along a − b·Q² through the last two points.
void extend_to_runout(Points& points) {
  CurvePoint const last = points.back();
  if (last.head_m <= 0) {
    return;
  }
  CurvePoint const before = points[points.size() - 2];
  double const last_square = last.flow_m3_s * last.flow_m3_s;
  double const bend = (before.head_m - last.head_m) / (last_square - before.flow_m3_s * before.flow_m3_s);
  double const runout_m3_s = std::min(std::sqrt(last_square + last.head_m / bend), furthest_runout * last.flow_m3_s);
  double const runout_square = runout_m3_s * runout_m3_s;
  for (double const share : {0.5, 1.0}) {
    double const flow_m3_s = last.flow_m3_s + share * (runout_m3_s - last.flow_m3_s);
    double const left = (runout_square - flow_m3_s * flow_m3_s) / (runout_square - last_square);
    points.push_back({flow_m3_s, last.head_m * left, last.shaft_power_w});
  }
}

/// The curves through the points, on their uneven flows.
struct NewCurves {
  MonotoneCurve head;
  MonotoneCurve power;
};

NewCurves through(Points const& points) {
  std::vector<double> flow;
  std::vector<double> head;
  std::vector<double> power;
  for (auto const& point : points) {
    flow.push_back(point.flow_m3_s);
    head.push_back(point.head_m);
    power.push_back(point.shaft_power_w);
  }
  return {MonotoneCurve(flow, head), MonotoneCurve(flow, power)};
}

/// Power at a flow, held at its end values beyond the curve.
Sloped held(MonotoneCurve const& power, double flow_m3_s) {
  if (flow_m3_s < power.first_x() || flow_m3_s > power.last_x()) {
    return {power.at(std::clamp(flow_m3_s, power.first_x(), power.last_x())).value, 0};
  }
  return power.at(flow_m3_s);
}

/// Flow of the largest Q·H/P up to a flow; of the largest Q·H where no power is known.
double best_efficiency_flow_m3_s(NewCurves const& curves, double runout_m3_s) {
  auto const merit = [&](double flow_m3_s) {
    double const power_w = held(curves.power, flow_m3_s).value;
    return flow_m3_s * curves.head.at(flow_m3_s).value / (power_w > 0 ? power_w : 1);
  };
  constexpr int steps = 200;
  double const step = runout_m3_s / steps;
  int best = 1;
  for (int i = 2; i < steps; ++i) {
    if (merit(i * step) > merit(best * step)) {
      best = i;
    }
  }
  double low = (best - 1) * step;
  double high = (best + 1) * step;
  for (int round = 0; round < 40; ++round) {
    double const third = (high - low) / 3;
    if (merit(low + third) < merit(high - third)) {
      low += third;
    } else {
      high -= third;
    }
  }
  return 0.5 * (low + high);
}

/// The inner leak, 1 at the shut-off head: ∝ √h but for the last hundredth of the head, where it is laminar. Odd.
Sloped leak(double head_share) {
  double const square = head_share * head_share + laminar_leak_head * laminar_leak_head;
  double const root = 1 / std::sqrt(std::sqrt(square));
  return {head_share * root, root * (1 - 0.5 * head_share * head_share / square)};
}

/// Root of a law that rises through [low, high]; bisection, with Newton's step where it stays inside.
/// @param law callable: x → Sloped
template <class Law>
double rising_root(Law const& law, double low, double high) {
  double x = 0.5 * (low + high);
  for (int round = 0; round < 100; ++round) {
    auto const here = law(x);
    (here.value > 0 ? high : low) = x;
    double next = here.slope > 0 ? x - here.value / here.slope : low;
    if (!(next > low && next < high)) {
      next = 0.5 * (low + high);
    }
    double const moved = std::abs(next - x);
    x = next;
    if (moved <= 1e-14 * std::abs(x)) {
      break;
    }
  }
  return x;
}

/// Flow through the stages of a worn pump that delivers a flow, with the slope d(inner)/d(delivered).
Sloped inner_flow_m3_s(MonotoneCurve const& head, double delivered_m3_s, double full_leak_m3_s) {
  if (!(full_leak_m3_s > 0)) {
    return {delivered_m3_s, 1};
  }
  double const shutoff_m = head.at(0).value;
  auto const excess = [&](double inner_m3_s) {
    auto const here = head.at(inner_m3_s);
    auto const part = leak(here.value / shutoff_m);
    return Sloped{inner_m3_s - full_leak_m3_s * part.value - delivered_m3_s,
                  1 - full_leak_m3_s * part.slope * here.slope / shutoff_m};
  };
  double const back_m3_s = full_leak_m3_s * std::abs(leak(head.at(delivered_m3_s).value / shutoff_m).value);
  double const inner_m3_s = rising_root(excess, delivered_m3_s - back_m3_s, delivered_m3_s + back_m3_s);
  return {inner_m3_s, 1 / excess(inner_m3_s).slope};
}

}  // namespace

Pump::Pump(PumpOf<double> const& pump) : curve_speed_rad_s_(pump.curve_speed_rad_s) {
  auto points = scaled(pump);
  make_falling(points);
  extend_to_runout(points);
  auto const curves = through(points);
  double const last_m3_s = points.back().flow_m3_s;
  auto const below_zero = [](MonotoneCurve const& curve) {
    return [&curve](double flow_m3_s) {
      auto const here = curve.at(flow_m3_s);
      return Sloped{-here.value, -here.slope};
    };
  };
  double const new_runout_m3_s =
      curves.head.at(last_m3_s).value < 0 ? rising_root(below_zero(curves.head), 0, last_m3_s) : last_m3_s;
  best_flow_m3_s_ = best_efficiency_flow_m3_s(curves, new_runout_m3_s);

  double const flattest_s_m2 = -least_fall * curves.head.at(0).value / last_m3_s;
  double const full_leak_m3_s = pump.wear * best_flow_m3_s_;
  std::vector<double> flow;
  std::vector<double> head;
  std::vector<double> head_slope;
  std::vector<double> power;
  std::vector<double> power_slope;
  for (int i = 0; i <= grid_pieces; ++i) {
    flow.push_back(last_m3_s * i / grid_pieces);
    auto const inner = inner_flow_m3_s(curves.head, flow.back(), full_leak_m3_s);
    auto const head_here = curves.head.at(inner.value);
    auto const power_here = held(curves.power, inner.value);
    head.push_back(head_here.value);
    head_slope.push_back(std::min(head_here.slope * inner.slope, flattest_s_m2));
    power.push_back(power_here.value);
    power_slope.push_back(power_here.slope * inner.slope);
  }
  head_ = MonotoneCurve(flow, head, head_slope);
  power_ = MonotoneCurve(flow, power, power_slope);
  shutoff_head_m_ = head.front();
  runout_flow_m3_s_ = head.back() < 0 ? rising_root(below_zero(head_), 0, last_m3_s) : last_m3_s;

  double largest_w = 0;
  for (auto const& point : points) {
    largest_w = std::max(largest_w, point.shaft_power_w);
  }
  dry_power_w_ =
      pump.dry_power_fraction * (pump.rated_power_w > 0 ? pump.power_factor * pump.rated_power_w : largest_w);
}

Sloped Pump::head_m(double flow_m3_s, double rotor_speed_rad_s, double wet) const {
  double const ratio = rotor_speed_rad_s / curve_speed_rad_s_;
  double const head_scale = ratio * ratio * wet;
  double const flow_scale = ratio * wet;
  // Beyond its ends the curve is straight, and f·H(Q/f) needs no division there.
  bool const backward = flow_m3_s <= 0;
  if (backward || flow_m3_s >= flow_scale * head_.last_x()) {
    double const end_m3_s = backward ? 0 : head_.last_x();
    auto const end = head_.at(end_m3_s);
    return {head_scale * end.value + ratio * end.slope * (flow_m3_s - flow_scale * end_m3_s), ratio * end.slope};
  }
  auto const at_curve_speed = head_.at(flow_m3_s / flow_scale);
  return {head_scale * at_curve_speed.value, ratio * at_curve_speed.slope};
}

Sloped Pump::torque_n_m(double flow_m3_s, double rotor_speed_rad_s, double wet) const {
  double const ratio = rotor_speed_rad_s / curve_speed_rad_s_;
  double const flow_scale = ratio * wet;
  Sloped power;
  if (flow_m3_s <= 0) {
    power = {power_.at(0).value, 0};
  } else if (flow_m3_s >= flow_scale * power_.last_x()) {
    power = {power_.at(power_.last_x()).value, 0};
  } else {
    power = power_.at(flow_m3_s / flow_scale);
  }
  double const at_curve_speed_w = dry_power_w_ + wet * (power.value - dry_power_w_);
  return {ratio * ratio * at_curve_speed_w / curve_speed_rad_s_,
          (2 * ratio * at_curve_speed_w - power.slope * flow_m3_s) / (curve_speed_rad_s_ * curve_speed_rad_s_)};
}

double Pump::shaft_power_w(double flow_m3_s, double rotor_speed_rad_s, double wet) const {
  return torque_n_m(flow_m3_s, rotor_speed_rad_s, wet).value * rotor_speed_rad_s;
}

double Pump::zero_flow_speed_rad_s(double head_m) const {
  return head_m > 0 ? curve_speed_rad_s_ * std::sqrt(head_m / shutoff_head_m_) : 0;
}

double Pump::flow_at_head_m3_s(double head_m, double rotor_speed_rad_s) const {
  double const ratio = rotor_speed_rad_s / curve_speed_rad_s_;
  if (!(ratio > 0) || head_m >= ratio * ratio * shutoff_head_m_) {
    return 0;
  }
  double const asked_m = head_m / (ratio * ratio);
  auto const end = head_.at(head_.last_x());
  if (asked_m <= end.value) {
    return ratio * (head_.last_x() + (asked_m - end.value) / end.slope);
  }
  auto const shortfall = [&](double flow_m3_s) {
    auto const here = head_.at(flow_m3_s);
    return Sloped{asked_m - here.value, -here.slope};
  };
  return ratio * rising_root(shortfall, 0, head_.last_x());
}

double Pump::speed_for_rad_s(double flow_m3_s, double head_m, double wet) const {
  double const water = std::max(wet, least_wetness);
  // Past run-out the head first falls with speed and rises only from half the speed of the curve's end on.
  double low = flow_m3_s > 0 ? 0.5 * curve_speed_rad_s_ * flow_m3_s / (water * head_.last_x()) : 0;
  auto const excess_m = [&](double speed_rad_s) { return this->head_m(flow_m3_s, speed_rad_s, water).value - head_m; };
  if (excess_m(low) >= 0) {
    return low;
  }
  double high = std::max({2 * low, zero_flow_speed_rad_s(head_m), 1e-3 * curve_speed_rad_s_});
  for (int doubling = 0; doubling < 60 && excess_m(high) < 0; ++doubling) {
    low = high;
    high *= 2;
  }
  for (int round = 0; round < 60 && high - low > 1e-13 * high; ++round) {
    double const middle = 0.5 * (low + high);
    (excess_m(middle) > 0 ? high : low) = middle;
  }
  return 0.5 * (low + high);
}

Sloped wetness(double submergence_m, double least_submergence_m) {
  if (!(submergence_m > 0)) {
    return {0, 0};
  }
  if (submergence_m >= least_submergence_m) {
    return {1, 0};
  }
  double const part = submergence_m / least_submergence_m;
  return {part * part * (3 - 2 * part), 6 * part * (1 - part) / least_submergence_m};
}

double churning_rate_k_s(double shaft_power_w, double water_held_m3) {
  double const held_kg = water_density_kg_m3(20) * water_held_m3;
  return shaft_power_w / (held_kg * water_heat_j_kg_k);
}

}  // namespace wellproof
