#include "sheet/terminal.h"

#include <fmt/format.h>

#include "sheet/card_sheet.h"
#include "sheet/insight_sheet.h"
#include "sheet/layout.h"
#include "sheet/well_sheet.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

std::string verdict(Plan const& plan, Paint const& paint) {
  std::string const word = verdict_word(plan.proof);
  std::string out = (plan.proof.proven ? paint.good(word) : paint.bad(word)) + "\n";
  out += block(verdict_says(plan.proof), "  ", "  ");
  std::string const infeasible = infeasible_says(plan.derived);
  if (!infeasible.empty()) {
    out += block(infeasible, "  ", "  ");
  }
  for (auto const& sentence : rounding_says(plan)) {
    out += block(sentence, "  ", "  ");
  }
  return out;
}

std::string mark(SettingReason const& reason) {
  return !reason.feasible ? "!" : reason.imposed ? "=" : "";
}

std::string settings(std::vector<SettingLine> const& lines, Paint const& paint) {
  Table table{{{"Setting", false}, {"Value", true}, {"", false}, {"What it does", false}}, {}};
  bool infeasible = false;
  bool imposed = false;
  for (auto const& line : lines) {
    table.rows.push_back({line.key, line.text, mark(line.reason), line.meaning});
    infeasible = infeasible || !line.reason.feasible;
    imposed = imposed || (line.reason.imposed && line.reason.feasible);
  }
  std::string out = heading("Settings", paint) + text(table, paint);
  if (infeasible) {
    out += "  !  cannot be set well on this site, see its reason\n";
  }
  if (imposed) {
    out += "  =  given, not derived\n";
  }
  return out;
}

std::string reasons(std::vector<SettingLine> const& lines, Paint const& paint) {
  std::string out = heading("Why", paint);
  for (auto const& line : lines) {
    auto const& reason = line.reason;
    if (reason.because.empty() && reason.feasible) {
      continue;
    }
    out += "  " + paint.strong(line.key) + "  " + line.text + (reason.imposed ? ", given" : "") + "\n";
    if (!reason.because.empty()) {
      out += block(reason.because, "    ", "    ");
    }
    if (!reason.feasible) {
      out += "    " + paint.warning("Cannot be set well.") + "\n";
      if (!reason.stands_in_the_way.empty()) {
        out += block("In the way: " + reason.stands_in_the_way, "    ", "      ");
      }
      if (!reason.would_change_it.empty()) {
        out += block("Would change it: " + reason.would_change_it, "    ", "      ");
      }
    }
  }
  return out;
}

std::string assumptions(Plan const& plan, Paint const& paint) {
  auto const& list = plan.site.assumptions;
  return heading("Assumed, since the site file does not say", paint) +
         (list.empty() ? "  Nothing.\n" : assumption_list(list, plan.units, paint));
}

std::string well(Plan const& plan, Paint const& paint) {
  std::string out = heading("What the well gives", paint);
  for (auto const& sentence : well_says(plan.outlook, plan.units)) {
    out += block(sentence, "  ", "    ");
  }
  return out;
}

std::string scenarios(Plan const& plan, Paint const& paint) {
  Table table{
      {{"Scenario", false}, {"Runs", true}, {"Failed", true}, {"Under", true}, {"Margin", true}, {"In units", false}},
      {}};
  for (auto const& scenario : plan.proof.scenarios) {
    table.rows.push_back({scenario.name, fmt::format("{}", scenario.runs), fmt::format("{}", scenario.failed),
                          percent(scenario.fail_upper95), margin_text(scenario.worst.margin),
                          scenario.distance_says.empty() ? "–" : scenario.distance_says});
  }
  std::string out = heading("What was run", paint) + text(table, paint);
  out += block(
      "Under: with 95 % confidence fewer than this share of such sites fail. Margin: how far the worst run "
      "stayed inside its limit, as a share of the allowance; below 0 it failed.",
      "  ", "  ");
  out += heading("The worst run of each", paint);
  for (auto const& scenario : plan.proof.scenarios) {
    std::string const word = scenario.failed == 0 ? paint.good("held  ") : paint.bad("FAILED");
    out += "  " + word + "  " + paint.strong(scenario.title.empty() ? scenario.name : scenario.title) + "\n";
    out += block(scenario.worst_says.empty() ? "No run." : scenario.worst_says, "          ", "          ");
  }
  out += block(
      fmt::format("To see one again, with its draw for N: wellproof run SITE SCENARIO --draw N --seed {} --draws {}{}",
                  plan.proof.seed, plan.proof.draws, plan.drive ? " --card CARD" : ""),
      "  ", "  ");
  return out;
}

std::string cautions(Plan const& plan, Paint const& paint) {
  std::string out = heading("Mind", paint);
  for (auto const& caution : all_cautions(plan.derived)) {
    out += block(caution.says, "  - ", "    ");
  }
  return out;
}

}  // namespace

std::string assumption_list(std::vector<Assumption> const& list, UnitSystem units, Paint const& paint) {
  std::string out;
  for (auto const& assumption : list) {
    out += "  " + paint.strong(assumption.key) + "  " + write_range(assumption.range, assumption.dimension, units) +
           "\n" + block(assumption.because, "    ", "    ");
  }
  return out;
}

std::string terminal_sheet(Plan const& plan, bool colour) {
  Paint const paint(colour);
  auto const lines = setting_lines(plan.derived, plan.units);
  std::string out = block(site_name(plan.site) + ": " + site_in_one_line(plan.site, plan.units), "", "  ") + "\n";
  out += verdict(plan, paint);
  out += plan.drive ? card_sheet(plan, paint) : settings(lines, paint);
  out += reasons(lines, paint);
  out += well(plan, paint);
  out += assumptions(plan, paint);
  out += insight_sheet(plan, colour);
  out += scenarios(plan, paint);
  out += cautions(plan, paint);
  out += "\n" + block(fmt::format("Seed {}, {} draws: the same command gives the same sheet.", plan.proof.seed,
                                  plan.proof.draws),
                      "", "");
  return out;
}

}  // namespace wellproof
