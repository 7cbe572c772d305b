#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "sheet/chart.h"
#include "sheet/put.h"
#include "sheet/visit_words.h"

namespace wellproof {
namespace {

std::string ticks(std::vector<TickLine> const& lines) {
  std::string out = "<ul class=\"ticks\">\n";
  for (auto const& line : lines) {
    put(out, "<li><b>{}.</b> {}{}</li>\n", escaped(line.head), escaped(line.says),
        line.read ? "<span class=\"pen\"></span>" : "");
  }
  return out + "</ul>\n";
}

std::string entry_table(std::vector<EntryLine> const& lines, std::size_t from, std::size_t to) {
  std::string out =
      "<table class=\"entries\"><thead><tr><th></th><th>Value</th><th class=\"n\">Enter</th><th "
      "class=\"pen\">Entered</th></tr>"
      "</thead><tbody>\n";
  for (std::size_t i = from; i < to; ++i) {
    auto const& line = lines[i];
    put(out,
        "<tr><td class=\"box\"></td><td><b>{}</b> <small>{}</small></td><td class=\"n\">{}{}</td><td "
        "class=\"pen\"></td></tr>\n",
        escaped(line.label), escaped(line.where),
        line.note.empty() ? "" : "<span class=\"mark\">" + line.note + "</span> ", escaped(line.value));
  }
  return out + "</tbody></table>\n";
}

std::string values(VisitWords const& words) {
  std::string out = "<h2>Values to enter</h2>\n";
  put(out, "<p class=\"note\">{}. <b>!</b> cannot be set well on this site, the plan says why; <b>=</b> given.</p>\n",
      escaped(words.entries_from));
  std::size_t const half = (words.entries.size() + 1) / 2;
  out += "<div class=\"two\">\n" + entry_table(words.entries, 0, half) +
         entry_table(words.entries, half, words.entries.size()) + "</div>\n";
  if (!words.unguarded.empty()) {
    out += "<p class=\"note\"><b>This drive does not have</b> ";
    for (std::size_t i = 0; i < words.unguarded.size(); ++i) {
      put(out, "{}{}", i == 0 ? "" : "; ", escaped(words.unguarded[i]));
    }
    out += "</p>\n";
  }
  return out;
}

std::string test_block(TestWords const& test, std::size_t number) {
  std::string out = "<section class=\"test\">\n";
  put(out, "<h3><span class=\"number\">{}</span> {}</h3>\n", number, escaped(test.title));
  for (auto const& step : test.steps) {
    put(out, "<p>{}</p>\n", escaped(step));
  }
  if (!test.readings.empty()) {
    out += "<table class=\"read\"><tbody>\n";
    for (auto const& line : test.readings) {
      put(out,
          "<tr><td>{} <small>{}</small></td><td class=\"n band\">{}</td><td class=\"pen\"></td><td class=\"box\"></td>"
          "</tr>\n",
          escaped(line.what), escaped(line.meter), escaped(line.band));
    }
    out += "</tbody></table>\n";
  }
  if (!test.put_back.empty()) {
    out += "<ul class=\"ticks back\">\n";
    for (auto const& back : test.put_back) {
      put(out, "<li>{}</li>\n", escaped(back));
    }
    out += "</ul>\n";
  }
  if (!test.after.empty()) {
    put(out, "<p class=\"note\">{}</p>\n", escaped(test.after));
  }
  return out + "</section>\n";
}

std::string top(VisitWords const& words, std::string_view page) {
  std::string out;
  put(out,
      "<header><div><h1>{}</h1><p class=\"site\">{}</p></div><div class=\"page\">Sheet for the visit<br>page {} of "
      "2</div></header>\n",
      escaped(words.name), escaped(words.site), page);
  return out;
}

/// How high a text stands in a column, in the font's size: wrapped after so many letters.
double text_height(std::size_t letters, double letters_a_line, double line = 1.15) {
  return line * std::ceil(static_cast<double>(std::max<std::size_t>(letters, 1)) / letters_a_line);
}

double first_page_height(VisitWords const& words) {
  constexpr double column = 50;
  auto const of = [&](std::vector<TickLine> const& lines) {
    double sum = 0;
    for (auto const& line : lines) {
      sum += text_height(line.head.size() + line.says.size() + (line.read ? 10 : 0), column) + 0.1;
    }
    return sum;
  };
  double left = 0;
  double right = 0;
  std::size_t const half = (words.entries.size() + 1) / 2;
  for (std::size_t i = 0; i < words.entries.size(); ++i) {
    auto const& line = words.entries[i];
    (i < half ? left : right) += text_height(line.label.size() + line.where.size() + 2, 27) + 0.6;
  }
  double rest = text_height(words.verdict_says.size(), 105);
  for (auto const& each : words.unguarded) {
    rest += text_height(each.size(), 115, 1.05);
  }
  return 10 + std::max(of(words.safety), of(words.before_power)) + std::max(left, right) + rest;
}

double second_page_height(VisitWords const& words) {
  constexpr double column = 50;
  double sum = 0;
  for (auto const& test : words.tests) {
    sum += 2;
    for (auto const& step : test.steps) {
      sum += text_height(step.size(), column);
    }
    for (auto const& line : test.readings) {
      sum += text_height(line.what.size() + line.meter.size(), 30) + 0.6;
    }
    sum += 1.3 * static_cast<double>(test.put_back.size());
    sum += test.after.empty() ? 0 : text_height(test.after.size(), column, 1.05);
  }
  return 16 + text_height(words.bands_say.size(), 115, 1.05) + 0.5 * sum + 4;
}

/// The size of the print at which either page holds what it has to, on the shorter of the two papers.
double print_size_pt(VisitWords const& words) {
  constexpr double largest_pt = 9.8;
  constexpr double smallest_pt = 7;
  constexpr double page_pt = 765;
  double const height = std::max(first_page_height(words), second_page_height(words));
  return std::clamp(page_pt / height, smallest_pt, largest_pt);
}

}  // namespace

std::string visit_html(VisitSheet const& sheet) {
  auto const words = visit_words(sheet);
  std::string out;
  put(out,
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
      "content=\"width=device-width, initial-scale=1\">\n<meta http-equiv=\"Content-Security-Policy\" "
      "content=\"default-src 'none'; style-src 'unsafe-inline'\">\n<title>{} – sheet for the visit</title>\n"
      "<style>{}@media print {{ html {{ font-size: {:.1f}pt; }} }}\n</style>\n</head>\n<body>\n<main>\n",
      escaped(words.name), visit_style(), print_size_pt(words));
  out += "<div class=\"sheet\">\n" + top(words, "1");
  put(out, "<p class=\"verdict\"><b>{} {}.</b> {}</p>\n", sheet.proof.proven ? "✓" : "✗", words.verdict,
      escaped(words.verdict_says));
  out += "<div class=\"two\">\n<section><h2>Safety first</h2>\n" + ticks(words.safety) +
         "</section>\n<section><h2>Before power</h2>\n" + ticks(words.before_power) + "</section>\n</div>\n";
  out += values(words) + "</div>\n";
  out += "<div class=\"sheet second\">\n" + top(words, "2") +
         "<h2>Acceptance tests, in this order</h2>\n<div class=\"tests\">\n";
  for (std::size_t i = 0; i < words.tests.size(); ++i) {
    out += test_block(words.tests[i], i + 1);
  }
  put(out, "</div>\n<p class=\"note\">{}</p>\n", escaped(words.bands_say));
  out +=
      "<div class=\"notes\">Notes</div>\n<table "
      "class=\"sign\"><tbody><tr><td>Name</td><td>Date</td><td>Signature</td><td>Next visit</td></tr></tbody>"
      "</table>\n</div>\n</main>\n</body>\n</html>\n";
  return out;
}

}  // namespace wellproof
