#pragma once
// The faults by where they sit. How bad each can be is common practice, no source, unless it says otherwise.
#include "explain/fault.h"
#include "quantity/customary.h"

namespace wellproof {

// The well and what it gives.
void level_fallen(Faulty& faulty, Chance& chance);
void yield_fallen(Faulty& faulty, Chance& chance);
void intake_clogged(Faulty& faulty, Chance& chance);
void more_demand(Faulty& faulty, Chance& chance);
// Pump, motor and what feeds them.
void pump_worn(Faulty& faulty, Chance& chance);
void pump_dragging(Faulty& faulty, Chance& chance);
void volts_low(Faulty& faulty, Chance& chance);
void power_outages(Faulty& faulty, Chance& chance);
void volts_uneven(Faulty& faulty, Chance& chance);
void cable_thin(Faulty& faulty, Chance& chance);
void drive_heated(Faulty& faulty, Chance& chance);
// Pipe, valves, tank.
void drop_pipe_hole(Faulty& faulty, Chance& chance);
void check_valve_leaking(Faulty& faulty, Chance& chance);
void tank_charge_lost(Faulty& faulty, Chance& chance);
void leak_in_house(Faulty& faulty, Chance& chance);
void line_burst(Faulty& faulty, Chance& chance);
void valve_shut(Faulty& faulty, Chance& chance);
void line_frozen(Faulty& faulty, Chance& chance);
// Sensor, contact, settings.
void sensor_plugged(Faulty& faulty, Chance& chance);
void sensor_drifted(Faulty& faulty, Chance& chance);
void sensor_wire(Faulty& faulty, Chance& chance);
void contact_says_no(Faulty& faulty, Chance& chance);
void current_limit_wrong(Faulty& faulty, Chance& chance);
void sleep_speed_low(Faulty& faulty, Chance& chance);
void thresholds_wrong(Faulty& faulty, Chance& chance);
void rest_short(Faulty& faulty, Chance& chance);
void regulator_hot(Faulty& faulty, Chance& chance);

inline constexpr double gallon_a_minute_m3_s = 6.30902e-5;

/// Pressure in metres of water from the water at rest to the tee, at the target.
double column_m(Faulty const& faulty);
/// The inflow that the well gives at most, with the water at the intake [m³/s].
double most_inflow_m3_s(Faulty const& faulty);
/// Makes the well give no more than so much.
void hold_inflow_to(Faulty& faulty, double flow_m3_s);

}  // namespace wellproof
