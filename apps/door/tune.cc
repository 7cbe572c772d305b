#include <cmath>

#include "door/commands.h"
#include "door/prepared.h"
#include "proof/hunting.h"
#include "quantity/quantity.h"
#include "sheet/tuning_sheet.h"

namespace wellproof {
namespace {

constexpr double longest_period_s = 3600;

RegulatorCheck checked(Prepared const& ready, Settings const& settings, Request const& request) {
  RegulatorCheck check{.settings = settings, .loops = loops_of(ready.plants, settings), .nearest = {}, .swing = {}};
  if (!check.loops.empty()) {
    check.nearest = nearest_loops(check.loops, settings);
  }
  check.swing = hunting_margin(ready.plants, settings, prove_options(request, ready.logic));
  return check;
}

}  // namespace

Answer tune_command(Request const& request) {
  Findings findings;
  auto const read = [&](std::string const& key, std::string const& text, Dimension dimension, double most) {
    double value = 0;
    if (auto const quantity = read_quantity(text, dimension)) {
      value = *quantity;
    }
    if (!(value > 0 && value <= most)) {
      findings.push_back({{"", 0, 0},
                          "--" + key,
                          text.empty() ? "nothing" : "\"" + text + "\"",
                          dimension == Dimension::time ? "a time from one swing to the next, such as \"6 s\""
                                                       : "a pressure from top to bottom, such as \"8 psi\"",
                          ""});
    }
    return value;
  };
  Tuning tuning;
  if (!request.swing.empty() || !request.period.empty()) {
    tuning.seen = SwingSeen{read("swing", request.swing, Dimension::pressure, 1e7),
                            read("period", request.period, Dimension::time, longest_period_s)};
  }
  if (!findings.empty()) {
    return refused(findings);
  }
  auto const ready = prepared(request);
  if (!ready) {
    return refused(ready.error());
  }
  tuning.site_name = ready->site.site.name;
  tuning.units = request.units;
  tuning.draws = ready->plants.size();
  tuning.as_set = checked(*ready, ready->derived.settings, request);
  if (tuning.seen) {
    tuning.advice = hunting_advice(ready->derived.settings, *tuning.seen, ready->plants.front().site.sensor.noise_pa,
                                   request.units);
    auto settings = ready->derived.settings;
    settings.regulator_gain_hz_pa = tuning.advice->gain_hz_pa;
    settings.regulator_reset_time_s = tuning.advice->reset_time_s;
    if (!(settings == ready->derived.settings)) {
      tuning.as_advised = checked(*ready, settings, request);
    }
  }
  return {exit_code::fine, request.json ? tuning_json(tuning) : tuning_sheet(tuning, request.colour), "", {}};
}

}  // namespace wellproof
