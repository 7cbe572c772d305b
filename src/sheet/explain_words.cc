// The sentences that terminal, report and JSON share.
#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "quantity/quantity.h"
#include "sheet/explain_sheet.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

constexpr double leads_from = 0.5;  // posterior from which a cause is called the likeliest without more words
constexpr double speaks_from = 0.4;

bool is_none(RankedCause const& cause) {
  return cause.fault >= faults().size();
}

/// The parts of the others' likelihood, by how likely they are.
Likelihood others(Ranking const& ranking, RankedCause const& but) {
  Likelihood mean;
  double all = 0;
  for (auto const& cause : ranking.causes) {
    if (cause.fault == but.fault || !cause.possible) {
      continue;
    }
    // By prior: what anything else would lead one to expect.
    double const weight = cause.prior;
    all += weight;
    mean.kinds += weight * cause.parts.kinds;
    mean.hours += weight * cause.parts.hours;
    mean.gaps += weight * cause.parts.gaps;
    mean.symptoms += weight * cause.parts.symptoms;
    mean.shows += weight * cause.parts.shows;
    mean.answers += weight * cause.parts.answers;
  }
  double const scale = all > 0 ? 1 / all : 0;
  return {scale * mean.kinds,    scale * mean.hours, scale * mean.gaps,
          scale * mean.symptoms, scale * mean.shows, scale * mean.answers};
}

std::string kinds_say(Pattern const& pattern) {
  std::string out;
  for (std::size_t i = 0; i < stop_kinds; ++i) {
    if (pattern.kinds[i] > 0) {
      out += fmt::format("{}{:.0f} {}", out.empty() ? "" : ", ", pattern.kinds[i], says(all_stop_kinds[i]));
    }
  }
  return out;
}

std::string hours_say(Pattern const& pattern) {
  double known = 0;
  double night = 0;
  for (std::size_t i = 0; i < hour_bins; ++i) {
    known += pattern.hours[i];
    night += i < 2 || i == hour_bins - 1 ? pattern.hours[i] : 0;
  }
  return fmt::format("{:.0f} of {:.0f} between nine in the evening and six in the morning", night, known);
}

std::string gaps_say(Explanation const& explanation) {
  auto const& gaps = explanation.explained.evidence().pattern.gaps;
  double all = 0;
  for (double const gap : gaps) {
    all += gap;
  }
  return all < 1 ? "how long the newest is past"
                 : fmt::format("{:.0f} of {:.0f} follow the one before after the rest ({})", gaps[0], all,
                               span_text(explanation.settings.dry_run_rest_s));
}

World const& best_world(Explanation const& explanation, RankedCause const& cause) {
  return explanation.explained.worlds()[cause.best_world];
}

std::string shown_text(double value, Show show, UnitSystem units) {
  return dimension_of(show) == Dimension::none ? percent(value) : write_quantity(value, dimension_of(show), units);
}

}  // namespace

std::string share_text(double share, double error) {
  double const percent_share = 100 * share;
  double const percent_error = 100 * error;
  if (percent_share > 99.5) {
    return "over 99 %";
  }
  if (percent_share < 0.5) {
    return "under 1 %";
  }
  return percent_error < 0.5 ? fmt::format("{:.0f} %", percent_share)
                             : fmt::format("{:.0f} ± {:.0f} %", percent_share, std::max(1.0, percent_error));
}

std::string history_says(Explanation const& explanation) {
  auto const& history = explanation.history;
  if (history.stops.empty()) {
    return "No stop was told.";
  }
  auto const& pattern = explanation.explained.evidence().pattern;
  double const span_s = history.stops.front().age_s - history.stops.back().age_s;
  std::string out =
      history.stops.size() == 1
          ? fmt::format("One stop, {} ago: {}.", span_text(history.stops.front().age_s), says(history.stops[0].kind))
          : fmt::format("{} stops within {}, the newest {} ago: {}.", history.stops.size(), span_text(span_s),
                        span_text(history.stops.back().age_s), kinds_say(pattern));
  auto const known = static_cast<double>(std::count_if(
      history.stops.begin(), history.stops.end(), [](Stop const& stop) { return stop.time_of_day_s.has_value(); }));
  if (known > 0 && history.stops.size() > 1) {
    out += " " + hours_say(pattern) + ".";
  }
  return out;
}

std::string leader_says(Explanation const& explanation) {
  auto const& causes = explanation.explained.ranking().causes;
  auto const& first = causes[0];
  auto const share = share_text(first.posterior, first.posterior_error);
  if (is_none(first)) {
    return fmt::format("Nothing in the list fits well: none of these is the likeliest ({}).", share);
  }
  if (first.posterior >= leads_from) {
    return fmt::format("Likeliest: {} ({}).", title_of(first), share);
  }
  return fmt::format("Not decided yet: {} ({}), {} ({}).", title_of(first), share, title_of(causes[1]),
                     share_text(causes[1].posterior, causes[1].posterior_error));
}

std::string severity_says(Explanation const& explanation, RankedCause const& cause) {
  if (is_none(cause) || !cause.possible) {
    return "";
  }
  auto const& severity = best_world(explanation, cause).severity;
  // A difference of temperature has no zero of its scale to it.
  std::string const value = severity.dimension == Dimension::none
                                ? fmt::format("{:.2g}", severity.value)
                                : write_quantity(severity.value, severity.dimension, explanation.units);
  return fmt::format("In the draw that fits best {} {}.", severity.says, value);
}

