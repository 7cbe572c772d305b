#pragma once
// The plant's equations written out a second time, from the published laws and the text of the contracts, with none of
// the project's own laws called: of a Plant only plain numbers are read (ohms, volumes, diameters). The pump is made
// up: H = a − b·Q² and P = c + d·Q at the curve's speed, in closed form here, as points there.
#include <array>
#include <cmath>
#include <complex>
#include <cstdint>
#include <vector>

#include <boost/math/tools/roots.hpp>

#include "plant/plant.h"

namespace wellproof::second {

inline constexpr double pi = 3.14159265358979323846;
inline constexpr double gravity_m_s2 = 9.80665;

enum : std::size_t {
  level_depth,
  flow,
  stored,
  empty,
  lagged_pressure,
  inflow_total,
  pumped_total,
  drawn_total,
  winding,
  shell,
  pump_water,
  sink,
  input_energy,
  ring,  // drawdown of the first of the formation's rings, from the well outwards
};
inline constexpr std::size_t rings = 40;
inline constexpr std::size_t count = ring + rings;
using Values = std::array<double, count>;

struct PumpLaw {
  double shutoff_head_m = 0;
  double bend_s2_m5 = 0;
  double idle_power_w = 0;
  double power_by_flow_w_s_m3 = 0;
  double speed_rad_s = 0;
};

inline double root_of(auto const& figure, double low, double high) {
  double const at_low = figure(low);
  double const at_high = figure(high);
  if (at_low == 0 || high <= low) {
    return low;
  }
  if (at_high == 0) {
    return high;
  }
  std::uintmax_t rounds = 100;
  auto const ends = boost::math::tools::toms748_solve(figure, low, high, at_low, at_high,
                                                      boost::math::tools::eps_tolerance<double>(50), rounds);
  return 0.5 * (ends.first + ends.second);
}

/// Head lost in a run: Darcy's law with the factor of S. W. Churchill, "Friction-factor equation spans all fluid-flow
/// regimes", Chemical Engineering 84 (1977), and the fittings' velocity heads.
inline double lost_head_m(PipeRunOf<double> const& run, double flow_m3_s, double viscosity_m2_s) {
  if (!(flow_m3_s > 0)) {
    return 0;
  }
  double const d = run.inside_diameter_m;
  double const v = flow_m3_s / (pi * d * d / 4);
  double const re = v * d / viscosity_m2_s;
  double const a = std::pow(2.457 * std::log(1 / (std::pow(7 / re, 0.9) + 0.27 * run.roughness_m / d)), 16.0);
  double const b = std::pow(37530 / re, 16.0);
  double const f = re < 1 ? 64 / re : 8 * std::pow(std::pow(8 / re, 12.0) + 1 / std::pow(a + b, 1.5), 1.0 / 12);
  return (f * run.length_m / d + run.minor_loss) * v * v / (2 * gravity_m_s2);
}

/// What the motor does at one speed and slip: the T circuit of IEEE 112 in complex numbers.
struct Electric {
  double rotor_speed_rad_s = 0;
  double torque_n_m = 0;
  double current_a = 0;
  double input_power_w = 0;
  double inner_loss_w = 0;  // stator and core
  double outer_loss_w = 0;  // rotor, friction and windage
};

inline Electric electric(Circuit const& c, double cable_ohm, double speed_hz, double volts_v, double slip) {
  using Complex = std::complex<double>;
  double const part = speed_hz / c.base_frequency_hz;
  double const synchronous_rad_s = 2 * pi * speed_hz / c.pole_pairs;
  double const base_rad_s = 2 * pi * c.base_frequency_hz / c.pole_pairs;
  Complex const magnetising =
      1.0 / (1.0 / Complex(0, c.magnetising_reactance_ohm * part) + (c.core_ohm > 0 ? 1 / c.core_ohm : 0.0));
  Complex const rotor(c.rotor_ohm / slip, c.rotor_reactance_ohm * part);
  Complex const gap = magnetising * rotor / (magnetising + rotor);
  Complex const whole = Complex(cable_ohm + c.stator_ohm, c.stator_reactance_ohm * part) + gap;
  Complex const current = volts_v / std::sqrt(3.0) / whole;
  Complex const gap_volts = current * gap;
  double const rotor_square = std::norm(gap_volts / rotor);
  Electric e;
  e.rotor_speed_rad_s = synchronous_rad_s * (1 - slip);
  double const drag_n_m = c.friction_windage_w / (base_rad_s * base_rad_s) * e.rotor_speed_rad_s;
  double const gap_power_w = 3 * rotor_square * c.rotor_ohm / slip;
  e.torque_n_m = gap_power_w / synchronous_rad_s - drag_n_m;
  e.current_a = std::abs(current);
  e.input_power_w = 3 * std::real(volts_v / std::sqrt(3.0) * std::conj(current));
  double const core_w = c.core_ohm > 0 ? 3 * std::norm(gap_volts) / c.core_ohm : 0;
  e.inner_loss_w = 3 * std::norm(current) * c.stator_ohm + core_w;
  e.outer_loss_w = 3 * rotor_square * c.rotor_ohm + drag_n_m * e.rotor_speed_rad_s;
  return e;
}

/// Slip of the most torque: R2 against the rest of the loop, with Thevenin's impedance of what lies before the gap.
inline double breakdown_slip(Circuit const& c, double cable_ohm, double speed_hz) {
  using Complex = std::complex<double>;
  double const part = speed_hz / c.base_frequency_hz;
  Complex const magnetising =
      1.0 / (1.0 / Complex(0, c.magnetising_reactance_ohm * part) + (c.core_ohm > 0 ? 1 / c.core_ohm : 0.0));
  Complex const before(cable_ohm + c.stator_ohm, c.stator_reactance_ohm * part);
  Complex const source = magnetising * before / (magnetising + before) + Complex(0, c.rotor_reactance_ohm * part);
  return std::fmin(0.999999, c.rotor_ohm / std::abs(source));
}

/// What is seen of the plant at an instant besides its state.
struct Seen {
  double flow_m3_s = 0;
  double tee_pressure_pa = 0;
  double house_flow_m3_s = 0;
  double inflow_m3_s = 0;
  double wetness = 1;
  double shaft_power_w = 0;
  double head_m = 0;
  double lost_m = 0;
  double lift_m = 0;
  double filled = 1;
  Electric electric;
};

class Plant2 {
 public:
  Plant2(Plant const& plant, PumpLaw const& pump, double viscosity_m2_s)
      : p_(plant), pump_(pump), viscosity_m2_s_(viscosity_m2_s) {
    for (auto const& run : p_.site.pipes) {
      (run.place == PipePlace::house ? house_ : up_).push_back(run);
    }
    for (auto const& run : up_) {
      inertance_s2_m2_ += run.length_m / (gravity_m_s2 * pi / 4 * run.inside_diameter_m * run.inside_diameter_m);
    }
    ring_width_ = std::log(2 * ring_border_m / p_.site.well.casing_diameter_m) / rings;
  }

