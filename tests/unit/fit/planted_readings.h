#pragma once
// Readings of a plant whose truth is known: what its instruments show, each with an error drawn from what it is said to
// have.
#include <algorithm>
#include <cstdint>
#include <vector>

#include "fit/readings.h"
#include "fit/steady_reading.h"
#include "law/random_site.h"
#include "plant/operating.h"
#include "quantity/inverse_normal.h"

namespace wellproof {

class PlantedReadings {
 public:
  PlantedReadings(Site const& site, Plant const& truth, std::uint64_t seed)
      : site_(site), truth_(truth), random_(seed) {}

  /// A reading with these instruments while the plant stands so.
  void read(Condition condition, Standing const& standing, std::vector<Instrument> const& with, double after_s = 600) {
    SiteReading reading;
    reading.condition = condition;
    reading.after_s = after_s;
    for (auto const instrument : with) {
      reading.values.push_back({instrument, 0, 1, false, {}});
    }
    auto const true_values = shown(truth_, reading, standing, 0);
    for (std::size_t i = 0; i < with.size(); ++i) {
      auto& value = reading.values[i];
      value.sigma = usual_error(with[i], true_values[i], site_) / 1.96;
      value.value = true_values[i] + value.sigma * inverse_normal(random_.between(-0.4999, 0.4999));
    }
    readings_.readings.push_back(reading);
  }

  SiteReadings const& all() const { return readings_; }

 private:
  Site const& site_;
  Plant const& truth_;
  RandomNumbers random_;
  SiteReadings readings_;
};

/// A visit as one makes it: at rest, asleep, against the shut line, with a tap and with many.
/// @return no readings where this plant cannot run so
inline SiteReadings visit(Site const& site, Plant const& truth, std::uint64_t seed) {
  using I = Instrument;
  PlantedReadings planted(site, truth, seed);
  auto const& demand = truth.site.demand;
  double const held_pa = demand.outlet_pressure_pa + truth.weight_n_m3 * std::max(0.0, demand.outlet_rise_m);
  auto bore = bore_at_rest(truth.well);
  pump_evenly(truth.well, bore, demand.peak_draw_m3_s, 600);
  bool const under_water = bore.level_depth_m < truth.site.pump.setting_depth_m - 3;
  bool const runs = under_water && point_for_flow(truth, demand.peak_draw_m3_s, held_pa, bore.level_depth_m).reached;
  if (!runs) {
    return {};
  }
  planted.read(Condition::rest, {}, {I::level, I::volts});
  planted.read(Condition::asleep, {held_pa, 0}, {I::gauge, I::drive_pressure});
  planted.read(Condition::shut, {1.2 * held_pa, 0}, {I::gauge, I::drive_pressure, I::speed, I::current});
  planted.read(Condition::least, {held_pa, demand.least_draw_m3_s}, {I::drive_pressure, I::speed, I::current});
  planted.read(Condition::flow, {held_pa, demand.peak_draw_m3_s},
               {I::gauge, I::drive_pressure, I::speed, I::current, I::flow, I::level});
  return planted.all();
}

}  // namespace wellproof
