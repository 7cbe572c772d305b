#include "settings/common_practice.h"

#include <array>

#include "quantity/customary.h"

namespace wellproof {
namespace {

/// A row of the table: a motor, what it may draw, and how fast it is let move. Common practice, no source.
struct Row {
  double power_hp;
  double service_factor_a;  // three-phase, 230 V
  double ramp_hz_s;
};
constexpr std::array<Row, 8> rows{{
    {0.5, 3, 15},
    {0.75, 4, 15},
    {1, 5, 15},
    {1.5, 6, 12},
    {2, 8.5, 12},
    {3, 11, 10},
    {5, 18, 8},
    {7.5, 27, 8},
}};
constexpr double table_v = 230;

/// The row of the next size up; beyond the table the last, its amps in proportion.
Row row_for(double power_w) {
  double const power_hp = power_w / hp_w;
  for (auto const& row : rows) {
    if (power_hp <= 1.01 * row.power_hp) {
      return row;
    }
  }
  auto row = rows.back();
  row.service_factor_a *= power_hp / row.power_hp;
  row.power_hp = power_hp;
  return row;
}

// Shares of the service-factor amps at which a guard acts, and speeds as they are at 60 Hz. Common practice, no source.
constexpr double closed_share = 0.80;
constexpr double dry_share = 0.60;
// And of the motor's rated input, for a drive that guards by power. Common practice, no source.
constexpr double closed_power_share = 0.65;
constexpr double dry_power_share = 0.50;
constexpr double rated_efficiency = 0.75;
constexpr double nominal_hz = 60;
constexpr double sleep_hz = 45;
constexpr double fill_hz = 45;
constexpr double floor_hz = 30;

}  // namespace

Settings common_practice(Plant const& plant) {
  auto const& motor = plant.site.motor;
  auto const row = row_for(motor.power_w);
  double const amps_a = row.service_factor_a * table_v / motor.voltage_v;
  double const input_w = motor.power_w / rated_efficiency;
  double const speeds = motor.frequency_hz / nominal_hz;
  Settings s;  // each figure: common practice, no source
  s.pressure_target_pa = 50 * psi_pa;
  s.pressure_wake_drop_pa = 5 * psi_pa;
  s.pressure_stop_above_pa = 80 * psi_pa;
  s.sensor_full_scale_pa = plant.site.sensor.full_scale_pa;
  s.sensor_trim_pa = 0;
  s.motor_current_limit_a = amps_a;
  s.speed_floor_hz = floor_hz * speeds;
  s.speed_ceiling_hz = motor.frequency_hz;
  s.speed_ramp_up_hz_s = row.ramp_hz_s;
  s.speed_ramp_down_hz_s = row.ramp_hz_s;
  s.regulator_gain_hz_pa = 0.5 / psi_pa;
  s.regulator_reset_time_s = 3;
  s.sleep_speed_below_hz = sleep_hz * speeds;
  s.sleep_hold_s = 15;
  s.sleep_band_pa = 2 * psi_pa;
  s.sleep_ramp_hz_s = 1;
  s.dry_run_amps_below_a = dry_share * amps_a;
  s.dry_run_power_below_w = dry_power_share * input_w;
  s.dry_run_delay_s = 5;
  s.dry_run_rest_s = 30 * minute_s;
  s.closed_amps_below_a = closed_share * amps_a;
  s.closed_power_below_w = closed_power_share * input_w;
  s.closed_delay_s = 5;
  s.long_run_limit_s = 180 * minute_s;
  s.fill_time_s = 5 * minute_s;
  s.fill_speed_hz = fill_hz * speeds;
  return s;
}

}  // namespace wellproof