  /// Radius at the middle of a ring, by its place from the well.
  double ring_radius_m(double place) const {
    return p_.site.well.casing_diameter_m / 2 * std::exp(ring_width_ * (place + 0.5));
  }
  /// Beyond the last ring the drawdown stays what it was: no run here lasts until it is felt there.
  static constexpr double ring_border_m = 14;
  double border_drawdown_m = 0;

  Inputs inputs;
  bool check_open = false;
  bool line_full = true;

  double pressure_pa(double stored_m3) const {
    auto const& t = p_.site.tank;
    double const elastic_m3 = p_.line_elasticity_m3_pa * t.precharge_pa;
    if (stored_m3 < elastic_m3) {
      return stored_m3 / p_.line_elasticity_m3_pa;
    }
    double const air_pa = 101325 * std::pow(1 - 2.25577e-5 * p_.site.limits.altitude_m, 5.25588);
    double const gas_m3 = t.volume_m3 - (stored_m3 - elastic_m3);
    return (t.precharge_pa + air_pa) * std::pow(t.volume_m3 / gas_m3, t.polytropic_exponent) - air_pa;
  }

  double stored_m3(double at_pa) const {
    return root_of([&](double x_m3) { return pressure_pa(x_m3) - at_pa; }, 0, 0.99 * p_.site.tank.volume_m3);
  }

  Seen see(Values const& y) const {
    auto const& site = p_.site;
    Seen s;
    s.wetness = wet_part(site.pump.setting_depth_m - y[level_depth]);
    s.inflow_m3_s = inputs.inflow_share * ring_flow_m3_s(y);
    s.filled = line_full ? 1 : std::fmin(1, std::fmax(0.05, 1 - y[empty] / p_.line_volume_m3));
    double const rest_m = site.well.static_level_depth_m + site.well.season_drop_m;
    s.lift_m = y[level_depth] + p_.tee_elevation_m * s.filled - rest_m * (1 - s.filled);
    s.flow_m3_s = check_open ? y[flow] : 0;
    if (line_full) {
      s.tee_pressure_pa = pressure_pa(y[stored]);
      s.house_flow_m3_s = house_flow_m3_s(s.tee_pressure_pa);
    }
    for (auto const& run : up_) {
      s.lost_m += s.filled * lost_head_m(run, s.flow_m3_s, viscosity_m2_s_);
    }
    if (inputs.speed_hz > 0) {
      s.electric = motor(s.flow_m3_s, s.wetness);
      s.head_m = head_m(s.flow_m3_s, s.electric.rotor_speed_rad_s, s.wetness);
      s.shaft_power_w = shaft_power_w(s.flow_m3_s, s.electric.rotor_speed_rad_s, s.wetness);
    }
    return s;
  }

