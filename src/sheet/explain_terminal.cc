#include <cmath>

#include <fmt/format.h>

#include "sheet/explain_sheet.h"
#include "sheet/layout.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

constexpr std::size_t most_causes = 6;
constexpr std::size_t told_closely = 3;
constexpr std::size_t most_speaking = 4;
constexpr double worth_showing = 0.005;

/// A bar, the longest for a share of 1.
std::string bar(double share) {
  constexpr double longest = 12;
  return std::string(static_cast<std::size_t>(std::lround(share * longest)), '=');
}

std::string ranked(Explanation const& explanation, Paint const& paint) {
  Table table{{{"", true}, {"Cause", false}, {"Likely", true}, {"Before", true}, {"", false}}, {}};
  auto const& causes = explanation.explained.ranking().causes;
  for (std::size_t i = 0; i < causes.size() && table.rows.size() < most_causes; ++i) {
    if (i < 2 || causes[i].posterior > worth_showing) {
      table.rows.push_back({fmt::format("{}", i + 1), std::string(title_of(causes[i])),
                            share_text(causes[i].posterior, causes[i].posterior_error), percent(causes[i].prior),
                            bar(causes[i].posterior)});
    }
  }
  return heading("Causes, the likeliest first", paint) + text(table, paint) +
         block(
             "Likely: with the error that other draws would bring. Before: its share of calls before anything was "
             "told, common practice; --prior says otherwise.",
             "  ", "  ");
}

std::string closely(Explanation const& explanation, Paint const& paint) {
  std::string out;
  auto const& causes = explanation.explained.ranking().causes;
  for (std::size_t i = 0; i < told_closely && i < causes.size(); ++i) {
    auto const& cause = causes[i];
    constexpr double not_worth_it = 0.03;
    if (i > 0 && cause.posterior < not_worth_it) {
      break;
    }
    out += heading(fmt::format("{}. {} ({})", i + 1, title_of(cause), key_of(cause)), paint);
    if (cause.fault < faults().size()) {
      auto const& fault = faults()[cause.fault];
      out += block(std::string(fault.says) + " " + severity_says(explanation, cause), "  ", "  ");
      std::size_t shown = 0;
      for (auto const& each : speaking(explanation, cause)) {
        if (shown++ < most_speaking) {
          out += block(each.says, each.for_it ? "  for      " : "  against  ", "           ");
        }
      }
      out += block(fault.todo, "  do       ", "           ");
    } else {
      out += block("What was told fits a cause that is not in the list about as well as those that are.", "  ", "  ");
    }
  }
  return out;
}

std::string next(Explanation const& explanation, Paint const& paint) {
  auto const& questions = explanation.explained.questions();
  std::string out = heading("What to look at next", paint);
  if (questions.empty()) {
    return out + block("No check in the list would change the picture much.", "  ", "  ");
  }
  auto const& first = questions.front();
  auto const& check = checks()[first.check];
  out += block(fmt::format("{}. {}", check.title, check.how), "  ", "  ");
  out += block(fmt::format("About {:.0f} minutes; it tells {:.2f} bit. Answer with --answer {}=…:", check.minutes,
                           first.information_bits, check.key),
               "  ", "  ");
  auto const meanings = answers_say(explanation, first);
  for (std::size_t a = 0; a < meanings.size(); ++a) {
    out += block(meanings[a], fmt::format("    {}: ", check.answers[a].word), "        ");
  }
  for (std::size_t i = 1; i < questions.size() && i < 4; ++i) {
    auto const& other = checks()[questions[i].check];
    out +=
        block(fmt::format("{} ({:.0f} minutes, {:.2f} bit)", other.title, other.minutes, questions[i].information_bits),
              i == 1 ? "  then: " : "        ", "          ");
  }
  return out;
}

}  // namespace

std::string explain_sheet(Explanation const& explanation, bool colour) {
  Paint const paint(colour);
  std::string out = block(fmt::format("{}: why did it stop?", explanation.site_name), "", "  ");
  out += block(history_says(explanation), "  ", "  ");
  for (auto const& note : explanation.notes) {
    out += block(note, "  ", "  ");
  }
  out += block("Settings: " + explanation.settings_from + ".", "  ", "  ");
  out += "\n" + block(leader_says(explanation), "", "");
  out += ranked(explanation, paint) + closely(explanation, paint) + next(explanation, paint);
  out += heading("Would a setting have avoided it?", paint);
  for (auto const& says : remedies_say(explanation)) {
    out += block(says, "  ", "  ");
  }
  out += heading("Mind", paint);
  for (auto const& caution : explain_cautions(explanation)) {
    out += block(caution.says, "  - ", "    ");
  }
  return out;
}

}  // namespace wellproof
