#include "plant/pipe.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "contract/require.h"
#include "plant/water.h"

namespace wellproof {
namespace {

constexpr double laminar_below = 100;  // here Churchill's other terms are under the last digit of 64/Re

double area_m2(double diameter_m) {
  return std::numbers::pi / 4 * diameter_m * diameter_m;
}

double reynolds_number(double flow_m3_s, double diameter_m, double viscosity_m2_s) {
  return std::abs(flow_m3_s) / area_m2(diameter_m) * diameter_m / viscosity_m2_s;
}

/// Head lost for each unit of flow in one run [s/m²]: finite at rest, where the flow is laminar.
double resistance_s_m2(PipeRunOf<double> const& run, double flow_m3_s, double viscosity_m2_s) {
  double const diameter_m = run.inside_diameter_m;
  double const area = area_m2(diameter_m);
  double const velocity_m_s = flow_m3_s / area;
  double const reynolds = reynolds_number(flow_m3_s, diameter_m, viscosity_m2_s);
  // f·v, of which the laminar limit is 64 ν/D.
  double const factor_velocity_m_s = reynolds < laminar_below
                                         ? 64 * viscosity_m2_s / diameter_m
                                         : friction_factor(reynolds, run.roughness_m / diameter_m) * velocity_m_s;
  return (factor_velocity_m_s * run.length_m / diameter_m + run.minor_loss * velocity_m_s) / (2 * gravity_m_s2 * area);
}

}  // namespace

double friction_factor(double reynolds, double relative_roughness) {
  if (reynolds < laminar_below) {
    return 64 / reynolds;
  }
  double const a = std::pow(2.457 * std::log(1 / (std::pow(7 / reynolds, 0.9) + 0.27 * relative_roughness)), 16);
  double const b = std::pow(37530 / reynolds, 16);
  return 8 * std::pow(std::pow(8 / reynolds, 12) + std::pow(a + b, -1.5), 1.0 / 12);
}

double friction_head_m(double flow_m3_s, double length_m, double diameter_m, double roughness_m,
                       double viscosity_m2_s) {
  PipeRunOf<double> run;
  run.inside_diameter_m = diameter_m;
  run.length_m = length_m;
  run.roughness_m = roughness_m;
  return flow_m3_s * resistance_s_m2(run, std::abs(flow_m3_s), viscosity_m2_s);
}

double minor_head_m(double flow_m3_s, double diameter_m, double loss_factor) {
  double const velocity_m_s = flow_m3_s / area_m2(diameter_m);
  return loss_factor * velocity_m_s * std::abs(velocity_m_s) / (2 * gravity_m_s2);
}

double hazen_williams_head_m(double flow_m3_s, double length_m, double diameter_m, double coefficient) {
  // v = 1.318 C R^0.63 S^0.54 in feet and seconds, as it was published; here in metres.
  double const factor = 1.318 * std::pow(0.3048, 0.37);
  double const velocity_m_s = std::abs(flow_m3_s) / area_m2(diameter_m);
  double const gradient = std::pow(velocity_m_s / (factor * coefficient * std::pow(diameter_m / 4, 0.63)), 1 / 0.54);
  return std::copysign(gradient * length_m, flow_m3_s);
}

Path::Path(std::vector<PipeRunOf<double>> const& runs, double viscosity_m2_s, double most_flow_m3_s) {
  require(viscosity_m2_s > 0 && most_flow_m3_s > 0, "a path is prepared for some flow of a viscous fluid");
  double rating_pa = rating_pa_;
  double narrowest_m = std::numeric_limits<double>::infinity();
  for (auto const& run : runs) {
    double const area = area_m2(run.inside_diameter_m);
    inertance_s2_m2_ += run.length_m / (gravity_m_s2 * area);
    volume_m3_ += run.length_m * area;
    rise_m_ += run.rise_m;
    narrowest_m = std::min(narrowest_m, run.inside_diameter_m);
    length_m_ += run.length_m;
    if (run.rating_pa > 0) {
      rating_pa = std::min(rating_pa, run.rating_pa);
    }
  }
  rating_pa_ = rating_pa;
  if (runs.empty()) {
    return;
  }
  // The square root of the flow spreads the steps as the loss bends. It bends most where the narrowest run turns
  // turbulent, at a Reynolds number of some 2300; thirty steps up to there hold 0.1 %.
  double const turning_m3_s = 2300 * viscosity_m2_s * narrowest_m * std::numbers::pi / 4;
  int const pieces =
      static_cast<int>(std::clamp(std::ceil(30 * std::sqrt(most_flow_m3_s / turning_m3_s)), 96.0, 2048.0));
  double const step = std::sqrt(most_flow_m3_s) / pieces;
  auto const resistance = [&](double root_flow) {
    double sum_s_m2 = 0;
    for (auto const& run : runs) {
      sum_s_m2 += resistance_s_m2(run, root_flow * root_flow, viscosity_m2_s);
    }
    return sum_s_m2;
  };
  std::vector<double> root_flow;
  std::vector<double> value;
  std::vector<double> slope;
  for (int i = 0; i <= pieces; ++i) {
    double const at = i * step;
    double const nudge = 1e-4 * step;
    root_flow.push_back(at);
    value.push_back(resistance(at));
    slope.push_back(i == 0 ? 0 : (resistance(at + nudge) - resistance(at - nudge)) / (2 * nudge));
  }
  resistance_by_root_flow_ = MonotoneCurve(root_flow, value, slope);
}

Sloped Path::loss_m(double flow_m3_s) const {
  if (resistance_by_root_flow_.empty()) {
    return {};
  }
  double const root_flow = std::sqrt(std::abs(flow_m3_s));
  auto const resistance = resistance_by_root_flow_.at(root_flow);
  // d(q·R(√q))/dq = R + √q·R'/2
  return {flow_m3_s * resistance.value, resistance.value + 0.5 * root_flow * resistance.slope};
}

double joukowsky_pa(double density_kg_m3, double wave_speed_m_s, double speed_change_m_s) {
  return density_kg_m3 * wave_speed_m_s * speed_change_m_s;
}

double wave_speed_m_s(double bulk_pa, double density_kg_m3, double diameter_m, double wall_m, double young_pa) {
  return std::sqrt(bulk_pa / density_kg_m3 / (1 + bulk_pa * diameter_m / (young_pa * wall_m)));
}

}  // namespace wellproof