  /// The head by which the pump could push open its check valve.
  double opening_head_m(Values const& y) const {
    if (!(inputs.speed_hz > 0)) {
      return -1;
    }
    auto closed = *this;
    closed.check_open = false;
    auto const s = closed.see(y);
    return s.head_m - s.lift_m - s.tee_pressure_pa / p_.weight_n_m3;
  }

  Values rates(Values const& y) const {
    auto const& site = p_.site;
    auto const s = see(y);
    Values d{};
    d[level_depth] = (s.flow_m3_s - s.inflow_m3_s) / p_.well.bore_area_m2;
    d[flow] = check_open ? (s.head_m - s.lost_m - s.lift_m - s.tee_pressure_pa / p_.weight_n_m3) /
                               (inertance_s2_m2_ * s.filled)
                         : 0;
    d[stored] = line_full ? s.flow_m3_s - s.house_flow_m3_s : 0;
    d[empty] = line_full ? 0 : -s.flow_m3_s;
    d[lagged_pressure] = (s.tee_pressure_pa - y[lagged_pressure]) / site.sensor.lag_s;
    d[inflow_total] = s.inflow_m3_s;
    double const t = p_.well.formation.transmissivity_m2_s();
    double inward_m3_s = ring_flow_m3_s(y);
    for (std::size_t i = 0; i < rings; ++i) {
      double const outer_m = i + 1 < rings ? y[ring + i + 1] : border_drawdown_m;
      double const width = i + 1 < rings ? ring_width_ : ring_width_ / 2;
      double const from_outside_m3_s = 2 * pi * t * (y[ring + i] - outer_m) / width;
      double const inner_radius_m = ring_radius_m(static_cast<double>(i) - 0.5);
      double const outer_radius_m = ring_radius_m(static_cast<double>(i) + 0.5);
      double const store_m2 =
          site.well.storativity * pi * (outer_radius_m * outer_radius_m - inner_radius_m * inner_radius_m);
      d[ring + i] = (inward_m3_s - from_outside_m3_s) / store_m2;
      inward_m3_s = from_outside_m3_s;
    }
    d[pumped_total] = s.flow_m3_s;
    d[drawn_total] = s.house_flow_m3_s;

    // Loss of the drive in three parts of its rated loss: fixed, with current, with power.
    double const rated_a = site.drive.rated_current_a;
    double const rated_w = std::sqrt(3.0) * site.motor.voltage_v * rated_a * 0.8;
    double const rated_loss_w = rated_w * (1 - site.drive.efficiency) / site.drive.efficiency;
    double const loss_w =
        inputs.speed_hz > 0
            ? rated_loss_w * (0.4 + 0.3 * s.electric.current_a / rated_a + 0.3 * s.electric.input_power_w / rated_w)
            : 0;
    d[input_energy] = s.electric.input_power_w + loss_w;
    d[sink] = (site.drive.ambient_c + 40 * loss_w / rated_loss_w - y[sink]) / 600;

    // Winding and shell, water past the shell.
    auto const& h = p_.heat;
    double const bore_m = site.well.casing_diameter_m;
    double const body_m = site.pump.outside_diameter_m;
    double const past_m_s = std::fmax(0, s.flow_m3_s) / (pi / 4 * (bore_m * bore_m - body_m * body_m));
    double const still = std::pow(0.35, 3);
    double const to_water_w_k =
        h.shell_to_water_w_k *
        std::pow(still + (1 - still) * std::pow(past_m_s / (0.25 * 0.3048), 1.8), 1.0 / 3);  // joined as cubes
    double const across_w = h.winding_to_shell_w_k * (y[winding] - y[shell]);
    double const water_c = site.well.water_temperature_c;
    d[winding] = (s.electric.inner_loss_w - across_w) / h.winding_j_k;
    d[shell] = (s.electric.outer_loss_w + across_w - to_water_w_k * (y[shell] - water_c)) / h.shell_j_k;
    double const churned_w = std::fmax(0, s.shaft_power_w - p_.weight_n_m3 * s.flow_m3_s * s.head_m);
    d[pump_water] = churned_w / (998.206 * site.pump.water_held_m3 * 4186) -
                    (s.flow_m3_s / site.pump.water_held_m3 + 1.0 / 300) * (y[pump_water] - water_c);
    return d;
  }

