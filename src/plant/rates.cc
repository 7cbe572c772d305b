// The right-hand side: all parts at one instant. Each balance stands once, in Rates::of.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "plant/drive.h"
#include "plant/plant.h"
#include "plant/water.h"

namespace wellproof {
namespace {

constexpr double shut_below = 0.005;          // opening under which a valve counts as shut
constexpr double open_valve_loss_factor = 2;  // K of a half-closed gate, set by its opening o as K·(1/o² − 1)

// Water held in a resting pump follows the well's in five minutes: natural convection on both sides of the shell, some
// 150 W/m²K over 0.2 m² against a litre and a half (estimate, no source).
constexpr double pump_water_time_s = 300;
constexpr double drive_rated_power_factor = 0.8;

// A lag shorter than this is as good as none, and would only make the step stiff.
constexpr double least_lag_s = 1e-3;

double square(double x) {
  return x * x;
}

}  // namespace

Rates::Rates(Plant const& plant, Inputs const& inputs)
    : plant_(&plant),
      inflow_(plant.well.inflow({}, plant.well.static_level_depth_m + inputs.static_shift_m, 60, inputs.static_shift_m,
                                inputs.inflow_share)) {
  hold(inputs);
}

void Rates::feed(InflowLine const& line) {
  inflow_ = line;
  known_.reset();
  if (seen_.valid) {
    last_.inflow_m3_s = line.flow_m3_s(seen_.wet_state[0]);
  }
}

void Rates::hold(Inputs const& inputs) {
  house_seen_ = house_seen_ && inputs.openings == inputs_.openings && inputs.house_valve == inputs_.house_valve;
  inputs_ = inputs;
  auto const& site = plant_->site;
  seen_.valid = false;
  running_ = inputs.speed_hz > 0;
  yard_shut_ = inputs.yard_valve < shut_below;
  if (pump_ == nullptr || inputs.trouble != trouble_) {
    take_trouble(inputs.trouble);
  }
  available_v_ = drive_available_v(site.supply.voltage_v * inputs.supply_share);
  if (running_) {
    feed_at(inputs.speed_hz);
  }
  house_open_ = false;
  for (std::size_t i = 0; i < plant_->outlets.size(); ++i) {
    auto const& outlet = plant_->outlets[i];
    house_open_ |= outlet.place == OutletPlace::house && outlet.nominal_flow_m3_s > 0 && inputs.openings[i] > 0;
  }
  house_open_ = house_open_ && inputs.house_valve >= shut_below;
  double const area_m2 = plant_->up.length_m() / (gravity_m_s2 * plant_->up.inertance_s2_m2());
  double const opening = std::max(inputs.yard_valve, shut_below);
  local_loss_s2_m5_ = (open_valve_loss_factor * (1 / square(opening) - 1) + inputs.trouble.intake_loss) /
                      (2 * gravity_m_s2 * square(area_m2));
}

bool Rates::lags() const {
  return lag_s_ > least_lag_s;
}

void Rates::feed_at(double speed_hz) {
  auto const& motor = plant_->site.motor;
  fed_ = FedMotor(plant_->circuit, speed_hz,
                  drive_voltage_v(speed_hz, motor.frequency_hz, motor.voltage_v, available_v_), plant_->cable_ohm);
}

Sloped Rates::tee_pressure_pa(State const& y, Modes modes) {
  auto const& h = hydraulics(y, modes);
  return modes.line_full ? h.pressure : tee_pressure_pa(y[at::stored]);
}

Sloped Rates::tee_pressure_pa(double stored_m3) const {
  return wellproof::tee_pressure_pa(tank_, plant_->line_elasticity_m3_pa, stored_m3);
}

double Rates::drive_loss_w(MotorPoint const& motor) const {
  auto const& drive = plant_->site.drive;
  double const rated_power_w =
      std::numbers::sqrt3 * plant_->site.motor.voltage_v * drive.rated_current_a * drive_rated_power_factor;
  return wellproof::drive_loss_w(motor.input_power_w, motor.current_a, drive.rated_current_a, rated_power_w,
                                 drive.efficiency);
}

MotorPoint const& Rates::motor_now() {
  if (!motor_) {
    motor_ = motor_at(last_.rotor_speed_rad_s);
  }
  return *motor_;
}

double Rates::flushing_1_s(Hydraulics const& h) const {
  return std::max(h.flow_m3_s, 0.0) / plant_->site.pump.water_held_m3 + 1 / pump_water_time_s;
}

double Rates::to_water_w_k(Hydraulics const& h) const {
  return plant_->shell_to_water_w_k.at(std::max(h.flow_m3_s, 0.0) / plant_->cooling_gap_m2).value;
}

State Rates::of(State const& y, Modes modes, Jacobian* jacobian) {
  auto const& h = hydraulics(y, modes);
  if (!known_ || known_->y != y) {
    known_ = {y, rate(h, y, modes)};
  }
  if (jacobian != nullptr) {
    *jacobian = slopes(h, y, modes);
  }
  return known_->rate;
}

State Rates::rate(Hydraulics const& h, State const& y, Modes modes) {
  auto const& site = plant_->site;
  double const drawn_m3_s = h.house.value + h.tee.value;

  State d{};
  double const up_m3_s = h.flow_m3_s - h.back.value;
  d[at::level_depth] = (up_m3_s - h.inflow_m3_s) / plant_->well.bore_area_m2;
  if (column_moves(modes)) {
    d[at::flow] =
        (h.head.value - h.loss.value - h.lift_m - h.pressure.value / plant_->weight_n_m3) / inertance_s2_m2(h);
  }
  if (modes.line_full) {
    d[at::stored] = modes.held ? 0 : up_m3_s - drawn_m3_s;
  } else {
    d[at::empty] = -h.flow_m3_s;
  }
  d[at::inflow_total] = h.inflow_m3_s;
  d[at::pumped_total] = up_m3_s;
  d[at::drawn_total] = drawn_m3_s;

  d[at::lagged_pressure] = lags() ? (h.pressure.value - y[at::lagged_pressure]) / lag_s_ : 0;

  if (modes.followed) {
    d[at::integral] = follow_.ramp_hz_s + follow_.gain_hz_pa * follow_.reset_1_s * followed_error_pa(y, h.pressure);
  }

  MotorPoint motor;
  double shaft_power_w = 0;
  if (running_) {
    motor = motor_now();
    shaft_power_w = pump_->shaft_power_w(std::max(h.flow_m3_s, 0.0), h.rotor_speed_rad_s, h.wet.value);
    double const loss_w = drive_loss_w(motor);
    double const motor_loss_w = motor.stator_loss_w + motor.core_loss_w + motor.rotor_loss_w + motor.friction_windage_w;
    d[at::input_energy] = motor.input_power_w + loss_w;
    d[at::water_energy] = plant_->weight_n_m3 * h.flow_m3_s * h.head.value;
    d[at::pump_loss] = shaft_power_w - d[at::water_energy];
    d[at::motor_loss] = motor_loss_w;
    d[at::cable_loss] = motor.cable_loss_w;
    d[at::drive_loss] = loss_w;
  }

  double const water_c = site.well.water_temperature_c;
  auto const heat = heat_rates(plant_->heat, y[at::winding], y[at::shell], water_c, to_water_w_k(h),
                               motor.stator_loss_w + motor.core_loss_w, motor.rotor_loss_w + motor.friction_windage_w);
  d[at::winding] = heat.winding_k_s;
  d[at::shell] = heat.shell_k_s;

  double const churned_w = std::max(shaft_power_w - d[at::water_energy], 0.0);
  d[at::pump_water] =
      churning_rate_k_s(churned_w, site.pump.water_held_m3) - flushing_1_s(h) * (y[at::pump_water] - water_c);
  double const rated_loss_w = std::numbers::sqrt3 * site.motor.voltage_v * site.drive.rated_current_a *
                              drive_rated_power_factor * (1 / site.drive.efficiency - 1);
  d[at::sink] = (sink_rise_k * d[at::drive_loss] / rated_loss_w -
                 (y[at::sink] - site.drive.ambient_c - trouble_.ambient_rise_k)) /
                sink_time_s;
  return d;
}

Reading Rates::read(State const& y, Modes modes) {
  auto const& h = hydraulics(y, modes);
  Reading r;
  r.speed_hz = h.speed_hz;
  r.flow_m3_s = h.flow_m3_s;
  r.tee_pressure_pa = h.pressure.value;
  r.outlet_pressure_pa = outlet_pressure_pa(h.pressure.value, h.house.value);
  r.house_flow_m3_s = h.house.value;
  r.tee_flow_m3_s = h.tee.value;
  r.inflow_m3_s = h.inflow_m3_s;
  r.wetness = h.wet.value;
  r.pump_head_m = h.head.value;
  double const submergence_m = plant_->site.pump.setting_depth_m - y[at::level_depth];
  double const column_m = modes.line_full ? submergence_m + h.lift_m + h.pressure.value / plant_->weight_n_m3 : 0;
  r.pump_pressure_pa = plant_->weight_n_m3 * std::max(submergence_m + h.head.value, column_m);
  if (running_) {
    r.motor = motor_now();
    r.motor.stalled = h.rotor_speed_rad_s <= 0;
    r.drive_loss_w = drive_loss_w(r.motor);
  }
  return r;
}

bool Rates::stalls(State const& y, Modes modes) {
  return running_ && !modes.held && hydraulics(y, modes).rotor_speed_rad_s <= 0;
}

}  // namespace wellproof
