#include "site/cross_checks.h"

#include <fmt/format.h>

#include <cmath>

#include "quantity/quantity.h"

namespace wellproof {
namespace {

constexpr double water_pa_m = 9790;
constexpr double root3 = 1.7320508075688772;
constexpr double plate_tolerance = 0.15;
constexpr double length_tolerance = 0.10;
constexpr double most_rise_m = 100;

std::string shown(double value, Dimension dimension) {
  return write_quantity(value, dimension, UnitSystem::us);
}

class Together {
 public:
  Together(Entered& entered, Site const& site, std::set<std::string, std::less<>> const& given)
      : entered_(entered), site_(site), given_(given) {}

  bool have(std::initializer_list<std::string_view> keys) const {
    for (auto const key : keys) {
      if (given_.count(key) == 0) {
        return false;
      }
    }
    return true;
  }

  void depths() {
    auto const& w = site_.well;
    auto const& p = site_.pump;
    if (have({"pump.setting", "well.depth"}) && lowest(p.setting_depth_m) > highest(w.depth_m)) {
      fault("pump.setting", shown(lowest(p.setting_depth_m), Dimension::length),
            "a pump above the bottom of the well at " + shown(highest(w.depth_m), Dimension::length));
    }
    if (have({"pump.setting", "well.static_level"}) && lowest(w.static_level_depth_m) >= highest(p.setting_depth_m)) {
      fault("well.static_level", shown(lowest(w.static_level_depth_m), Dimension::length),
            "water above the pump, which hangs at " + shown(highest(p.setting_depth_m), Dimension::length));
    }
    if (have({"well.test_level", "well.static_level"}) &&
        highest(w.test_level_depth_m) <= lowest(w.static_level_depth_m)) {
      fault("well.test_level", shown(highest(w.test_level_depth_m), Dimension::length),
            "a level below the static one at " + shown(lowest(w.static_level_depth_m), Dimension::length) +
                ": pumping draws the water down");
    }
    if (have({"well.test_level", "well.depth"}) && lowest(w.test_level_depth_m) > highest(w.depth_m)) {
      fault("well.test_level", shown(lowest(w.test_level_depth_m), Dimension::length),
            "a level above the bottom of the well at " + shown(highest(w.depth_m), Dimension::length));
    }
    if (have({"pump.diameter", "well.casing"}) && lowest(p.outside_diameter_m) >= highest(w.casing_diameter_m)) {
      fault("pump.diameter", shown(lowest(p.outside_diameter_m), Dimension::diameter),
            "a pump that fits the casing of " + shown(highest(w.casing_diameter_m), Dimension::diameter));
    }
    if (have({"well.fracture", "well.static_level"}) && highest(w.fracture_depth_m) > 0 &&
        highest(w.fracture_depth_m) <= lowest(w.static_level_depth_m)) {
      fault("well.fracture", shown(highest(w.fracture_depth_m), Dimension::length),
            "a fracture below the water at rest, which stands at " +
                shown(lowest(w.static_level_depth_m), Dimension::length));
    }
    for (auto const* key : {"well.transmissivity", "well.specific_capacity", "well.test_flow", "well.yield"}) {
      bool const zero = have({key}) && highest(*range_of(key)) <= 0;
      if (zero) {
        fault(key, "no flow", "more than nothing: the well's inflow is reckoned from it");
      }
    }
  }

