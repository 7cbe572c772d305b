#include "proof/hunting.h"

#include <algorithm>
#include <vector>

#include <fmt/format.h>

#include "proof/shared_out.h"

namespace wellproof {
namespace {

std::vector<SwingsOfDraw> swings_of(std::span<Plant const> plants, Settings const& settings,
                                    ProveOptions const& options) {
  std::vector<SwingsOfDraw> swings(plants.size());
  shared_out(swings.size(), options.threads, [&](std::size_t draw) {
    swings[draw] = swings_while_drawing(plants[draw], settings, options.logic,
                                        noise_seed(options.seed, static_cast<std::uint32_t>(draw)));
  });
  return swings;
}

}  // namespace

PlanMargin hunting_margin(std::span<Plant const> plants, Settings const& settings, ProveOptions const& options) {
  PlanMargin margin{.key = "hunting", .dimension = Dimension::pressure, .says = {}};
  if (options.logic.two_contact_switch) {
    margin.says = "A pressure switch does not regulate, so that it cannot hunt.";
    return margin;
  }
  std::size_t const draws = std::min(swing_draws, plants.size());
  bool const made = options.made != nullptr && options.made->swings.size() == draws;
  auto const swings = made ? options.made->swings : swings_of(plants.first(draws), settings, options);
  Swing worst;
  double opening = 0;
  for (std::size_t draw = 0; draw < draws; ++draw) {
    for (std::size_t k = 0; k < swing_openings.size(); ++k) {
      if (swings[draw][k].swing_pa > worst.swing_pa) {
        worst = swings[draw][k];
        opening = swing_openings[k];
        margin.draw = static_cast<std::uint32_t>(draw);
      }
    }
  }
  double const limit_pa = hunting_share * settings.pressure_target_pa;
  margin.value = limit_pa - worst.swing_pa;
  auto const pressure = [&](double pressure_pa) {
    return write_quantity(pressure_pa, Dimension::pressure, options.units);
  };
  margin.says =
      worst.swing_pa > 0
          ? fmt::format(
                "{} {} hunting: drawing {:.0f} % of the peak evenly the pressure swings by {} every {:.1f} s "
                "(draw {}); {} may pass (common practice).",
                pressure(worst.swing_pa < limit_pa ? limit_pa - worst.swing_pa : worst.swing_pa - limit_pa),
                worst.swing_pa < limit_pa ? "to" : "past", 100 * opening, pressure(worst.swing_pa), worst.period_s,
                margin.draw, pressure(limit_pa))
          : fmt::format("{} to hunting: under an even draw the pressure settles in each of the {} draws looked at.",
                        pressure(limit_pa), draws);
  return margin;
}

}  // namespace wellproof
