// Pump and motor, and what feeds them.
#include <algorithm>
#include <cmath>

#include "explain/fault_makers.h"
#include "quantity/customary.h"

namespace wellproof {
namespace {

/// The supply falls to a share of its volts for a while, on some hours of the day.
void dips(Faulty& faulty, Chance& chance, int count, double low_share, double usual_share, double least_s,
          double most_s, double from_s, double to_s) {
  for (int i = 0; i < count; ++i) {
    double const at_s = chance.between(from_s, to_s);
    double const lasts_s = chance.by_size(least_s, most_s);
    faulty.of_day.push_back({.time_s = at_s, .act = Act::supply_share, .value = low_share});
    faulty.of_day.push_back(
        {.time_s = std::min(at_s + lasts_s, day_s - 1), .act = Act::supply_share, .value = usual_share});
  }
}

}  // namespace

void pump_worn(Faulty& faulty, Chance& chance) {
  double const wear = chance.between(0.15, 0.6);
  faulty.lasting.push_back({.act = Act::wear, .value = wear});
  faulty.feel(Symptom::sand) = 0.4;
  faulty.feel(Symptom::noisy) = 0.15;
  faulty.severity = {"of the best flow runs back inside the pump the share", wear, Dimension::none};
}

void pump_dragging(Faulty& faulty, Chance& chance) {
  double const more = chance.between(1.4, 3.2);
  auto& pump = faulty.plant.site.pump;
  pump.power_factor *= more;
  pump.dry_power_fraction = std::min(0.9, pump.dry_power_fraction * 2 * more);
  faulty.plant.pump = Pump(pump);
  faulty.feel(Symptom::noisy) = 0.6;
  faulty.feel(Symptom::sand) = 0.5;
  faulty.feel(Symptom::hot) = 0.3;
  faulty.severity = {"the pump asks for so many times its shaft power:", more, Dimension::none};
}

void volts_low(Faulty& faulty, Chance& chance) {
  double const usual_share = chance.between(0.8, 0.93);
  double const low_share = chance.between(0.62, 0.76);
  double const droop = chance.between(0, 0.2);
  faulty.lasting.push_back({.act = Act::supply_share, .value = usual_share});
  faulty.lasting.push_back({.act = Act::supply_droop, .value = droop});
  dips(faulty, chance, 1 + static_cast<int>(chance.one_of(5)), low_share, usual_share, 10, 15 * minute_s, 15 * hour_s,
       22 * hour_s);
  faulty.day_share = chance.between(0.3, 1);
  faulty.severity = {"at rest the supply stands at", usual_share * faulty.plant.site.supply.voltage_v,
                     Dimension::voltage};
}

void power_outages(Faulty& faulty, Chance& chance) {
  int const count = chance.says(0.6) ? 1 : 2 + static_cast<int>(chance.one_of(4));
  dips(faulty, chance, count, 0, 1, 1, 2 * hour_s, 0, day_s - minute_s);
  faulty.day_share = chance.by_size(0.05, 0.5);
  faulty.there_now = false;
  faulty.severity = {"the power is gone on a share of days of", faulty.day_share, Dimension::none};
}

void volts_uneven(Faulty& faulty, Chance& chance) {
  double const unbalance = chance.between(0.03, 0.12);
  faulty.lasting.push_back({.act = Act::volts_unbalance, .value = unbalance});
  faulty.feel(Symptom::hot) = 0.4;
  faulty.feel(Symptom::noisy) = 0.4;
  faulty.severity = {"the volts at the motor differ from their mean by the share", unbalance, Dimension::none};
}

void cable_thin(Faulty& faulty, Chance& chance) {
  // Many wire sizes too thin, or joints that add as much.
  double const times = chance.by_size(5, 40);
  faulty.plant.cable_ohm *= times;
  faulty.feel(Symptom::hot) = 0.4;
  faulty.severity = {"the cable has so many times its resistance:", times, Dimension::none};
}

void drive_heated(Faulty& faulty, Chance& chance) {
  double const rise_k = chance.between(40, 75);
  bool const by_sun = chance.says(0.6);
  if (by_sun) {
    double const from_s = hour_s * chance.between(9, 12);
    faulty.of_day.push_back({.time_s = from_s, .act = Act::ambient_rise, .value = 0.6 * rise_k});
    faulty.of_day.push_back({.time_s = from_s + 2 * hour_s, .act = Act::ambient_rise, .value = rise_k});
    faulty.of_day.push_back({.time_s = from_s + 7 * hour_s, .act = Act::ambient_rise, .value = 0.3 * rise_k});
    faulty.of_day.push_back({.time_s = from_s + 9 * hour_s, .act = Act::ambient_rise, .value = 0});
    faulty.day_share = chance.between(0.3, 1);
  } else {
    faulty.lasting.push_back({.act = Act::ambient_rise, .value = rise_k});
  }
  faulty.feel(Symptom::hot) = 0.5;
  faulty.severity = {"the air at the heat sink is warmer by a difference (in kelvin) of", rise_k, Dimension::none};
}

}  // namespace wellproof