  /// Power, volts, amps, efficiency and power factor of a plate say one thing twice.
  void plate() {
    auto const& m = site_.motor;
    if (have({"motor.full_load_current", "motor.service_factor_current"}) &&
        lowest(m.full_load_current_a) > highest(m.service_factor_current_a)) {
      fault("motor.full_load_current", shown(lowest(m.full_load_current_a), Dimension::current),
            "at most the service-factor amps, " + shown(highest(m.service_factor_current_a), Dimension::current));
    }
    if (have({"motor.no_load_current", "motor.full_load_current"}) &&
        lowest(m.no_load_current_a) >= highest(m.full_load_current_a)) {
      fault("motor.no_load_current", shown(lowest(m.no_load_current_a), Dimension::current),
            "less than the full-load amps, " + shown(highest(m.full_load_current_a), Dimension::current));
    }
    if (!have({"motor.power", "motor.full_load_current"})) {
      return;
    }
    double const volts_v = have({"motor.voltage"}) ? middle(m.voltage_v) : 230;
    double const apparent_w = root3 * volts_v * middle(m.full_load_current_a);
    double const output_w = middle(m.power_w);
    bool const all = have({"motor.efficiency", "motor.power_factor", "motor.voltage"});
    if (all) {
      double const implied_w = apparent_w * middle(m.efficiency) * middle(m.power_factor);
      if (std::abs(implied_w - output_w) > plate_tolerance * output_w) {
        fault("motor.full_load_current", shown(middle(m.full_load_current_a), Dimension::current),
              fmt::format("a plate that agrees within 15 %: volts, amps, efficiency and power factor make {}, not {}; "
                          "{} would fit",
                          shown(implied_w, Dimension::power), shown(output_w, Dimension::power),
                          shown(middle(m.full_load_current_a) * output_w / implied_w, Dimension::current)));
      }
      return;
    }
    // Efficiency times power factor of small motors lies well within these.
    constexpr double least_product = 0.3;
    constexpr double most_product = 0.88;
    double const product = output_w / apparent_w;
    if (have({"motor.voltage"}) && (product < least_product || product > most_product)) {
      fault("motor.full_load_current", shown(middle(m.full_load_current_a), Dimension::current),
            fmt::format("amps that go with {} at {}: between {} and {}", shown(output_w, Dimension::power),
                        shown(volts_v, Dimension::voltage),
                        shown(output_w / (root3 * volts_v * most_product), Dimension::current),
                        shown(output_w / (root3 * volts_v * least_product), Dimension::current)));
    }
  }

  void pressures() {
    auto const& outlet = site_.demand.outlet_pressure_pa;
    if (!have({"demand.outlet_pressure"})) {
      return;
    }
    double const rise_m = have({"demand.outlet_rise"}) ? middle(site_.demand.outlet_rise_m) : 0;
    double const wanted_pa = middle(outlet) + water_pa_m * rise_m;
    auto const wanted = shown(wanted_pa, Dimension::pressure);
    if (have({"sensor.full_scale"}) && highest(site_.sensor.full_scale_pa) <= wanted_pa) {
      fault("sensor.full_scale", shown(highest(site_.sensor.full_scale_pa), Dimension::pressure),
            "a span above the pressure wanted at the tank, " + wanted);
    }
    if (have({"tank.precharge"}) && lowest(site_.tank.precharge_pa) >= wanted_pa && rise_known()) {
      fault("tank.precharge", shown(lowest(site_.tank.precharge_pa), Dimension::pressure),
            "less than the pressure wanted at the tank, " + wanted + ": above it the tank holds no water");
    }
    if (have({"limits.relief"}) && highest(site_.limits.relief_pa) > 0 &&
        highest(site_.limits.relief_pa) <= wanted_pa) {
      fault(
          "limits.relief", shown(highest(site_.limits.relief_pa), Dimension::pressure),
          "a relief valve that opens above the pressure wanted at the tank, " + wanted + ", or 0 psi if there is none");
    }
    for (auto const* key : {"tank.rating", "limits.fittings_rating"}) {
      if (have({key}) && highest(*range_of(key)) <= wanted_pa) {
        fault(key, shown(highest(*range_of(key)), Dimension::pressure),
              "a rating above the pressure wanted at the tank, " + wanted);
      }
    }
  }

