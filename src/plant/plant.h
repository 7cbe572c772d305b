#pragma once
// The plant: one possible truth of a site, its parts prepared and joined. It is constant from here on; what changes
// during a run is the State, what script and drive have set is the Inputs.
//
//   formation → well bore → pump → check valve → drop and yard pipe (yard valve) → tee with tank, sensor, relief valve
//             → (house valve) → house pipe → outlets
//
// Heads are in metres of the well's water. Elevations count from the top of the casing.
#include <array>
#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

#include "plant/curve.h"
#include "plant/heat.h"
#include "plant/motor.h"
#include "plant/outlet.h"
#include "plant/pipe.h"
#include "plant/pump.h"
#include "plant/sensor.h"
#include "plant/tank.h"
#include "plant/well.h"
#include "site/site.h"

namespace wellproof {

/// Outlets every plant has, by place in Plant::outlets; zones follow from first_zone on.
namespace outlet {
inline constexpr std::size_t leak = 0;   // drips while all taps are shut
inline constexpr std::size_t least = 1;  // the smallest draw that must be kept served; regulates its flow
inline constexpr std::size_t house = 2;  // all fixtures together: fully open it takes the peak draw
inline constexpr std::size_t burst = 3;  // a break at the tee
inline constexpr std::size_t first_zone = 4;
}  // namespace outlet

struct Plant {
  DrawnSite site;  // what it was built from
  Well well;
  Pump pump;
  Circuit circuit;
  double circuit_misfit = 0;
  double cable_ohm = 0;
  MotorHeat heat;
  MonotoneCurve shell_to_water_w_k;  // by velocity past the shell [m/s]
  double cooling_gap_m2 = 0;         // between shell and casing
  Path up;                           // drop and yard
  Path house;
  Tank tank;
  std::vector<Outlet> outlets;
  double density_kg_m3 = 0;
  double weight_n_m3 = 0;  // density · gravity: pressure for each metre of head
  double tee_elevation_m = 0;
  double line_elasticity_m3_pa = 0;  // what the pipes take up below the tank's precharge
  double line_volume_m3 = 0;         // of all pipe above the water at rest: what a drained line has to be filled with
  double relief_flow_m3_s = 0;       // rated flow of the relief valve; 0: none
};

Plant build(DrawnSite const& site);

/// What is worn, broken or out of order beyond what the site says; a sound plant has none of it.
struct Trouble {
  double wear = 0;           // inner leakage of the pump on top of the site's, of its best flow (pump.h)
  double check_leak_m2 = 0;  // gap of a check valve that does not close, times its discharge coefficient
  double hole_m2 = 0;        // of the drop pipe, times its discharge coefficient; what leaves runs back into the well
  double hole_depth_m = 0;   // below the top of the casing
  double tank_charge_share = 1;  // of the gas the tank was charged with; the water in it stays
  double intake_loss = 0;        // of a clogged screen: K on the velocity in the column
  double added_lag_s = 0;        // of a sensor whose port is plugged
  double volts_unbalance = 0;    // at the motor: furthest from the mean of the three, as a share of it (NEMA MG 1)
  double ambient_rise_k = 0;     // of the air at the drive
  bool operator==(Trouble const&) const = default;
};

/// What the script and the drive have set; constant over a stretch.
struct Inputs {
  double speed_hz = 0;           // drive's output; 0 off
  double supply_share = 1;       // of nominal volts
  double static_shift_m = 0;     // water at rest deeper than the site's by this
  double inflow_share = 1;       // of what the formation has
  double yard_valve = 1;         // opening between pump and tee; shut below 0.005
  double house_valve = 1;        // opening between tee and outlets
  std::vector<double> openings;  // of the outlets, as many as Plant::outlets
  Trouble trouble{};
};

/// A controller whose speed moves evenly, as the plant sees it:
/// speed = integral + gain·(reference − pressure), d(integral)/dt = ramp + gain·(reference − pressure)·reset,
/// by the pressure that the sensor's element has come to.
struct Follow {
  double gain_hz_pa = 0;
  double reference_pa = 0;
  double reset_1_s = 0;
  double ramp_hz_s = 0;
};

/// Places in the state. The first three move fast and together; they are what the implicit step solves for.
namespace at {
enum : std::size_t {
  level_depth,      // m, water in the well below the top of the casing
  flow,             // m³/s through the pump's column
  stored,           // m³ in tank and stretched pipes
  empty,            // m³ of the line still to be filled; 0 when full
  lagged_pressure,  // Pa, what the sensor's element has come to
  winding,          // °C
  shell,            // °C
  pump_water,       // °C of the water held in the pump
  sink,             // °C of the drive's heat sink
  inflow_total,     // m³ from the formation
  pumped_total,     // m³ through the pump, less what ran back into the well
  drawn_total,      // m³ out of all outlets
  input_energy,     // J taken by the drive
  water_energy,     // J given to the water: ρ·g·Q·H
  pump_loss,        // J shaft work not found in the water
  motor_loss,       // J copper, core, rotor, friction and windage
  cable_loss,       // J
  drive_loss,       // J
  integral,         // Hz, what a controller that is followed has added up
  count
};
}  // namespace at
using State = std::array<double, at::count>;

/// Which laws are in force; flipped by the time loop at crossings.
struct Modes {
  bool check_open = false;  // the pump's check valve lets flow through
  bool line_full = true;
  bool stalled = false;   // the load was more than the motor can turn: it stands until the drive lets go
  bool held = false;      // a controller keeps the tee pressure where it is: flow and store stand still, and the speed
                          // is whatever that takes
  bool followed = false;  // a controller moves the speed evenly (Follow)
  bool operator==(Modes const&) const = default;
};

/// Algebraic values that go with a state: what can be read off the plant.
struct Reading {
  double speed_hz = 0;   // of the drive's output
  double flow_m3_s = 0;  // through the pump
  double tee_pressure_pa = 0;
  double outlet_pressure_pa = 0;  // at the end of the house path
  double house_flow_m3_s = 0;
  double tee_flow_m3_s = 0;  // out at the tee: break, relief valve
  double inflow_m3_s = 0;
  double wetness = 1;
  double pump_head_m = 0;
  double pump_pressure_pa = 0;  // gauge, at the pump's discharge: what the bottom of the drop pipe has to hold
  MotorPoint motor;
  double drive_loss_w = 0;
};

/// What an implicit step has to know of how rates follow the state: the three fast states with each other, the totals
/// with them, and the relaxing states with themselves. Everything else is left out: the step stays of second order
/// whatever is left out, it is only less stable.
struct Jacobian {
  std::array<std::array<double, 3>, 3> fast{};    // level_depth, flow, stored, each with each
  std::array<std::array<double, 3>, 3> totals{};  // inflow, pumped, drawn total with the three fast ones
  std::array<double, 3> empty{};                  // of empty with the fast ones
  double lag_by_lag = 0;
  double lag_by_stored = 0;
  // While a controller is followed.
  double flow_by_lag = 0;
  double flow_by_integral = 0;
  double integral_by_lag = 0;
  double integral_by_stored = 0;
  std::array<std::array<double, 2>, 2> heat{};  // winding and shell
  double pump_water = 0;
  double sink = 0;
};

/// The right-hand side for one stretch: inputs and modes held. Remembers the last slip and house flow as starting
/// guesses; results do not depend on them beyond 1e-9 of their size.
class Rates {
 public:
  Rates(Plant const& plant, Inputs const& inputs);

