// The catalogue: ordinary days first, then what goes wrong.
#include <algorithm>

#include "proof/hazard_makers.h"

namespace wellproof {

std::vector<Hazard> const& hazards() {
  static std::vector<Hazard> const all{
      {"ordinary_morning", "An ordinary morning", "Taps, showers, a washer; then all is shut and it sleeps.",
       ordinary_morning},
      {"peak_at_low_water", "Peak demand at low water and low volts",
       "Everything that is drawn at once, in the dry season, on a weak supply.", peak_at_low_water},
      {"least_draw", "The least draw", "The smallest draw that must be served runs for half an hour.", least_draw},
      {"quiet_house", "A quiet house", "The last tap closes and nothing drips: it sleeps and stays asleep.",
       quiet_house},
      {"quiet_house_with_leak", "A quiet house with a small leak",
       "The last tap closes and something drips: it sleeps all the same.", quiet_house_with_leak},
      {"shut_while_running", "The line shut while running", "The house valve is shut under full flow.",
       shut_while_running},
      {"shut_before_sensor", "The line shut between pump and sensor",
       "The pump turns against a shut valve while the sensor sees pressure fall.", shut_before_sensor},
      {"overdrawn_well", "The well overdrawn", "The well gives a third of what is drawn and the pump draws air.",
       overdrawn_well},
      {"water_lost", "The water lost", "Nothing flows into the well any more.", water_lost},
      {"burst_line", "A burst line", "The line breaks at the tank and the water runs away.", burst_line},
      {"long_irrigation", "A long programme of irrigation", "The longest legitimate run must not be stopped.",
       long_irrigation},
      {"first_start", "First start on an empty line", "All pipe above the water is drained and has to fill.",
       first_start},
      {"supply_sag", "A supply sag and return", "Volts sag, fail and return while water is drawn.", supply_sag},
      {"sensor_failed_low", "The sensor failed low", "The sensor's wire comes off.", sensor_failed_low},
      {"sensor_failed_high", "The sensor failed high", "The sensor's signal goes above its span.", sensor_failed_high},
      {"two_showers_and_zone", "Two showers and a zone at once",
       "The largest zone waters while two people shower; then all is shut and it sleeps.", two_showers_and_zone},
      {"household_fortnight", "Two weeks of a household",
       "An invented family of five lives on; each draw has eight hours of it.", household_fortnight},
      {"summer_fall", "A long fall of the water", "Through a summer the water sinks to the intake; draw by draw.",
       summer_fall},
      {"clogged_intake", "The intake clogs", "Slime closes the screen while water is drawn.", clogged_intake},
      {"valve_partly_closed", "A valve left partly closed", "The valve behind the well head stands three tenths open.",
       valve_partly_closed},
      {"burst_far", "A small burst at the far end", "A hose splits and a third of the peak runs away.", burst_far},
      {"burst_at_well", "A large burst at the well", "The pipe parts at the well head; the water runs back down.",
       burst_at_well},
      {"power_back_on_drained_line", "Power back on a drained line",
       "After days without power the line is empty and a tap stands open.", power_back_on_drained_line},
      {"worn_pump", "A worn pump", "Sand has worn the pump by 15 % more than was thought.", worn_pump},
      {"check_valve_leaks", "A check valve that leaks back", "Water runs back into the well past the valve all night.",
       check_valve_leaks},
      {"tank_lost_charge", "A tank that has lost its charge", "Most of the gas is gone: the tank holds little.",
       tank_lost_charge},
      {"drop_pipe_holed", "A hole in the drop pipe", "Some of what is pumped runs back through a hole.",
       drop_pipe_holed},
      {"uneven_volts", "Uneven volts at the motor", "A bad splice puts 3 % between the motor's volts.", uneven_volts},
      {"hot_day_at_drive", "A hot day at the drive", "The sun on its box makes the air at the drive 15 K hotter.",
       hot_day_at_drive},
      {"generator_feeds", "Fed by a generator", "Its volts sag by a tenth under the load.", generator_feeds},
      {"sensor_drifts", "A sensor that drifts", "Its zero sinks by 1 % of the span, and the pressure rises unseen.",
       sensor_drifts},
      {"sensor_port_plugged", "A plugged sensor port", "The sensor shows the pressure of two minutes ago.",
       sensor_port_plugged},
      {"sensor_noisy", "A noisy sensor", "Its samples scatter by 0.5 % of the span.", sensor_noisy},
      {"contact_opens", "An outside contact opens", "A float switch says no for five minutes, then yes.",
       contact_opens},
  };
  return all;
}

Hazard const* hazard(std::string_view name) {
  auto const& all = hazards();
  auto const found = std::find_if(all.begin(), all.end(), [&](Hazard const& h) { return h.name == name; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace wellproof
