#include "sheet/map_sheet.h"

#include <cmath>

#include <fmt/format.h>

#include "sheet/layout.h"

namespace wellproof {
namespace {

constexpr int shown_every_hz = 2;

std::string number(double value, double factor, int decimals) {
  return std::isfinite(value) ? fmt::format("{:.{}f}", value / factor, decimals) : "–";
}

/// "3.1–3.4", or one figure where all draws agree.
std::string spread(Spread const& of, double factor, int decimals) {
  std::string const low = number(of.low, factor, decimals);
  std::string const high = number(of.high, factor, decimals);
  return low == high ? low : low + "–" + high;
}

std::string spread_with_unit(Spread const& of, Dimension dimension, UnitSystem units) {
  auto const unit = customary_unit(dimension, units);
  return spread(of, unit.factor, 1) + " " + std::string(unit.spelling);
}

}  // namespace

std::string map_sheet(std::string const& site_name, OperatingMap const& map, UnitSystem units, bool colour) {
  Paint const paint(colour);
  auto const flow = customary_unit(Dimension::flow, units);
  auto const length = customary_unit(Dimension::length, units);
  std::string out = block((site_name.empty() ? std::string("Unnamed site") : site_name) +
                              ": steady operation over speed, lowest to highest over the draws",
                          "", "  ");
  out += block("Target " + write_quantity(map.target_pa, Dimension::pressure, units) + "; held with no flow from " +
                   spread_with_unit(map.zero_flow_speed_hz, Dimension::frequency, units) + "; least draw served from " +
                   spread_with_unit(map.least_draw_speed_hz, Dimension::frequency, units) + ".",
               "  ", "  ");
  out += "\n";
  Table table{{{"Hz", true},
               {"dry A", true},
               {"shut A", true},
               {"least draw A", true},
               {"most draw A", true},
               {fmt::format("flow {}", flow.spelling), true},
               {fmt::format("head {}", length.spelling), true}},
              {}};
  for (auto const& row : map.rows) {
    if (std::lround(row.speed_hz) % shown_every_hz != 0) {
      continue;
    }
    table.rows.push_back({number(row.speed_hz, 1, 0), spread(row.dry_a, 1, 1), spread(row.shut_a, 1, 1),
                          spread(row.least_draw_a, 1, 1), spread(row.most_draw_a, 1, 1),
                          spread(row.flow_at_target_m3_s, flow.factor, 1), spread(row.shut_head_m, length.factor, 0)});
  }
  out += text(table, paint);
  out += "\n" + block(
                    "A: motor current. Flow: what the pump gives at the target. Head: what it holds shut. A dash: the "
                    "plant cannot be there.",
                    "  ", "  ");
  return out;
}

}  // namespace wellproof
