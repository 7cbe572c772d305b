// Fills in what a site file leaves out: the order of the work, and the well, the house and its tank.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "site/assuming.h"
#include "site/assumptions.h"
#include "site/fixtures.h"

namespace wellproof {
namespace {

constexpr double water_pa_m = 9790;

/// Within the limits of its field: what follows from extreme entries must not leave them.
Range held(Range const& range, double least, double most) {
  double const low = lowest(range);
  double const high = highest(range);
  if (low >= least && high <= most) {
    return range;
  }
  double const from = std::clamp(low, least, most);
  double const to = std::clamp(high, least, most);
  if (std::holds_alternative<Triangular>(range)) {
    return about(from, std::clamp(std::get<Triangular>(range).mode, from, to), to);
  }
  return between(from, to);
}

}  // namespace

Range between(double low, double high) {
  return high > low ? Range{Even{low, high}} : Range{Fixed{low}};
}

Range about(double low, double mode, double high) {
  return high > low ? Range{Triangular{low, std::clamp(mode, low, high), high}} : Range{Fixed{low}};
}

Assuming::Assuming(SiteRead& read, std::set<std::string, std::less<>> given) : read_(read), given_(std::move(given)) {
  each_field(read_.site, [&](Field const& field, Range& range) { slots_.emplace(field.key, Slot{field, &range}); });
}

void Assuming::take(std::string_view key, Range const& range, std::string because) {
  auto& slot = slots_.find(key)->second;
  if (given(key)) {
    return;
  }
  *slot.range = held(range, slot.field.least, slot.field.most);
  read_.assumptions.push_back({std::string(key), *slot.range, slot.field.dimension, std::move(because)});
  given_.insert(std::string(key));
}

void Assuming::unused(std::string_view key, Range const& range) {
  if (!given(key)) {
    *slots_.find(key)->second.range = range;
    given_.insert(std::string(key));
  }
}

void Assuming::take_plain() {
  for (auto const& [key, slot] : slots_) {
    auto const dot = key.find('.');
    bool const numbered = key.substr(0, dot) == "pipe" || key.substr(0, dot) == "zone";
    auto const general = numbered ? key.substr(0, dot) + key.substr(key.find('.', dot + 1)) : key;
    for (auto const& plain : plain_assumptions()) {
      if (plain.key == general) {
        if (auto const range = read_range(plain.range, slot.field.dimension)) {
          take(key, *range, std::string(plain.because));
        }
      }
    }
  }
}

void Assuming::sort() {
  std::map<std::string, std::size_t> order;
  each_field(read_.site, [&](Field const& field, Range const&) { order.emplace(field.key, order.size()); });
  std::stable_sort(read_.assumptions.begin(), read_.assumptions.end(),
                   [&](Assumption const& a, Assumption const& b) { return order.at(a.key) < order.at(b.key); });
}

void Assuming::well() {
  auto const& w = read_.site.well;
  for (auto const* key :
       {"well.transmissivity", "well.specific_capacity", "well.yield", "well.test_flow", "well.test_level"}) {
    unused(key);
  }
  if (w.inflow_known == InflowKnown::transmissivity) {
    unused("well.test_time");
  }
  if (w.boundary == Boundary::none) {
    unused("well.boundary_distance");
  }
  unused("well.fracture");
  double const setting_m = highest(range("pump.setting"));
  double const deepest_m = std::max(setting_m, highest(range("well.test_level")));
  take("well.depth", between(deepest_m + 10 * foot_m, deepest_m + 80 * foot_m), "pumps hang above the bottom");
}

void Assuming::demand() {
  if (given("demand.fixture_units")) {
    double const low_m3_s = peak_draw_m3_s(lowest(range("demand.fixture_units")));
    double const high_m3_s = peak_draw_m3_s(highest(range("demand.fixture_units")));
    take("demand.peak_draw", between(low_m3_s, high_m3_s), "IPC table E103.3(3), flush tanks, by the fixture units");
  }
  take("demand.peak_draw", about(6 * gpm_m3_s, 9 * gpm_m3_s, 13 * gpm_m3_s),
       "metered houses peak at 8 to 13 gpm; fixtures or their units narrow this");
  unused("demand.fixture_units");
  double programme_s = 0;
  for (std::size_t i = 0; i < read_.site.demand.zones.size(); ++i) {
    auto const key = fmt::format("zone.{}.time", i + 1);
    programme_s += given(key) ? highest(range(key)) : 3600;
  }
  if (programme_s > 0) {
    take("demand.longest_run", between(programme_s, 1.5 * programme_s), "the zones one after another, and then some");
  }
  take("demand.longest_run", between(3600, 7200), "a hose left running for a purpose");
}

void Assuming::tank_and_sensor() {
  bool const on_switch = read_.site.control == ControlWay::pressure_switch;
  take("tank.volume",
       on_switch ? about(20 * gallon_m3, 44 * gallon_m3, 86 * gallon_m3)
                 : about(2 * gallon_m3, 4.5 * gallon_m3, 20 * gallon_m3),
       on_switch ? "a switched pump needs a large tank" : "a small tank is usual behind a drive; its label tells");
  double const wanted_pa = mid("demand.outlet_pressure") + water_pa_m * mid("demand.outlet_rise");
  take("tank.precharge", about(0.6 * wanted_pa, 0.7 * wanted_pa, 0.8 * wanted_pa),
       "0.7 of the pressure wanted at the tank, the usual rule; a gauge on the empty tank tells");
  constexpr std::array<double, 5> spans_psi{100, 150, 200, 300, 500};
  double span_psi = spans_psi.back();
  for (double const one : spans_psi) {
    if (one * psi_pa >= 1.6 * wanted_pa) {
      span_psi = one;
      break;
    }
  }
  take("sensor.full_scale", Fixed{span_psi * psi_pa}, "smallest usual span well above the pressure wanted");
}

void assume_rest(SiteRead& read, std::set<std::string, std::less<>> given) {
  for (auto const place : {PipePlace::drop, PipePlace::yard, PipePlace::house}) {
    auto& runs = read.site.pipes;
    if (std::none_of(runs.begin(), runs.end(), [&](auto const& run) { return run.place == place; })) {
      runs.emplace_back();
      runs.back().place = place;
    }
  }
  Assuming assuming(read, std::move(given));
  assuming.motor_system();
  assuming.pump();
  assuming.motor();
  assuming.well();
  assuming.electrics();
  assuming.pipes();
  assuming.demand();
  assuming.tank_and_sensor();
  assuming.take_plain();
  assuming.sort();
}

}  // namespace wellproof
