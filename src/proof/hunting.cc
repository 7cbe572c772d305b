#include "proof/hunting.h"

#include <algorithm>
#include <array>
#include <vector>

#include <fmt/format.h>

#include "proof/shared_out.h"
#include "simulate/run.h"

namespace wellproof {
namespace {

constexpr double opens_s = 10;
constexpr double duration_s = 480;
constexpr double watched_from_s = 240;
constexpr int least_crossings = 5;       // of the middle: two whole swings
constexpr double wide_part = 0.25;       // of the swing, that a crossing must leave the middle by
constexpr double settled_share = 0.002;  // of the target: what noise and samples ahead of the plant make of a held one
constexpr std::size_t draws_looked_at = 8;
constexpr std::array openings{0.2, 0.5, 1.0};

}  // namespace

Swing swing_while_drawing(Plant const& plant, Settings const& settings, Logic const& logic, double opening,
                          std::uint64_t noise) {
  Scenario scenario;
  scenario.name = "even_draw";
  scenario.duration_s = duration_s;
  scenario.start = {.tee_pressure_pa = settings.pressure_target_pa, .after_power_up = false};
  scenario.script = ramp(Act::outlet_opening, outlet::house, opens_s, opens_s + 0.5, 0, opening);
  RunOptions options;
  options.logic = logic;
  options.record = true;
  options.record_every_s = 0.05;
  options.sampling = Sampling::ahead;  // what is passed over as calm is what is asked here
  options.noise_seed = noise;
  auto const trace = run(plant, settings, scenario, options);
  std::vector<TracePoint> watched;
  for (auto const& point : trace.points) {
    if (point.time_s >= watched_from_s) {
      if (point.mode != Mode::holding) {
        return {};
      }
      watched.push_back(point);
    }
  }
  if (trace.ending != Ending::finished || watched.size() < 2) {
    return {};
  }
  auto const [least, most] = std::minmax_element(
      watched.begin(), watched.end(),
      [](TracePoint const& a, TracePoint const& b) { return a.tee_pressure_pa < b.tee_pressure_pa; });
  double const swing_pa = most->tee_pressure_pa - least->tee_pressure_pa;
  double const middle_pa = 0.5 * (most->tee_pressure_pa + least->tee_pressure_pa);
  int side = 0;
  int crossings = 0;
  double first_s = 0;
  double last_s = 0;
  for (auto const& point : watched) {
    double const off_pa = point.tee_pressure_pa - middle_pa;
    int const now = off_pa > wide_part * swing_pa ? 1 : off_pa < -wide_part * swing_pa ? -1 : side;
    if (now != side && side != 0) {
      first_s = crossings == 0 ? point.time_s : first_s;
      last_s = point.time_s;
      ++crossings;
    }
    side = now;
  }
  if (crossings < least_crossings || swing_pa < settled_share * settings.pressure_target_pa) {
    return {};
  }
  return {swing_pa, 2 * (last_s - first_s) / (crossings - 1)};
}

PlanMargin hunting_margin(std::span<Plant const> plants, Settings const& settings, ProveOptions const& options) {
  PlanMargin margin{.key = "hunting", .dimension = Dimension::pressure, .says = {}};
  if (options.logic.two_contact_switch) {
    margin.says = "A pressure switch does not regulate, so that it cannot hunt.";
    return margin;
  }
  std::size_t const draws = std::min(draws_looked_at, plants.size());
  std::vector<Swing> swings(draws * openings.size());
  shared_out(swings.size(), options.threads, [&](std::size_t i) {
    std::size_t const draw = i / openings.size();
    swings[i] = swing_while_drawing(plants[draw], settings, options.logic, openings[i % openings.size()],
                                    noise_seed(options.seed, static_cast<std::uint32_t>(draw)));
  });
  auto const widest = std::max_element(swings.begin(), swings.end(),
                                       [](Swing const& a, Swing const& b) { return a.swing_pa < b.swing_pa; });
  Swing const worst = widest != swings.end() ? *widest : Swing{};
  auto const place = static_cast<std::size_t>(widest - swings.begin());
  margin.draw = static_cast<std::uint32_t>(place / openings.size());
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
                worst.swing_pa < limit_pa ? "to" : "past", 100 * openings[place % openings.size()],
                pressure(worst.swing_pa), worst.period_s, margin.draw, pressure(limit_pa))
          : fmt::format("{} to hunting: under an even draw the pressure settles in each of the {} draws looked at.",
                        pressure(limit_pa), draws);
  return margin;
}

}  // namespace wellproof
