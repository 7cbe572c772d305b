#include "visit/before_power.h"

#include <algorithm>
#include <cmath>

#include "contract/require.h"
#include "plant/operating.h"
#include "quantity/customary.h"
#include "settings/study.h"

namespace wellproof {
namespace {

constexpr double under_cut_in_pa = 2 * psi_pa;  // pelikan_2006
constexpr double share_of_target = 0.7;         // common practice, no source
constexpr double share_of_wake = 0.9;           // the same: below, or the tank is empty before the pump starts
constexpr double relief_share_of_rating = 0.9;  // the same
constexpr double insulation_least_ohm = 5e6;    // ieee_43

}  // namespace

double three_phase_drop_share(double current_a, double conductor_ohm, double voltage_v) {
  return std::sqrt(3.0) * current_a * conductor_ohm / voltage_v;
}

BeforePower before_power(Site const& site, std::vector<Plant> const& plants, Settings const& settings,
                         bool two_contacts, UnitSystem units) {
  require(!plants.empty(), "figures before power are of at least one draw");
  BeforePower found;
  double const wake_pa = settings.pressure_target_pa - settings.pressure_wake_drop_pa;
  double const by_rule_pa = two_contacts
                                ? wake_pa - under_cut_in_pa
                                : std::min(share_of_target * settings.pressure_target_pa, share_of_wake * wake_pa);
  // A switch's rule is a rule for the tank; behind a drive any precharge below the wake pressure does.
  found.precharge_told =
      !two_contacts && is_fixed(site.tank.precharge_pa) && middle(site.tank.precharge_pa) < share_of_wake * wake_pa;
  found.precharge_pa = found.precharge_told ? middle(site.tank.precharge_pa)
                                            : rounded_down(std::max(by_rule_pa, 0.0), pressure_step_pa(units));

  auto weakest = weakest_at_tee(plants.front());
  for (auto const& plant : plants) {
    auto const here = weakest_at_tee(plant);
    weakest = here.pressure_pa < weakest.pressure_pa ? here : weakest;
  }
  found.weakest_pa = weakest.pressure_pa;
  found.weakest_part = weakest.part;
  found.relief_most_pa = rounded_down(relief_share_of_rating * weakest.pressure_pa, pressure_step_pa(units));
  double const relieved_m3_s =
      extent(plants, [&](Plant const& plant) {
        double const speed_hz = std::max(settings.speed_ceiling_hz, plant.site.motor.frequency_hz);
        return point_at_speed(plant, speed_hz, found.relief_most_pa, plant.well.static_level_depth_m).flow_m3_s;
      }).high;
  found.relief_flow_m3_s = relieved_m3_s > 0 ? relieved_m3_s : plants.front().pump.best_flow_m3_s();
  found.relief_told_pa = middle(site.limits.relief_pa);

  for (auto const& plant : plants) {
    double const current_a = plant.site.motor.service_factor_current_a;
    double const share = three_phase_drop_share(current_a, plant.cable_ohm, plant.site.motor.voltage_v);
    if (share > found.cable_drop_share) {
      found.cable_drop_share = share;
      found.cable_current_a = current_a;
    }
  }
  found.insulation_ohm = insulation_least_ohm;
  return found;
}

}  // namespace wellproof