  void runs() {
    double drop_m = 0;
    double yard_m = 0;
    double house_m = 0;
    bool drop_told = true;
    std::size_t last_drop = 0;
    bool yard_told = false;
    bool house_told = false;
    for (std::size_t i = 0; i < site_.pipes.size(); ++i) {
      auto const& run = site_.pipes[i];
      auto const at = fmt::format("pipe.{}.", i + 1);
      bool const length = have({at + "length"});
      bool const rise = have({at + "rise"});
      if (length && rise && highest(run.length_m) < std::abs(middle(run.rise_m))) {
        fault(at + "rise", shown(middle(run.rise_m), Dimension::length),
              "a rise no longer than the run of " + shown(highest(run.length_m), Dimension::length));
      }
      if (run.place == PipePlace::drop) {
        last_drop = i + 1;
        drop_told = drop_told && length;
        drop_m += length ? middle(run.length_m) : 0;
        if (rise) {
          fault(at + "rise", shown(middle(run.rise_m), Dimension::length),
                "no rise in the drop pipe: setting and levels tell it");
        }
      }
      yard_told = yard_told || (run.place == PipePlace::yard && rise);
      house_told = house_told || (run.place == PipePlace::house && rise);
      yard_m += run.place == PipePlace::yard && rise ? middle(run.rise_m) : 0;
      house_m += run.place == PipePlace::house && rise ? middle(run.rise_m) : 0;
    }
    double const setting_m = middle(site_.pump.setting_depth_m);
    if (last_drop > 0 && drop_told && have({"pump.setting"}) &&
        std::abs(drop_m - setting_m) > length_tolerance * setting_m) {
      fault(fmt::format("pipe.{}.length", last_drop), shown(drop_m, Dimension::length) + " of drop pipe",
            "as much as the pump's setting of " + shown(setting_m, Dimension::length));
    }
    if (std::abs(yard_m) > most_rise_m || std::abs(house_m) > most_rise_m) {
      fault("pipe",
            fmt::format("rises of {} and {} together", shown(yard_m, Dimension::length),
                        shown(house_m, Dimension::length)),
            "at most " + shown(most_rise_m, Dimension::length) + " in the yard and in the house");
    }
    twice("tank.elevation", yard_told, yard_m, middle(site_.tank.elevation_m), "yard");
    twice("demand.outlet_rise", house_told, house_m, middle(site_.demand.outlet_rise_m), "house");
  }

  void programme() {
    double sum_s = 0;
    for (std::size_t i = 0; i < site_.demand.zones.size(); ++i) {
      auto const key = fmt::format("zone.{}.time", i + 1);
      sum_s += have({key}) ? lowest(site_.demand.zones[i].time_s) : 0;
    }
    if (have({"demand.longest_run"}) && highest(site_.demand.longest_run_s) < sum_s) {
      fault("demand.longest_run", shown(highest(site_.demand.longest_run_s), Dimension::time),
            "at least the zones one after another, " + shown(sum_s, Dimension::time));
    }
    if (have({"demand.least_draw", "demand.peak_draw"}) &&
        lowest(site_.demand.least_draw_m3_s) > highest(site_.demand.peak_draw_m3_s)) {
      fault("demand.least_draw", shown(lowest(site_.demand.least_draw_m3_s), Dimension::flow),
            "no more than the peak draw, " + shown(highest(site_.demand.peak_draw_m3_s), Dimension::flow));
    }
  }

 private:
  bool rise_known() const { return have({"demand.outlet_rise"}) || site_.pipes.empty(); }

  Range const* range_of(std::string_view key) const {
    Range const* found = nullptr;
    each_field(site_, [&](Field const& field, Range const& range) { found = field.key == key ? &range : found; });
    return found;
  }

  void twice(std::string_view key, bool told_by_pipes, double by_pipes_m, double by_key_m, std::string_view place) {
    constexpr double apart_m = 0.3;
    if (told_by_pipes && have({key}) && std::abs(by_pipes_m - by_key_m) > apart_m) {
      fault(std::string(key), shown(by_key_m, Dimension::length),
            fmt::format("the same as the rises of the {} pipes together, {}", place,
                        shown(by_pipes_m, Dimension::length)));
    }
  }

  void fault(std::string key, std::string found, std::string expected) {
    auto place = entered_.place_of(key);
    entered_.find_fault(std::move(place), std::move(key), std::move(found), std::move(expected));
  }

  Entered& entered_;
  Site const& site_;
  std::set<std::string, std::less<>> const& given_;
};

}  // namespace

void check_together(Entered& entered, Site const& site, std::set<std::string, std::less<>> const& given) {
  Together together(entered, site, given);
  together.depths();
  together.plate();
  together.pressures();
  together.runs();
  together.programme();
}

}  // namespace wellproof
