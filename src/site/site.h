#pragma once
// A site as a person enters it: well, pump, motor, drive, cable, pipes, tank, supply, sensor, demand, limits. The same
// description serves twice: Site holds what is known (every quantity a range), DrawnSite one possible truth (every
// quantity a number). What is no quantity (a name, a kind of pipe, the points of a curve) is the same in both.
//
// The list of quantities is written once, in site/fields.h.
#include <string>
#include <vector>

#include "quantity/range.h"

namespace wellproof {

/// How the well's inflow was told; the reader decides by what the file holds, best knowledge first.
enum class InflowKnown {
  transmissivity,     // of a pumping test that was worked out
  specific_capacity,  // stated: flow for each length of drawdown, after pumping for so long
  test,               // a driller's test: pumped so much for so long, level then so deep
  yield,              // "makes 6 gpm": inflow with the level at the pump intake
};

/// A straight border of the formation: a stream or lake that holds its level, or rock that gives nothing.
enum class Boundary { none, recharge, no_flow };

template <class Q>
struct WellOf {
  InflowKnown inflow_known = InflowKnown::yield;
  Boundary boundary = Boundary::none;
  Q static_level_depth_m{};  // water at rest below top of casing, in an ordinary season
  Q season_drop_m{};         // how much deeper it stands in the dry season
  Q depth_m{};               // bottom of the well
  Q casing_diameter_m{};     // inside
  Q transmissivity_m2_s{};   // used as inflow_known says; the others are 0
  Q specific_capacity_m2_s{};
  Q test_flow_m3_s{};
  Q test_time_s{};
  Q test_level_depth_m{};
  Q yield_m3_s{};
  Q storativity{};
  Q linear_loss_s_m2{};  // B and C of the well's own loss B·q + C·q²
  Q quadratic_loss_s2_m5{};
  Q fracture_depth_m{};  // where the water comes in; a level below it draws no more. 0: all along
  Q boundary_distance_m{};
  Q water_temperature_c{};
};

/// A point of a pump's curve, as printed: at the curve's own speed.
struct CurvePoint {
  double flow_m3_s = 0;
  double head_m = 0;
  double shaft_power_w = 0;
};

template <class Q>
struct PumpOf {
  std::vector<CurvePoint> curve;  // empty: a typical curve of its class
  bool curve_is_typical = false;
  Q rated_flow_m3_s{};    // class, or the best-efficiency flow of the curve
  Q rated_power_w{};      // shaft power at the largest of the curve, or the motor's
  Q rated_head_m{};       // at rated flow and curve speed
  Q curve_speed_rad_s{};  // rotor speed the curve was measured at
  Q stages{};
  Q setting_depth_m{};  // intake below top of casing
  Q flow_factor{};      // this pump's flow, head and power against its curve (manufacturing tolerance)
  Q head_factor{};
  Q power_factor{};
  Q wear{};                 // inner leakage as a fraction of best-efficiency flow
  Q dry_power_fraction{};   // power with no water, as a fraction of rated power
  Q least_submergence_m{};  // below this much water over the intake it begins to draw air
  Q water_held_m3{};        // inside the pump; what heats up against a shut line
  Q outside_diameter_m{};   // of pump and motor shell
};

template <class Q>
struct MotorOf {
  bool plate_is_typical = false;
  Q power_w{};  // rated shaft power
  Q service_factor{};
  Q voltage_v{};     // line to line
  Q frequency_hz{};  // base
  Q full_load_current_a{};
  Q service_factor_current_a{};
  Q efficiency{};    // at rated power
  Q power_factor{};  // at rated power
  Q speed_rad_s{};   // rotor, at rated power
  Q no_load_current_a{};
  Q locked_rotor_current_a{};
  Q winding_limit_c{};  // of the insulation class
};

template <class Q>
struct DriveOf {
  Q rated_current_a{};
  Q top_frequency_hz{};
  Q efficiency{};
  Q sample_rate_hz{};
  Q rest_step_s{};  // in which it takes the rest before a retry
  Q ambient_c{};
};

template <class Q>
struct CableOf {
  Q conductor_diameter_m{};  // solid equivalent, so that an AWG size reads as what it is
  Q length_m{};              // one way, drive to motor
  Q temperature_c{};
};

template <class Q>
struct SupplyOf {
  Q voltage_v{};  // line to line at the drive
  Q frequency_hz{};
};

/// Where a pipe run lies: in the well, from the well head to the tank, or from the tank to the outlets.
enum class PipePlace { drop, yard, house };

template <class Q>
struct PipeRunOf {
  std::string kind;  // by standard ("sch40_pvc", "sidr_pe", …; docs/site.md lists them)
  std::string size;  // nominal, as written; empty if inside_diameter was given
  PipePlace place = PipePlace::yard;
  Q inside_diameter_m{};
  Q length_m{};
  Q rise_m{};  // + up in the direction of flow; 0 in the drop pipe (the depths tell)
  Q roughness_m{};
  Q minor_loss{};  // sum of K of the fittings in this run
  Q rating_pa{};   // pressure class
};

template <class Q>
struct TankOf {
  Q volume_m3{};            // gas and water together
  Q precharge_pa{};         // gauge, with no water in it
  Q polytropic_exponent{};  // 1 slow … 1.4 fast
  Q rating_pa{};
  Q elevation_m{};  // of the tank's tee above the top of the casing; a drawn site's is the sum of its yard pipes' rises
};

template <class Q>
struct SensorOf {
  Q full_scale_pa{};
  Q gain_error{};  // fraction of reading
  Q zero_error_pa{};
  Q lag_s{};
  Q noise_pa{};  // standard deviation of one sample
  Q resolution_pa{};
};

/// A zone of irrigation: flow at the pressure it was laid out for, and how long it runs.
template <class Q>
struct ZoneOf {
  std::string name;
  Q flow_m3_s{};
  Q pressure_pa{};
  Q time_s{};
};

template <class Q>
struct DemandOf {
  Q outlet_pressure_pa{};  // wanted at the highest outlet
  Q outlet_rise_m{};       // highest outlet above the tank's tee; a drawn site's is the sum of its house pipes' rises
  Q least_draw_m3_s{};     // the smallest draw that must be kept served
  Q peak_draw_m3_s{};      // most that is drawn at once; stated or from fixture units
  Q fixture_units{};
  Q longest_run_s{};     // longest legitimate continuous use
  Q run_after_rest_s{};  // how long the peak is to be had again after a rest
  Q daily_use_m3{};      // in the house, without the zones
  Q leak_m3_s{};         // drips at the target pressure
  std::vector<ZoneOf<Q>> zones;
};

template <class Q>
struct LimitsOf {
  Q fittings_rating_pa{};  // weakest part not listed elsewhere
  Q relief_pa{};           // opening pressure of the relief valve; 0: none
  Q water_loss_m3{};       // what may be lost through a burst before the drive must have stopped
  Q altitude_m{};          // for the atmosphere
};

/// The two ways a drive is told what to do.
enum class ControlWay { sensor, pressure_switch };

template <class Q>
struct SiteOf {
  std::string name;
  ControlWay control = ControlWay::sensor;
  WellOf<Q> well;
  PumpOf<Q> pump;
  MotorOf<Q> motor;
  DriveOf<Q> drive;
  CableOf<Q> cable;
  SupplyOf<Q> supply;
  std::vector<PipeRunOf<Q>> pipes;
  TankOf<Q> tank;
  SensorOf<Q> sensor;
  DemandOf<Q> demand;
  LimitsOf<Q> limits;
};

using Site = SiteOf<Range>;
using DrawnSite = SiteOf<double>;

}  // namespace wellproof
