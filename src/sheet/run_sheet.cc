#include "sheet/run_sheet.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include <fmt/format.h>

#include "sheet/layout.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

constexpr std::size_t most_events_shown = 200;

std::string in_words(std::string_view what, double value_si, Dimension dimension, UnitSystem units) {
  return fmt::format("{} {}", what, std::isfinite(value_si) ? write_quantity(value_si, dimension, units) : "–");
}

std::string summary(JudgedRun const& run) {
  if (run.trace.tallies.empty()) {
    return "";
  }
  auto const& tally = run.trace.tallies.front();
  using D = Dimension;
  auto const part = [&](std::string_view what, double value_si, D dimension) {
    return in_words(what, value_si, dimension, run.units);
  };
  return part("Pumped", tally.pumped_m3, D::volume) + ", " + part("drawn", tally.drawn_m3, D::volume) + "; " +
         fmt::format("{} {}", tally.starts, tally.starts == 1 ? "start" : "starts") + ", " +
         part("running for", tally.running_s, D::time) + "; " +
         part("pressure at the tee from", tally.least_tee_pressure_pa, D::pressure) + " " +
         part("to", tally.most_tee_pressure_pa, D::pressure) + "; " +
         part("water down to", tally.deepest_level_m, D::length) + "; " +
         part("most current", tally.most_current_a, D::current) + "; " +
         part("hottest winding", tally.most_winding_c, D::temperature) + ".";
}

std::string criterion_text(JudgedRun const& run, Criterion const& criterion, Verdict const& verdict,
                           Paint const& paint) {
  std::string const indent(10, ' ');
  std::string const said = criterion.says.empty() ? std::string(says(criterion.measure)) : criterion.says;
  std::string out = block(said, indent, indent);
  // Put in afterwards, since the signs that make colour take no room on the line.
  out.replace(0, indent.size(), "  " + (verdict.passed ? paint.good("held  ") : paint.bad("FAILED")) + "  ");
  std::string const figures =
      fmt::format("{} {}; {} {}; margin {}", says(criterion.measure),
                  figure(verdict.value, criterion.measure, run.units), bound_words(criterion.measure),
                  figure(criterion.limit, criterion.measure, run.units), margin_text(verdict.margin));
  out += block(figures, "          ", "          ");
  return out;
}

}  // namespace

std::string run_sheet(JudgedRun const& run, bool colour) {
  Paint const paint(colour);
  std::string out = block(run.title.empty() ? run.scenario : run.title, "", "");
  out += block(run.says, "  ", "  ");
  out += block(fmt::format("{}, draw {} of seed {}{}.", run.site_name.empty() ? "Unnamed site" : run.site_name,
                           run.draw, run.seed, run.draw == 0 ? " (the middle of everything)" : ""),
               "  ", "  ");
  out += "\n" + (run.passed() ? paint.good("HELD") : paint.bad("FAILED")) + "\n";
  if (run.trace.ending != Ending::finished) {
    out += block("The run could not be computed to its end: " + spoken(word(run.trace.ending)) + ".", "  ", "  ");
  }
  out += heading("What happened", paint);
  auto const events = told_events(run.trace.events);
  if (events.empty()) {
    out += "  Nothing that the drive did of itself.\n";
  }
  std::size_t const shown = std::min(events.size(), most_events_shown);
  for (std::size_t i = 0; i < shown; ++i) {
    std::string const before = "  " + right(clock_text(events[i].time_s), 10) + "  ";
    std::string const blank(before.size(), ' ');
    out += block(events[i].says, before, blank);
    if (events[i].again > 0) {
      out += block(again_says(events[i]), blank, blank);
    }
  }
  if (shown < events.size()) {
    out += fmt::format("  and {} more\n", events.size() - shown);
  }
  std::string const figures = summary(run);
  if (!figures.empty()) {
    out += "\n" + block(figures, "  ", "  ");
  }
  out += heading("How it is judged", paint);
  for (std::size_t i = 0; i < run.criteria.size() && i < run.verdicts.size(); ++i) {
    out += criterion_text(run, run.criteria[i], run.verdicts[i], paint);
  }
  return out;
}

std::string run_csv(Trace const& trace) {
  std::string out =
      "time_s,tee_pressure_pa,outlet_pressure_pa,measured_pressure_pa,speed_hz,current_a,input_power_w,"
      "pump_flow_m3_s,drawn_flow_m3_s,inflow_m3_s,level_depth_m,wetness,winding_c,pump_water_c,mode\r\n";
  auto const put = [&](double value) {
    // An empty cell where there is no number; a spreadsheet leaves it out of its sums.
    if (std::isfinite(value)) {
      fmt::format_to(std::back_inserter(out), "{:.9g}", value);
    }
    out += ',';
  };
  for (auto const& point : trace.points) {
    for (double const value :
         {point.time_s, point.tee_pressure_pa, point.outlet_pressure_pa, point.measured_pressure_pa, point.speed_hz,
          point.current_a, point.input_power_w, point.pump_flow_m3_s, point.drawn_flow_m3_s, point.inflow_m3_s,
          point.level_depth_m, point.wetness, point.winding_c, point.pump_water_c}) {
      put(value);
    }
    out += word(point.mode);
    out += "\r\n";
  }
  return out;
}

std::string scenario_list(std::vector<Hazard> const& hazards, bool colour) {
  Paint const paint(colour);
  std::string out;
  for (auto const& hazard : hazards) {
    out += paint.strong(hazard.name) + "\n" + block(hazard.title, "  ", "  ") + block(hazard.says, "    ", "    ");
  }
  return out;
}

}  // namespace wellproof
