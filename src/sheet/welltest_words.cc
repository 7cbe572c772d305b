#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "quantity/quantity.h"
#include "sheet/welltest.h"

namespace wellproof {
namespace {

std::string standing_words(Estimate const& estimate) {
  switch (estimate.standing) {
    case Estimate::Standing::fitted:
      return "fitted";
    case Estimate::Standing::given:
      return "given";
    case Estimate::Standing::assumed:
      return "assumed";
    case Estimate::Standing::none:
      break;
  }
  return "";
}

/// Three significant digits, or four from a thousand on.
std::string digits(double shown) {
  if (shown != 0 && (std::abs(shown) < 1e-3 || std::abs(shown) >= 1e6)) {
    return fmt::format("{:.2e}", shown);
  }
  return std::abs(shown) >= 999.5 ? fmt::format("{:.0f}", shown) : fmt::format("{:.4g}", shown);
}

std::string written(double value_si, Dimension dimension, UnitSystem units) {
  auto const unit = customary_unit(dimension, units);
  std::string const number = digits(value_si / unit.factor);
  return unit.spelling.empty() ? number : number + " " + std::string(unit.spelling);
}

void add(std::vector<TestResultLine>& lines, std::string name, std::string sign, Estimate const& estimate,
         Dimension dimension, UnitSystem units) {
  if (estimate.standing == Estimate::Standing::none) {
    return;
  }
  bool const has_interval = estimate.high > estimate.low;
  lines.push_back(
      {std::move(name), std::move(sign), written(estimate.value, dimension, units),
       has_interval ? written(estimate.low, dimension, units) + " .. " + written(estimate.high, dimension, units) : "",
       standing_words(estimate)});
}

}  // namespace

std::vector<TestResultLine> result_lines(WellTest const& test) {
  auto const& fit = test.fit;
  std::vector<TestResultLine> lines;
  add(lines, "transmissivity", "T", fit.transmissivity_m2_s, Dimension::transmissivity, test.units);
  add(lines, "storativity", "S", fit.storativity, Dimension::none, test.units);
  add(lines, "linear well loss", "B", fit.linear_loss_s_m2, Dimension::linear_loss, test.units);
  add(lines, "quadratic well loss", "C", fit.quadratic_loss_s2_m5, Dimension::quadratic_loss, test.units);
  Estimate across = fit.storage_radius_m;
  across.value *= 2;
  across.low *= 2;
  across.high *= 2;
  add(lines, "casing that stores", "", across, Dimension::diameter, test.units);
  add(lines, "scatter (RMSE)", "", fit.rmse_m, Dimension::length, test.units);
  return lines;
}

std::string result_says(WellTest const& test) {
  auto const& fit = test.fit;
  auto const& t = fit.transmissivity_m2_s;
  if (!fit.tells_transmissivity) {
    return "The data cannot tell the transmissivity. Why, and what would, stands in the notes; the figures below are "
           "what "
           "the least squares made of it, not a result to build on.";
  }
  return fmt::format(
      "Transmissivity is {}, with 95 % between {} and {}. {}", written(t.value, Dimension::transmissivity, test.units),
      written(t.low, Dimension::transmissivity, test.units), written(t.high, Dimension::transmissivity, test.units),
      fit.tells_storativity ? fmt::format("Storativity is {}, between {} and {}.",
                                          written(fit.storativity.value, Dimension::none, test.units),
                                          written(fit.storativity.low, Dimension::none, test.units),
                                          written(fit.storativity.high, Dimension::none, test.units))
                            : "Storativity cannot be told from these readings.");
}

std::string verdict_words(WellTest const& test) {
  return test.fit.tells_transmissivity ? "TRANSMISSIVITY IS KNOWN" : "THE DATA CANNOT TELL";
}

std::string place_words(RecordFit const& record, UnitSystem units) {
  return record.distance_m > 0 ? "at " + written(record.distance_m, Dimension::length, units) : "pumped well";
}

std::string test_says(WellTest const& test) {
  auto const& fit = test.fit;
  std::string rates;
  for (auto const& step : fit.rates) {
    std::string const flow = step.flow_m3_s > 0 ? written(step.flow_m3_s, Dimension::flow, test.units) : "nothing";
    rates +=
        rates.empty() ? flow : ", from " + write_quantity(step.from_s, Dimension::time, test.units) + " on " + flow;
  }
  std::string places;
  for (auto const& record : fit.records) {
    places += fmt::format("{}{} ({} readings, {})", places.empty() ? "" : "; ", place_words(record, test.units),
                          record.readings.size(), record.file);
  }
  return "Pumped: " + rates + ". Read: " + places + ".";
}

std::vector<std::string> test_cautions() {
  return {
      "The laws behind this hold for one confined formation of wide and even extent, with water entering over its "
      "whole "
      "thickness. Cracked rock, a thin or sloping formation and a nearby river are another matter.",
      "A well's transmissivity says what the ground passes, not what the well may be asked for year after year: the "
      "dry "
      "season and neighbours decide that.",
      "Opening a well can foul the water people drink. What goes down it must be clean, and the well is disinfected "
      "afterwards.",
  };
}

}  // namespace wellproof