std::vector<Speaking> speaking(Explanation const& explanation, RankedCause const& cause) {
  std::vector<Speaking> list;
  if (!cause.possible) {
    return list;
  }
  auto const& explained = explanation.explained;
  auto const& evidence = explained.evidence();
  auto const rest = others(explained.ranking(), cause);
  auto const add = [&](double weight, std::string const& says) {
    if (std::abs(weight) > speaks_from) {
      list.push_back({weight > 0, weight, says});
    }
  };
  if (evidence.has_history && evidence.pattern.stops > 0) {
    add(cause.parts.kinds - rest.kinds, "the kinds of stop: " + kinds_say(evidence.pattern));
    add(cause.parts.hours - rest.hours, "the hours: " + hours_say(evidence.pattern));
    add(cause.parts.gaps - rest.gaps, "the gaps: " + gaps_say(explanation));
  } else if (evidence.has_history) {
    add(cause.parts.kinds - rest.kinds, "that it did not stop at all");
  }
  if (!evidence.symptoms.empty()) {
    std::string told;
    for (auto const& symptom : evidence.symptoms) {
      told += fmt::format("{}{}{}", told.empty() ? "" : ", ", symptom.present ? "" : "not: ", says(symptom.symptom));
    }
    add(cause.parts.symptoms - rest.symptoms, "what is noticed: " + told);
  }
  // Readings one by one, against what a cause that is in no list would show.
  for (auto const& show : evidence.shows) {
    if (is_none(cause)) {
      continue;
    }
    auto const& world = best_world(explanation, cause);
    double const weight = explained.holding().of_show(show, world) - explained.holding().of_show_in_none(show);
    auto const& in_world = of(world.shows, show.show);
    if (in_world) {
      add(weight, fmt::format("{}: {} read, {} expected, {} in a sound plant", says(show.show),
                              shown_text(show.value, show.show, explanation.units),
                              shown_text(*in_world, show.show, explanation.units),
                              shown_text(explained.holding().middle_of(show.show), show.show, explanation.units)));
    }
  }
  if (!explained.answers().empty()) {
    std::string told;
    for (auto const& answer : explained.answers()) {
      auto const& check = checks()[answer.check];
      told += fmt::format("{}{} ({})", told.empty() ? "" : ", ", check.answers[answer.answer].says, check.key);
    }
    add(cause.parts.answers - rest.answers, "the checks made: " + told);
  }
  std::stable_sort(list.begin(), list.end(),
                   [](Speaking const& a, Speaking const& b) { return std::abs(a.weight) > std::abs(b.weight); });
  return list;
}

std::string answer_seen(Explanation const& explanation, Question const& question, std::size_t answer) {
  auto const& check = checks()[question.check];
  if (!check.show || *check.show == Show::unbalance) {
    return std::string(check.answers[answer].says);
  }
  auto const band = usual_band(*check.show, explanation.explained.holding());
  auto const text = [&](double value) { return shown_text(value, *check.show, explanation.units); };
  if (answer == 0) {
    return band.low <= 0 ? "less than nothing" : "below " + text(band.low);
  }
  return answer == 2 ? "above " + text(band.high) : fmt::format("{} to {}", text(band.low), text(band.high));
}

std::vector<std::string> answers_say(Explanation const& explanation, Question const& question) {
  std::vector<std::string> out;
  auto const& check = checks()[question.check];
  for (std::size_t a = 0; a < check.answers.size(); ++a) {
    auto const& meaning = question.answers[a];
    std::string const leads =
        meaning.leader < faults().size() ? std::string(faults()[meaning.leader].title) : std::string("none of these");
    out.push_back(fmt::format("{} ({}): then {} leads with {}", answer_seen(explanation, question, a),
                              percent(meaning.share), leads, percent(meaning.leader_posterior)));
  }
  return out;
}

std::vector<std::string> remedies_say(Explanation const& explanation) {
  std::vector<std::string> out;
  for (auto const& remedy : explanation.remedies) {
    if (!remedy.helps()) {
      continue;
    }
    auto const text = [&](double value) { return write_quantity(value, remedy.dimension, explanation.units); };
    out.push_back(fmt::format(
        "{} from {} to {}{}: {:.1f} stops a day become {:.1f}, over {} of the likeliest days lived again{}.",
        remedy.key, text(remedy.from), text(remedy.to), remedy.to_plan ? ", as planned" : "", remedy.stops_before,
        remedy.stops_after, remedy.days,
        remedy.to_plan ? "" : "; fewer stops do not mend what is behind them, and the guard watches less"));
  }
  if (out.empty()) {
    auto const& leader = explanation.explained.ranking().causes.front();
    bool const tried = !explanation.remedies.empty();
    out.push_back(
        is_none(leader) ? "The cause has to be known before a setting can be tried."
        : tried ? fmt::format("No single setting would have halved these stops; {} tried, each over {} likely days "
                              "lived again. The drive is right to stop: mend the cause.",
                              explanation.remedies.size(), explanation.remedies.front().days)
                : "The likely days of this cause hold no stop that a setting could avoid.");
  }
  return out;
}

std::vector<Caution> explain_cautions(Explanation const& explanation) {
  std::vector<Caution> out{
      {"ranking_only",
       "A ranking is no finding. The figures hold for causes as this program knows them and for the site as it was "
       "described; confirm by looking before anything is replaced."},
      {"keep_guards",
       "Do not raise or switch off a guard to keep it running: a pump that turns dry or shut is lost in minutes."},
      {"opening",
       "The drive stays charged after the power is off. Opening it, the splices and the well is for who may do so."}};
  auto const& leader = explanation.explained.ranking().causes.front();
  if (!is_none(leader)) {
    auto const key = faults()[leader.fault].key;
    if (key == "pump_dragging" || key == "valve_shut" || key == "line_frozen") {
      out.push_back({"let_it_stand", "Let the pump stand until this is cleared: each further try heats it."});
    }
  }
  return out;
}

}  // namespace wellproof
