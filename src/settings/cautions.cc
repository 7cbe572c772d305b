// What whoever acts on the plan has to know of this site, with its figures.
#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "settings/study.h"

namespace wellproof {
namespace {

constexpr double cooling_velocity_m_s = 0.0762;  // 0.25 ft/s past the shell, common practice, no source
constexpr double cooling_from_power_w = 2200;    // about 3 hp: smaller ones bear it in cool water (common practice)
constexpr double small_motor_power_w = 600;      // ¾ hp: these may start three times as often (common practice)
constexpr double starts_a_day = 100;
constexpr double small_motor_starts_a_day = 300;
constexpr double drive_reserve = 1.0;
constexpr double relief_accumulation = 1.1;

void relief_valve(Study& study) {
  double const ceiling_hz = study.settings.speed_ceiling_hz;
  double const base_hz = study.plants.front().site.motor.frequency_hz;
  auto const shut_at = [&](double speed_hz) {
    return extent(study.plants, [&](Plant const& plant) {
      double const raised_pa =
          plant.weight_n_m3 * (plant.well.static_level_depth_m - plant.site.well.static_level_depth_m);
      return shut_point(plant, speed_hz).tee_pressure_pa + raised_pa;
    });
  };
  auto const shut = shut_at(ceiling_hz);
  auto const at_base = shut_at(base_hz);
  auto weakest = weakest_at_tee(study.plants.front());
  for (auto const& plant : study.plants) {
    auto const here = weakest_at_tee(plant);
    weakest = here.pressure_pa < weakest.pressure_pa ? here : weakest;
  }
  auto const rating = extent(study.plants, [](Plant const& plant) { return weakest_at_tee(plant).pressure_pa; });
  auto const relief = extent(study.plants, [](Plant const& plant) { return plant.site.limits.relief_pa; });
  double const most_pa = std::max(shut.high, at_base.high);
  if (most_pa <= rating.low) {
    return;
  }
  bool const fitted = relief.low > 0 && relief.high <= rating.low;
  // A valve passes its rated flow at a pressure above the one at which it opens (a tenth: common practice, no source).
  std::string const opens_at_most = study.pressure(rating.low / relief_accumulation);
  bool const with_reserve = fitted && relief.high * relief_accumulation <= rating.low;
  std::string asks;
  if (fitted) {
    asks = fmt::format("The relief valve at {} must stay fitted and be tried each year.", study.pressure(relief.low));
    if (!with_reserve) {
      asks += fmt::format(" It needs a tenth more than that to pass its flow: one that opens at {} or below is better.",
                          opens_at_most);
    }
  } else {
    asks = fmt::format(
        "A relief valve that opens at {} or below, a tenth under that rating, and passes the pump's whole "
        "flow is a must: a setting is no protection where a person may change it or the sensor may fail.",
        opens_at_most);
  }
  study.caution(
      "relief_valve",
      fmt::format(
          "Against a shut line the pump reaches {} at the ceiling of {} and {} at {}, more than {} may bear ({}). "
          "Head goes with the square of speed: at 80 Hz it is 1.78 times that at 60 Hz. {}",
          study.pressure(shut.high), study.speed(ceiling_hz), study.pressure(at_base.high), study.speed(base_hz),
          weakest.part, study.pressure(rating.low), asks));
}

void run_out(Study& study) {
  double const ceiling_hz = study.settings.speed_ceiling_hz;
  auto const share = extent(study.plants, [&](Plant const& plant) {
    double const scale = ceiling_hz / plant.site.motor.frequency_hz;
    double const flow_m3_s = point_at_speed(plant, ceiling_hz, 0, plant.well.static_level_depth_m).flow_m3_s;
    return flow_m3_s / (plant.pump.best_flow_m3_s() * scale);
  });
  constexpr double usual_share = 1.4;  // common practice, no source
  if (share.high > usual_share) {
    study.caution("upthrust",
                  fmt::format("With the pressure lost at the ceiling the pump passes up to {:.2f} times its "
                              "best-efficiency flow: beyond about {:.1f} its stages lift instead of pressing down. "
                              "Do not leave it pumping into an open line at full speed; a flow control "
                              "at the well head limits it.",
                              share.high, usual_share));
  }
}

void motor_cooling(Study& study) {
  auto const& middle_plant = study.plants.front();
  double const power_w = middle_plant.site.motor.power_w;
  auto const velocity = extent(study.plants, [&](Plant const& plant) {
    double const casing_m = plant.site.well.casing_diameter_m;
    double const shell_m = plant.site.pump.outside_diameter_m;
    double const gap_m2 = std::numbers::pi / 4 * std::max(casing_m * casing_m - shell_m * shell_m, 1e-4);
    return plant.site.demand.peak_draw_m3_s / gap_m2;
  });
  if (velocity.low < cooling_velocity_m_s && power_w >= cooling_from_power_w) {
    double const shell_m = middle_plant.site.pump.outside_diameter_m;
    double const casing_m = middle_plant.site.well.casing_diameter_m;
    double const needed_m3_s =
        cooling_velocity_m_s * std::numbers::pi / 4 * std::max(casing_m * casing_m - shell_m * shell_m, 0.0);
    study.caution(
        "motor_cooling",
        fmt::format(
            "In a casing of {} a shell of {} needs {} to be washed at 0.25 ft/s (0.076 m/s); the peak draw is {}. "
            "A sleeve around the motor mends it.",
            write_quantity(casing_m, Dimension::diameter, study.units),
            write_quantity(shell_m, Dimension::diameter, study.units), study.flow(needed_m3_s),
            study.flow(middle_plant.site.demand.peak_draw_m3_s)));
  }
}

void motor_starts(Study& study) {
  auto const& settings = study.settings;
  double const allowed =
      study.plants.front().site.motor.power_w <= small_motor_power_w ? small_motor_starts_a_day : starts_a_day;
  auto const starts = extent(study.plants, [&](Plant const& plant) {
    double const tee_pa = true_pressure_pa(plant, settings, settings.pressure_target_pa);
    double const leak_m3_s = leak_flow_m3_s(plant, tee_pa - 0.5 * settings.pressure_wake_drop_pa);
    double const water_m3 = tank_gives_m3(plant, tee_pa, tee_pa - settings.pressure_wake_drop_pa);
    double const off_s = water_m3 / std::max(leak_m3_s, 1e-12);
    double const on_s =
        settings.sleep_hold_s + settings.sleep_speed_below_hz / std::max(settings.sleep_ramp_hz_s, 0.01);
    return 86400 / (off_s + on_s);
  });
  if (starts.high > allowed) {
    study.caution(
        "motor_starts",
        fmt::format(
            "Under the leak alone the pump starts {:.0f} to {:.0f} times a day; {:.0f} are what such a motor is "
            "usually allowed (common practice; a drive's soft start is kinder). A larger tank or no leak "
            "lowers it.",
            starts.low, starts.high, allowed));
  }
}

/// The furthest that a plant's circuit at work is from its plate: current, power factor, efficiency and speed at rated
/// power, current at service-factor load.
double misfit_at_work(Plant const& plant) {
  auto const& plate = plant.site.motor;
  FedMotor const fed(plant.circuit, plate.frequency_hz, plate.voltage_v, 0);
  auto const at_power = [&](double shaft_power_w) {
    auto const load = [&](double rotor_speed_rad_s) {
      double const torque_n_m = shaft_power_w / rotor_speed_rad_s;
      return Sloped{torque_n_m, -torque_n_m / rotor_speed_rad_s};
    };
    return fed.at(fed.slip_under(load, usual_slip));
  };
  auto const rated = at_power(plate.power_w);
  auto const service = at_power(plate.power_w * plate.service_factor);
  return std::max({std::abs(rated.current_a / plate.full_load_current_a - 1),
                   std::abs(rated.power_factor / plate.power_factor - 1),
                   std::abs(rated.shaft_power_w / rated.input_power_w / plate.efficiency - 1),
                   std::abs(rated.rotor_speed_rad_s / plate.speed_rad_s - 1),
                   std::abs(service.current_a / plate.service_factor_current_a - 1)});
}

/// At work a circuit says what an honest plate says within its rounding. At standstill the current crowds in deep bars,
/// which the circuit leaves out (plant/motor.h): there only a gross departure tells.
void motor_plate(Study& study) {
  constexpr double large_at_work = 0.05;
  constexpr double large_at_standstill = 0.5;
  auto const at_work = extent(study.plants, misfit_at_work);
  auto const any = extent(study.plants, [](Plant const& plant) { return plant.circuit_misfit; });
  bool const runs_otherwise = at_work.low > large_at_work;
  if (study.site.motor.plate_is_typical || (!runs_otherwise && any.low <= large_at_standstill)) {
    return;
  }
  study.caution(
      "motor_plate",
      fmt::format("The motor's plate contradicts itself: no machine of this kind shows all of its figures, one {}is "
                  "missed by {:.0f} % or more in every draw. Read it again.",
                  runs_otherwise ? "of those at work " : "", 100 * (runs_otherwise ? at_work.low : any.low)));
}

void tank_and_drive(Study& study) {
  auto const& settings = study.settings;
  auto const precharge = extent(study.plants, [](Plant const& plant) { return plant.site.tank.precharge_pa; });
  if (precharge.high - precharge.low > 0.1 * settings.pressure_target_pa) {
    study.caution("precharge",
                  fmt::format("The tank's precharge is known only as {} to {}. Measure it with the line open to the "
                              "air, and set it to about {}.",
                              study.pressure(precharge.low), study.pressure(precharge.high),
                              study.pressure(0.7 * settings.pressure_target_pa)));
  }
  auto const drive_a = extent(study.plants, [](Plant const& plant) { return plant.site.drive.rated_current_a; });
  auto const plate_a =
      extent(study.plants, [](Plant const& plant) { return plant.site.motor.service_factor_current_a; });
  if (drive_a.low < drive_reserve * plate_a.high) {
    study.caution("drive_rating",
                  fmt::format("The drive is rated {}, the motor takes up to {} at its service factor: the drive "
                              "will hold the speed back under full load.",
                              study.current(drive_a.low), study.current(plate_a.high)));
  }
  motor_plate(study);
}

}  // namespace

void add_cautions(Study& study) {
  relief_valve(study);
  run_out(study);
  motor_cooling(study);
  motor_starts(study);
  tank_and_drive(study);
}

}  // namespace wellproof
