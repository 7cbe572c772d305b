#include "settings/on_card.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "settings/safe_side.h"

namespace wellproof {
namespace {

constexpr double same_share = 1e-7;  // of a step: what stands on a step but for rounding
constexpr double most_decimals = 6;
constexpr double significant = 3;  // digits after the first, where a card says no step
constexpr double quickest_ramp_hz_s = 100;

double* value_of(Settings& settings, std::string_view key) {
  double* found = nullptr;
  each_setting(settings, [&](SettingField const& field, double& value) { found = field.key == key ? &value : found; });
  return found;
}

/// What the drive shows for one of our values, and the other way. Both in SI.
double shown(CardEntry const& entry, double value, double target_pa) {
  switch (entry.shown) {
    case ShownAs::itself:
      return value;
    case ShownAs::below_target:
      return target_pa - value;
    case ShownAs::above_target:
      return value - target_pa;
    case ShownAs::time_over:
      return entry.over_hz / std::max(value, 1e-6);
  }
  return value;
}

double meant(CardEntry const& entry, double shown_value, double target_pa) {
  // The other ways of showing are their own way back.
  return entry.shown == ShownAs::above_target ? target_pa + shown_value : shown(entry, shown_value, target_pa);
}

/// A figure that grows while ours falls turns the safe side about.
Side side_shown(CardEntry const& entry, Side side) {
  bool const turned = entry.shown == ShownAs::below_target || entry.shown == ShownAs::time_over;
  if (!turned || side == Side::nearest) {
    return side;
  }
  return side == Side::up ? Side::down : Side::up;
}

/// The step of a drive whose manual names none: one in the fourth digit.
double step_of(CardEntry const& entry, double shown) {
  if (entry.step) {
    return *entry.step;
  }
  double const in_unit = std::abs(shown) / entry.unit_factor;
  return in_unit > 0 ? entry.unit_factor * std::pow(10, std::floor(std::log10(in_unit) + 1e-9) - significant)
                     : entry.unit_factor;
}

double on_step(double value, double step, double from, Side side) {
  double const steps = (value - from) / step;
  double const whole = std::round(steps);
  if (std::abs(steps - whole) <= same_share * std::max(1.0, std::abs(steps))) {
    return from + step * whole;
  }
  switch (side) {
    case Side::down:
      return from + step * std::floor(steps);
    case Side::up:
      return from + step * std::ceil(steps);
    case Side::nearest:
      break;
  }
  return from + step * whole;
}

struct Stepped {
  double shown = 0;
  bool clipped = false;
};

Stepped stepped(CardEntry const& entry, double wanted, Side side) {
  if (entry.fixed) {
    return {*entry.fixed, std::abs(*entry.fixed - wanted) > same_share * std::abs(wanted)};
  }
  double const step = step_of(entry, wanted);
  double const from = entry.least.value_or(0);
  if (entry.least && wanted < *entry.least - same_share * step) {
    return {*entry.least, true};
  }
  double rounded = on_step(wanted, step, from, side);
  if (entry.most && rounded > *entry.most + same_share * step) {
    // The last step below the end: a safe side that lies beyond it is out of reach.
    rounded = on_step(*entry.most, step, from, Side::down);
    return {rounded, wanted > *entry.most + same_share * step || side == Side::up};
  }
  return {rounded, false};
}

/// As many decimals as the drive shows.
std::string text_of(CardEntry const& entry, double shown) {
  double const step = step_of(entry, shown) / entry.unit_factor;
  double const from = entry.fixed ? *entry.fixed / entry.unit_factor : entry.least.value_or(0) / entry.unit_factor;
  int decimals = 0;
  double scale = 1;
  auto const whole = [&](double value) {
    return std::abs(value * scale - std::round(value * scale)) < 1e-6 * std::max(1.0, std::abs(value * scale));
  };
  while (decimals < most_decimals && !(whole(from) && (entry.fixed || whole(step)))) {
    ++decimals;
    scale *= 10;
  }
  double const in_unit = std::round(shown / entry.unit_factor * scale) / scale;
  auto const number = fmt::format("{:.{}f}", in_unit == 0 ? 0.0 : in_unit, decimals);
  return entry.unit.empty() ? number : number + " " + entry.unit;
}

std::string_view side_word(Side side) {
  return side == Side::down ? "down" : side == Side::up ? "up" : "nearest";
}

bool is_threshold(std::string_view key) {
  return key.find("amps_below") != std::string_view::npos || key.find("power_below") != std::string_view::npos;
}

/// What a setting is that the drive does not have: nothing acts by it. A long-run guard and a line fill are left out by
/// the logic; their figures stay as what they would be, for a proof to hold the drive against.
void put_neutral(Settings& settings, std::string_view key, Logic const& logic) {
  if (key == "pressure.stop_above") {
    settings.pressure_stop_above_pa =
        logic.sensor_high_share * settings.sensor_full_scale_pa + std::abs(settings.sensor_trim_pa);
  } else if (key == "motor.current_limit") {
    settings.motor_current_limit_a = ends_of(*setting_field(key)).most;
  } else if (key == "sleep.speed_below") {
    settings.sleep_speed_below_hz = settings.speed_floor_hz;
  } else if (key == "sleep.ramp") {
    settings.sleep_ramp_hz_s = quickest_ramp_hz_s;
  } else if (key == "dry_run.rest") {
    settings.dry_run_rest_s = ends_of(*setting_field(key)).most;
  } else if (key == "sensor.trim" || is_threshold(key)) {
    *value_of(settings, key) = 0;
  } else if (key == permissive_key) {
    settings.permissive_sense = ContactSense::unused;
  }
}

class Entering {
 public:
  Entering(Settings const& wanted, Card const& card) : card_(card), out_{wanted, card.logic, {}, {}} {}

