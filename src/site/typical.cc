#include "site/typical.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "quantity/customary.h"

namespace wellproof {
namespace {

constexpr double water_n_m3 = 9.80665 * 999.1;  // at 15 °C

// Shape of the curve over flow / best-efficiency flow: head over head there, shaft power over its largest.
struct Shape {
  double flow;
  double head;
  double power;
};
constexpr std::array<Shape, 9> shape{{{0.0, 1.32, 0.55},
                                      {0.2, 1.305, 0.64},
                                      {0.4, 1.27, 0.735},
                                      {0.6, 1.21, 0.83},
                                      {0.8, 1.12, 0.91},
                                      {1.0, 1.00, 0.97},
                                      {1.2, 0.84, 1.0},
                                      {1.4, 0.62, 0.99},
                                      {1.55, 0.41, 0.95}}};
constexpr double power_at_best = 0.97;

// Two-pole three-phase submersible motors at 230 V; common practice, rounded, no source. Efficiency and power factor
// are such that power, volts and service-factor amps agree.
struct Plate {
  double power_hp;
  double service_factor;
  double service_factor_current_a;
  double efficiency;
};
constexpr std::array<Plate, 10> plates{{{0.5, 1.6, 3, 0.63},
                                        {0.75, 1.5, 4, 0.66},
                                        {1, 1.4, 5, 0.67},
                                        {1.5, 1.3, 6, 0.73},
                                        {2, 1.25, 8.3, 0.72},
                                        {3, 1.15, 11, 0.75},
                                        {5, 1.15, 18, 0.77},
                                        {7.5, 1.15, 27, 0.78},
                                        {10, 1.15, 35.5, 0.79},
                                        {15, 1.15, 53, 0.80}}};
constexpr double plate_voltage_v = 230;
constexpr double root3 = 1.7320508075688772;
/// Power factor at rated load against that at service-factor load.
constexpr double power_factor_at_rated = 0.97;

Plate plate_of(double power_hp) {
  auto const* above = plates.begin();
  while (above != plates.end() && above->power_hp < power_hp) {
    ++above;
  }
  if (above == plates.begin() || above == plates.end()) {
    auto edge = above == plates.begin() ? plates.front() : plates.back();
    edge.service_factor_current_a *= power_hp / edge.power_hp;  // beyond the list in proportion
    return edge;
  }
  auto const& low = *(above - 1);
  double const part = (power_hp - low.power_hp) / (above->power_hp - low.power_hp);
  auto const mixed = [part](double a, double b) { return a + part * (b - a); };
  return {power_hp, mixed(low.service_factor, above->service_factor),
          mixed(low.service_factor_current_a, above->service_factor_current_a),
          mixed(low.efficiency, above->efficiency)};
}

double efficiency_of(CurvePoint const& point) {
  return point.shaft_power_w > 0 ? point.flow_m3_s * point.head_m / point.shaft_power_w : 0;
}

}  // namespace

double typical_pump_efficiency(double flow_m3_s) {
  double const flow_gpm = flow_m3_s / gpm_m3_s;
  return std::clamp(0.45 + 0.20 * std::log(flow_gpm / 5) / std::log(8.0), 0.35, 0.72);
}

double typical_head_m(double flow_m3_s, double most_power_w) {
  return typical_pump_efficiency(flow_m3_s) * power_at_best * most_power_w / (water_n_m3 * flow_m3_s);
}

double typical_most_power_w(double flow_m3_s, double head_m) {
  return water_n_m3 * flow_m3_s * head_m / (typical_pump_efficiency(flow_m3_s) * power_at_best);
}

double typical_stages_head_m(double stages, double speed_rad_s) {
  constexpr double head_of_a_stage_m = 6.3;
  constexpr double at_speed_rad_s = 361.28;  // 3450 rpm
  double const ratio = speed_rad_s / at_speed_rad_s;
  return stages * head_of_a_stage_m * ratio * ratio;
}

std::vector<CurvePoint> typical_curve(double flow_m3_s, double head_m, double most_power_w) {
  std::vector<CurvePoint> curve;
  curve.reserve(shape.size());
  for (auto const& one : shape) {
    curve.push_back({one.flow * flow_m3_s, one.head * head_m, one.power * most_power_w});
  }
  return curve;
}

TypicalPlate typical_plate(double power_w, double voltage_v) {
  auto const at_230 = plate_of(power_w / hp_w);
  double const apparent_va = root3 * plate_voltage_v * at_230.service_factor_current_a;
  double const at_service_factor = power_w * at_230.service_factor / (apparent_va * at_230.efficiency);
  double const power_factor = std::clamp(at_service_factor * power_factor_at_rated, 0.72, 0.86);
  double const to_voltage = plate_voltage_v / voltage_v;
  return {at_230.service_factor,
          at_230.service_factor_current_a * to_voltage,
          power_w / (root3 * voltage_v * at_230.efficiency * power_factor),
          at_230.efficiency,
          power_factor,
          0.042};
}

double typical_motor_power_w(double most_shaft_power_w) {
  for (auto const& plate : plates) {
    if (plate.power_hp * plate.service_factor * hp_w >= most_shaft_power_w) {
      return plate.power_hp * hp_w;
    }
  }
  return most_shaft_power_w / plates.back().service_factor;
}

double best_efficiency_flow_m3_s(std::vector<CurvePoint> const& curve) {
  if (curve.empty()) {
    return 0;
  }
  std::size_t best = 0;
  for (std::size_t i = 1; i < curve.size(); ++i) {
    best = efficiency_of(curve[i]) > efficiency_of(curve[best]) ? i : best;
  }
  if (best == 0 || best + 1 == curve.size()) {
    return curve[best].flow_m3_s;
  }
  auto const& a = curve[best - 1];
  auto const& b = curve[best];
  auto const& c = curve[best + 1];
  double const left = (efficiency_of(b) - efficiency_of(a)) / (b.flow_m3_s - a.flow_m3_s);
  double const right = (efficiency_of(c) - efficiency_of(b)) / (c.flow_m3_s - b.flow_m3_s);
  double const bend = (right - left) / (c.flow_m3_s - a.flow_m3_s);
  if (!(bend < 0)) {
    return b.flow_m3_s;
  }
  double const middle_m3_s = (a.flow_m3_s + b.flow_m3_s) / 2;
  return std::clamp(middle_m3_s - left / (2 * bend), a.flow_m3_s, c.flow_m3_s);
}

double curve_head_m(std::vector<CurvePoint> const& curve, double flow_m3_s) {
  if (curve.empty()) {
    return 0;
  }
  for (std::size_t i = 1; i < curve.size(); ++i) {
    auto const& low = curve[i - 1];
    auto const& high = curve[i];
    if (flow_m3_s <= high.flow_m3_s) {
      double const part = std::max(0.0, (flow_m3_s - low.flow_m3_s) / (high.flow_m3_s - low.flow_m3_s));
      return low.head_m + part * (high.head_m - low.head_m);
    }
  }
  return curve.back().head_m;
}

double most_power_w(std::vector<CurvePoint> const& curve) {
  double most_w = 0;
  for (auto const& point : curve) {
    most_w = std::max(most_w, point.shaft_power_w);
  }
  return most_w;
}

}  // namespace wellproof
