// What holds for the hydraulic laws whatever the numbers: units, signs, monotony, slopes, affinity, limits.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <cmath>

#include "law/homogeneous.h"
#include "plant/driller_test.h"
#include "plant/outlet.h"
#include "plant/pipe.h"
#include "plant/pump.h"
#include "plant/tank.h"

namespace wellproof {
namespace {

/// Any number between two, evenly.
double between(double low, double high) {
  return low + (high - low) * *rc::gen::inRange(0, 1000001) * 1e-6;
}

Rescaling any_rescaling() {
  auto const factor = [] { return std::exp(between(-2, 2)); };
  return {factor(), factor(), factor(), factor()};
}

constexpr double curve_speed_rad_s = 361;

PumpOf<double> pump_of(double flow_m3_s, double head_m, double power_w, double speed_rad_s, double wear) {
  PumpOf<double> pump;
  pump.curve = {{0, 1.3 * head_m, 0.6 * power_w},
                {0.5 * flow_m3_s, 1.22 * head_m, 0.85 * power_w},
                {flow_m3_s, head_m, power_w},
                {1.4 * flow_m3_s, 0.55 * head_m, 0.98 * power_w}};
  pump.curve_speed_rad_s = speed_rad_s;
  pump.flow_factor = 1;
  pump.head_factor = 1;
  pump.power_factor = 1;
  pump.wear = wear;
  pump.rated_power_w = power_w;
  pump.dry_power_fraction = 0.3;
  return pump;
}

Pump any_pump() {
  return Pump(pump_of(between(2e-4, 3e-3), between(20, 200), between(300, 4000), curve_speed_rad_s, between(0, 0.6)));
}

PipeRunOf<double> run_of(double diameter_m, double length_m, double roughness_m, double minor_loss) {
  PipeRunOf<double> run;
  run.inside_diameter_m = diameter_m;
  run.length_m = length_m;
  run.roughness_m = roughness_m;
  run.minor_loss = minor_loss;
  return run;
}

constexpr double viscosity_m2_s = 1.3e-6;
constexpr double most_flow_m3_s = 3e-3;

Path any_path() {
  return Path({run_of(between(0.02, 0.06), between(1, 200), between(0, 2e-4), between(0, 30)),
               run_of(between(0.02, 0.06), between(1, 200), between(0, 2e-4), between(0, 30))},
              viscosity_m2_s, most_flow_m3_s);
}

/// Departure of a law's slope from its own difference quotient, over the size of the slope.
template <class Law>
double slope_departure(Law const& law, double x, double step) {
  double const slope = law(x).slope;
  double const quotient = (law(x + step).value - law(x - step).value) / (2 * step);
  return std::abs(slope - quotient) / (std::abs(slope) + std::abs(quotient) + 1e-300);
}

RC_GTEST_PROP(PipeLaw, friction_does_not_know_its_units, ()) {
  auto const rescaling = any_rescaling().keeping_gravity();
  std::array<Measured, 5> const arguments{{{between(1e-6, 3e-3), powers::flow},
                                           {between(1, 200), powers::length},
                                           {between(0.015, 0.08), powers::length},
                                           {between(0, 2e-4), powers::length},
                                           {between(6e-7, 1.8e-6), powers::viscosity}}};
  RC_ASSERT(departure(friction_head_m, arguments, powers::length, rescaling) < 1e-9);
}

RC_GTEST_PROP(PipeLaw, the_prepared_path_does_not_know_its_units, ()) {
  auto const rescaling = any_rescaling().keeping_gravity();
  auto const law = [](double flow, double diameter, double length, double roughness, double viscosity, double most) {
    return Path({run_of(diameter, length, roughness, 7)}, viscosity, most).loss_m(flow).value;
  };
  std::array<Measured, 6> const arguments{{{between(-3e-3, 3e-3), powers::flow},
                                           {between(0.02, 0.06), powers::length},
                                           {between(1, 200), powers::length},
                                           {between(0, 2e-4), powers::length},
                                           {between(6e-7, 1.8e-6), powers::viscosity},
                                           {between(1e-3, 1e-2), powers::flow}}};
  // The number of steps is a whole number of something dimensionless, which rounding may tip by one.
  RC_ASSERT(departure(law, arguments, powers::length, rescaling) < 1e-4);
}

RC_GTEST_PROP(PipeLaw, surge_does_not_know_its_units, ()) {
  auto const rescaling = any_rescaling();
  std::array<Measured, 5> const wave{{{between(2e9, 2.3e9), powers::pressure},
                                      {between(990, 1000), powers::density},
                                      {between(0.02, 0.06), powers::length},
                                      {between(0.002, 0.01), powers::length},
                                      {between(8e8, 2e11), powers::pressure}}};
  RC_ASSERT(departure(wave_speed_m_s, wave, powers::velocity, rescaling) < 1e-9);
  std::array<Measured, 3> const surge{{{between(990, 1000), powers::density},
                                       {between(300, 1400), powers::velocity},
                                       {between(-3, 3), powers::velocity}}};
  RC_ASSERT(departure(joukowsky_pa, surge, powers::pressure, rescaling) < 1e-9);
}

RC_GTEST_PROP(PipeLaw, friction_factor_falls_with_reynolds_once_turbulent_and_rises_with_roughness, ()) {
  double const reynolds = std::pow(10, between(3.7, 7.5));
  double const roughness = between(0, 0.04);
  RC_ASSERT(friction_factor(1.1 * reynolds, roughness) <= friction_factor(reynolds, roughness) * (1 + 1e-12));
  RC_ASSERT(friction_factor(reynolds, 1.1 * roughness + 1e-6) > friction_factor(reynolds, roughness));
}

RC_GTEST_PROP(PathLaw, is_odd_and_rises_strictly, ()) {
  auto const path = any_path();
  double const flow_m3_s = between(-1.5 * most_flow_m3_s, 1.5 * most_flow_m3_s);
  RC_ASSERT(path.loss_m(-flow_m3_s).value == -path.loss_m(flow_m3_s).value);
  RC_ASSERT(path.loss_m(flow_m3_s + 1e-6).value > path.loss_m(flow_m3_s).value);
  RC_ASSERT(path.loss_m(flow_m3_s).slope > 0);
}

RC_GTEST_PROP(PathLaw, has_the_slope_of_its_own_values, ()) {
  auto const path = any_path();
  double const flow_m3_s = between(-1.2 * most_flow_m3_s, 1.2 * most_flow_m3_s);
  RC_ASSERT(slope_departure([&](double q) { return path.loss_m(q); }, flow_m3_s, 1e-9) < 1e-3);
}

RC_GTEST_PROP(PathLaw, of_one_run_cut_in_two_is_the_same, ()) {
  double const diameter_m = between(0.02, 0.06);
  double const length_m = between(1, 200);
  double const share = between(0.05, 0.95);
  double const flow_m3_s = between(-most_flow_m3_s, most_flow_m3_s);
  Path const whole({run_of(diameter_m, length_m, 1e-6, 6)}, viscosity_m2_s, most_flow_m3_s);
  Path const cut({run_of(diameter_m, share * length_m, 1e-6, 2), run_of(diameter_m, (1 - share) * length_m, 1e-6, 4)},
                 viscosity_m2_s, most_flow_m3_s);
  double const loss_m = whole.loss_m(flow_m3_s).value;
  RC_ASSERT(std::abs(cut.loss_m(flow_m3_s).value - loss_m) <= 1e-9 * std::abs(loss_m));
}

RC_GTEST_PROP(PumpLaw, head_and_torque_do_not_know_their_units, ()) {
  auto const rescaling = any_rescaling();
  double const wear = between(0, 0.6);
  double const wet = between(0, 1);
  double const best_m3_s = between(2e-4, 3e-3);
  double const head_m = between(20, 200);
  std::array<Measured, 6> const arguments{{{best_m3_s, powers::flow},
                                           {head_m, powers::length},
                                           {between(300, 4000), powers::power},
                                           {between(150, 380), powers::rotation},
                                           {between(-0.5, 2.5) * best_m3_s, powers::flow},
                                           {between(0, 500), powers::rotation}}};
  auto const head = [&](double best, double rated, double power, double speed, double flow, double turning) {
    return Pump(pump_of(best, rated, power, speed, wear)).head_m(flow, turning, wet).value;
  };
  auto const torque = [&](double best, double rated, double power, double speed, double flow, double turning) {
    return Pump(pump_of(best, rated, power, speed, wear)).torque_n_m(flow, turning, wet).value;
  };
  // The flow of best efficiency, to which the leak refers, is the place of a maximum: known to half the digits. A head
  // near the run-out is a small difference, so its departure is measured by the head of the pump.
  double const size_m =
      std::abs(std::apply(head, std::array<double, 6>{arguments[0].value, head_m, arguments[2].value,
                                                      arguments[3].value, arguments[4].value, arguments[5].value}));
  RC_ASSERT(departure(head, arguments, powers::length, rescaling) * size_m < 1e-7 * head_m);
  RC_ASSERT(departure(torque, arguments, powers::torque, rescaling) < 1e-7);
}

RC_GTEST_PROP(PumpLaw, follows_affinity_at_any_wear_and_wetness, ()) {
  auto const pump = any_pump();
  double const wet = between(0, 1);
  double const speed_rad_s = between(50, 450);
  double const ratio = between(0.3, 2);
  double const flow_m3_s = between(-0.5, 1.5) * pump.runout_flow_m3_s();
  double const head_m = pump.head_m(flow_m3_s, speed_rad_s, wet).value;
  double const power_w = pump.shaft_power_w(flow_m3_s, speed_rad_s, wet);
  RC_ASSERT(std::abs(pump.head_m(ratio * flow_m3_s, ratio * speed_rad_s, wet).value - ratio * ratio * head_m) <
            1e-9 * ratio * ratio * (std::abs(head_m) + pump.shutoff_head_m()));
  RC_ASSERT(std::abs(pump.shaft_power_w(ratio * flow_m3_s, ratio * speed_rad_s, wet) / (ratio * ratio * ratio) -
                     power_w) < 1e-9 * power_w);
}

RC_GTEST_PROP(PumpLaw, head_falls_strictly_with_flow, ()) {
  auto const pump = any_pump();
  double const wet = between(0, 1);
  double const speed_rad_s = between(1, 450);
  double const flow_m3_s = between(-1, 2) * pump.runout_flow_m3_s();
  double const more_m3_s = flow_m3_s + 0.002 * pump.runout_flow_m3_s();
  RC_ASSERT(pump.head_m(more_m3_s, speed_rad_s, wet).value < pump.head_m(flow_m3_s, speed_rad_s, wet).value);
  RC_ASSERT(pump.head_m(flow_m3_s, speed_rad_s, wet).slope < 0);
}

RC_GTEST_PROP(PumpLaw, head_rises_with_speed_while_it_pumps, ()) {
  auto const pump = any_pump();
  double const speed_rad_s = between(50, 450);
  double const flow_m3_s = between(0, 1) * pump.runout_flow_m3_s() * speed_rad_s / curve_speed_rad_s;
  RC_ASSERT(pump.head_m(flow_m3_s, 1.01 * speed_rad_s, 1).value > pump.head_m(flow_m3_s, speed_rad_s, 1).value);
}

RC_GTEST_PROP(PumpLaw, has_the_slopes_of_its_own_values, ()) {
  auto const pump = any_pump();
  double const wet = between(0.05, 1);
  double const speed_rad_s = between(100, 450);
  double const flow_m3_s = between(0.01, 0.99) * wet * pump.runout_flow_m3_s() * speed_rad_s / curve_speed_rad_s;
  RC_ASSERT(slope_departure([&](double q) { return pump.head_m(q, speed_rad_s, wet); }, flow_m3_s,
                            1e-6 * pump.runout_flow_m3_s()) < 1e-3);
  auto const torque = [&](double speed) { return pump.torque_n_m(flow_m3_s, speed, wet); };
  double const size = torque(speed_rad_s).value / speed_rad_s;
  double const quotient = (torque(speed_rad_s + 1e-3).value - torque(speed_rad_s - 1e-3).value) / 2e-3;
  RC_ASSERT(std::abs(torque(speed_rad_s).slope - quotient) < 1e-3 * size);
}

RC_GTEST_PROP(PumpLaw, a_worn_pump_never_does_better_than_a_new_one, ()) {
  double const flow_m3_s = between(2e-4, 3e-3);
  double const wear = between(0.01, 0.5);
  Pump const old(pump_of(flow_m3_s, 80, 1000, curve_speed_rad_s, wear));
  Pump const older(pump_of(flow_m3_s, 80, 1000, curve_speed_rad_s, 1.1 * wear));
  double const at_m3_s = between(0, 0.999) * old.runout_flow_m3_s();
  RC_ASSERT(older.head_m(at_m3_s, curve_speed_rad_s, 1).value <=
            old.head_m(at_m3_s, curve_speed_rad_s, 1).value + 1e-6);
}

RC_GTEST_PROP(PumpLaw, goes_smoothly_to_no_head_and_the_dry_loss_as_the_water_goes, ()) {
  auto const pump = any_pump();
  double const speed_rad_s = between(50, 450);
  double const wet = between(1e-9, 1e-6);
  RC_ASSERT(pump.head_m(0, speed_rad_s, wet).value <= 1e-6 * pump.shutoff_head_m() * 2);
  double const flow_m3_s = between(0, 1e-3);
  // The head against a flow has a limit, which is taken continuously, and it is never above none.
  auto const limit = pump.head_m(flow_m3_s, speed_rad_s, 0);
  RC_ASSERT(limit.value <= 0);
  RC_ASSERT(std::abs(pump.head_m(flow_m3_s, speed_rad_s, wet).value - limit.value) < 1e-4 * pump.shutoff_head_m());
  RC_ASSERT(std::abs(pump.shaft_power_w(flow_m3_s, speed_rad_s, wet) / pump.shaft_power_w(0, speed_rad_s, 0) - 1) <
            1e-4);
}

RC_GTEST_PROP(PumpLaw, flow_and_speed_are_found_back, ()) {
  auto const pump = any_pump();
  double const speed_rad_s = between(100, 450);
  double const flow_m3_s = between(0.001, 0.999) * pump.runout_flow_m3_s() * speed_rad_s / curve_speed_rad_s;
  double const head_m = pump.head_m(flow_m3_s, speed_rad_s, 1).value;
  RC_ASSERT(std::abs(pump.head_m(pump.flow_at_head_m3_s(head_m, speed_rad_s), speed_rad_s, 1).value - head_m) <
            1e-9 * pump.shutoff_head_m());
  RC_ASSERT(std::abs(pump.speed_for_rad_s(flow_m3_s, head_m, 1) - speed_rad_s) < 1e-6 * speed_rad_s);
}

RC_GTEST_PROP(PumpLaw, wetness_is_smooth_and_rises_from_none_to_all, ()) {
  double const least_m = between(0.05, 2);
  double const submergence_m = between(0.01, 0.99) * least_m;
  auto const here = wetness(submergence_m, least_m);
  RC_ASSERT(here.value > 0 && here.value < 1);
  RC_ASSERT(slope_departure([&](double s) { return wetness(s, least_m); }, submergence_m, 1e-7) < 1e-5);
  RC_ASSERT(wetness(submergence_m + 0.005 * least_m, least_m).value > here.value);
}

Tank any_tank() {
  return {between(0.005, 0.4), between(1e5, 4e5), between(1, 1.4), between(7e4, 1.03e5)};
}

RC_GTEST_PROP(TankLaw, does_not_know_its_units, ()) {
  double const exponent = between(1, 1.4);
  double const volume_m3 = between(0.005, 0.4);
  std::array<Measured, 4> const arguments{{{volume_m3, powers::volume},
                                           {between(1e5, 4e5), powers::pressure},
                                           {between(7e4, 1.03e5), powers::pressure},
                                           {between(-0.1, 1.1) * volume_m3, powers::volume}}};
  auto const pressure = [&](double volume, double precharge, double atmosphere, double water) {
    return Tank{volume, precharge, exponent, atmosphere}.pressure_pa(water).value;
  };
  RC_ASSERT(departure(pressure, arguments, powers::pressure, any_rescaling()) < 1e-9);
}

RC_GTEST_PROP(TankLaw, rises_with_water_and_has_the_slope_of_its_own_values, ()) {
  auto const tank = any_tank();
  double const water_m3 = between(0.001, 0.99) * tank.volume_m3;
  RC_ASSERT(tank.pressure_pa(water_m3).slope > 0);
  RC_ASSERT(slope_departure([&](double w) { return tank.pressure_pa(w); }, water_m3, 1e-6 * tank.volume_m3) < 1e-5);
}

RC_GTEST_PROP(TankLaw, water_and_pressure_are_each_others_inverse, ()) {
  auto const tank = any_tank();
  double const water_m3 = between(0, 1.2) * tank.volume_m3;
  RC_ASSERT(std::abs(tank.water_m3(tank.pressure_pa(water_m3).value) - water_m3) < 1e-9 * tank.volume_m3);
}

RC_GTEST_PROP(OutletLaw, does_not_know_its_units_above_2_kPa, ()) {
  // The cubic's 2 kPa is a number of pascals, so pressures stay above it on both sides.
  auto const any = any_rescaling();
  auto const pressure_factor = any.of(powers::pressure);
  RC_PRE(pressure_factor > 0.2);
  std::array<Measured, 3> const arguments{{{between(1e-5, 2e-3), powers::flow},
                                           {between(1e5, 5e5), powers::pressure},
                                           {between(1.1e4, 9e5), powers::pressure}}};
  bool const regulated = *rc::gen::arbitrary<bool>();
  auto const law = [&](double nominal, double nominal_pressure, double pressure) {
    return outlet_flow_m3_s({nominal, nominal_pressure, regulated, OutletPlace::house}, 0.7, pressure).value;
  };
  RC_ASSERT(departure(law, arguments, powers::flow, any) < 1e-9);
  std::array<Measured, 3> const hole{
      {{between(0.001, 0.05), powers::length}, {between(100, 9e5), powers::pressure}, {1000, powers::density}}};
  auto const hole_law = [](double diameter, double pressure, double density) {
    return hole_flow_m3_s(diameter, pressure, density, 0.61);
  };
  RC_ASSERT(departure(hole_law, hole, powers::flow, any) < 1e-9);
  std::array<Measured, 3> const relief{{{between(3e5, 9e5), powers::pressure},
                                        {between(1e-4, 3e-3), powers::flow},
                                        {between(2e5, 2e6), powers::pressure}}};
  auto const relief_law = [](double opening, double rated, double pressure) {
    return relief_flow_m3_s(opening, rated, pressure).value;
  };
  RC_ASSERT(departure(relief_law, relief, powers::flow, any) < 1e-6);
}

RC_GTEST_PROP(OutletLaw, never_falls_with_pressure_and_has_the_slope_of_its_own_values, ()) {
  Outlet const outlet{between(1e-5, 2e-3), between(1e5, 5e5), *rc::gen::arbitrary<bool>(), OutletPlace::tee};
  double const opening = between(0.01, 1);
  double const pressure_pa = between(10, 9e5);
  RC_PRE(std::abs(pressure_pa - outlet.nominal_pressure_pa) > 1);
  auto const law = [&](double p) { return outlet_flow_m3_s(outlet, opening, p); };
  RC_ASSERT(law(pressure_pa + 10).value >= law(pressure_pa).value);
  RC_ASSERT(slope_departure(law, pressure_pa, 0.1) < 1e-4);
  double const opening_pa = between(3e5, 8e5);
  auto const relief = [&](double p) { return relief_flow_m3_s(opening_pa, 1e-3, p); };
  RC_ASSERT(relief(pressure_pa + 10).value >= relief(pressure_pa).value);
  double const wide_pa = between(1.01, 3) * opening_pa;
  RC_PRE(std::abs(wide_pa - 1.1 * opening_pa) > 1);
  RC_ASSERT(slope_departure(relief, wide_pa, 0.1) < 1e-4);
}

double tested_m2_s(double flow_m3_s, double time_s, double drawdown_m, double area_m2, double radius_m) {
  return tested_transmissivity_m2_s({.flow_m3_s = flow_m3_s,
                                     .time_s = time_s,
                                     .drawdown_m = drawdown_m,
                                     .storativity = 3e-4,
                                     .well_radius_m = radius_m,
                                     .bore_area_m2 = area_m2});
}

RC_GTEST_PROP(WellLaw, a_test_does_not_know_its_units, ()) {
  std::array<Measured, 5> const arguments{{{between(1e-4, 2e-3), powers::flow},
                                           {between(1800, 86400), powers::duration},
                                           {between(1, 100), powers::length},
                                           {between(0.005, 0.03), powers::area},
                                           {between(0.05, 0.1), powers::length}}};
  RC_ASSERT(departure(tested_m2_s, arguments, powers::capacity, any_rescaling()) < 1e-6);
}

RC_GTEST_PROP(WellLaw, a_longer_test_to_the_same_level_shows_a_better_well, ()) {
  double const flow_m3_s = between(1e-4, 2e-3);
  double const time_s = between(600, 86400);
  double const drawdown_m = between(1, 60);
  double const found_m2_s = tested_m2_s(flow_m3_s, time_s, drawdown_m, 0.018, 0.076);
  RC_ASSERT(tested_m2_s(flow_m3_s, 1.5 * time_s, drawdown_m, 0.018, 0.076) >= found_m2_s * (1 - 1e-9));
  RC_ASSERT(found_m2_s <= tested_m2_s(flow_m3_s, time_s, drawdown_m, 0, 0.076) * (1 + 1e-9));
}

}  // namespace
}  // namespace wellproof
