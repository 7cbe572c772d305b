// The file a person starts from: what must be filled in stands open, all else is there as a comment with what is
// assumed without it.
#include <fmt/format.h>

#include <array>
#include <map>

#include "site/assumptions.h"
#include "site/entered.h"
#include "site/fields.h"
#include "site/fixtures.h"
#include "site/read.h"

namespace wellproof {
namespace {

struct Example {
  std::string_view key;
  std::string_view us;
  std::string_view metric;
};

/// The entries that a site cannot do without, with figures to write over.
constexpr std::array<Example, 7> open_entries{{{"well.static_level", "60 ft", "18 m"},
                                               {"well.test_flow", "8 gpm", "30 L/min"},
                                               {"well.test_level", "110 ft", "33 m"},
                                               {"pump.rated_flow", "10 gpm", "40 L/min"},
                                               {"pump.setting", "140 ft", "43 m"},
                                               {"motor.power", "1 hp", "0.75 kW"},
                                               {"demand.outlet_pressure", "40 psi", "280 kPa"}}};

/// Entries that are shown with a figure because no assumption is made for them.
constexpr std::array<Example, 7> other_ways{{{"well.transmissivity", "300 ft2/d", "30 m2/d"},
                                             {"well.specific_capacity", "0.3 gpm/ft", "0.06 L/s/m"},
                                             {"well.fracture", "90 ft", "27 m"},
                                             {"well.boundary_distance", "300 ft", "90 m"},
                                             {"well.yield", "8 gpm", "30 L/min"},
                                             {"demand.fixture_units", "10", "10"},
                                             {"zone.flow", "6 gpm", "23 L/min"}}};

template <std::size_t n>
std::string_view shown(std::array<Example, n> const& list, std::string_view key, UnitSystem system) {
  for (auto const& one : list) {
    if (one.key == key) {
      return system == UnitSystem::us ? one.us : one.metric;
    }
  }
  return {};
}

std::string table_of(std::string_view key) {
  return std::string(key.substr(0, key.rfind('.')));
}

std::string minimal(UnitSystem system) {
  std::string text;
  std::string table;
  for (auto const& one : open_entries) {
    if (table_of(one.key) != table) {
      table = table_of(one.key);
      text += fmt::format("[{}]\n", table);
    }
    text += fmt::format("{} = \"{}\"\n", one.key.substr(one.key.rfind('.') + 1),
                        system == UnitSystem::us ? one.us : one.metric);
  }
  return text;
}

class Starter {
 public:
  explicit Starter(UnitSystem system) : system_(system) {
    if (auto const read = read_site(minimal(system), "starter")) {
      site_ = read->site;
      for (auto const& one : read->assumptions) {
        assumed_.emplace(one.key, write_range(one.range, one.dimension, system));
      }
    }
    site_.demand.zones.resize(1);
  }

  std::string text() {
    out_ =
        "# A site: what is known of a well, its pump and the house behind it.\n"
        "# Any quantity may be a number or a range: \"110 ft\", \"110 ± 10 ft\", \"90 .. 140 ft\", \"90 .. 110 .. 140 "
        "ft\".\n"
        "# A line that starts with # is not known; it shows what is taken instead. Knowing more narrows the answer.\n"
        "\n[site]\nname = \"new site\"\ncontrol = \"sensor\"  # or \"pressure_switch\"\n";
    each_field(site_, [&](Field const& field, Range const& range) { entry(field, range); });
    return out_;
  }

 private:
  void head(std::string const& table) {
    static constexpr std::array<std::string_view, 3> places{"drop", "yard", "house"};
    if (table.compare(0, 5, "pipe.") == 0) {
      auto const place = places[runs_++ % places.size()];
      out_ += fmt::format("\n# [[pipe]]\n# place = \"{}\"\n# kind = \"sch40_pvc\"  # docs/site.md lists the kinds\n",
                          place);
      out_ += "# size = \"1 in\"    # or inside_diameter\n";
    } else if (table.compare(0, 5, "zone.") == 0) {
      out_ += "\n# [demand.fixtures]  # in place of fixture_units\n";
      for (auto const& kind : fixture_kinds()) {
        out_ += fmt::format("# {} = 0  # {}\n", kind.key, kind.meaning);
      }
      out_ += "\n# [[zone]]\n# name = \"lawn\"\n";
    } else {
      out_ += fmt::format("\n[{}]\n", table);
      if (table == "well") {
        out_ += "# boundary = \"recharge\"  # a stream or lake nearby, or \"no_flow\": tight rock; none is taken\n";
      }
      if (table == "pump") {
        out_ +=
            "# A curve is better than rated flow and power: points of flow, head, shaft power, from zero flow on.\n"
            "# curve = [[\"0 gpm\", \"330 ft\", \"0.7 hp\"], [\"10 gpm\", \"250 ft\", \"1.1 hp\"], ...]\n"
            "# curve_file = \"curve.csv\"  # first line flow_gpm,head_ft,power_hp\n";
      }
    }
  }

  void entry(Field const& field, Range const& settled) {
    auto const table = table_of(field.key);
    if (table != table_) {
      table_ = table;
      head(table);
    }
    auto const general = without_number(field.key);
    if (general == "pipe.inside_diameter") {
      return;
    }
    auto const last = field.key.substr(field.key.rfind('.') + 1);
    if (auto const open = shown(open_entries, field.key, system_); !open.empty()) {
      out_ += fmt::format("{} = \"{}\"  # {}\n", last, open, field.meaning);
      return;
    }
    std::string value(shown(other_ways, general, system_));
    if (auto const found = assumed_.find(field.key); found != assumed_.end()) {
      value = found->second;
    }
    for (auto const& plain : plain_assumptions()) {
      if (value.empty() && plain.key == general) {
        auto const range = read_range(plain.range, field.dimension);
        value = range ? write_range(*range, field.dimension, system_) : "";
      }
    }
    if (value.empty() && highest(settled) > 0) {
      value = write_range(settled, field.dimension, system_);
    }
    if (!value.empty()) {
      out_ += fmt::format("# {} = \"{}\"  # {}\n", last, value, field.meaning);
    }
  }

  UnitSystem system_;
  Site site_;
  std::map<std::string, std::string> assumed_;
  std::string table_;
  std::size_t runs_ = 0;
  std::string out_;
};

}  // namespace

std::string starter_site(UnitSystem system) {
  return Starter(system).text();
}

}  // namespace wellproof
