#include "site/reference.h"

#include <fmt/format.h>

#include <map>

#include "quantity/quantity.h"
#include "site/assumptions.h"
#include "site/entered.h"
#include "site/fields.h"
#include "site/fixtures.h"
#include "site/pipe_sizes.h"
#include "site/read.h"

namespace wellproof {
namespace {

constexpr std::string_view opening = R"(# The site file

A site file is TOML. It reads like a driller's log and a nameplate: tables for the well, the pump, the motor and so on,
and in them what is known. This page lists every key. It is generated from the list of fields and the table of
assumptions in `src/site`.

## Quantities

A quantity is text with its unit, and may be a range:

| written | means |
| --- | --- |
| `"110 ft"` | exactly that |
| `"110 ± 10 ft"` or `"110 +/- 10 ft"` | normal about 110, 95 % within 10, cut at three sigma |
| `"90 .. 140 ft"` | anything between, evenly |
| `"90 .. 110 .. 140 ft"` | triangular, 110 the likeliest |

A bare number where a unit is needed is refused. Only ratios and counts may be bare numbers. Depths count down from the top
of the casing.

## What must be there

- `well.static_level`
- how the well gives water: `well.test_flow` and `well.test_level` (with `well.test_time`), or `well.yield`, or
  `well.specific_capacity`. If more than one is given, the specific capacity is taken first, then the test.
- `pump.setting`
- the pump: `pump.curve` or `pump.curve_file`; without a curve `pump.rated_flow` and one of `pump.rated_power` and
  `motor.power`. It then has a typical curve of its class, with a wider spread.
- `demand.outlet_pressure`

Everything else may be left out. Each quantity left out becomes a declared assumption: the last column says which. Knowing
more narrows the answer.

## Pump curve

Points in order of flow, the first at or near zero flow, at least three, head falling:

```toml
[pump]
curve = [
  ["0 gpm", "330 ft", "0.7 hp"],
  ["10 gpm", "250 ft", "1.1 hp"],
  ["15 gpm", "130 ft", "1.2 hp"],
]
curve_speed = "3450 rpm"
```

or in a file beside (`curve_file = "curve.csv"`), whose heads name quantity and unit, such as `flow_gpm,head_ft,power_hp`.
)";

std::string_view heading(std::string_view table) {
  static std::map<std::string_view, std::string_view> const headings{
      {"site", "`[site]`"},     {"well", "`[well]`"},
      {"pump", "`[pump]`"},     {"motor", "`[motor]`: the nameplate"},
      {"drive", "`[drive]`"},   {"cable", "`[cable]`: drive to motor"},
      {"supply", "`[supply]`"}, {"pipe", "`[[pipe]]`: one for each run"},
      {"tank", "`[tank]`"},     {"sensor", "`[sensor]`"},
      {"demand", "`[demand]`"}, {"zone", "`[[zone]]`: one for each zone of irrigation"},
      {"limits", "`[limits]`"},
  };
  auto const found = headings.find(table);
  return found == headings.end() ? table : found->second;
}

/// What is no quantity.
std::string_view word_meaning(std::string_view key) {
  static std::map<std::string_view, std::string_view> const meanings{
      {"site.name", "what the site is called | none"},
      {"site.control", "`sensor` or `pressure_switch` | `sensor`"},
      {"well.boundary", "`none`, `recharge` (a stream or lake) or `no_flow` (tight rock) at a distance | `none`"},
      {"pump.curve", "points of flow, head and shaft power | a typical curve of the class"},
      {"pump.curve_file", "name of a file with these points | "},
      {"pipe.place", "`drop` (in the well), `yard` (well head to tank), `house` (tank to outlets) | must be told"},
      {"pipe.kind", "kind of pipe, see below | schedule 40 PVC"},
      {"pipe.size", "nominal size, such as `\"1-1/4 in\"` | see `inside_diameter`"},
      {"zone.name", "what the zone is called | its number"},
  };
  auto const found = meanings.find(key);
  return found == meanings.end() ? std::string_view{} : found->second;
}

std::string if_left_out(std::string_view key) {
  static std::map<std::string_view, std::string_view> const always{
      {"well.static_level", "must be there"},
      {"well.transmissivity", "one way to tell the inflow must be there"},
      {"well.test_flow", "one way to tell the inflow must be there"},
      {"well.test_level", "goes with `test_flow`"},
      {"well.yield", "one way to tell the inflow must be there"},
      {"well.specific_capacity", "one way to tell the inflow must be there"},
      {"pump.setting", "must be there"},
      {"demand.outlet_pressure", "must be there"},
      {"demand.fixture_units", "the sum of `[demand.fixtures]`, or not used"},
      {"zone.flow", "must be there"},
  };
  if (auto const found = always.find(key); found != always.end()) {
    return std::string(found->second);
  }
  std::string said;
  for (auto const& one : following_assumptions()) {
    if (one.key == key) {
      said = one.follows;
    }
  }
  for (auto const& one : plain_assumptions()) {
    if (one.key == key) {
      said = fmt::format("{}`{}`: {}", said.empty() ? said : fmt::format("{}; else ", said), one.range, one.because);
    }
  }
  return said;
}

std::string tables() {
  std::map<std::string, Field> fields;
  Site site;
  site.pipes.resize(1);
  site.demand.zones.resize(1);
  each_field(site, [&](Field const& field, Range const&) { fields.emplace(without_number(field.key), field); });
  std::string out;
  std::string table;
  for (auto const& key : known_keys()) {
    auto const dot = key.find('.');
    auto const last = key.substr(dot + 1);
    if (last.find('.') != last.npos) {
      continue;  // fixtures have their own table
    }
    if (key.substr(0, dot) != table) {
      table = key.substr(0, dot);
      out +=
          fmt::format("\n## {}\n\n| key | what | limits | if left out |\n| --- | --- | --- | --- |\n", heading(table));
    }
    auto const found = fields.find(key);
    if (found == fields.end()) {
      auto const said = word_meaning(key);
      auto const bar = said.find(" | ");
      out += fmt::format("| `{}` | {} | | {} |\n", last, said.substr(0, bar), said.substr(bar + 3));
      continue;
    }
    auto const& field = found->second;
    out += fmt::format("| `{}` | {} | {} to {} | {} |\n", last, field.meaning,
                       write_quantity(field.least, field.dimension, UnitSystem::us),
                       write_quantity(field.most, field.dimension, UnitSystem::us), if_left_out(key));
  }
  return out;
}

std::string fixtures() {
  std::string out =
      "\n## `[demand.fixtures]`\n\nHow many of each there are. Their units (International Plumbing Code, table "
      "E103.3(2), private, total) are summed, and table E103.3(3) for flush tanks gives the peak draw.\n\n"
      "| key | what | units each |\n| --- | --- | --- |\n";
  for (auto const& kind : fixture_kinds()) {
    out += fmt::format("| `{}` | {} | {} |\n", kind.key, kind.meaning, kind.units);
  }
  return out;
}

std::string pipes() {
  std::string out =
      "\n## Kinds of pipe\n\nInside diameter in inches by nominal size. A pipe that is not listed is told by its "
      "`inside_diameter`.\n\n| kind | standard |";
  auto const all = pipe_sizes("sch40_pvc");
  for (auto const& size : all) {
    out += fmt::format(" {} |", size.nominal);
  }
  out += "\n| --- | --- |";
  for (std::size_t i = 0; i < all.size(); ++i) {
    out += " --- |";
  }
  for (auto const& kind : pipe_kinds()) {
    out += fmt::format("\n| `{}` | {} |", kind.key, kind.standard);
    for (auto const& size : all) {
      auto const found = pipe_size(kind.key, size.nominal);
      out += found ? fmt::format(" {:.3f} |", found->inside_diameter_m / 0.0254) : std::string(" |");
    }
  }
  return out + '\n';
}

}  // namespace

std::string site_reference() {
  return std::string(opening) + tables() + fixtures() + pipes();
}

}  // namespace wellproof