  OnCard go() {
    // First what others hang on: a drop may be shown as the pressure it leads to, a second gain is a share of the
    // first.
    constexpr std::array<std::string_view, 2> first{"pressure.target", "regulator.gain"};
    std::vector<Rounded> entered_first;
    for (auto const key : first) {
      if (auto const* const entry = card_.entry(key)) {
        entered_first.push_back(enter(*entry));
      }
    }
    for (auto const& entry : card_.entries) {
      auto const done = std::find_if(entered_first.begin(), entered_first.end(),
                                     [&](Rounded const& one) { return one.key == entry.key; });
      out_.entries.push_back(done != entered_first.end() ? *done : entry.is_choice() ? chosen(entry) : enter(entry));
    }
    for (auto const& key : card_.lacks) {
      put_neutral(out_.settings, key, card_.logic);
      out_.logic.long_run_guard = out_.logic.long_run_guard && key != "long_run.limit";
      auto const side = safe_side(key, card_.logic);
      // A figure that this logic has no use for leaves nothing unguarded.
      if (applies(with_all(card_.logic), key)) {
        out_.lacking.push_back({key, std::string(side.unguarded)});
      }
    }
    return std::move(out_);
  }

 private:
  /// The logic as it were if the drive had guards for long runs and line fill: what is missing then is lacking.
  static Logic with_all(Logic logic) {
    logic.long_run_guard = true;
    logic.line_fill = true;
    return logic;
  }

  Rounded enter(CardEntry const& entry) {
    bool const second = entry.key == second_gain_key;
    auto& settings = out_.settings;
    double* const value = second ? nullptr : value_of(settings, entry.key);
    double const first_hz_pa = settings.regulator_gain_hz_pa;
    Rounded one;
    one.key = entry.key;
    one.wanted = second ? card_.logic.second_gain_share * first_hz_pa : *value;
    auto const side = safe_side(second ? "regulator.gain" : std::string_view(entry.key), card_.logic);
    double const target_pa = settings.pressure_target_pa;
    double const wanted_shown = shown(entry, one.wanted, target_pa);
    auto const found = stepped(entry, wanted_shown, side_shown(entry, side.side));
    one.entered = meant(entry, found.shown, target_pa);
    one.clipped = found.clipped;
    one.text = text_of(entry, found.shown);
    bool const moved = std::abs(one.entered - one.wanted) > same_share * std::abs(one.wanted);
    if (moved) {
      one.safe_side = fmt::format(
          "{}: {}", found.clipped ? (entry.fixed ? "fixed" : "as far as it goes") : side_word(side.side), side.because);
    } else {
      one.entered = one.wanted;
    }
    if (second) {
      out_.logic.second_gain_share = first_hz_pa > 0 ? one.entered / first_hz_pa : 1;
    } else {
      *value = one.entered;
    }
    return one;
  }

  Rounded chosen(CardEntry const& entry) {
    Rounded one;
    one.key = entry.key;
    bool const permissive = entry.key == permissive_key;
    auto& settings = out_.settings;
    std::string_view const wanted = permissive ? word(settings.permissive_sense) : word(settings.fault_contact_sense);
    auto const at = std::find_if(entry.choices.begin(), entry.choices.end(),
                                 [&](CardChoice const& choice) { return choice.word == wanted; });
    one.clipped = at == entry.choices.end();
    auto const& taken = one.clipped ? entry.choices.front() : *at;
    one.text = taken.label;
    if (one.clipped) {
      one.safe_side = fmt::format("the drive has no {}: {}", wanted, safe_side(entry.key, card_.logic).because);
    }
    if (permissive) {
      settings.permissive_sense = contact_sense(taken.word).value_or(settings.permissive_sense);
    } else {
      settings.fault_contact_sense = fault_sense(taken.word).value_or(settings.fault_contact_sense);
    }
    return one;
  }

  Card const& card_;
  OnCard out_;
};

}  // namespace

Settings without_rounding(Settings const& settings, Card const& card) {
  Settings kept = settings;
  auto const entered = on_card(settings, card);
  for (auto const& key : card.lacks) {
    put_neutral(kept, key, card.logic);
  }
  // Contacts are wired as the drive can have them, and what it cannot change is none of rounding.
  kept.permissive_sense = entered.settings.permissive_sense;
  kept.fault_contact_sense = entered.settings.fault_contact_sense;
  for (auto const& entry : card.entries) {
    auto const at = std::find_if(entered.entries.begin(), entered.entries.end(),
                                 [&](Rounded const& one) { return one.key == entry.key; });
    auto* const value = value_of(kept, entry.key);
    if (value != nullptr && at != entered.entries.end() && at->clipped) {
      *value = at->entered;
    }
  }
  return kept;
}

OnCard on_card(Settings const& settings, Card const& card) {
  return Entering(settings, card).go();
}

}  // namespace wellproof
