#include "settings/pressure_switch.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "quantity/customary.h"
#include "quantity/quantity.h"

namespace wellproof {
namespace {

constexpr double usual_drop_pa = 20 * psi_pa;             // common practice, no source
constexpr double largest_drop_pa = 30 * psi_pa;           // the same: as far as common switches go
constexpr double kept_at_cut_in = 0.9;                    // of what is wanted at the highest outlet (the same)
constexpr double share_of_rating = 0.9;                   // that cut-out may reach (the same)
constexpr double least_run_s = 60;                        // pelikan_2006
constexpr double precharge_under_cut_in_pa = 2 * psi_pa;  // pelikan_2006
constexpr double precharge_off_pa = 3 * psi_pa;           // by which a precharge may miss that

/// Tee pressure that leaves a share of what is wanted at the highest outlet under the served peak.
double needed_at_tee_pa(Plant const& plant, double share) {
  double const flow_m3_s = served_peak_m3_s(plant);
  return share * plant.site.demand.outlet_pressure_pa - outlet_pressure_pa(plant, 0, flow_m3_s);
}

/// Drop over which the tank, charged for this cut-in, gives the pump's flow for the least run.
double drop_for_least_run_pa(Plant const& plant, double cut_in_pa) {
  Plant charged = plant;
  charged.tank.precharge_pa = std::max(cut_in_pa - precharge_under_cut_in_pa, 0.0);
  double const asked_m3 = least_run_s * plant.pump.best_flow_m3_s();
  double low_pa = 0;
  double high_pa = 3 * largest_drop_pa;
  for (int round = 0; round < 30; ++round) {
    double const middle_pa = 0.5 * (low_pa + high_pa);
    (tank_gives_m3(charged, cut_in_pa + middle_pa, cut_in_pa) < asked_m3 ? low_pa : high_pa) = middle_pa;
  }
  return high_pa;
}

void charge_tank(Study& study, double cut_in_pa) {
  auto const told = extent(study.plants, [](Plant const& plant) { return plant.site.tank.precharge_pa; });
  double const wanted_pa = cut_in_pa - precharge_under_cut_in_pa;
  if (std::max(std::abs(told.low - wanted_pa), std::abs(told.high - wanted_pa)) > precharge_off_pa) {
    study.caution("precharge", fmt::format("Set the tank's precharge to {} with the line open to the air, 2 psi below "
                                           "cut-in; the site file says {} to {}, and the figures here are for that.",
                                           study.pressure(rounded(wanted_pa, pressure_step_pa(study.units))),
                                           study.pressure(told.low), study.pressure(told.high)));
  }
}

}  // namespace

void derive_switch_pressures(Study& study) {
  auto& settings = study.settings;
  double const step_pa = pressure_step_pa(study.units);
  auto const needs = extent(study.plants, [&](Plant const& plant) {
    return shown_pressure_pa(plant, settings, needed_at_tee_pa(plant, kept_at_cut_in));
  });
  double const cut_in_pa = std::max(rounded_up(needs.high, step_pa), step_pa);
  auto const asks = extent(study.plants, [&](Plant const& plant) { return drop_for_least_run_pa(plant, cut_in_pa); });
  auto const rating = extent(study.plants, [](Plant const& plant) { return weakest_at_tee(plant).pressure_pa; });
  double const wanted_pa = std::clamp(asks.high, usual_drop_pa, largest_drop_pa);
  double const room_pa = share_of_rating * rating.low - cut_in_pa;
  double const drop_pa = std::max(rounded(std::min(wanted_pa, room_pa), step_pa), step_pa);
  settings.pressure_wake_drop_pa = drop_pa;
  settings.pressure_target_pa = cut_in_pa + drop_pa;

  study.because(
      "pressure.target",
      fmt::format("Cut-out: {} above cut-in, as switches come or as the tank asks; at most {:.0f} % of {}, the "
                  "rating of {} (common practice).",
                  study.pressure(drop_pa), 100 * share_of_rating, study.pressure(rating.low),
                  weakest_at_tee(study.plants.front()).part));
  study.because(
      "pressure.wake_drop",
      fmt::format(
          "Cut-in at {}: the highest outlet then keeps {:.0f} % of the {} wanted there at {}, over the draws with "
          "the switch's errors {} to {}. For a run of a minute at {} the tank, charged to 2 psi below cut-in, "
          "asks for a drop of {} to {} over the draws.",
          study.pressure(cut_in_pa), 100 * kept_at_cut_in,
          study.pressure(study.plants.front().site.demand.outlet_pressure_pa),
          study.flow(served_peak_m3_s(study.plants.front())), study.pressure(needs.low), study.pressure(needs.high),
          study.flow(study.plants.front().pump.best_flow_m3_s()), study.pressure(asks.low), study.pressure(asks.high)));
  if (room_pa < usual_drop_pa) {
    study.conflict("pressure.target",
                   fmt::format("{} leaves no room for a cut-out 20 psi above {}.",
                               weakest_at_tee(study.plants.front()).part, study.pressure(cut_in_pa)),
                   "Parts of a higher class, or less pressure at the highest outlet.");
  }
  if (asks.high > drop_pa + step_pa) {
    double const gives_share = drop_pa / asks.high;
    study.conflict("pressure.wake_drop",
                   fmt::format("Over {} the tank gives less than a minute's run in the worst draw; short runs wear the "
                               "motor and the switch.",
                               study.pressure(drop_pa)),
                   fmt::format("A tank about {:.1f} times as large, or a drive with a sensor.", 1 / gives_share));
  }
  charge_tank(study, cut_in_pa);
}

bool is_fixed_speed(Study const& study) {
  auto const& top_hz = study.site.drive.top_frequency_hz;
  return study.logic.two_contact_switch && is_fixed(top_hz) &&
         std::abs(middle(top_hz) - study.plants.front().site.motor.frequency_hz) < 1e-6;
}

void derive_fixed_speed(Study& study) {
  auto& settings = study.settings;
  double const supply_hz = study.plants.front().site.motor.frequency_hz;
  double const bearable_hz = settings.speed_ceiling_hz;
  settings.speed_ceiling_hz = supply_hz;
  settings.speed_floor_hz = supply_hz;
  study.because("speed.ceiling",
                fmt::format("Does not apply as a setting: without a drive the pump turns with its supply, {}.",
                            study.speed(supply_hz)));
  for (auto const* const key : {"speed.floor", "speed.ramp_up", "speed.ramp_down"}) {
    study.because(key, "Does not apply: without a drive there is one speed.");
  }
  if (bearable_hz < supply_hz - 0.25) {
    study.conflict(
        "speed.ceiling",
        fmt::format("It would have to be {} or slower (see what bounds it), and cannot be slowed.",
                    study.speed(bearable_hz)),
        "What the bound names: a relief valve, parts of a higher class, a larger motor or a smaller pump end.");
  }
}

}  // namespace wellproof
