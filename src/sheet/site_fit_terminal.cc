#include <cmath>

#include <fmt/format.h>

#include "quantity/quantity.h"
#include "quantity/range.h"
#include "sheet/layout.h"
#include "sheet/site_fit.h"

namespace wellproof {
namespace {

std::string shift_text(double sigmas) {
  return fmt::format("{:+.1f}", sigmas) == "-0.0" ? "+0.0" : fmt::format("{:+.1f}", sigmas);
}

std::string interval(FittedUnknown const& unknown, UnitSystem units) {
  auto const unit = customary_unit(unknown.dimension, units);
  auto const shown = [&](double value) { return (value - unit.offset) / unit.factor; };
  return fmt::format("{:.4g} .. {:.4g}{}{}", shown(unknown.low), shown(unknown.high), unit.spelling.empty() ? "" : " ",
                     unit.spelling);
}

std::string unknowns(FittedSite const& fitted, Paint const& paint) {
  Table table{{{"Quantity", false}, {"95 % between", false}, {"Shift", true}, {"Said", false}}, {}};
  std::size_t quiet = 0;
  for (auto const& unknown : fitted.fit.unknowns) {
    if (unknown.tells()) {
      table.rows.push_back({unknown.key, interval(unknown, fitted.units), shift_text(unknown.shift_sigmas),
                            write_range(unknown.before, unknown.dimension, fitted.units)});
    } else {
      ++quiet;
    }
  }
  std::string out = heading("What the readings say", paint);
  out += table.rows.empty() ? block("Nothing that was not known before.", "  ", "  ") : text(table, paint);
  out +=
      block(fmt::format("Shift: in standard deviations of what the site said. {} other quantities were felt and hardly "
                        "moved; of {} nothing was read.",
                        quiet, fitted.fit.untouched),
            "  ", "  ");
  return out;
}

std::string readings(FittedSite const& fitted, Paint const& paint) {
  Table table{
      {{"", true}, {"Condition", false}, {"", false}, {"Read", true}, {"Fitted", true}, {"Off", true}, {"", false}},
      {}};
  std::size_t last = fitted.fit.readings.readings.size();
  for (auto const& each : fitted.fit.values) {
    auto const& reading = fitted.fit.readings.readings[each.reading];
    auto const& value = reading.values[each.value];
    auto const dimension = dimension_of(value.instrument);
    bool const first = each.reading != last;
    last = each.reading;
    table.rows.push_back({first ? fmt::format("{}", each.reading + 1) : "",
                          first ? std::string(word(reading.condition)) : "", std::string(key(value.instrument)),
                          write_quantity(value.value, dimension, fitted.units),
                          write_quantity(each.fitted, dimension, fitted.units), shift_text(each.off_sigmas),
                          each.left_out ? "fits nothing" : ""});
  }
  return heading("Readings", paint) + text(table, paint) +
         block("Off: in standard deviations, by the fit of all others.", "  ", "  ");
}

std::string changes(FittedSite const& fitted, Paint const& paint) {
  if (fitted.changes.empty()) {
    return heading("Settings", paint) + block("Derived anew they come out as they are.", "  ", "  ");
  }
  Table table{{{"Setting", false}, {"Is", true}, {"Derived anew", true}, {fitted.card ? "Where" : "", false}}, {}};
  for (auto const& change : fitted.changes) {
    table.rows.push_back(
        {visible(change.label), visible(change.now_text), visible(change.anew_text), visible(change.where)});
  }
  return heading("Settings that would change", paint) + text(table, paint);
}

}  // namespace

std::string fit_sheet(FittedSite const& fitted, bool colour) {
  Paint const paint(colour);
  std::string out = block(fitted.name, "", "  ") + "\n";
  out += (fitted.settings_stand() ? paint.good(stand_words(fitted)) : paint.bad(stand_words(fitted))) + "\n";
  out += block(stand_says(fitted), "  ", "  ");
  if (!fitted.fit.misfits.empty()) {
    out += heading("What fits nothing", paint);
    for (auto const& misfit : fitted.fit.misfits) {
      out += block(misfit_says(fitted, misfit), "  - ", "    ");
    }
  }
  if (auto const sensor = sensor_says(fitted); !sensor.empty()) {
    out += heading("Sensor", paint) + block(sensor, "  ", "  ");
  }
  out += unknowns(fitted, paint) + readings(fitted, paint) + changes(fitted, paint);
  if (!fitted.fit.converged) {
    out += "\n" + block("The search did not come to rest: take the figures as rough.", "  ", "  ");
  }
  if (!fitted.into.empty()) {
    out += "\n" + block("The narrower site is written to " + visible(fitted.into) + ".", "", "  ");
  } else if (!fitted.keys.empty()) {
    out += heading("The site file would say", paint);
    for (auto const& each : fitted.keys) {
      out += block(fmt::format("{} = \"{}\"", each.key, each.value), "  ", "    ");
    }
    out += block("--into FILE writes it.", "  ", "  ");
  }
  return out;
}

}  // namespace wellproof
