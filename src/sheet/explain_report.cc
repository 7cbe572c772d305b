
#include <fmt/format.h>

#include "sheet/chart.h"
#include "sheet/explain_sheet.h"
#include "sheet/put.h"
#include "sheet/report.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

constexpr std::size_t most_rows = 8;
constexpr std::size_t told_closely = 3;
constexpr double not_worth_it = 0.03;

std::string bar(double share, double error) {
  constexpr double width = 150;
  return fmt::format(
      "<svg viewBox=\"0 0 {0:.0f} 14\" style=\"width:{0:.0f}px\" aria-hidden=\"true\"><rect x=\"0\" y=\"2\" "
      "width=\"{1:.1f}\" height=\"10\" fill=\"#00598f\"/><line x1=\"{2:.1f}\" x2=\"{3:.1f}\" y1=\"7\" y2=\"7\" "
      "stroke=\"#20262c\" stroke-width=\"1.5\"/></svg>",
      width, width * share, width * std::max(0.0, share - error), width * std::min(1.0, share + error));
}

std::string ranked(Explanation const& explanation) {
  std::string out =
      "<h2>Causes, the likeliest first</h2>\n<table><thead><tr><th></th><th>Cause</th><th class=\"n\">Likely</th>"
      "<th></th><th class=\"n\">Before</th></tr></thead><tbody>\n";
  std::size_t row = 0;
  for (auto const& cause : explanation.explained.ranking().causes) {
    constexpr double least = 0.005;
    if (row >= most_rows || (row > 1 && cause.posterior < least)) {
      break;
    }
    put(out,
        "<tr><td class=\"n\">{}</td><td class=\"key\">{}</td><td class=\"n\">{}</td><td>{}</td><td "
        "class=\"n\">{}</td></tr>\n",
        ++row, escaped(title_of(cause)), escaped(share_text(cause.posterior, cause.posterior_error)),
        bar(cause.posterior, cause.posterior_error), percent(cause.prior));
  }
  return out +
         "</tbody></table>\n<p class=\"note\">Likely: with the error that other draws would bring. Before: the cause's "
         "share of calls before anything was told, common practice.</p>\n";
}

std::string closely(Explanation const& explanation) {
  std::string out;
  std::size_t shown = 0;
  for (auto const& cause : explanation.explained.ranking().causes) {
    if (shown >= told_closely || (shown > 0 && cause.posterior < not_worth_it)) {
      break;
    }
    ++shown;
    put(out, "<h3>{}. {}</h3>\n", shown, escaped(title_of(cause)));
    if (cause.fault >= faults().size()) {
      out += "<p>What was told fits a cause that is not in the list about as well as those that are.</p>\n";
      continue;
    }
    auto const& fault = faults()[cause.fault];
    put(out, "<p>{} {}</p>\n", escaped(fault.says), escaped(severity_says(explanation, cause)));
    out += "<table><tbody>\n";
    for (auto const& each : speaking(explanation, cause)) {
      put(out, "<tr><td class=\"key\">{}</td><td>{}</td><td class=\"n\">{}</td></tr>\n",
          each.for_it ? "for" : "against", escaped(each.says), fmt::format("{:+.1f}", each.weight));
    }
    put(out, "<tr><td class=\"key\">do</td><td colspan=\"2\">{}</td></tr>\n</tbody></table>\n", escaped(fault.todo));
  }
  return out +
         "<p class=\"note\">The figure says by how much the logarithm of the odds moves; readings are held against a "
         "cause that is in no list, the others against all other causes.</p>\n";
}

std::string next(Explanation const& explanation) {
  auto const& questions = explanation.explained.questions();
  std::string out = "<h2>What to look at next</h2>\n";
  if (questions.empty()) {
    return out + "<p>No check in the list would change the picture much.</p>\n";
  }
  std::size_t shown = 0;
  for (auto const& question : questions) {
    constexpr std::size_t most = 3;
    if (shown++ >= most) {
      break;
    }
    auto const& check = checks()[question.check];
    put(out, "<h3>{}</h3>\n<p>{} About {:.0f} minutes; it tells {:.2f} bit.</p>\n<ul class=\"mind\">\n",
        escaped(check.title), escaped(check.how), check.minutes, question.information_bits);
    for (auto const& says : answers_say(explanation, question)) {
      put(out, "<li>{}</li>\n", escaped(says));
    }
    out += "</ul>\n";
  }
  return out;
}

std::string list(char const* title, std::vector<std::string> const& lines) {
  std::string out = fmt::format("<h2>{}</h2>\n<ul class=\"mind\">\n", title);
  for (auto const& line : lines) {
    put(out, "<li>{}</li>\n", escaped(line));
  }
  return out + "</ul>\n";
}

}  // namespace

std::string explain_report(Explanation const& explanation) {
  auto const& first = explanation.explained.ranking().causes.front();
  constexpr double leads_from = 0.5;
  bool const leads = first.posterior >= leads_from && first.fault < faults().size();
  std::string out = fmt::format(
      "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
      "content=\"width=device-width, initial-scale=1\">\n<title>{0}: why did it stop?</title>\n<style>{1}</style>\n"
      "</head>\n<body>\n<h1>{0}: why did it stop?</h1>\n<p class=\"site\">{2}</p>\n",
      escaped(explanation.site_name), report_style(), escaped(history_says(explanation)));
  put(out, "<div class=\"verdict{}\"><strong>{}</strong><p>Settings: {}.</p></div>\n", leads ? "" : " fails",
      escaped(leader_says(explanation)), escaped(explanation.settings_from));
  for (auto const& note : explanation.notes) {
    put(out, "<p class=\"note\">{}</p>\n", escaped(note));
  }
  auto const figure = stops_figure(explanation);
  if (!figure.empty()) {
    put(out,
        "<figure class=\"wide\">\n{}<figcaption>Each stop by its day and time of day. A line is the rest set in the "
        "drive after it: a stop at its end is the next try failing at once.</figcaption></figure>\n",
        figure);
  }
  out += ranked(explanation) + closely(explanation) + next(explanation);
  out += list("Would a setting have avoided it?", remedies_say(explanation));
  std::vector<std::string> mind;
  for (auto const& caution : explain_cautions(explanation)) {
    mind.push_back(caution.says);
  }
  out += list("Mind", mind);
  return out + "</body>\n</html>\n";
}

}  // namespace wellproof
