#include "door/compared.h"

#include <fmt/format.h>

#include "quantity/quantity.h"
#include "sheet/layout.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

constexpr double told_apart = 0.02;  // of margin
constexpr std::array<char const*, 2> letters{"A", "B"};

std::string verdict_line(ComparedSet const& set, char const* letter) {
  std::uint32_t failed = 0;
  std::size_t lost = 0;
  for (auto const& scenario : set.proof.scenarios) {
    failed += scenario.failed;
    lost += scenario.failed > 0 ? 1 : 0;
  }
  auto const runs = static_cast<std::size_t>(set.proof.draws) * set.proof.scenarios.size();
  std::string const fate = failed == 0 ? "none failed" : fmt::format("{} failed, in {} of the scenarios", failed, lost);
  return fmt::format("{}, {}: {}; of {} runs {}.", letter, visible(set.name), verdict_word(set.proof), runs, fate);
}

std::string failed_text(ScenarioProof const& scenario) {
  return scenario.failed == 0 ? "held" : fmt::format("{} of {}", scenario.failed, scenario.runs);
}

std::string scenario_table(Compared const& compared, Paint const& paint) {
  Table table;
  table.head = {{"Scenario"},       {"A failed", true}, {"B failed", true},
                {"A margin", true}, {"B margin", true}, {"better"}};
  auto const& first = compared.sets[0].proof.scenarios;
  auto const& second = compared.sets[1].proof.scenarios;
  for (std::size_t i = 0; i < first.size() && i < second.size(); ++i) {
    auto const who = better(first[i], second[i]);
    table.rows.push_back({first[i].name, failed_text(first[i]), failed_text(second[i]),
                          margin_text(first[i].worst.margin), margin_text(second[i].worst.margin),
                          who == Better::first    ? "< A"
                          : who == Better::second ? "B >"
                                                  : "="});
  }
  return text(table, paint);
}

/// What one set loses that the other holds.
std::string lost_lines(Compared const& compared, std::size_t which) {
  auto const& mine = compared.sets[which].proof.scenarios;
  auto const& other = compared.sets[1 - which].proof.scenarios;
  std::string alone;
  std::string both;
  for (std::size_t i = 0; i < mine.size() && i < other.size(); ++i) {
    if (mine[i].failed > 0) {
      auto& list = other[i].failed > 0 ? both : alone;
      list += (list.empty() ? "" : ", ") + mine[i].name;
    }
  }
  std::string const lead = fmt::format("  Only {} loses: ", letters[which]);
  std::string lines = block(alone.empty() ? "nothing." : alone + ".", lead, "    ");
  if (which == 1) {
    lines += block(both.empty() ? "nothing." : both + ".", "  Both lose: ", "    ");
  }
  return lines;
}

std::string differing_settings(Compared const& compared, Paint const& paint) {
  Table table;
  table.head = {{"Setting"}, {"A", true}, {"B", true}, {""}};
  auto const& a = compared.sets[0].settings;
  auto const& b = compared.sets[1].settings;
  std::vector<double> others;
  each_setting(b, [&](SettingField const&, double value) { others.push_back(value); });
  std::size_t at = 0;
  each_setting(a, [&](SettingField const& field, double value) {
    auto const here = write_quantity(value, field.dimension, compared.units);
    auto const there = write_quantity(others[at], field.dimension, compared.units);
    ++at;
    if (here != there && applies(compared.logic, field.key)) {
      table.rows.push_back({std::string(field.key), here, there, std::string(field.meaning)});
    }
  });
  auto const choice = [&](std::string_view key, std::string_view here, std::string_view there) {
    if (here != there) {
      table.rows.push_back({std::string(key), std::string(here), std::string(there), ""});
    }
  };
  choice(permissive_key, word(a.permissive_sense), word(b.permissive_sense));
  choice(fault_contact_key, word(a.fault_contact_sense), word(b.fault_contact_sense));
  return table.rows.empty() ? "  They are the same.\n" : text(table, paint);
}

}  // namespace

Better better(ScenarioProof const& first, ScenarioProof const& second) {
  if (first.failed != second.failed) {
    return first.failed < second.failed ? Better::first : Better::second;
  }
  double const apart = first.worst.margin - second.worst.margin;
  return apart > told_apart ? Better::first : apart < -told_apart ? Better::second : Better::neither;
}

std::string compared_sheet(Compared const& compared, bool colour) {
  Paint const paint(colour);
  auto const& [first, second] = compared.sets;
  std::string out = block(visible(compared.site_name) + ": two sets of settings", "", "  ") + '\n';
  out += block(verdict_line(first, "A"), "  ", "    ");
  out += block(verdict_line(second, "B"), "  ", "    ");
  out += block(
      fmt::format("Both on the same {} draws of what is not known, seed {}.", first.proof.draws, first.proof.seed),
      "  ", "  ");
  out += heading("Scenario by scenario", paint) + scenario_table(compared, paint);
  out += block(
      "Failed: draws in which it did not hold. Margin: of the worst draw; 1 is far inside the limit, below 0 it "
      "failed. Better: < A or B >; = where they differ by next to nothing.",
      "  ", "  ");
  out += "\n" + lost_lines(compared, 0) + lost_lines(compared, 1);
  out += heading("Settings that differ", paint) + differing_settings(compared, paint);
  for (auto const& set : compared.sets) {
    if (set.name == common_practice_set) {
      out += "\n" + block(
                        "common_practice: what people commonly enter by the motor's power alone. No source stands "
                        "behind it.",
                        "  ", "  ");
      break;
    }
  }
  return out;
}

}  // namespace wellproof
