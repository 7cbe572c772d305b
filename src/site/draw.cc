#include "site/draw.h"

#include <algorithm>
#include <cmath>

#include "contract/require.h"
#include "site/fields.h"

namespace wellproof {
namespace {

constexpr double root3 = 1.7320508075688772;
constexpr double water_pa_m = 9790;

/// How well a quantity is known: its width over its middle.
double spread(Range const& range) {
  double const size = std::abs(middle(range));
  return size > 0 ? (highest(range) - lowest(range)) / size : 0;
}

/// The same truth has to hold together. Each rule moves the quantity that is known less well.
class Mending {
 public:
  Mending(Site const& site, DrawnSite& drawn) : site_(site), drawn_(drawn) {}

  /// Pumping draws the water down, by a hand at least; the pump hangs above the bottom and fits the casing.
  void well() {
    constexpr double least_drawdown_m = 0.1;
    auto& w = drawn_.well;
    if (w.inflow_known == InflowKnown::test) {
      w.test_level_depth_m = std::max(w.test_level_depth_m, w.static_level_depth_m + least_drawdown_m);
    }
    if (w.fracture_depth_m > 0) {
      w.fracture_depth_m = std::max(w.fracture_depth_m, w.static_level_depth_m + w.season_drop_m + least_drawdown_m);
    }
    w.depth_m = std::max(w.depth_m, std::max(drawn_.pump.setting_depth_m, w.test_level_depth_m));
    drawn_.pump.outside_diameter_m = std::min(drawn_.pump.outside_diameter_m, 0.97 * w.casing_diameter_m);
  }

  /// A typical curve is stretched to the class as drawn; a given one stays as printed.
  void pump() {
    auto& p = drawn_.pump;
    if (!p.curve_is_typical) {
      return;
    }
    double const flow = p.rated_flow_m3_s / middle(site_.pump.rated_flow_m3_s);
    double const head = p.rated_head_m / middle(site_.pump.rated_head_m);
    double const power = p.rated_power_w / middle(site_.pump.rated_power_w);
    for (auto& point : p.curve) {
      point.flow_m3_s *= flow;
      point.head_m *= head;
      point.shaft_power_w *= power;
    }
  }

  /// A plate is one motor: amps in proportion, and power = √3 · volts · amps · efficiency · power factor.
  void motor() {
    auto const& known = site_.motor;
    auto& m = drawn_.motor;
    double const full_spread = spread(known.full_load_current_a);
    double const most_spread = spread(known.service_factor_current_a);
    if (full_spread > 0 && most_spread > 0) {
      double const ratio = middle(known.service_factor_current_a) / middle(known.full_load_current_a);
      if (full_spread >= most_spread) {
        m.full_load_current_a = m.service_factor_current_a / ratio;
      } else {
        m.service_factor_current_a = m.full_load_current_a * ratio;
      }
    }
    double const product = m.power_w / (root3 * m.voltage_v * m.full_load_current_a);
    bool const factor_gives = spread(known.power_factor) >= spread(known.efficiency);
    if (factor_gives && !is_fixed(known.power_factor)) {
      m.power_factor = std::clamp(product / m.efficiency, 0.45, 0.95);
    } else if (!factor_gives) {
      m.efficiency = std::clamp(product / m.power_factor, 0.35, 0.95);
    }
    m.service_factor_current_a = std::max(m.service_factor_current_a, m.full_load_current_a);
    m.no_load_current_a = std::min(m.no_load_current_a, 0.9 * m.full_load_current_a);
    m.locked_rotor_current_a = std::max(m.locked_rotor_current_a, 2 * m.service_factor_current_a);
  }

