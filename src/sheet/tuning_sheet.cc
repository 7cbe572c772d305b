#include "sheet/tuning_sheet.h"

#include <cmath>
#include <numbers>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "quantity/writing.h"
#include "sheet/layout.h"

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;

// What that limit promises of the other two (astrom_2006): the loop stays 1/Ms away from −1.
double gain_margin_limit() {
  return most_sensitivity / (most_sensitivity - 1);
}
double phase_margin_limit_deg() {
  return 2 * std::asin(1 / (2 * most_sensitivity)) * 180 / std::numbers::pi;
}

/// "draw 3, 2 gpm flowing, water at 52 ft".
std::string where(RegulatorLoop const& loop, UnitSystem units) {
  return fmt::format("draw {}, {} flowing, water at {}", loop.draw,
                     write_quantity(loop.flow_m3_s, Dimension::flow, units),
                     write_quantity(loop.level_depth_m, Dimension::length, units));
}

std::string finite(double value, std::string_view form, std::string_view unit) {
  return std::isfinite(value) ? fmt::format(fmt::runtime(form), value) + std::string(unit) : "any";
}

std::string regulator_text(Settings const& settings, UnitSystem units) {
  return fmt::format("regulator.gain {}, regulator.reset_time {}",
                     write_quantity(settings.regulator_gain_hz_pa, Dimension::regulator_gain, units),
                     write_quantity(settings.regulator_reset_time_s, Dimension::time, units));
}

std::string check_text(RegulatorCheck const& check, UnitSystem units, Paint const& paint) {
  if (check.loops.empty()) {
    return block("In no draw can the pump hold the target: there is no loop to look at. See pressure.target.", "  ",
                 "  ");
  }
  auto const& nearest = check.nearest;
  auto const row = [&](char const* name, std::string value, std::string bound, bool held, std::size_t at) {
    return std::vector<std::string>{held ? "held" : "FAILED", name, std::move(value), std::move(bound),
                                    where(check.loops[at], units)};
  };
  auto const& by_sensitivity = nearest.margins[nearest.by_sensitivity];
  auto const& by_gain = nearest.margins[nearest.by_gain];
  auto const& by_phase = nearest.margins[nearest.by_phase];
  auto const& by_delay = nearest.margins[nearest.by_delay];
  Table table{{{"", false}, {"Margin", false}, {"Worst", true}, {"Asked", true}, {"Where", false}}, {}};
  table.rows.push_back(row("sensitivity Ms", fmt::format("{:.2f}", by_sensitivity.largest_sensitivity),
                           fmt::format("≤ {}", most_sensitivity),
                           by_sensitivity.largest_sensitivity <= most_sensitivity, nearest.by_sensitivity));
  table.rows.push_back(row("gain", finite(by_gain.gain_margin, "{:.1f}", " ×"),
                           fmt::format("≥ {:.1f} ×", gain_margin_limit()), by_gain.gain_margin >= gain_margin_limit(),
                           nearest.by_gain));
  table.rows.push_back(row("phase", finite(by_phase.phase_margin_deg, "{:.0f}", "°"),
                           fmt::format("≥ {:.0f}°", phase_margin_limit_deg()),
                           by_phase.phase_margin_deg >= phase_margin_limit_deg(), nearest.by_phase));
  table.rows.push_back(row("delay", finite(by_delay.delay_margin_s, "{:.2f}", " s"), "", true, nearest.by_delay));
  return text(table, paint) + "\n" + block(check.swing.says, "  ", "  ");
}

Json check_json(RegulatorCheck const& check) {
  Json json{{"regulator.gain", check.settings.regulator_gain_hz_pa},
            {"regulator.reset_time", check.settings.regulator_reset_time_s},
            {"swing_room", check.swing.value ? Json(*check.swing.value) : Json(nullptr)},
            {"loops", Json::array()}};
  for (std::size_t i = 0; i < check.loops.size(); ++i) {
    auto const& loop = check.loops[i];
    auto const& margins = check.nearest.margins[i];
    json["loops"].push_back({{"draw", loop.draw},
                             {"flow_m3_s", loop.flow_m3_s},
                             {"level_depth_m", loop.level_depth_m},
                             {"sensitivity", margins.largest_sensitivity},
                             {"gain_margin", margins.gain_margin},
                             {"phase_margin_deg", margins.phase_margin_deg},
                             {"delay_margin_s", margins.delay_margin_s},
                             {"crossover_1_s", margins.crossover_1_s}});
  }
  return json;
}

}  // namespace

std::string tuning_sheet(Tuning const& tuning, bool colour) {
  Paint const paint(colour);
  std::string out =
      block(fmt::format("{}: how near the regulator comes to swinging, over {} draws, the water at rest "
                        "and drawn down, little, half and all of the served peak flowing",
                        tuning.site_name.empty() ? "Unnamed site" : visible(tuning.site_name), tuning.draws),
            "", "  ");
  out += heading("As set: " + regulator_text(tuning.as_set.settings, tuning.units), paint);
  out += check_text(tuning.as_set, tuning.units, paint);
  if (tuning.advice) {
    out += heading("What was seen", paint);
    out += block(fmt::format("The pressure swings by {} every {}. {}",
                             write_quantity(tuning.seen->swing_pa, Dimension::pressure, tuning.units),
                             write_quantity(tuning.seen->period_s, Dimension::time, tuning.units), tuning.advice->says),
                 "  ", "  ");
  }
  if (tuning.as_advised) {
    out += heading("As advised: " + regulator_text(tuning.as_advised->settings, tuning.units), paint);
    out += check_text(*tuning.as_advised, tuning.units, paint);
  }
  out += "\n" + block(
                    "Ms is the largest factor by which the loop makes a disturbance worse; gain and delay say how much "
                    "more of each the loop would bear. Where the calculation and the gauge disagree the gauge is "
                    "right: fit the readings and ask again.",
                    "  ", "  ");
  return out;
}

std::string tuning_json(Tuning const& tuning) {
  Json json{{"site", tuning.site_name}, {"draws", tuning.draws}, {"as_set", check_json(tuning.as_set)}};
  if (tuning.advice) {
    json["seen"] = {{"swing", tuning.seen->swing_pa}, {"period", tuning.seen->period_s}};
    json["advice"] = {{"says", tuning.advice->says},
                      {"regulator.gain", tuning.advice->gain_hz_pa},
                      {"regulator.reset_time", tuning.advice->reset_time_s}};
  }
  if (tuning.as_advised) {
    json["as_advised"] = check_json(*tuning.as_advised);
  }
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace wellproof
