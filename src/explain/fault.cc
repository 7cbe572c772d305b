#include "explain/fault.h"

#include "explain/fault_makers.h"

namespace wellproof {

std::vector<Fault> const& faults() {
  static std::vector<Fault> const all{
      {"level_fallen", "The water stands deeper",
       "The level at rest has sunk towards the pump, so that a long draw bares the intake and the dry-run guard acts.",
       0.05, "Measure the level at rest. Hang the pump deeper if the well is deep enough, or draw less in dry months.",
       level_fallen, ""},
      {"yield_fallen", "The well gives less",
       "Less comes in than is drawn: the pump empties the casing, stops dry, and finds water again after the rest.",
       0.08,
       "Measure the level while it pumps and after. Rehabilitate the well, store water in a tank, or draw more slowly.",
       yield_fallen, ""},
      {"intake_clogged", "The pump's intake is clogged",
       "Slime or scale closes the screen: little water passes at full speed, and the motor takes too little current.",
       0.03, "Pull the pump and clean the screen; find what grows there.", intake_clogged, ""},
      {"more_demand", "More is drawn than the well gives",
       "A new use (lawn, pool, more people) draws more or longer than well and settings were made for.", 0.06,
       "Ask what is new. Spread the use over the day, or store water; then derive the settings again.", more_demand,
       ""},
      {"pump_worn", "The pump is worn",
       "Sand has opened the clearances: it turns faster for the same water and cannot hold the pressure.", 0.06,
       "Compare flow and pressure at full speed with the curve; replace the pump end.", pump_worn, ""},
      {"pump_dragging", "The pump drags",
       "Sand or a bearing brakes it: the motor takes too much current, or does not turn at all.", 0.03,
       "Do not start it again and again. Pull it; measure the motor's windings before.", pump_dragging, ""},
      {"drop_pipe_hole", "The drop pipe has a hole",
       "Water runs back into the well while it pumps and after: it never rests, or starts again and again.", 0.05,
       "Listen at the casing with the valve at the tank shut; pull the pipe.", drop_pipe_hole, ""},
      {"check_valve_leaks", "The check valve leaks",
       "Water runs back into the well after each run, so that it starts again and again with all taps shut.", 0.04,
       "Shut the valve at the tank: if the pressure before it falls and that behind it stays, it is the check valve.",
       check_valve_leaking, ""},
      {"tank_charge_lost", "The tank has lost its air",
       "With no cushion the pressure jumps at each tap: it starts often, swings, and may stop on high pressure.", 0.10,
       "Power off, drain the tank, measure its air; pump it up, or replace it if the bladder is broken.",
       tank_charge_lost, ""},
      {"leak_in_house", "Water leaks behind the tank",
       "A cistern or a pipe leaks: it starts at night with nobody drawing, or never sleeps.", 0.08,
       "Watch the gauge with the valve behind the tank open and shut; look at the cisterns.", leak_in_house, ""},
      {"line_burst", "A line has burst",
       "Water runs away: the pressure is lost, and the long-run or the dry-run guard stops it.", 0.03,
       "Power off. Walk the line for wet ground; shut the valve and see whether the pressure comes back.", line_burst,
       ""},
      {"valve_shut", "A valve before the tank is shut",
       "The pump turns against a shut line while the house has no pressure.", 0.03,
       "Follow the line from the well to the tank and open what is shut. A pump that ran shut is hot: let it cool.",
       valve_shut, ""},
      {"line_frozen", "The line freezes",
       "Ice shuts the line or the sensor's nipple in the cold hours; by day it thaws.", 0.02,
       "Thaw it without fire, insulate and heat it; look for cracks after.", line_frozen, ""},
      {"volts_low", "The volts are low", "The supply sags under load or in the evening, below what the drive bears.",
       0.04, "Measure volts at the drive while it runs; have the service, its joints and the generator looked at.",
       volts_low, ""},
      {"power_outages", "The power goes away",
       "The utility or a breaker interrupts it now and then; nothing is wrong at the well.", 0.05,
       "Ask the neighbours and look at clocks that blink; nothing to set.", power_outages, ""},
      {"volts_uneven", "The volts at the motor are uneven",
       "A bad splice or joint in one conductor: its current and heat rise, speed is taken away.", 0.02,
       "Measure all three currents running, with a clamp around the wires. Then power off, and all three resistances; "
       "mend the splice.",
       volts_uneven, ""},
      {"cable_thin", "The cable is too thin",
       "Volts are lost on the way down: the motor slips, takes more current and does not reach its speed.", 0.01,
       "Compare gauge and length with a table; replace the cable.", cable_thin, ""},
      {"drive_heated", "The drive gets too hot",
       "Sun, a full cabinet or a fan that stands: the heat sink passes its limit when much is drawn.", 0.03,
       "Shade it, clean fins and fan, give it room.", drive_heated, ""},
      {"sensor_plugged", "The sensor's port is plugged",
       "The drive sees the pressure late: it overshoots, swings, and may stop on high pressure.", 0.03,
       "Shut off and drain, take the sensor out, clean nipple and port.", sensor_plugged, ""},
      {"sensor_drifted", "The sensor reads wrong", "Its zero has drifted: true pressure is not what the drive holds.",
       0.03, "Compare with a good gauge at two pressures; trim it, or replace it.", sensor_drifted, ""},
      {"sensor_wire", "The sensor's wire is bad", "A wet or loose joint breaks the signal for seconds at any hour.",
       0.05, "Power off. Remake the joints, look for chafing and water in the plug.", sensor_wire, ""},
      {"outside_contact", "The outside contact opens",
       "A float, flood or tank contact tells the drive to stop: by right, or because it is bad.", 0.02,
       "Find what is wired there and what it says; bridge it only to test, and watch it then.", contact_says_no, ""},
      {"current_limit_wrong", "The current limit is wrong for the motor",
       "Set too low, it takes speed away at every larger draw and calls a starting motor overloaded.", 0.03,
       "Read the motor's plate; set what the plan says.", current_limit_wrong, "motor.current_limit"},
      {"sleep_speed_low", "The sleep speed is below the zero-flow speed",
       "The pump cannot slow down so far and still hold the pressure: a drip keeps it awake.", 0.04,
       "Set the sleep speed that the plan gives for this depth.", sleep_speed_low, "sleep.speed_below"},
      {"thresholds_wrong", "Thresholds or ceiling are set wrong",
       "With the ceiling low or the thresholds high, an ordinary draw at full speed passes for a dry pump.", 0.05,
       "Set the thresholds and the ceiling that the plan gives.", thresholds_wrong, "dry_run.amps_below"},
      {"rest_short", "The rest is too short", "The well has not recovered when the pump tries again: stops in chains.",
       0.02, "Set the rest that the plan gives for this well.", rest_short, "dry_run.rest"},
      {"regulator_hot", "The regulator is too hot",
       "Gain too high or reset too quick: the pressure swings at even draw, now and then past the limit.", 0.03,
       "Set gain and reset time that the plan gives.", regulator_hot, "regulator.gain"},
  };
  return all;
}

std::size_t fault_place(std::string_view key) {
  std::size_t place = 0;
  while (place < faults().size() && faults()[place].key != key) {
    ++place;
  }
  return place;
}

}  // namespace wellproof
