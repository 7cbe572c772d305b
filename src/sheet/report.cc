#include "sheet/report.h"

#include <cmath>

#include <fmt/format.h>

#include "sheet/card_sheet.h"
#include "sheet/chart.h"
#include "sheet/figures.h"
#include "sheet/insight_sheet.h"
#include "sheet/put.h"
#include "sheet/well_sheet.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

std::string verdict(Plan const& plan) {
  std::string const infeasible = infeasible_says(plan.derived);
  std::string out;
  put(out, "<div class=\"verdict{}\"><strong>{} {}</strong><p>{}</p>", plan.proof.proven ? "" : " fails",
      plan.proof.proven ? "✓" : "✗", verdict_word(plan.proof), escaped(verdict_says(plan.proof)));
  if (!infeasible.empty()) {
    put(out, "<p>{}</p>", escaped(infeasible));
  }
  for (auto const& sentence : rounding_says(plan)) {
    put(out, "<p>{}</p>", escaped(sentence));
  }
  return out + "</div>\n";
}

std::string cautions(Plan const& plan) {
  std::string out = "<h2>Before anything is opened</h2>\n<ul class=\"mind\">\n";
  for (auto const& caution : all_cautions(plan.derived)) {
    put(out, "<li>{}</li>\n", escaped(caution.says));
  }
  return out + "</ul>\n";
}

std::string settings(Plan const& plan) {
  std::string out =
      "<h2>Settings, in the order of entry</h2>\n<table><thead><tr><th>Setting</th><th class=\"n\">Value</th>"
      "<th>Entered</th><th>What it does, and why this value</th></tr></thead><tbody>\n";
  for (auto const& line : setting_lines(plan.derived, plan.units)) {
    auto const& reason = line.reason;
    put(out, "<tr><td class=\"key\">{}</td><td class=\"value\">{}</td><td class=\"pen\"></td><td>{}", escaped(line.key),
        escaped(line.text), escaped(line.meaning));
    if (reason.imposed) {
      out += "<span class=\"tag\">given, not derived</span>";
    }
    if (!reason.feasible) {
      out += "<span class=\"tag fails\">cannot be set well</span>";
    }
    if (!reason.because.empty()) {
      put(out, "<span class=\"why\">{}</span>", escaped(reason.because));
    }
    if (!reason.feasible) {
      put(out, "<span class=\"way\">{}{} {}{}</span>",
          reason.stands_in_the_way.empty() ? "" : "In the way: ", escaped(reason.stands_in_the_way),
          reason.would_change_it.empty() ? "" : "Would change it: ", escaped(reason.would_change_it));
    }
    out += "</td></tr>\n";
  }
  return out + "</tbody></table>\n";
}

std::string charts(Plan const& plan) {
  std::string out = "<h2 class=\"newpage\">How the site works</h2>\n<figure class=\"wide\">\n" + head_figure(plan);
  double const most_m3_s = most_flow_at_target_m3_s(plan.curves);
  put(out,
      "<figcaption>What the pump gives from the speed floor to the ceiling, and what it takes to hold the target of "
      "{}, "
      "with the water at rest and with the well drawn down for good at each flow. The middle of all draws. {}"
      "</figcaption></figure>\n",
      write_quantity(plan.map.target_pa, Dimension::pressure, plan.units),
      most_m3_s >= 0 ? "The ring is the most that pump and well give for good at the target: " +
                           write_quantity(most_m3_s, Dimension::flow, plan.units) + "."
                     : std::string("Even at the ceiling the pump cannot hold the target."));
  out += "<figure class=\"wide\">\n" + load_figure(plan);
  out +=
      "<figcaption>What the motor takes at each speed, and what that means. Lines are the middle of all draws, the "
      "light bands "
      "reach "
      "from the lowest to the highest. A threshold tells two states apart only where their bands do not touch; the "
      "guards look only in the hatched stretch below the ceiling.</figcaption></figure>\n";
  return out;
}

