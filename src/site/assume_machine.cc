// Motor, pump, drive, cable and supply, as far as a site file leaves them open.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "site/assuming.h"
#include "site/typical.h"

namespace wellproof {

/// Volts and hertz come first: currents and speeds hang on them.
void Assuming::motor_system() {
  if (given("supply.voltage")) {
    double const supply_v = mid("supply.voltage");
    double const usual_v = supply_v < 300 ? 230 : supply_v < 435 ? 400 : 460;
    take("motor.voltage", Fixed{supply_v < 180 ? 230 : usual_v}, "usual plate on this supply");
  }
  take("motor.voltage", Fixed{230}, "the usual three-phase motor behind a drive on a 240-V service");
  double const motor_v = mid("motor.voltage");
  bool const fifty = motor_v > 370 && motor_v < 425;
  take("motor.frequency", Fixed{fifty ? 50.0 : 60.0}, fifty ? "motors for 380 to 420 V are made for 50 Hz" : "usual");
  take("supply.frequency", Fixed{mid("motor.frequency") < 55 ? 50.0 : 60.0}, "that of the motor");
}

void Assuming::pump() {
  auto& p = read_.site.pump;
  double const frequency_hz = mid("motor.frequency");
  double const synchronous_rad_s = two_pi * frequency_hz;
  bool const told = !p.curve.empty();
  take("pump.curve_speed", between(0.95 * synchronous_rad_s, 0.965 * synchronous_rad_s),
       told ? "curves are printed at the speed of a two-pole motor under load" : "two-pole motor under load");
  if (told) {
    auto const best_m3_s = best_efficiency_flow_m3_s(p.curve);
    take("pump.rated_flow", Fixed{best_m3_s}, "best-efficiency flow of the curve");
    take("pump.rated_power", Fixed{most_power_w(p.curve)}, "largest shaft power of the curve");
    take("pump.rated_head", Fixed{curve_head_m(p.curve, mid("pump.rated_flow"))}, "the curve at rated flow");
    take("pump.flow_factor", Normal{1, 0.09}, "ISO 9906:2012 grade 3B: 9 % on flow");
    take("pump.head_factor", Normal{1, 0.07}, "ISO 9906:2012 grade 3B: 7 % on head");
    take("pump.power_factor", Normal{1, 0.09}, "ISO 9906:2012 grade 3B: 9 % on power");
  } else {
    double const flow_m3_s = mid("pump.rated_flow");
    double const motor_w = given("motor.power") ? mid("motor.power") : 0;
    double const service_factor = given("motor.service_factor") || motor_w <= 0
                                      ? middle(read_.site.motor.service_factor)
                                      : typical_plate(motor_w, mid("motor.voltage")).service_factor;
    take("pump.rated_power", between(motor_w, std::max(1.0, service_factor) * motor_w),
         "pump ends are mostly sold with a motor that they load into its service factor");
    double head_m = typical_head_m(flow_m3_s, mid("pump.rated_power"));
    bool const stages_told = given("pump.stages");
    if (stages_told) {
      head_m = std::sqrt(head_m * typical_stages_head_m(mid("pump.stages"), mid("pump.curve_speed")));
    }
    bool const head_told = given("pump.rated_head");
    take("pump.rated_head", Fixed{head_m},
         stages_told ? "between what the power pays for and what the stages give"
                     : fmt::format("what the power pays for at a typical efficiency of {:.2f}",
                                   typical_pump_efficiency(flow_m3_s)));
    p.curve = typical_curve(flow_m3_s, mid("pump.rated_head"), mid("pump.rated_power"));
    p.curve_is_typical = true;
    double const head_spread = head_told ? 0.07 : stages_told ? 0.10 : 0.14;
    take("pump.flow_factor", between(0.88, 1.12), "typical curve of the class; a given one narrows this");
    take("pump.head_factor", between(1 - head_spread, 1 + head_spread),
         "typical curve of the class; head, stages or a given curve narrow this");
    take("pump.power_factor", between(0.88, 1.12), "typical curve of the class; a given one narrows this");
  }
  double const stages = mid("pump.rated_head") / typical_stages_head_m(1, mid("pump.curve_speed"));
  take("pump.stages", between(std::round(std::max(1.0, 0.75 * stages)), std::round(std::max(2.0, 1.3 * stages))),
       "about 6 m of head each");
  double const held_m3 = 0.3e-3 + 0.05e-3 * mid("pump.stages");
  take("pump.water_held", between(0.7 * held_m3, 1.6 * held_m3), "inside the shell, by the number of stages");
}

void Assuming::motor() {
  bool const power_told = given("motor.power");
  take("motor.power", Fixed{typical_motor_power_w(mid("pump.rated_power"))},
       "smallest usual rating whose service-factor power covers the pump");
  auto const plate = typical_plate(mid("motor.power"), mid("motor.voltage"));
  bool const full_told = given("motor.full_load_current");
  bool const most_told = given("motor.service_factor_current");
  bool const efficiency_told = given("motor.efficiency");
  bool const factor_told = given("motor.power_factor");
  read_.site.motor.plate_is_typical = !full_told && !most_told;
  std::string const typical =
      fmt::format("typical plate{}; the motor's own narrows this", power_told ? "" : " of the assumed rating");
  take("motor.service_factor", Fixed{plate.service_factor}, typical);
  double const apparent_w = mid("motor.power") / (root3 * mid("motor.voltage"));
  // Full-load amps are what power, volts, efficiency and power factor make them; what two of the three leave open
  // follows from them.
  double const between_amps =
      plate.service_factor_current_a / plate.full_load_current_a * mid("motor.service_factor") / plate.service_factor;
  if (most_told) {
    auto const& most = range("motor.service_factor_current");
    take("motor.full_load_current", between(0.96 * lowest(most) / between_amps, 1.04 * highest(most) / between_amps),
         "in proportion to the service-factor amps");
  } else if (efficiency_told && factor_told) {
    double const current_a = apparent_w / (mid("motor.efficiency") * mid("motor.power_factor"));
    take("motor.full_load_current", between(0.97 * current_a, 1.03 * current_a),
         "from power, volts, efficiency and power factor");
  }
  take("motor.full_load_current", between(0.9 * plate.full_load_current_a, 1.1 * plate.full_load_current_a), typical);
  double const full_a = mid("motor.full_load_current");
  double const most_a = full_a * between_amps;
  take("motor.service_factor_current",
       full_told ? between(0.95 * most_a, 1.05 * most_a) : between(0.9 * most_a, 1.1 * most_a),
       full_told ? "in proportion to the full-load amps" : typical);
  if (factor_told && !efficiency_told) {
    double const efficiency = std::clamp(apparent_w / (full_a * mid("motor.power_factor")), 0.4, 0.92);
    take("motor.efficiency", between(0.97 * efficiency, 1.03 * efficiency), "from power, volts, amps and power factor");
  }
  take("motor.efficiency", between(plate.efficiency - 0.04, plate.efficiency + 0.04), typical);
  double const factor = std::clamp(apparent_w / (full_a * mid("motor.efficiency")), 0.5, 0.93);
  take("motor.power_factor", between(factor - 0.03, factor + 0.03), "from power, volts, amps and efficiency");
  double const synchronous_rad_s = two_pi * mid("motor.frequency");
  take("motor.speed", between(0.95 * synchronous_rad_s, 0.965 * synchronous_rad_s), "slip of 3.5 to 5 %");
  double const service_a = mid("motor.service_factor_current");
  take("motor.no_load_current", between(0.44 * service_a, 0.55 * service_a),
       "of the service-factor amps; common practice, no source");
  take("motor.locked_rotor_current", between(4 * service_a, 6 * service_a),
       "of the service-factor amps; common practice, no source");
}

void Assuming::electrics() {
  double const service_a = mid("motor.service_factor_current");
  double const motor_v = mid("motor.voltage");
  take("drive.rated_current", between(1.05 * service_a, 1.5 * service_a),
       "a drive must carry the service-factor amps; the next size up is usual");
  double const setting_m = mid("pump.setting");
  take("cable.length", between(setting_m + 20 * foot_m, setting_m + 100 * foot_m),
       "down to the pump, and to the drive");
  constexpr double resistivity_ohm_m = 1.95e-8;  // copper at 50 °C
  constexpr double part_lost = 0.03;
  auto const gauge_m = [](int gauge) { return 0.005 * 0.0254 * std::pow(92.0, (36 - gauge) / 39.0); };
  int gauge = 14;
  for (; gauge > 2; gauge -= 2) {
    double const across_m = gauge_m(gauge);
    double const resistance_ohm = resistivity_ohm_m * mid("cable.length") / (two_pi / 8 * across_m * across_m);
    if (root3 * service_a * resistance_ohm <= part_lost * motor_v) {
      break;
    }
  }
  take("cable.size", about(gauge_m(std::min(gauge + 2, 14)), gauge_m(gauge), gauge_m(gauge - 2)),
       fmt::format("{} AWG keeps the drop within 3 %, the usual rule", gauge));
  if (motor_v < 300) {
    take("supply.voltage", about(220, 240, 254), "ANSI C84.1 range B of a 240-V service");
  } else if (motor_v < 425) {
    take("supply.voltage", about(360, 400, 440), "10 % about 400 V");
  } else {
    double const nominal_v = motor_v < 500 ? 480 : motor_v * 1.043;
    take("supply.voltage", about(0.917 * nominal_v, nominal_v, 1.058 * nominal_v), "ANSI C84.1 range B");
  }
}

}  // namespace wellproof
