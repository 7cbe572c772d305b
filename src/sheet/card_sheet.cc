#include "sheet/card_sheet.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "sheet/chart.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

constexpr std::size_t widest_label = 26;
constexpr std::size_t widest_value = 22;

std::string cut(std::string_view text, std::size_t width) {
  auto const lines = wrapped(visible(text), width);
  if (lines.empty()) {
    return "";
  }
  return lines.size() == 1 ? lines.front() : wrapped(visible(text), width - 2).front() + " …";
}

std::string mark(Plan const& plan, Rounded const& one) {
  auto const& reasons = plan.derived.reasons;
  bool const infeasible = std::any_of(reasons.begin(), reasons.end(), [&](SettingReason const& reason) {
    return reason.key == one.key && !reason.feasible;
  });
  return fmt::format("{}{}", infeasible ? "!" : "", one.clipped ? "<" : one.safe_side.empty() ? "" : "~");
}

/// A value of ours in a person's units.
std::string ours(std::string_view key, double value, UnitSystem units) {
  auto const field = setting_field(key == second_gain_key ? "regulator.gain" : key);
  return field ? setting_text(*field, value, units) : "";
}

/// How an entry came to differ from what was derived: "Start again at (pressure.wake_drop): derived 3.8 psi, …".
std::string moved_says(Plan const& plan, Rounded const& one) {
  auto const* const entry = plan.drive->card.entry(one.key);
  std::string const label = entry == nullptr ? one.key : visible(entry->label);
  if (!setting_field(one.key) && one.key != second_gain_key) {
    return fmt::format("{} ({}): {}.", label, one.key, one.safe_side);
  }
  return fmt::format("{} ({}): derived {}, entered {}; {}.", label, one.key, ours(one.key, one.wanted, plan.units),
                     ours(one.key, one.entered, plan.units), one.safe_side);
}

std::string margin_words(RoundingLoss const& loss, double margin) {
  if (!loss.of_plan) {
    return margin_text(margin);
  }
  return loss.dimension == Dimension::power ? fmt::format("{:.0f} W", margin)
                                            : write_quantity(margin, loss.dimension, UnitSystem::us);
}

}  // namespace

std::vector<std::string> rounding_says(Plan const& plan) {
  std::vector<std::string> says;
  if (!plan.drive) {
    return says;
  }
  for (auto const& loss : plan.drive->losses) {
    says.push_back(
        fmt::format("Rounding to this drive's steps loses {}: its margin is {} as derived and {} as entered.",
                    loss.of_plan ? "the margin " + spoken(loss.name) : loss.name, margin_words(loss, loss.derived),
                    margin_words(loss, loss.entered)));
  }
  if (says.empty() && !plan.proof.proven) {
    says.emplace_back("None of it is lost by rounding to the drive's steps: as derived the same scenarios fail.");
  }
  return says;
}

std::vector<std::string> lacking_says(Plan const& plan) {
  std::vector<std::string> says;
  if (plan.drive) {
    for (auto const& lacking : plan.drive->entered.lacking) {
      says.push_back(fmt::format("{}: {}.", lacking.key, lacking.unguarded));
    }
  }
  return says;
}

std::string card_sheet(Plan const& plan, Paint const& paint) {
  auto const& drive = *plan.drive;
  Table table{{{"To enter", false}, {"Value", true}, {"", false}, {"Where", false}}, {}};
  std::string moved;
  bool infeasible = false;
  for (auto const& one : drive.entered.entries) {
    auto const* const entry = drive.card.entry(one.key);
    std::string const signs = mark(plan, one);
    table.rows.push_back({cut(entry->label, widest_label), cut(one.text, widest_value), signs, visible(entry->where)});
    infeasible = infeasible || signs.find('!') != std::string::npos;
    if (!one.safe_side.empty()) {
      moved += block(moved_says(plan, one), "  ", "    ");
    }
  }
  std::string out = heading("Settings on the drive: " + visible(drive.card.name), paint) + text(table, paint);
  if (infeasible) {
    out += "  !  cannot be set well on this site, see its reason\n";
  }
  if (!moved.empty()) {
    out += "  ~  rounded to the drive's steps; < as far as the drive goes\n";
    out += heading("Rounded", paint) + moved;
  }
  if (auto const lacking = lacking_says(plan); !lacking.empty()) {
    out += heading("What this drive does not have, and what that leaves", paint);
    for (auto const& sentence : lacking) {
      out += block(sentence, "  - ", "    ");
    }
  }
  return out;
}

std::string card_report(Plan const& plan) {
  auto const& drive = *plan.drive;
  std::string out = fmt::format(
      "<h2>Settings on the drive: {}</h2>\n<table><thead><tr><th>To enter</th><th class=\"n\">Value</th>"
      "<th>Entered</th><th>Where</th><th>Ours, and how it was rounded</th></tr></thead><tbody>\n",
      escaped(drive.card.name));
  for (auto const& one : drive.entered.entries) {
    auto const* const entry = drive.card.entry(one.key);
    out +=
        fmt::format("<tr><td class=\"key\">{}</td><td class=\"value\">{}</td><td class=\"pen\"></td><td>{}</td><td>{}",
                    escaped(entry->label), escaped(one.text), escaped(entry->where), escaped(one.key));
    if (one.clipped) {
      out += "<span class=\"tag fails\">as far as the drive goes</span>";
    }
    if (!one.safe_side.empty()) {
      out += fmt::format("<span class=\"why\">{}</span>", escaped(moved_says(plan, one)));
    }
    out += "</td></tr>\n";
  }
  out += "</tbody></table>\n";
  if (auto const lacking = lacking_says(plan); !lacking.empty()) {
    out += "<h2>What this drive does not have, and what that leaves</h2>\n<ul class=\"mind\">\n";
    for (auto const& sentence : lacking) {
      out += fmt::format("<li>{}</li>\n", escaped(sentence));
    }
    out += "</ul>\n";
  }
  return out;
}

}  // namespace wellproof
