
#include <fmt/format.h>

#include "quantity/quantity.h"
#include "sheet/chart.h"
#include "sheet/put.h"
#include "sheet/report.h"
#include "sheet/welltest_figures.h"

namespace wellproof {
namespace {

std::string results(WellTest const& test) {
  std::string out =
      "<h2>Result</h2>\n<table><thead><tr><th>Quantity</th><th></th><th class=\"n\">Value</th><th>95 % between</th>"
      "<th></th></tr></thead><tbody>\n";
  for (auto const& line : result_lines(test)) {
    put(out, "<tr><td class=\"key\">{}</td><td>{}</td><td class=\"value\">{}</td><td>{}</td><td>{}</td></tr>\n",
        escaped(line.name), escaped(line.sign), escaped(line.value), escaped(line.interval), escaped(line.standing));
  }
  return out + "</tbody></table>\n";
}

std::string places(WellTest const& test) {
  if (test.fit.records.size() < 2) {
    return "";
  }
  std::string out =
      "<h2>Each place alone</h2>\n<table><thead><tr><th>Place</th><th class=\"n\">Readings</th><th class=\"n\">RMSE in "
      "the "
      "fit of all</th><th class=\"n\">T alone</th><th class=\"n\">S alone</th></tr></thead><tbody>\n";
  for (auto const& record : test.fit.records) {
    put(out,
        "<tr><td class=\"key\">{}</td><td class=\"n\">{}</td><td class=\"n\">{}</td><td class=\"n\">{}</td><td "
        "class=\"n\">{}</td></tr>\n",
        escaped(place_words(record, test.units)), record.readings.size(),
        write_quantity(record.rmse_m, Dimension::length, test.units),
        record.alone_transmissivity_m2_s
            ? write_quantity(record.alone_transmissivity_m2_s->value, Dimension::transmissivity, test.units)
            : "–",
        record.alone_storativity ? fmt::format("{:.3g}", record.alone_storativity->value) : "–");
  }
  return out + "</tbody></table>\n";
}

std::string figure(std::string const& svg, std::string_view says) {
  return svg.empty() ? "" : fmt::format("<figure class=\"wide\">\n{}<figcaption>{}</figcaption></figure>\n", svg, says);
}

std::string charts(WellTest const& test) {
  std::string out = "<h2 class=\"newpage\">The readings and the fit</h2>\n";
  bool const several = test.fit.rates.size() > 1;
  if (several) {
    out += figure(course_figure(test), "The whole test. Marks are readings, lines the fit of all of them together.");
  }
  out +=
      figure(semilog_figure(test),
             several ? "Each rate by itself, over the logarithm of the time since it began. Marks are readings, lines "
                       "the fit."
                     : "Over the logarithm of time. Marks are readings, lines the fit of all of them together; the "
                       "dashed straight line is what a constant rate comes to at late time.");
  out += figure(
      diagnostic_figure(test),
      "What each change of rate did, scaled to the first rate, with its derivative to the logarithm of time (grey "
      "marks and dashed lines, each over 0.25 of the logarithm). Where marks and derivative climb together on a "
      "slope of one, the casing gives the water; where the derivative is level, flow in the formation is radial "
      "and transmissivity can be read.");
  out +=
      figure(residual_figure(test),
             "What the fit leaves. Scatter around the line is error of reading; a wave is something that the law does "
             "not know.");
  return out;
}

std::string notes(WellTest const& test) {
  std::string out = "<h2>What it tells, and what not</h2>\n<ul class=\"mind\">\n";
  for (auto const& note : test.fit.notes) {
    put(out, "<li>{}</li>\n", escaped(note.says));
  }
  for (auto const& caution : test_cautions()) {
    put(out, "<li>{}</li>\n", escaped(caution));
  }
  return out + "</ul>\n";
}

}  // namespace

std::string welltest_report(WellTest const& test) {
  bool const told = test.fit.tells_transmissivity;
  std::string out;
  put(out,
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
      "content=\"width=device-width, initial-scale=1\">\n<meta http-equiv=\"Content-Security-Policy\" "
      "content=\"default-src 'none'; style-src 'unsafe-inline'\">\n<title>Pumping test</title>\n"
      "<style>{}</style>\n</head>\n<body>\n<header>\n<h1>Pumping test</h1>\n<p "
      "class=\"site\">{}</p>\n</header>\n<main>\n",
      report_style(), escaped(test_says(test)));
  put(out, "<div class=\"verdict{}\"><strong>{} {}</strong><p>{}</p></div>\n", told ? "" : " fails", told ? "✓" : "✗",
      verdict_words(test), escaped(result_says(test)));
  out += results(test) + places(test) + notes(test) + charts(test);
  return out + "</main>\n</body>\n</html>\n";
}

}  // namespace wellproof
