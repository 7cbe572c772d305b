// What is worn, broken or out of order, as it shows in the right-hand side.
#include <algorithm>
#include <cmath>
#include <memory>

#include "plant/plant.h"
#include "plant/water.h"

namespace wellproof {
namespace {

// Water runs back as through a hole; below this head the root is bent into a straight line. Where the tee has lost its
// pressure it stops: the column hangs on its own weight while no tap lets air in.
constexpr double back_bend_m = 0.1;
constexpr double back_fade_pa = 1e4;

// Current unbalance is 6 to 10 times that of the volts, and heat grows by 2·u² per cent with u in per cent (NEMA MG 1).
constexpr double current_for_volts_unbalance = 8;
constexpr double heat_for_unbalance_squared = 200;

double square(double x) {
  return x * x;
}

}  // namespace

void Rates::take_trouble(Trouble const& trouble) {
  if (pump_ == nullptr || trouble.wear != trouble_.wear) {
    worn_ = nullptr;
    if (trouble.wear > 0) {
      auto worn = plant_->site.pump;
      worn.wear += trouble.wear;
      worn_ = std::make_shared<Pump const>(worn);
    }
    pump_ = worn_ ? worn_.get() : &plant_->pump;
  }
  tank_ = plant_->tank;
  if (trouble.tank_charge_share != 1) {
    double const atmosphere_pa = tank_.atmosphere_pa_abs;
    tank_.precharge_pa = trouble.tank_charge_share * (tank_.precharge_pa + atmosphere_pa) - atmosphere_pa;
  }
  lag_s_ = plant_->site.sensor.lag_s + trouble.added_lag_s;
  trouble_ = trouble;
  house_seen_ = false;
}

Sloped Rates::back_through_m3_s(double gap_m2, double head_m, double tee_pressure_pa) const {
  if (!(head_m > 0) || !(tee_pressure_pa > 0)) {
    return {};
  }
  double const bent_m = head_m + back_bend_m;
  double const full_m3_s = gap_m2 * std::sqrt(2 * gravity_m_s2 / bent_m) * head_m;
  double const by_head_m2_s = gap_m2 * std::sqrt(2 * gravity_m_s2 / bent_m) * (1 - 0.5 * head_m / bent_m);
  bool const fades = tee_pressure_pa < back_fade_pa;
  double const share = fades ? tee_pressure_pa / back_fade_pa : 1;
  return {share * full_m3_s, share * by_head_m2_s / plant_->weight_n_m3 + (fades ? full_m3_s / back_fade_pa : 0)};
}

// The friction between hole and tee is left out: the hole sees the tee's pressure and the water standing over it.
Sloped Rates::hole_m3_s(double level_depth_m, double tee_pressure_pa) const {
  if (!(trouble_.hole_m2 > 0) || yard_shut_) {
    return {};
  }
  double const outside_m = std::max(0.0, trouble_.hole_depth_m - level_depth_m);
  double const inside_m = tee_pressure_pa / plant_->weight_n_m3 + plant_->tee_elevation_m + trouble_.hole_depth_m;
  return back_through_m3_s(trouble_.hole_m2, inside_m - outside_m, tee_pressure_pa);
}

void Rates::add_leak_past_check(Hydraulics& h) const {
  if (!(trouble_.check_leak_m2 > 0) || yard_shut_) {
    return;
  }
  double const over_m = h.lift_m + h.pressure.value / plant_->weight_n_m3 - h.head.value;
  auto const past = back_through_m3_s(trouble_.check_leak_m2, over_m, h.pressure.value);
  h.back = {h.back.value + past.value, h.back.slope + past.slope};
}

// With uneven volts the extra heat is put into the stator, and the current is that of the line that carries most.
MotorPoint Rates::motor_at(double rotor_speed_rad_s) const {
  auto motor = fed_.at(rotor_speed_rad_s > 0 ? 1 - rotor_speed_rad_s / fed_.synchronous_speed_rad_s() : 1);
  if (trouble_.volts_unbalance > 0) {
    double const loss_w = motor.stator_loss_w + motor.core_loss_w + motor.rotor_loss_w + motor.friction_windage_w;
    double const extra_w = heat_for_unbalance_squared * square(trouble_.volts_unbalance) * loss_w;
    double const more = 1 + current_for_volts_unbalance * trouble_.volts_unbalance;
    if (motor.input_power_w > 0) {
      motor.power_factor *= (1 + extra_w / motor.input_power_w) / more;
    }
    motor.stator_loss_w += extra_w;
    motor.input_power_w += extra_w;
    motor.current_a *= more;
  }
  return motor;
}

}  // namespace wellproof
