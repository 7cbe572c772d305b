#include "sheet/visit_words.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "quantity/quantity.h"
#include "quantity/wire_gauge.h"
#include "sheet/words.h"

namespace wellproof {
namespace {

/// The smallest step that a meter shows and the unit in which it does.
struct Shown {
  std::string_view unit;
  double factor = 1;
  double step = 1;
};

Shown shown_as(Dimension dimension, UnitSystem units, double size_si) {
  bool const us = units == UnitSystem::us;
  auto const customary = customary_unit(dimension, units);
  switch (dimension) {
    case Dimension::pressure:
      return {customary.spelling, customary.factor, us ? 0.5 : 2};
    case Dimension::length:
      return {customary.spelling, customary.factor, us ? 0.5 : 0.1};
    case Dimension::volume:
      return {customary.spelling, customary.factor, us ? 0.1 : 0.5};
    case Dimension::time: {
      constexpr double long_s = 600;
      return size_si >= long_s ? Shown{"min", 60, 0.5} : Shown{"s", 1, 1};
    }
    case Dimension::power:
      return {"W", 1, 10};
    case Dimension::voltage:
      return {"V", 1, 1};
    default:
      return {customary.spelling, customary.factor, 0.1};
  }
}

std::string number(double value, double step) {
  auto const text = fmt::format("{:.{}f}", value, step < 1 ? 1 : 0);
  return text == "-0" || text == "-0.0" ? "0" : text;
}

std::string wire_text(VisitSheet const& sheet) {
  auto const& diameter = sheet.site.site.cable.conductor_diameter_m;
  if (is_fixed(diameter)) {
    constexpr int thickest = -3;
    constexpr int thinnest = 20;
    for (int gauge = thickest; gauge <= thinnest; ++gauge) {
      if (std::abs(wire_gauge_diameter_m(gauge) / middle(diameter) - 1) < 0.01) {
        return gauge > 0 ? fmt::format("{} AWG", gauge) : fmt::format("{}/0 AWG", 1 - gauge);
      }
    }
  }
  return write_range(diameter, Dimension::diameter, sheet.units) + " conductors";
}

std::vector<TickLine> safety(VisitSheet const& sheet) {
  auto const pressure = [&](double value_pa) { return meter_text(value_pa, Dimension::pressure, sheet.units); };
  auto const& before = sheet.before;
  std::string const part(before.weakest_part);
  std::string relief;
  if (before.relief_told_pa <= 0) {
    relief = fmt::format("None is told. Fit one at the tank, set to {} at most", pressure(before.relief_most_pa));
  } else if (before.relief_told_pa > before.weakest_pa) {
    relief = fmt::format("That of {} opens too late. Fit one set to {} at most", pressure(before.relief_told_pa),
                         pressure(before.relief_most_pa));
  } else {
    relief = fmt::format("That of {} stays fitted; try its lever", pressure(before.relief_told_pa));
  }
  relief += fmt::format(
      ": {} may bear as little as {}. It has to pass {}, the pump's flow, with nothing that shuts "
      "between it and the pump.",
      part, pressure(before.weakest_pa),
      write_quantity(std::ceil(before.relief_flow_m3_s / customary_unit(Dimension::flow, sheet.units).factor) *
                         customary_unit(Dimension::flow, sheet.units).factor,
                     Dimension::flow, sheet.units));
  return {
      {"Lock out, tag out",
       "Disconnect open, your own lock and tag on it; terminals proved dead with a meter tried on a live source before "
       "and after."},
      {"Stored charge",
       "After power is off wait as long as the drive's own label says (write it here), then measure across the "
       "direct-current link.",
       true},
      {"Relief valve", relief},
      {"Pressure", "Drain to nothing before any joint is opened."},
      {"Drinking water",
       "After opening well or line: disinfect, flush, have the water tested; nobody drinks it before."},
      {"Code and licence",
       "Local code, the makers' instructions and the health authority decide; electrical and well work by those "
       "licensed for it here."},
  };
}

std::vector<TickLine> before_power(VisitSheet const& sheet) {
  auto const& before = sheet.before;
  auto const& site = sheet.site.site;
  bool const two_contacts = sheet.visit.plan.two_contacts;
  std::string const why = before.precharge_told ? "as the site file says"
                          : two_contacts        ? "2 psi under cut-in, common practice"
                                                : "about 0.7 of the target, common practice, no source";
  std::vector<TickLine> lines{
      {"Tank precharge",
       fmt::format("Line open to the air, tank empty, gauge on its air valve: {} ({}).",
                   meter_text(before.precharge_pa, Dimension::pressure, sheet.units), why),
       true},
      {"Cable",
       fmt::format("{}, {} from drive to motor: drops up to {:.1f} % of the motor's volts at {} ({}).",
                   wire_text(sheet), write_range(site.cable.length_m, Dimension::length, sheet.units),
                   100 * before.cable_drop_share, meter_text(before.cable_current_a, Dimension::current, sheet.units),
                   before.cable_drop_share > cable_drop_limit_share ? "MORE than the usual 3 %: take a thicker one"
                                                                    : "3 % is the usual limit"),
       true},
      {"Insulation",
       fmt::format("Leads off the drive, 500 V megohmmeter, each lead to earth for a minute: at least {:.0f} MΩ with "
                   "the cable in the well (IEEE 43, at 40 °C). Never through the drive.",
                   before.insulation_ohm / 1e6),
       true},
      {"Current limit",
       fmt::format("Motor's label against the value entered below, {}.",
                   meter_text(sheet.derived.settings.motor_current_limit_a, Dimension::current, sheet.units)),
       true},
  };
  return lines;
}

std::string note_of(SettingReason const& reason) {
  return !reason.feasible ? "!" : reason.imposed && reason.feasible ? "=" : "";
}

std::vector<EntryLine> entries(VisitSheet const& sheet) {
  std::vector<EntryLine> lines;
  auto const settings = setting_lines(sheet.derived, sheet.units);
  auto const note = [&](std::string_view key) {
    auto const at = std::find_if(settings.begin(), settings.end(), [&](SettingLine const& s) { return s.key == key; });
    return at == settings.end() ? std::string() : note_of(at->reason);
  };
  if (sheet.card && sheet.on_card) {
    for (auto const& rounded : sheet.on_card->entries) {
      auto const* const entry = sheet.card->entry(rounded.key);
      lines.push_back({entry == nullptr || entry->label.empty() ? rounded.key : entry->label,
                       entry == nullptr ? "" : entry->where, rounded.text, note(rounded.key)});
    }
    return lines;
  }
  for (auto const& line : settings) {
    bool const of_switch = line.key == "pressure.target" || line.key == "pressure.wake_drop";
    bool const idle = line.reason.because.find("Does not apply") != std::string::npos;
    if (!idle && !(sheet.visit.plan.two_contacts && of_switch)) {
      lines.push_back({line.key, line.meaning, line.text, note_of(line.reason)});
    }
  }
  if (sheet.visit.plan.two_contacts) {
    auto const& s = sheet.derived.settings;
    auto const pressure = [&](double value_pa) { return meter_text(value_pa, Dimension::pressure, sheet.units); };
    lines.insert(lines.begin(),
                 {{"cut-out", "the pressure switch opens at", pressure(s.pressure_target_pa), ""},
                  {"cut-in", "it closes at", pressure(s.pressure_target_pa - s.pressure_wake_drop_pa), ""}});
  }
  return lines;
}

std::string bands_say(Visit const& visit) {
  return fmt::format(
      "Bands: {} draws of what is not known of the site, each test simulated on each, meters erring as they do (common "
      "practice). Of such sites {:.0f} % read inside a band ({:.0f} % at the least, with 95 % confidence), and about "
      "{:.0f} % inside all of them. Outside: read again; outside still: note it, and let the command fit say what "
      "would explain it before anybody relies on the pump.",
      visit.draws, 100 * visit.inside_share, 100 * visit.inside_at_least, 100 * visit.all_inside_share);
}

}  // namespace

std::string label_of(VisitSheet const& sheet, std::string_view key) {
  auto const* const entry = sheet.card ? sheet.card->entry(key) : nullptr;
  return entry == nullptr || entry->label.empty() ? std::string(key) : entry->label;
}

std::string entry_text(VisitSheet const& sheet, std::string_view key) {
  if (sheet.on_card) {
    for (auto const& rounded : sheet.on_card->entries) {
      if (rounded.key == key) {
        return rounded.text;
      }
    }
  }
  std::string text;
  each_setting(sheet.derived.settings, [&](SettingField const& field, double value) {
    if (field.key == key) {
      text = write_quantity(value, field.dimension, sheet.units);
    }
  });
  return text;
}

std::string meter_text(double value, Dimension dimension, UnitSystem units) {
  auto shown = shown_as(dimension, units, std::abs(value));
  if (dimension == Dimension::pressure) {
    shown.step = 1;
  }
  return fmt::format("{} {}", number(std::round(value / shown.factor / shown.step) * shown.step, shown.step),
                     shown.unit);
}

std::string band_text(VisitReading const& reading, UnitSystem units) {
  auto const shown = shown_as(reading.dimension, units, reading.most);
  auto const down = std::floor(reading.least / shown.factor / shown.step + 1e-9) * shown.step;
  auto const up = std::ceil(reading.most / shown.factor / shown.step - 1e-9) * shown.step;
  return reading.no_least ? fmt::format("at most {} {}", number(up, shown.step), shown.unit)
                          : fmt::format("{} to {} {}", number(down, shown.step), number(up, shown.step), shown.unit);
}

VisitWords visit_words(VisitSheet const& sheet) {
  VisitWords words;
  words.name = site_name(sheet.site);
  words.site = site_in_one_line(sheet.site, sheet.units);
  words.verdict = verdict_word(sheet.proof);
  words.verdict_says = verdict_says(sheet.proof);
  words.safety = safety(sheet);
  words.before_power = before_power(sheet);
  words.entries_from = sheet.given.empty() ? "Derived from the site" : "As given in " + sheet.given;
  if (sheet.card) {
    words.entries_from += fmt::format(", in the steps and the order of the card {}", sheet.card->name);
  }
  words.entries = entries(sheet);
  if (sheet.on_card) {
    for (auto const& lacking : sheet.on_card->lacking) {
      words.unguarded.push_back(fmt::format("{}: {}", lacking.key, lacking.unguarded));
    }
  }
  words.tests = visit_test_words(sheet);
  words.bands_say = bands_say(sheet.visit);
  return words;
}

}  // namespace wellproof
