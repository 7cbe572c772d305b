#include <algorithm>
#include <cmath>
#include <iterator>
#include <vector>

#include <fmt/format.h>

#include "quantity/quantity.h"
#include "sheet/layout.h"
#include "sheet/site_fit.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

std::string pressure(double value_pa, UnitSystem units) {
  // To a tenth of the unit: no dial and no display says more.
  auto const unit = customary_unit(Dimension::pressure, units);
  double const shown = std::round(value_pa / unit.factor * 10) / 10;
  return fmt::format("{:.1f} {}", shown == 0 ? 0 : shown, unit.spelling);
}

std::vector<ScenarioProof const*> failed_in(Proof const& proof) {
  std::vector<ScenarioProof const*> failed;
  for (auto const& scenario : proof.scenarios) {
    if (scenario.failed > 0) {
      failed.push_back(&scenario);
    }
  }
  return failed;
}

std::string names_of(std::vector<ScenarioProof const*> const& scenarios) {
  std::string out;
  for (auto const* const scenario : scenarios) {
    out += fmt::format("{}{} ({} of {})", out.empty() ? "" : ", ", scenario->name, scenario->failed, scenario->runs);
  }
  return out;
}

/// Which of the failures are news: what a drive cannot hold was so before anything was read.
std::string news_says(FittedSite const& fitted) {
  if (!fitted.proof_before) {
    return "";
  }
  std::vector<ScenarioProof const*> news;
  auto const before = failed_in(*fitted.proof_before);
  auto const failed = failed_in(fitted.proof);
  std::copy_if(failed.begin(), failed.end(), std::back_inserter(news), [&](ScenarioProof const* one) {
    return std::none_of(before.begin(), before.end(),
                        [&](ScenarioProof const* other) { return other->name == one->name; });
  });
  if (news.empty()) {
    return " Each of these failed on the site as it was described too: nothing that was read has brought it about.";
  }
  return news.size() == failed.size()
             ? std::string(" On the site as it was described they held there.")
             : fmt::format(" The readings bring {}; the rest failed on the site as it was described too.",
                           names_of(news));
}

/// "Probe correction (sensor.trim)"; without a card our key.
std::string labelled(FittedSite const& fitted, std::string_view key) {
  auto const* const entry = fitted.card ? fitted.card->entry(key) : nullptr;
  return entry == nullptr || entry->label.empty() ? std::string(key)
                                                  : fmt::format("{} ({})", visible(entry->label), key);
}

/// What to do about a sensor that is off.
std::string trim_says(FittedSite const& fitted, SensorFit const& sensor) {
  constexpr std::string_view key = "sensor.trim";
  if (fitted.card && fitted.card->lacking(key)) {
    return fmt::format(
        "{} has no trim: what it holds stays off by that, and {} has to stand so much {} than the pressure wanted. "
        "Settings derived anew allow for it.",
        visible(fitted.card->name), labelled(fitted, "pressure.target"), sensor.off_pa < 0 ? "lower" : "higher");
  }
  if (fitted.card) {
    auto const at = std::find_if(fitted.changes.begin(), fitted.changes.end(),
                                 [&](SettingChange const& change) { return change.key == key; });
    return at == fitted.changes.end()
               ? fmt::format("{} stays: none of the drive's values is nearer.", labelled(fitted, key))
               : fmt::format("Set {} to {} in place of {}.", labelled(fitted, key), visible(at->anew_text),
                             visible(at->now_text));
  }
  return fmt::format("Set {} to {} in place of {}.", key, pressure(sensor.trim_pa, fitted.units),
                     pressure(sensor.trim_now_pa, fitted.units));
}

}  // namespace

bool FittedSite::settings_stand() const {
  bool const beyond =
      std::any_of(fit.misfits.begin(), fit.misfits.end(), [](Misfit const& each) { return !each.key.empty(); });
  return proof.proven && !beyond;
}

std::string stand_words(FittedSite const& fitted) {
  return fitted.settings_stand() ? "THE SETTINGS STAND" : "THE SETTINGS DO NOT STAND";
}

