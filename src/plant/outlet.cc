#include "plant/outlet.h"

#include <cmath>
#include <numbers>

namespace wellproof {
namespace {

constexpr double cubic_below_pa = 2000;

/// √(p/p₀) with its slope; below 2 kPa the odd cubic that meets it there in value and slope, none inwards.
Sloped smooth_root(double pressure_pa, double unit_pa) {
  if (!(pressure_pa > 0)) {
    return {};
  }
  if (pressure_pa >= cubic_below_pa) {
    double const root = std::sqrt(pressure_pa / unit_pa);
    return {root, 0.5 * root / pressure_pa};
  }
  double const root = std::sqrt(cubic_below_pa / unit_pa);
  double const part = pressure_pa / cubic_below_pa;
  return {root * part * (1.25 - 0.25 * part * part), root * (1.25 - 0.75 * part * part) / cubic_below_pa};
}

}  // namespace

Sloped outlet_flow_m3_s(Outlet const& outlet, double opening, double pressure_pa) {
  double const open_flow_m3_s = opening * outlet.nominal_flow_m3_s;
  if (outlet.regulated && pressure_pa >= outlet.nominal_pressure_pa) {
    return {open_flow_m3_s, 0};
  }
  auto const root = smooth_root(pressure_pa, outlet.nominal_pressure_pa);
  return {open_flow_m3_s * root.value, open_flow_m3_s * root.slope};
}

double hole_flow_m3_s(double diameter_m, double pressure_pa, double density_kg_m3, double discharge_coefficient) {
  if (!(pressure_pa > 0)) {
    return 0;
  }
  double const area_m2 = std::numbers::pi / 4 * diameter_m * diameter_m;
  return discharge_coefficient * area_m2 * std::sqrt(2 * pressure_pa / density_kg_m3);
}

Sloped relief_flow_m3_s(double opening_pa, double rated_flow_m3_s, double pressure_pa) {
  if (!(opening_pa > 0) || !(pressure_pa > opening_pa)) {
    return {};
  }
  double const rated_pa = 1.1 * opening_pa;
  if (pressure_pa < rated_pa) {
    double const slope = rated_flow_m3_s / (rated_pa - opening_pa);
    return {slope * (pressure_pa - opening_pa), slope};
  }
  double const flow_m3_s = rated_flow_m3_s * std::sqrt(pressure_pa / rated_pa);
  return {flow_m3_s, 0.5 * flow_m3_s / pressure_pa};
}

}  // namespace wellproof
