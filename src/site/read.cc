#include "site/read.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <tuple>

#include "site/assumptions.h"
#include "site/cross_checks.h"
#include "site/curve_points.h"
#include "site/entered.h"
#include "site/fixtures.h"
#include "site/pipe_sizes.h"

namespace wellproof {
namespace {

using Keys = std::set<std::string, std::less<>>;

constexpr std::size_t most_name = 200;

void read_words(Entered& entered, Site& site) {
  if (auto const name = entered.text("site.name")) {
    site.name = *name;
    if (site.name.size() > most_name) {
      entered.find_fault(entered.place_of("site.name"), "site.name", "a very long name", "a line of text");
    }
  }
  if (auto const control = entered.word("site.control", {"sensor", "pressure_switch"})) {
    site.control = *control == "sensor" ? ControlWay::sensor : ControlWay::pressure_switch;
  }
  if (auto const boundary = entered.word("well.boundary", {"none", "recharge", "no_flow"})) {
    site.well.boundary = *boundary == "recharge"  ? Boundary::recharge
                         : *boundary == "no_flow" ? Boundary::no_flow
                                                  : Boundary::none;
  }
  for (std::size_t i = 0; i < site.demand.zones.size(); ++i) {
    site.demand.zones[i].name =
        entered.text(fmt::format("zone.{}.name", i + 1)).value_or(fmt::format("zone {}", i + 1));
  }
}

/// Place, kind and size of each run; the inside diameter follows from kind and size.
void read_pipes(Entered& entered, Site& site, Keys& given) {
  std::vector<std::string_view> kinds;
  for (auto const& kind : pipe_kinds()) {
    kinds.push_back(kind.key);
  }
  for (std::size_t i = 0; i < site.pipes.size(); ++i) {
    auto& run = site.pipes[i];
    auto const at = fmt::format("pipe.{}.", i + 1);
    auto const place = entered.word(at + "place", {"drop", "yard", "house"});
    if (!entered.has(at + "place") && !entered.meant("pipe.place")) {
      entered.find_fault(entered.place_of(at + "place"), at + "place", "nothing", "\"drop\", \"yard\" or \"house\"");
    }
    run.place = place == "drop" ? PipePlace::drop : place == "house" ? PipePlace::house : PipePlace::yard;
    auto const kind = entered.word(at + "kind", kinds);
    run.kind = kind.value_or("");
    auto const size = entered.text(at + "size");
    if (!size) {
      continue;
    }
    run.size = *size;
    if (entered.has(at + "inside_diameter")) {
      entered.find_fault(entered.place_of(at + "size"), at + "size", "a size and an inside diameter", "one of them");
      continue;
    }
    if (!entered.has(at + "kind")) {
      if (!entered.meant("pipe.kind")) {
        entered.find_fault(entered.place_of(at + "size"), at + "size", '"' + *size + "\" without a kind",
                           "the kind of pipe too: a size is no measure by itself");
      }
      continue;
    }
    if (!kind) {
      continue;
    }
    if (auto const known = pipe_size(*kind, *size)) {
      run.inside_diameter_m = Fixed{known->inside_diameter_m};
      given.insert(at + "inside_diameter");
    } else {
      std::vector<std::string_view> names;
      for (auto const& one : pipe_sizes(*kind)) {
        names.push_back(one.nominal);
      }
      entered.find_fault(entered.place_of(at + "size"), at + "size", '"' + *size + '"',
                         fmt::format("a size of {}: {}", *kind, fmt::join(names, ", ")),
                         nearest_pipe_size(*kind, *size));
    }
  }
}

void read_fixtures(Entered& entered, Site& site, Keys& given) {
  constexpr double most_of_a_kind = 100;
  double units = 0;
  bool any = false;
  for (auto const& kind : fixture_kinds()) {
    auto const key = "demand.fixtures." + std::string(kind.key);
    auto const* node = entered.find(key);
    if (node == nullptr) {
      continue;
    }
    bool const count = node->kind == Node::Kind::number && node->number >= 0 && node->number <= most_of_a_kind &&
                       node->number == std::floor(node->number);
    if (!count) {
      entered.find_fault(entered.place_of(*node), key, in_words(*node), "how many there are: a whole number from 0");
      continue;
    }
    any = true;
    units += kind.units * node->number;
  }
  if (!any) {
    return;
  }
  if (entered.has("demand.fixture_units")) {
    entered.find_fault(entered.place_of("demand.fixture_units"), "demand.fixture_units",
                       "fixture units and a table of fixtures", "one of them");
    return;
  }
  site.demand.fixture_units = Fixed{std::min(units, 500.0)};
  given.insert("demand.fixture_units");
}

void read_quantities(Entered& entered, Site& site, Keys& given) {
  each_field(site, [&](Field const& field, Range& range) {
    if (auto const read = entered.range(field)) {
      range = *read;
      given.insert(field.key);
    }
  });
}

void missing(Entered& entered, std::string_view table, std::string key, std::string expected) {
  entered.find_fault(entered.place_of_table(table), std::move(key), "nothing", std::move(expected));
}

/// The handful of entries without which nothing can be said.
void check_required(Entered& entered) {
  auto const has = [&](std::string_view key) { return entered.meant(key); };
  if (!has("well.static_level")) {
    missing(entered, "well", "well.static_level", "the depth to water at rest, such as \"60 ft\"");
  }
  bool const tested = has("well.test_flow") && has("well.test_level");
  if (!tested && !has("well.yield") && !has("well.specific_capacity") && !has("well.transmissivity")) {
    bool const half = has("well.test_flow") || has("well.test_level");
    bool const no_level = half && has("well.test_flow");
    missing(
        entered, "well", half ? (no_level ? "well.test_level" : "well.test_flow") : "well.yield",
        half ? (no_level ? "the level that goes with test_flow" : "the flow that goes with test_level")
             : "how the well gives water: test_flow and test_level, or yield, or specific_capacity, or transmissivity");
  }
  if (!has("pump.setting")) {
    missing(entered, "pump", "pump.setting", "the depth that the pump hangs at, such as \"120 ft\"");
  }
  if (!has("pump.curve") && !has("pump.curve_file")) {
    if (!has("pump.rated_flow")) {
      missing(entered, "pump", "pump.rated_flow", "the flow the pump is built for, such as \"10 gpm\", or a curve");
    }
    if (!has("pump.rated_power") && !has("motor.power")) {
      missing(entered, "pump", "pump.rated_power", "the pump's power, or motor.power, such as \"1.5 hp\", or a curve");
    }
  }
  if (!has("demand.outlet_pressure")) {
    missing(entered, "demand", "demand.outlet_pressure",
            "the pressure wanted at the highest outlet, such as \"40 psi\"");
  }
  for (std::size_t i = 0; i < entered.zones(); ++i) {
    auto const table = fmt::format("zone.{}", i + 1);
    if (!has(table + ".flow")) {
      missing(entered, table, table + ".flow", "the flow of the zone, such as \"6 gpm\"");
    }
  }
}

void decide_inflow(Site& site, Keys& given) {
  bool const tested = given.count("well.test_flow") > 0 && given.count("well.test_level") > 0;
  bool const stated = given.count("well.specific_capacity") > 0;
  auto& w = site.well;
  w.inflow_known = given.count("well.transmissivity") > 0 ? InflowKnown::transmissivity
                   : stated                               ? InflowKnown::specific_capacity
                   : tested                               ? InflowKnown::test
                                                          : InflowKnown::yield;
  auto const drop = [&](char const* key, Range& range) {
    range = Fixed{0};
    given.erase(key);
  };
  if (w.inflow_known == InflowKnown::transmissivity) {
    drop("well.specific_capacity", w.specific_capacity_m2_s);
    drop("well.test_time", w.test_time_s);
  }
  if (w.inflow_known != InflowKnown::test) {
    drop("well.test_flow", w.test_flow_m3_s);
    drop("well.test_level", w.test_level_depth_m);
  }
  if (w.inflow_known != InflowKnown::yield) {
    drop("well.yield", w.yield_m3_s);
  }
}

/// File by file, line by line; one and the same finding once.
Findings sorted(Findings findings, std::string const& file) {
  auto const order = [&](Finding const& a) { return std::tuple(a.place.file != file, a.place.line, a.place.column); };
  std::stable_sort(findings.begin(), findings.end(),
                   [&](Finding const& a, Finding const& b) { return order(a) < order(b); });
  findings.erase(std::unique(findings.begin(), findings.end()), findings.end());
  return findings;
}

}  // namespace

std::vector<std::string> files_named(std::string_view text) {
  auto const document = read_document(text, "");
  std::vector<std::string> names;
  if (auto const* pump = document.root.item("pump"); pump != nullptr) {
    auto const* name = pump->item("curve_file");
    if (name != nullptr && name->kind == Node::Kind::text) {
      names.push_back(name->text);
    }
  }
  return names;
}

Result<SiteRead> read_site(std::string_view text, std::string_view file, std::vector<Beside> const& beside) {
  auto const document = read_document(text, file);
  if (!document.complete) {
    return tl::unexpected(sorted(document.findings, std::string(file)));
  }
  Entered entered(document, file);
  SiteRead read;
  auto& site = read.site;
  site.pipes.resize(entered.pipes());
  site.demand.zones.resize(entered.zones());
  Keys given;
  read_words(entered, site);
  read_quantities(entered, site, given);
  read_pipes(entered, site, given);
  read_fixtures(entered, site, given);
  site.pump.curve = read_curve(entered, beside);
  check_required(entered);
  check_together(entered, site, given);
  if (!entered.findings().empty()) {
    return tl::unexpected(sorted(std::move(entered.findings()), entered.file()));
  }
  decide_inflow(site, given);
  assume_rest(read, std::move(given));
  return read;
}

}  // namespace wellproof