std::string well(Plan const& plan) {
  std::string out = "<h2>What the well gives</h2>\n<ul>\n";
  for (auto const& sentence : well_says(plan.outlook, plan.units)) {
    put(out, "<li>{}</li>\n", escaped(sentence));
  }
  out += "</ul>\n<figure class=\"wide\">\n" + day_figure(plan) +
         "<figcaption>The level on the site's own day, the third in a row: mornings and evenings in the house, zones "
         "from four in the morning. The band holds nine in ten draws.</figcaption></figure>\n";
  if (auto const rest = rest_figure(plan); !rest.empty()) {
    out += "<figure class=\"wide\">\n" + rest +
           "<figcaption>What a rest brings back after the well was drawn at the peak until the pump lost its water. "
           "Longer rests gain less and less.</figcaption></figure>\n";
  }
  return out;
}

std::string spread(Spread const& of, Dimension dimension, UnitSystem units) {
  if (!std::isfinite(of.low) || !std::isfinite(of.high)) {
    return "–";
  }
  auto const unit = customary_unit(dimension, units);
  std::string const low = fmt::format("{:.1f}", of.low / unit.factor);
  std::string const high = fmt::format("{:.1f}", of.high / unit.factor);
  return (low == high ? low : low + " – " + high) + " " + std::string(unit.spelling);
}

/// Figures to hold against the meter. Shutting the line is asked for only where no draw reaches the stop pressure.
std::string comparison(Plan const& plan) {
  constexpr int every_hz = 10;
  auto const& settings = plan.derived.settings;
  std::string rows;
  for (auto const& row : plan.map.rows) {
    if (std::lround(row.speed_hz) % every_hz != 0 || row.speed_hz > settings.speed_ceiling_hz + 0.5) {
      continue;
    }
    put(rows, "<tr><td class=\"n\">{:.0f} Hz</td>", row.speed_hz);
    if (row.shut_pressure_pa.high < settings.pressure_stop_above_pa) {
      put(rows, "<td class=\"n\">{}</td><td class=\"pen\"></td><td class=\"n\">{}</td><td class=\"pen\"></td>",
          spread(row.shut_a, Dimension::current, plan.units),
          spread(row.shut_pressure_pa, Dimension::pressure, plan.units));
    } else {
      rows += "<td colspan=\"4\">do not shut the line: pressure too high</td>";
    }
    put(rows, "<td class=\"n\">{}</td><td class=\"pen\"></td></tr>\n",
        spread(row.most_draw_a, Dimension::current, plan.units));
  }
  return "<h2>To compare on site</h2>\n<p>At a fixed speed, with every tap shut for a few seconds, and with as much "
         "open "
         "as the house can draw. A figure outside its range means that the site is not what its file says: stop and "
         "find "
         "out.</p>\n<table><thead><tr><th class=\"n\">Speed</th><th class=\"n\">Shut: current</th><th>Read</th><th "
         "class=\"n\">Shut: pressure</th><th>Read</th><th class=\"n\">Open: current</th><th>Read</th></tr></thead>"
         "<tbody>\n" +
         rows + "</tbody></table>\n";
}

std::string assumptions(Plan const& plan) {
  std::string out = "<h2>What was assumed</h2>\n";
  if (plan.site.assumptions.empty()) {
    return out + "<p>Nothing: the site file says it all.</p>\n";
  }
  out += "<table><thead><tr><th>Quantity</th><th>Taken as</th><th>Because</th></tr></thead><tbody>\n";
  for (auto const& assumption : plan.site.assumptions) {
    put(out, "<tr><td class=\"key\">{}</td><td>{}</td><td>{}</td></tr>\n", escaped(assumption.key),
        escaped(write_range(assumption.range, assumption.dimension, plan.units)), escaped(assumption.because));
  }
  return out + "</tbody></table>\n";
}