std::string stand_says(FittedSite const& fitted) {
  auto const& proof = fitted.proof;
  std::string which = fitted.given ? "The settings given" : "The settings derived from the site as it was described";
  if (fitted.card) {
    which += fmt::format(", as {} takes them,", visible(fitted.card->name));
  }
  std::string out;
  for (auto const& misfit : fitted.fit.misfits) {
    if (!misfit.key.empty() && out.empty()) {
      out = fmt::format("{} is beyond what the site file says of it: set it there as found, or wider, and fit again. ",
                        misfit.key);
    }
  }
  std::size_t runs = 0;
  for (auto const& scenario : proof.scenarios) {
    runs += scenario.runs;
  }
  auto const failed = names_of(failed_in(proof));
  out += failed.empty() ? fmt::format("{} pass all {} runs in {} scenarios over {} draws of the narrower site.", which,
                                      runs, proof.scenarios.size(), proof.draws)
                        : fmt::format("{} fail on the narrower site in {}.", which, failed) + news_says(fitted);
  return out;
}

std::string sensor_says(FittedSite const& fitted) {
  if (!fitted.fit.sensor) {
    return "";
  }
  auto const& sensor = *fitted.fit.sensor;
  auto const text = [&](double value_pa) { return pressure(value_pa, fitted.units); };
  double const off_pa = sensor.off_pa + sensor.trim_now_pa;
  std::string out = fmt::format("{} of gauge and drive {}: at {} the drive shows {} too {} (± {} with 95 %). ",
                                sensor.pairs == 1 ? "One pair" : fmt::format("{} pairs", sensor.pairs),
                                sensor.pairs == 1 ? "was read" : "were read", text(sensor.at_pa),
                                text(std::abs(off_pa)), off_pa < 0 ? "little" : "much", text(sensor.off_half_95_pa));
  if (!sensor.matters) {
    out += "That is within the error of the readings: the trim stays as it is.";
  } else {
    out +=
        trim_says(fitted, sensor) +
        " The readings of gauge and drive speak of nothing but the sensor, so it is taken for the cause; a gauge that "
        "errs by so much would look alike.";
  }
  if (sensor.span_known && std::abs(sensor.gain) > sensor.gain_half_95) {
    out += fmt::format(
        " Its span is off by {:+.1f} % (± {:.1f} %), which no trim mends: at other pressures it errs "
        "otherwise.",
        100 * sensor.gain, 100 * sensor.gain_half_95);
  } else if (sensor.matters && !sensor.span_known) {
    out += " A second pair at another pressure would tell the span too.";
  }
  return out;
}

std::string misfit_says(FittedSite const& fitted, Misfit const& misfit) {
  auto const& reading = fitted.fit.readings.readings[misfit.reading];
  auto const& value = reading.values[misfit.value];
  auto const fit = std::find_if(fitted.fit.values.begin(), fitted.fit.values.end(), [&](FittedValue const& each) {
    return each.reading == misfit.reading && each.value == misfit.value;
  });
  auto const dimension = dimension_of(value.instrument);
  std::string out =
      fmt::format("Reading {} ({}): {} was read as {}, and the others foretell {}", misfit.reading + 1,
                  word(reading.condition), says(value.instrument), write_quantity(value.value, dimension, fitted.units),
                  write_quantity(fit->fitted, dimension, fitted.units));
  out += fmt::format(" ({:.0f} of its sigmas off)", std::abs(fit->off_sigmas));
  for (auto const rival : misfit.rivals) {
    out += fmt::format("; or it is {} of the same reading", says(reading.values[rival].instrument));
  }
  out += ". ";
  if (misfit.key.empty()) {
    return out + misfit.says;
  }
  return out + fmt::format("It would fit if {} ({} about {}, beyond what the site file says).", misfit.says, misfit.key,
                           write_quantity(misfit.explained_by, misfit.dimension, fitted.units));
}

}  // namespace wellproof