  /// The drop pipe reaches the pump; elevations are the sums of the rises; no run is shorter than it rises.
  void pipes() {
    double drop_m = 0;
    double elevation_m = 0;
    double rise_m = 0;
    for (auto& run : drawn_.pipes) {
      run.length_m = std::max(run.length_m, std::abs(run.rise_m));
      drop_m += run.place == PipePlace::drop ? run.length_m : 0;
      elevation_m += run.place == PipePlace::yard ? run.rise_m : 0;
      rise_m += run.place == PipePlace::house ? run.rise_m : 0;
    }
    for (auto& run : drawn_.pipes) {
      if (run.place == PipePlace::drop && drop_m > 0) {
        run.length_m *= drawn_.pump.setting_depth_m / drop_m;
      }
    }
    drawn_.tank.elevation_m = elevation_m;
    drawn_.demand.outlet_rise_m = rise_m;
  }

  /// A tank charged above the pressure wanted holds no water. The longest use covers the whole programme.
  void tank_and_demand() {
    constexpr double most_charge = 0.95;
    auto& d = drawn_.demand;
    double const wanted_pa = d.outlet_pressure_pa + water_pa_m * d.outlet_rise_m;
    drawn_.tank.precharge_pa = std::min(drawn_.tank.precharge_pa, std::max(0.0, most_charge * wanted_pa));
    double programme_s = 0;
    for (auto const& zone : d.zones) {
      programme_s += zone.time_s;
    }
    d.longest_run_s = std::max(d.longest_run_s, programme_s);
    d.least_draw_m3_s = std::min(d.least_draw_m3_s, d.peak_draw_m3_s);
  }

 private:
  Site const& site_;
  DrawnSite& drawn_;
};

/// All that is no quantity.
DrawnSite words_of(Site const& site) {
  DrawnSite drawn;
  drawn.name = site.name;
  drawn.control = site.control;
  drawn.well.inflow_known = site.well.inflow_known;
  drawn.well.boundary = site.well.boundary;
  drawn.pump.curve = site.pump.curve;
  drawn.pump.curve_is_typical = site.pump.curve_is_typical;
  drawn.motor.plate_is_typical = site.motor.plate_is_typical;
  for (auto const& run : site.pipes) {
    drawn.pipes.emplace_back();
    drawn.pipes.back().kind = run.kind;
    drawn.pipes.back().size = run.size;
    drawn.pipes.back().place = run.place;
  }
  for (auto const& zone : site.demand.zones) {
    drawn.demand.zones.emplace_back();
    drawn.demand.zones.back().name = zone.name;
  }
  return drawn;
}

}  // namespace

std::size_t unknowns(Site const& site) {
  std::size_t count = 0;
  each_field(site, [&](Field const&, Range const& range) { count += is_fixed(range) ? 0U : 1U; });
  return count;
}

std::vector<std::string> unknown_keys(Site const& site) {
  std::vector<std::string> keys;
  each_field(site, [&](Field const& field, Range const& range) {
    if (!is_fixed(range)) {
      keys.push_back(field.key);
    }
  });
  return keys;
}

DrawnSite draw(Site const& site, std::span<double const> point) {
  auto drawn = words_of(site);
  std::vector<double*> slots;
  each_field(drawn, [&](Field const&, double& value) { slots.push_back(&value); });
  std::size_t field = 0;
  std::size_t coordinate = 0;
  each_field(site, [&](Field const&, Range const& range) {
    double at = 0.5;
    if (!is_fixed(range)) {
      require(coordinate < point.size(), "a draw takes a coordinate for each unknown of the site");
      at = point[coordinate++];
    }
    *slots[field++] = quantile(range, at);
  });
  require(coordinate == point.size(), "a draw takes no more coordinates than the site has unknowns");
  Mending mending(site, drawn);
  mending.well();
  mending.pump();
  mending.motor();
  mending.pipes();
  mending.tank_and_demand();
  return drawn;
}

DrawnSite draw(Site const& site, std::uint64_t seed, std::uint32_t index) {
  return draw(site, sequence_point(seed, index, unknowns(site)));
}

}  // namespace wellproof