 private:
  /// What the formation's innermost ring gives to the well: drawdown in the well less the well's own loss
  /// B·q + C·q² drives it through half a ring.
  double ring_flow_m3_s(Values const& y) const {
    auto const& well = p_.site.well;
    double const down_m =
        y[level_depth] - well.static_level_depth_m - well.season_drop_m - inputs.static_shift_m - y[ring];
    double const linear_s_m2 =
        ring_width_ / 2 / (2 * pi * p_.well.formation.transmissivity_m2_s()) + well.linear_loss_s_m2;
    double const c = well.quadratic_loss_s2_m5;
    double const size_m3_s = (std::sqrt(linear_s_m2 * linear_s_m2 + 4 * c * std::fabs(down_m)) - linear_s_m2) / (2 * c);
    return std::copysign(size_m3_s, down_m);
  }

  /// Part of what the intake takes that is water: 3x² − 2x³ up to the least submergence.
  double wet_part(double over_m) const {
    double const x = std::fmin(1, std::fmax(0, over_m / p_.site.pump.least_submergence_m));
    return x * x * (3 - 2 * x);
  }

  /// The affinity laws, and for a mixture f·H(Q/f).
  double head_m(double flow_m3_s, double speed_rad_s, double wet) const {
    double const n = speed_rad_s / pump_.speed_rad_s;
    double const at_curve_m3_s = std::fmax(0, flow_m3_s) / (n * wet);  // a root is looked for past nothing
    return n * n * wet * (pump_.shutoff_head_m - pump_.bend_s2_m5 * at_curve_m3_s * at_curve_m3_s);
  }
  double shaft_power_w(double flow_m3_s, double speed_rad_s, double wet) const {
    double const n = speed_rad_s / pump_.speed_rad_s;
    double const dry_w = p_.site.pump.dry_power_fraction * p_.site.pump.rated_power_w;
    double const wet_w = pump_.idle_power_w + pump_.power_by_flow_w_s_m3 * std::fmax(0, flow_m3_s) / (n * wet);
    return n * n * n * (dry_w + wet * (wet_w - dry_w));
  }

  Electric motor(double flow_m3_s, double wet) const {
    auto const& m = p_.site.motor;
    double const most_v = 3 / pi * p_.site.supply.voltage_v * inputs.supply_share;
    double const volts_v = std::fmin(most_v, m.voltage_v * std::fmin(1, inputs.speed_hz / m.frequency_hz));
    auto const at = [&](double slip) { return electric(p_.circuit, p_.cable_ohm, inputs.speed_hz, volts_v, slip); };
    auto const excess_n_m = [&](double slip) {
      auto const e = at(slip);
      return e.torque_n_m - shaft_power_w(flow_m3_s, e.rotor_speed_rad_s, wet) / e.rotor_speed_rad_s;
    };
    double const most = breakdown_slip(p_.circuit, p_.cable_ohm, inputs.speed_hz);
    return at(excess_n_m(most) > 0 ? root_of(excess_n_m, 1e-9, most) : 1);
  }

  /// What the open outlets pass together through the house's pipe.
  double house_flow_m3_s(double tee_pa) const {
    auto const leaving_m3_s = [&](double flow_m3_s) {
      double lost_m = p_.site.demand.outlet_rise_m;
      for (auto const& run : house_) {
        lost_m += lost_head_m(run, flow_m3_s, viscosity_m2_s_);
      }
      double const here_pa = std::fmax(0, tee_pa - p_.weight_n_m3 * lost_m);
      auto const& d = p_.site.demand;
      double const by_root = std::sqrt(here_pa / d.outlet_pressure_pa);
      double const least_part = std::fmin(1, std::sqrt(here_pa / (0.5 * d.outlet_pressure_pa)));
      return inputs.openings[outlet::leak] * d.leak_m3_s * by_root +
             inputs.openings[outlet::house] * d.peak_draw_m3_s * by_root +
             inputs.openings[outlet::least] * d.least_draw_m3_s * least_part;
    };
    double const most_m3_s = leaving_m3_s(0);
    return root_of([&](double q_m3_s) { return leaving_m3_s(q_m3_s) - q_m3_s; }, 0, most_m3_s);
  }

  Plant const& p_;
  PumpLaw pump_;
  double viscosity_m2_s_;
  std::vector<PipeRunOf<double>> up_;
  std::vector<PipeRunOf<double>> house_;
  double inertance_s2_m2_ = 0;
  double ring_width_ = 0;  // on the logarithm of the radius
};

}  // namespace wellproof::second