  /// New inputs for the next stretch.
  void hold(Inputs const& inputs);
  /// The formation's line from now on; at first that of a formation at rest over a minute.
  void feed(InflowLine const& line);

  /// How the speed moves while a controller is followed.
  void follow(Follow const& follow);

  /// dy/dt in these modes. jacobian may be null.
  State of(State const& y, Modes modes, Jacobian* jacobian = nullptr);
  /// The algebraic values at a state.
  Reading read(State const& y, Modes modes);

  /// > 0 where the pump's head at no flow is more than the column asks for: the check valve would open [m].
  double opening_head_m(State const& y, Modes modes);

  /// Gauge pressure at the tee, and its slope by stored water, with the tank as it is now.
  Sloped tee_pressure_pa(double stored_m3) const;
  Sloped tee_pressure_pa(State const& y, Modes modes);
  Inputs const& inputs() const { return inputs_; }
  bool yard_shut() const { return yard_shut_; }
  /// Whether the load is more than the fed motor can turn.
  bool stalls(State const& y, Modes modes);

 private:
  /// What the water does at one instant.
  struct Hydraulics {
    double flow_m3_s = 0;
    Sloped wet;       // by submergence
    Sloped pressure;  // by stored water
    Sloped house;     // by tee pressure
    Sloped tee;       // by tee pressure
    Sloped loss;      // by flow
    Sloped head;      // by flow
    Sloped back;      // into the well, past a check valve or through a hole; by tee pressure
    double lift_m = 0;
    double filled = 1;
    double speed_hz = 0;  // of the drive's output
    double rotor_speed_rad_s = 0;
    double inflow_m3_s = 0;
  };

