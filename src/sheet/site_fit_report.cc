// What was read on a site against the fitted plant, as a page with charts.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "quantity/customary.h"
#include "quantity/quantity.h"
#include "sheet/chart.h"
#include "sheet/put.h"
#include "sheet/report.h"
#include "sheet/sigma_figure.h"
#include "sheet/site_fit.h"

namespace wellproof {
namespace {

std::string verdict(FittedSite const& fitted) {
  bool const stand = fitted.settings_stand();
  return fmt::format("<div class=\"verdict{}\"><strong>{} {}</strong><p>{}</p></div>\n", stand ? "" : " fails",
                     stand ? "✓" : "✗", stand_words(fitted), escaped(stand_says(fitted)));
}

std::string what_is_wrong(FittedSite const& fitted) {
  std::string out;
  if (!fitted.fit.misfits.empty()) {
    out += "<h2>What fits nothing</h2>\n<ul class=\"mind\">\n";
    for (auto const& misfit : fitted.fit.misfits) {
      put(out, "<li>{}</li>\n", escaped(misfit_says(fitted, misfit)));
    }
    out += "</ul>\n";
  }
  if (auto const sensor = sensor_says(fitted); !sensor.empty()) {
    put(out, "<h2>The sensor</h2>\n<p>{}</p>\n", escaped(sensor));
  }
  if (!fitted.fit.converged) {
    out += "<p><b>The search did not come to rest: take the figures as rough.</b></p>\n";
  }
  return out;
}

std::string moved(FittedSite const& fitted) {
  std::vector<SigmaRow> rows;
  std::size_t quiet = 0;
  for (auto const& unknown : fitted.fit.unknowns) {
    if (unknown.tells()) {
      rows.push_back({unknown.key, write_range(unknown.after, unknown.dimension, fitted.units), unknown.shift_sigmas,
                      sigmas_of_95 * unknown.width_share, false});
    } else {
      ++quiet;
    }
  }
  std::string out = "<h2>What the readings say of the site</h2>\n";
  if (rows.empty()) {
    out += "<p>Nothing that was not known before.</p>\n";
  } else {
    out += "<figure class=\"wide\">\n" +
           sigma_figure("moved", rows, "What moved",
                        "For each quantity of the site how far it moved, in standard deviations of what the site file "
                        "said of it.");
    out +=
        "<figcaption>Rings: how far each quantity moved, in standard deviations of what the site file said; lines hold "
        "it with 95 %. The light band is what the site file said.</figcaption></figure>\n";
    out +=
        "<table><thead><tr><th>Quantity</th><th>What it is</th><th>Said</th><th>Now, with 95 %</th><th "
        "class=\"n\">Shift</th></tr></thead><tbody>\n";
    for (auto const& unknown : fitted.fit.unknowns) {
      if (unknown.tells()) {
        put(out,
            "<tr><td class=\"key\">{}</td><td>{}</td><td>{}</td><td>{} to {}</td><td class=\"n\">{:+.1f}</td></tr>\n",
            escaped(unknown.key), escaped(unknown.meaning),
            escaped(write_range(unknown.before, unknown.dimension, fitted.units)),
            escaped(write_quantity(unknown.low, unknown.dimension, fitted.units)),
            escaped(write_quantity(unknown.high, unknown.dimension, fitted.units)), unknown.shift_sigmas);
      }
    }
    out += "</tbody></table>\n";
  }
  put(out, "<p class=\"note\">{} other quantities were felt and hardly moved; of {} nothing was read.</p>\n", quiet,
      fitted.fit.untouched);
  return out;
}

/// "3 least, speed".
std::string reading_name(FittedSite const& fitted, FittedValue const& each) {
  auto const& reading = fitted.fit.readings.readings[each.reading];
  return fmt::format("{} {}, {}", each.reading + 1, word(reading.condition),
                     key(reading.values[each.value].instrument));
}

std::string readings(FittedSite const& fitted) {
  std::vector<SigmaRow> rows;
  std::string table =
      "<table><thead><tr><th>Reading</th><th>Note</th><th class=\"n\">Read</th><th class=\"n\">Fitted</th><th "
      "class=\"n\">Off</th><th></th></tr></thead><tbody>\n";
  for (auto const& each : fitted.fit.values) {
    auto const& reading = fitted.fit.readings.readings[each.reading];
    auto const& value = reading.values[each.value];
    auto const dimension = dimension_of(value.instrument);
    std::string const read = write_quantity(value.value, dimension, fitted.units);
    std::string const fit = write_quantity(each.fitted, dimension, fitted.units);
    rows.push_back(
        {reading_name(fitted, each), fmt::format("{} read, {} fitted", read, fit), each.off_sigmas, 0, each.left_out});
    put(table,
        "<tr{}><td class=\"key\">{}</td><td>{}</td><td class=\"n\">{}</td><td class=\"n\">{}</td><td "
        "class=\"n\">{:+.1f}</td><td>{}</td></tr>\n",
        each.left_out ? " class=\"fails\"" : "", escaped(reading_name(fitted, each)), escaped(reading.note),
        escaped(read), escaped(fit), each.off_sigmas, each.left_out ? "<span class=\"tag\">fits nothing</span>" : "");
  }
  table += "</tbody></table>\n";
  return "<h2>The readings against the fitted plant</h2>\n<figure class=\"wide\">\n" +
         sigma_figure("readings", rows, "Readings against the fit",
                      "For each reading how far it is from what all others foretell, in standard deviations.") +
         "<figcaption>How far each figure is from what all others foretell, in standard deviations of the difference. "
         "A "
         "cross was left out: it fits nothing.</figcaption></figure>\n" +
         table;
}

std::string settings(FittedSite const& fitted) {
  std::string out = "<h2>The settings</h2>\n";
  if (fitted.changes.empty()) {
    out += "<p>Derived anew they come out as they are.</p>\n";
  } else {
    out +=
        "<table><thead><tr><th>Setting</th><th>Where</th><th class=\"n\">Is</th><th class=\"n\">Derived "
        "anew</th></tr></thead><tbody>\n";
    for (auto const& change : fitted.changes) {
      put(out, "<tr><td class=\"key\">{}</td><td>{}</td><td class=\"n\">{}</td><td class=\"n\">{}</td></tr>\n",
          escaped(change.label), escaped(change.where), escaped(change.now_text), escaped(change.anew_text));
    }
    out += "</tbody></table>\n";
  }
  std::string failed;
  for (auto const& scenario : fitted.proof.scenarios) {
    if (scenario.failed > 0) {
      put(failed,
          "<tr class=\"fails\"><td>{}<span class=\"tag\">fails</span></td><td class=\"n\">{} of "
          "{}</td><td>{}</td></tr>\n",
          escaped(scenario.title.empty() ? scenario.name : scenario.title), scenario.failed, scenario.runs,
          escaped(scenario.worst_says));
    }
  }
  if (!failed.empty()) {
    out +=
        "<p>On the narrower site they fail in:</p>\n<table><thead><tr><th>Scenario</th><th class=\"n\">Failed</th><th>"
        "The worst run</th></tr></thead><tbody>\n" +
        failed + "</tbody></table>\n";
  }
  return out;
}

std::string site_file(FittedSite const& fitted) {
  if (fitted.keys.empty()) {
    return "";
  }
  std::string out = "<h2>What the site file says anew</h2>\n<table><tbody>\n";
  for (auto const& each : fitted.keys) {
    put(out, "<tr><td class=\"key\"><code>{}</code></td><td><code>{}</code></td></tr>\n", escaped(each.key),
        escaped(each.value));
  }
  out += "</tbody></table>\n";
  put(out, "<p class=\"note\">{}</p>\n",
      fitted.into.empty() ? "Nothing was written; --into FILE does." : "Written to " + escaped(fitted.into) + ".");
  return out;
}

}  // namespace

std::string fit_report(FittedSite const& fitted) {
  std::string out;
  put(out,
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
      "content=\"width=device-width, initial-scale=1\">\n<meta http-equiv=\"Content-Security-Policy\" "
      "content=\"default-src 'none'; style-src 'unsafe-inline'\">\n<title>{} – readings</title>\n"
      "<style>{}</style>\n</head>\n<body>\n<header>\n<h1>{}</h1>\n<p class=\"site\">Readings of {} held against the "
      "site file</p>\n</header>\n<main>\n",
      escaped(fitted.name), report_style(), escaped(fitted.name), escaped(fitted.fit.readings.file));
  out +=
      verdict(fitted) + what_is_wrong(fitted) + moved(fitted) + readings(fitted) + settings(fitted) + site_file(fitted);
  put(out,
      "</main>\n<footer><p class=\"note\">Weighted least squares with the site's ranges as prior; seed {}, {} draws of "
      "the narrower site for the proof. The same command gives the same file.</p></footer>\n</body>\n</html>\n",
      fitted.proof.seed, fitted.proof.draws);
  return out;
}

}  // namespace wellproof