std::string scenarios(Plan const& plan) {
  std::string out =
      "<h2>What was run</h2>\n<table><thead><tr><th>Scenario</th><th class=\"n\">Runs</th><th class=\"n\">Failed</th>"
      "<th class=\"n\">Under</th><th class=\"n\">Margin</th><th>In units</th><th>The worst "
      "run</th></tr></thead><tbody>\n";
  for (auto const& scenario : plan.proof.scenarios) {
    put(out,
        "<tr{}><td>{}{}</td><td class=\"n\">{}</td><td class=\"n\">{}</td><td class=\"n\">{}</td><td "
        "class=\"n\">{}</td><td>{}</td><td>{}</td></tr>\n",
        scenario.failed > 0 ? " class=\"fails\"" : "", escaped(scenario.title.empty() ? scenario.name : scenario.title),
        scenario.failed > 0 ? "<span class=\"tag\">fails</span>" : "", scenario.runs, scenario.failed,
        percent(scenario.fail_upper95), margin_text(scenario.worst.margin), escaped(scenario.distance_says),
        escaped(scenario.worst_says));
  }
  out +=
      "</tbody></table>\n<p class=\"note\">Under: with 95 % confidence fewer than this share of such sites fail. "
      "Margin: "
      "how far the worst run stayed inside its limit, as a share of the allowance; below 0 it failed.</p>\n";
  return out;
}

std::string worst_run(Plan const& plan, WorstRun const& worst, std::size_t number) {
  ScenarioProof const* proof = nullptr;
  for (auto const& scenario : plan.proof.scenarios) {
    proof = scenario.name == worst.scenario ? &scenario : proof;
  }
  std::string out = "<div class=\"run\">\n";
  put(out, "<h3>{}</h3>\n", escaped(proof == nullptr || proof->title.empty() ? worst.scenario : proof->title));
  if (proof != nullptr) {
    put(out, "<p>{}</p>\n<p class=\"replay\"><code>{}</code></p>\n", escaped(proof->worst_says),
        escaped(replay_command(plan.proof, *proof)));
  }
  put(out, "<figure class=\"wide\">\n{}</figure>\n", run_figure(plan, worst, fmt::format("run{}", number)));
  auto const events = marked_events(worst.trace);
  if (!events.empty()) {
    out += "<ol class=\"events\">\n";
    for (auto const& event : events) {
      put(out, "<li>{} {}{}{}</li>\n", clock_text(event.time_s), escaped(event.says), event.again > 0 ? "; " : "",
          again_says(event));
    }
    out += "</ol>\n";
  }
  std::size_t const told = told_events(worst.trace.events).size();
  if (events.size() < told) {
    put(out, "<p class=\"note\">and {} more</p>\n", told - events.size());
  }
  return out + "</div>\n";
}

}  // namespace

std::string html_report(Plan const& plan) {
  std::string const name = site_name(plan.site);
  std::string out;
  put(out,
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
      "content=\"width=device-width, initial-scale=1\">\n<meta http-equiv=\"Content-Security-Policy\" "
      "content=\"default-src 'none'; style-src 'unsafe-inline'\">\n<title>{} – well pump settings</title>\n"
      "<style>{}</style>\n</head>\n<body>\n<header>\n<h1>{}</h1>\n<p class=\"site\">{}</p>\n</header>\n<main>\n",
      escaped(name), report_style(), escaped(name), escaped(site_in_one_line(plan.site, plan.units)));
  out += verdict(plan) + cautions(plan) + (plan.drive ? card_report(plan) : "") + settings(plan) + charts(plan) +
         well(plan) + comparison(plan) + assumptions(plan) + insight_report(plan) + scenarios(plan);
  if (!plan.worst_runs.empty()) {
    out += "<h2 class=\"newpage\">The worst run of each scenario</h2>\n";
    for (std::size_t i = 0; i < plan.worst_runs.size(); ++i) {
      out += worst_run(plan, plan.worst_runs[i], i + 1);
    }
  }
  put(out,
      "</main>\n<footer><p class=\"note\">Seed {}, {} draws of what is not known; the same command gives the same "
      "file.</p></footer>\n</body>\n</html>\n",
      plan.proof.seed, plan.proof.draws);
  return out;
}

}  // namespace wellproof
