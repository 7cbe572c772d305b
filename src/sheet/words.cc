#include "sheet/words.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "quantity/writing.h"

namespace wellproof {
namespace {

std::string shown(Range const& range, Dimension dimension, UnitSystem units) {
  return write_range(range, dimension, units);
}

/// The mode that an event leads to, as a clause.
std::string_view becomes(Mode mode) {
  switch (mode) {
    case Mode::waiting:
      return "waits";
    case Mode::asleep:
      return "asleep";
    case Mode::filling:
      return "fills the line";
    case Mode::holding:
      return "holds the pressure";
    case Mode::easing:
      return "eases down towards sleep";
    case Mode::resting:
      return "rests before the next try";
    case Mode::stopped:
      return "stays off until someone resets it";
    case Mode::hand:
      return "runs by hand";
  }
  return "";
}

}  // namespace

bool JudgedRun::passed() const {
  return trace.ending == Ending::finished &&
         std::all_of(verdicts.begin(), verdicts.end(), [](Verdict const& verdict) { return verdict.passed; });
}

std::string site_name(SiteRead const& read) {
  return read.site.name.empty() ? "Unnamed site" : read.site.name;
}

std::string site_in_one_line(SiteRead const& read, UnitSystem units) {
  auto const& site = read.site;
  std::string line = "water at " + shown(site.well.static_level_depth_m, Dimension::length, units);
  line += ", pump of " + shown(site.pump.rated_flow_m3_s, Dimension::flow, units) + " set at " +
          shown(site.pump.setting_depth_m, Dimension::length, units);
  line += ", motor " + shown(site.motor.power_w, Dimension::power, units);
  line += ", tank " + shown(site.tank.volume_m3, Dimension::volume, units);
  return line;
}

std::string verdict_word(Proof const& proof) {
  return proof.proven ? "PROVEN" : "NOT PROVEN";
}

std::string verdict_says(Proof const& proof) {
  std::size_t runs = 0;
  std::size_t failed = 0;
  std::size_t not_computed = 0;
  std::size_t scenarios_failed = 0;
  double bound = 0;
  ScenarioProof const* tightest = nullptr;
  for (auto const& scenario : proof.scenarios) {
    runs += scenario.runs;
    failed += scenario.failed;
    not_computed += scenario.not_computed;
    scenarios_failed += scenario.failed > 0 ? 1 : 0;
    bound = std::max(bound, scenario.fail_upper95);
    if (tightest == nullptr || scenario.worst.margin < tightest->worst.margin) {
      tightest = &scenario;
    }
  }
  if (tightest == nullptr) {
    return "Nothing was run, so nothing is shown.";
  }
  std::string says;
  if (failed == 0) {
    says = fmt::format(
        "{} in {} over {} of what is not known: none failed. In no scenario more than {} of such sites "
        "would fail (95 % confidence). Smallest margin {}, in {}.",
        plural(runs, "run"), plural(proof.scenarios.size(), "scenario"), plural(proof.draws, "draw"), percent(bound),
        margin_text(tightest->worst.margin), tightest->name);
  } else {
    says = fmt::format(
        "{} of {} failed, in {} of {}, over {} of what is not known. Up to {} of such sites would fail "
        "in the worst scenario (95 % confidence). Smallest margin {}, in {}.",
        failed, plural(runs, "run"), scenarios_failed, plural(proof.scenarios.size(), "scenario"),
        plural(proof.draws, "draw"), percent(bound), margin_text(tightest->worst.margin), tightest->name);
  }
  if (not_computed > 0) {
    says += fmt::format(" {} could not be computed to the end and count as failed.", plural(not_computed, "run"));
  }
  return says;
}

std::string infeasible_says(Derived const& derived) {
  std::string keys;
  std::size_t count = 0;
  for (auto const& reason : derived.reasons) {
    if (!reason.feasible) {
      keys += (count == 0 ? "" : ", ") + reason.key;
      ++count;
    }
  }
  return count == 0 ? "" : fmt::format("{} cannot be set well on this site: {}.", plural(count, "value"), keys);
}

std::string replay_command(Proof const& proof, ScenarioProof const& scenario) {
  return fmt::format("wellproof run SITE {} --draw {} --seed {} --draws {}", scenario.name, scenario.worst.draw,
                     proof.seed, proof.draws);
}

std::string clock_text(double time_s) {
  if (!std::isfinite(time_s)) {
    return "–";
  }
  long long const tenths = std::llround(std::min(std::max(time_s, 0.0), 1e9) * 10);
  return fmt::format("{}:{:02}:{:02}.{}", tenths / 36000, tenths / 600 % 60, tenths / 10 % 60, tenths % 10);
}

std::string spoken(std::string_view word) {
  std::string out(word);
  std::replace(out.begin(), out.end(), '_', ' ');
  return out;
}

std::string event_says(RegulatorEvent const& event) {
  using Kind = RegulatorEvent::Kind;
  std::string then(becomes(event.mode));
  switch (event.kind) {
    case Kind::started:
      return "starts: " + then;
    case Kind::slept:
      return "goes to sleep";
    case Kind::woke:
      return "wakes: " + then;
    case Kind::stopped:
      return "STOPS: " + (event.cause ? spoken(word(*event.cause)) : std::string("no cause given")) + "; " + then;
    case Kind::retried:
      return "tries again: " + then;
    case Kind::filled:
      return "the line is full: " + then;
    case Kind::gave_up_sleep:
      return "gives up going to sleep, the pressure fell: " + then;
    case Kind::mode:
      return then;
  }
  return then;
}

std::vector<ToldEvent> told_events(std::vector<TraceEvent> const& events) {
  constexpr std::size_t least_round = 2;
  constexpr std::size_t most_round = 4;
  std::vector<ToldEvent> told;
  // Whether the events from i on say the same as the last ones told, none of which stands for others already.
  auto const repeats = [&](std::size_t i, std::size_t round) {
    if (told.size() < round || i + round > events.size()) {
      return false;
    }
    for (std::size_t k = 0; k < round; ++k) {
      auto const& before = told[told.size() - round + k];
      bool const free = before.again == 0 || (k + 1 == round && before.round == round);
      if (!free || before.says != event_says(events[i + k].what)) {
        return false;
      }
    }
    return true;
  };
  for (std::size_t i = 0; i < events.size();) {
    std::size_t round = least_round;
    while (round <= most_round && !repeats(i, round)) {
      ++round;
    }
    if (round > most_round) {
      told.push_back({events[i].time_s, event_says(events[i].what), 0, 0, 0});
      ++i;
      continue;
    }
    told.back().round = round;
    ++told.back().again;
    told.back().again_until_s = events[i + round - 1].time_s;
    i += round;
  }
  return told;
}

std::string again_says(ToldEvent const& event) {
  if (event.again == 0) {
    return "";
  }
  std::string_view const these = event.round == 2 ? "these two" : event.round == 3 ? "these three" : "these four";
  return fmt::format("{} {} more, until {}", these, event.again == 1 ? "once" : fmt::format("{} times", event.again),
                     clock_text(event.again_until_s));
}

std::string figure(double value_si, Measure measure, UnitSystem units) {
  if (!std::isfinite(value_si)) {
    return "–";
  }
  return write_quantity(value_si, dimension(measure), units);
}

std::string_view says(Measure measure) {
  switch (measure) {
    case Measure::least_tee_pressure:
      return "least pressure at the tank's tee";
    case Measure::least_outlet_pressure:
      return "least pressure at the highest outlet";
    case Measure::most_tee_pressure:
      return "most pressure at the tank's tee";
    case Measure::most_pump_pressure:
      return "most pressure at the pump";
    case Measure::time_below_outlet_wanted:
      return "time with too little pressure at the highest outlet";
    case Measure::no_stop:
      return "stops";
    case Measure::stopped_within:
      return "time until it has stopped";
    case Measure::asleep_within:
      return "time until it sleeps";
    case Measure::turning_shut:
      return "time turning with no flow";
    case Measure::running:
      return "time with the pump turning";
    case Measure::starts:
      return "starts";
    case Measure::winding:
      return "hottest winding";
    case Measure::pump_water:
      return "hottest water in the pump";
    case Measure::water_lost:
      return "water lost";
  }
  return "";
}

std::string_view bound_words(Measure measure) {
  bool const least = measure == Measure::least_tee_pressure || measure == Measure::least_outlet_pressure;
  return least ? "at least" : "at most";
}

std::string percent(double share) {
  if (!std::isfinite(share)) {
    return "–";
  }
  double const hundredths = 100 * share;
  return fmt::format("{:.{}f} %", hundredths, hundredths >= 10 || hundredths <= 0 ? 0 : 1);
}

std::string margin_text(double margin) {
  if (!std::isfinite(margin)) {
    return "–";
  }
  if (std::abs(margin) >= 1000) {
    return margin > 0 ? "> 999" : "< −999";
  }
  // Rounded towards failure, so that a run that failed never reads as 0.00 or more.
  double const shown = std::floor(100 * margin) / 100;
  return fmt::format("{}{:.2f}", shown < 0 ? "−" : "+", std::abs(shown));
}

std::string plural(std::size_t count, std::string_view one) {
  return fmt::format("{} {}{}", count, one, count == 1 ? "" : "s");
}

std::string setting_text(SettingField const& field, double value_si, UnitSystem units) {
  if (!std::isfinite(value_si)) {
    return "–";
  }
  return field.dimension == Dimension::power ? fmt::format("{:.0f} W", value_si)
                                             : write_quantity(value_si, field.dimension, units);
}

std::vector<SettingLine> setting_lines(Derived const& derived, UnitSystem units) {
  auto const reason = [&](std::string_view key) {
    auto const found = std::find_if(derived.reasons.begin(), derived.reasons.end(),
                                    [&](SettingReason const& each) { return each.key == key; });
    SettingReason none;
    none.key = key;
    return found == derived.reasons.end() ? none : *found;
  };
  auto const not_there = [&](std::string_view key) {
    auto const& keys = derived.not_on_drive;
    return std::find(keys.begin(), keys.end(), key) != keys.end();
  };
  std::vector<SettingLine> lines;
  each_setting(derived.settings, [&](SettingField const& field, double value_si) {
    if (not_there(field.key)) {
      return;
    }
    lines.push_back({std::string(field.key), value_si, false, setting_text(field, value_si, units),
                     std::string(field.meaning), reason(field.key)});
  });
  if (!not_there(permissive_key)) {
    lines.push_back({std::string(permissive_key), 0, true, spoken(word(derived.settings.permissive_sense)),
                     "outside contact that allows running", reason(permissive_key)});
  }
  if (not_there(fault_contact_key)) {
    return lines;
  }
  lines.push_back({std::string(fault_contact_key), 0, true, spoken(word(derived.settings.fault_contact_sense)),
                   "contact that tells of a stop", reason(fault_contact_key)});
  return lines;
}

}  // namespace wellproof