  Hydraulics const& hydraulics(State const& y, Modes modes);
  State rate(Hydraulics const& h, State const& y, Modes modes);
  Jacobian slopes(Hydraulics const& h, State const& y, Modes modes) const;
  MotorPoint const& motor_now();
  bool column_moves(Modes modes) const { return modes.check_open && !yard_shut_ && !modes.held; }
  double inertance_s2_m2(Hydraulics const& h) const { return plant_->up.inertance_s2_m2() * h.filled; }
  double flushing_1_s(Hydraulics const& h) const;
  double to_water_w_k(Hydraulics const& h) const;
  void take_trouble(Trouble const& trouble);
  Sloped back_through_m3_s(double gap_m2, double head_m, double tee_pressure_pa) const;
  void add_leak_past_check(Hydraulics& h) const;
  Sloped hole_m3_s(double level_depth_m, double tee_pressure_pa) const;
  MotorPoint motor_at(double rotor_speed_rad_s) const;
  Sloped house_flow_m3_s(double tee_pressure_pa);
  Sloped solve_house_flow_m3_s(double tee_pressure_pa);
  double outlet_pressure_pa(double tee_pressure_pa, double flow_m3_s) const;
  Sloped tee_outflow_m3_s(double tee_pressure_pa) const;
  double lift_m(State const& y, Modes modes) const;
  double filled_share(State const& y, Modes modes) const;
  double rotor_speed_rad_s(double flow_m3_s, double wetness_share);
  void feed_at(double speed_hz);
  bool lags() const;
  double followed_error_pa(State const& y, Sloped pressure) const;
  double followed_speed_hz(State const& y, Sloped pressure) const;
  void add_following(Jacobian& j, Modes modes, double per_inertance_m2_s2) const;
  void feed_for(double rotor_speed_rad_s, double flow_m3_s, double wetness_share);
  double drive_loss_w(MotorPoint const& motor) const;

  Plant const* plant_;
  Inputs inputs_;
  Follow follow_;
  FedMotor fed_;
  InflowLine inflow_;
  double available_v_ = 0;
  double held_speed_hz_ = 0;
  bool running_ = false;
  bool yard_shut_ = false;
  bool house_open_ = false;
  double local_loss_s2_m5_ = 0;  // of the yard valve and a clogged intake: head for each flow squared
  double lag_s_ = 0;
  Trouble trouble_;
  Tank tank_;
  Pump const* pump_ = nullptr;        // the plant's, or
  std::shared_ptr<Pump const> worn_;  // one with more wear
  double slip_guess_ = usual_slip;

  // The instant worked out last: the end of a step is read off, and is the start of the next.
  struct Seen {
    std::array<double, 6> wet_state{};  // level, flow, stored, empty, and what a followed speed goes by
    Modes modes;
    bool valid = false;
  };
  Seen seen_;
  Hydraulics last_;
  std::optional<MotorPoint> motor_;  // of the same instant, once asked for
  struct Known {
    State y{};
    State rate{};
  };
  std::optional<Known> known_;
  double house_pressure_pa_ = 0;
  Sloped house_flow_;
  bool house_seen_ = false;
};

/// Gauge pressure at the tee for stored water, and its slope; and back.
Sloped tee_pressure_pa(Plant const& plant, double stored_m3);
Sloped tee_pressure_pa(Tank const& tank, double line_elasticity_m3_pa, double stored_m3);
double stored_m3(Plant const& plant, double tee_pressure_pa);

}  // namespace wellproof
