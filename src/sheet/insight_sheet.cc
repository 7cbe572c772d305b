#include "sheet/insight_sheet.h"

#include <algorithm>
#include <vector>

#include <fmt/format.h>

#include "sheet/chart.h"
#include "sheet/layout.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

constexpr std::size_t told = 3;

struct Line {
  std::string says;
  bool past = false;  // the limit: marked by a sign, not by colour
};

std::vector<Line> far_lines(Proof const& proof) {
  std::vector<Line> lines;
  for (auto const& margin : proof.margins) {
    lines.push_back({margin.says, margin.value && *margin.value < 0});
  }
  for (auto const& scenario : proof.scenarios) {
    if (scenario.first_failure) {
      lines.push_back({scenario.name + " " + scenario.first_failure->says + " (first-order estimate).", false});
    }
  }
  return lines;
}

std::string measure_says(WorthMeasuring const& worth) {
  auto says = fmt::format("{} ({}): it explains {} of the smallest margin's spread, oftenest that of {}.", worth.key,
                          worth.meaning, percent(worth.share), worth.scenario);
  if (!worth.how.empty()) {
    says += fmt::format(" {} ({:.0f} min).", worth.how, worth.minutes);
    says += worth.lower_after > worth.lower_before
                ? fmt::format(" Known so well, the margin that 95 % of such sites keep goes from {} to about {}.",
                              margin_text(worth.lower_before), margin_text(worth.lower_after))
                : fmt::format(" The margin that 95 % of such sites keep, {}, would hardly rise by it.",
                              margin_text(worth.lower_before));
  }
  return says;
}

std::vector<std::string> measure_lines(Proof const& proof) {
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < std::min(told, proof.measure.size()); ++i) {
    lines.push_back(measure_says(proof.measure[i]));
  }
  if (lines.empty()) {
    lines.emplace_back(
        "No unknown stands out: with so many draws none explains more of the smallest margin's spread than chance "
        "would.");
  }
  return lines;
}

std::string joined(std::vector<std::string> const& names) {
  return fmt::format("{}", fmt::join(names, ", "));
}

std::vector<std::string> search_lines(Plan const& plan) {
  auto const& search = *plan.search;
  std::vector<std::string> lines;
  auto const shown = [&](SettingMoved const& moved, double value) {
    return setting_text({moved.key, moved.dimension, ""}, value, plan.units);
  };
  auto const fewer = search.start_failed == 0
                         ? ""
                         : fmt::format(", runs that fail from {} to {}", search.start_failed, search.found_failed);
  lines.push_back(search.moved.empty()
                      ? fmt::format("{} found nothing better than what was derived: smallest margin {}.",
                                    plural(search.tries, "attempt"), margin_text(search.start_margin))
                      : fmt::format("Smallest margin from {} as derived to {}{}, in {}.",
                                    margin_text(search.start_margin), margin_text(search.found_margin), fewer,
                                    plural(search.tries, "attempt")));
  if (search.common) {
    auto const failing = search.common->failing_scenarios;
    lines.push_back(fmt::format("A set of common-practice values has {}{}.", margin_text(search.common->margin),
                                failing == 0 ? "" : " and fails in " + plural(failing, "scenario")));
  }
  for (auto const& moved : search.moved) {
    lines.push_back(fmt::format("{} from {} to {}{}", moved.key, shown(moved, moved.from), shown(moved, moved.to),
                                moved.followed ? ", derived anew for this ceiling" : ""));
  }
  std::string given;
  for (auto const& moved : search.moved) {
    given += fmt::format(" --set \"{}={}\"", moved.key, shown(moved, moved.to));
  }
  if (!given.empty()) {
    lines.push_back("To have these settings again without searching:" + given);
  }
  lines.push_back(fmt::format("What binds now: {}.", joined(search.binding)));
  return lines;
}

}  // namespace

std::string insight_sheet(Plan const& plan, bool colour) {
  if (plan.proof.margins.empty()) {
    return "";
  }
  Paint const paint(colour);
  std::string out = heading("How far from trouble", paint);
  for (auto const& line : far_lines(plan.proof)) {
    out += block(line.says, line.past ? "  ! " : "  - ", "    ");
  }
  out += heading("What to measure next", paint);
  for (auto const& line : measure_lines(plan.proof)) {
    out += block(line, "  - ", "    ");
  }
  if (plan.search) {
    out += heading("What searching gained", paint);
    for (auto const& line : search_lines(plan)) {
      out += block(line, "  - ", "    ");
    }
  }
  return out;
}

std::string insight_report(Plan const& plan) {
  if (plan.proof.margins.empty()) {
    return "";
  }
  std::string out = "<h2>How far from trouble</h2>\n<ul>\n";
  for (auto const& line : far_lines(plan.proof)) {
    out += fmt::format("<li>{}{}</li>\n", line.past ? "<span class=\"tag fails\">past it</span> " : "",
                       escaped(line.says));
  }
  out += "</ul>\n<h2>What to measure next</h2>\n<ul>\n";
  for (auto const& line : measure_lines(plan.proof)) {
    out += fmt::format("<li>{}</li>\n", escaped(line));
  }
  out += "</ul>\n";
  if (plan.search) {
    out += "<h2>What searching gained</h2>\n<ul>\n";
    for (auto const& line : search_lines(plan)) {
      out += fmt::format("<li>{}</li>\n", escaped(line));
    }
    out += "</ul>\n";
  }
  return out;
}

}  // namespace wellproof
