#include "proof/moves.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "quantity/customary.h"
#include "settings/loops.h"
#include "settings/on_card.h"
#include "settings/study.h"

namespace wellproof {
namespace {

constexpr double ceiling_step_hz = 0.5;
constexpr double least_ceiling_share = 0.8;
constexpr double most_power_w = 20000;

bool contains(std::vector<std::string> const& keys, std::string_view key) {
  return std::find(keys.begin(), keys.end(), key) != keys.end();
}

double value_of(Settings const& settings, std::string_view key) {
  double found = 0;
  each_setting(settings, [&](SettingField const& field, double value) { found = field.key == key ? value : found; });
  return found;
}

/// Whether a drive has it to set; its steps become those of the drive where these are the wider ones.
bool can_move(Knob& knob, std::optional<Card> const& card) {
  if (!card) {
    return true;
  }
  auto const* const entry = card->entry(knob.key);
  if (entry == nullptr || entry->fixed) {
    return false;
  }
  if (entry->step && entry->shown != ShownAs::time_over) {
    knob.step = std::max(knob.step, *entry->step);
  }
  return true;
}

std::vector<Knob> knobs_of(std::vector<Plant> const& plants, Settings const& start, ProveOptions const& options,
                           std::vector<std::string> const& fixed, std::optional<Card> const& card) {
  double const gain_for_noise_hz_pa =
      most_gain_for_noise_hz_pa(plants) / std::max(1.0, options.logic.second_gain_share);
  double const gain_step_hz_pa = std::max(0.05 * start.regulator_gain_hz_pa, 1e-9);
  double const pressure_step = pressure_step_pa(options.units);
  // A delay shorter than the filtered load takes to settle would act on what has passed.
  double const settled_s = std::max(1.0, std::ceil(3 * options.logic.current_filter_s));
  // The ceiling only down: above it stands what bounds it. The fill not below what the slowest takes: its end would be
  // met at full speed, on a line that is still empty.
  std::vector<Knob> const all{
      {ceiling_key, ceiling_step_hz, std::max(start.speed_floor_hz, least_ceiling_share * start.speed_ceiling_hz),
       start.speed_ceiling_hz},
      {"pressure.wake_drop", pressure_step, pressure_step, 0.5 * start.pressure_target_pa},
      {"regulator.gain", gain_step_hz_pa, gain_step_hz_pa, std::max(gain_for_noise_hz_pa, start.regulator_gain_hz_pa)},
      {"regulator.reset_time", 0.1, 0.3, 60},
      {"sleep.speed_below", 0.1, start.speed_floor_hz, start.speed_ceiling_hz},
      {"sleep.hold", 1, 1, 110},
      {"sleep.ramp", 0.05, 0.05, 10},
      {"dry_run.amps_below", 0.05, 0.05, start.motor_current_limit_a},
      {"dry_run.power_below", 10, 10, most_power_w},
      {"dry_run.delay", 1, std::min(settled_s, start.dry_run_delay_s), minute_s},
      {"closed.amps_below", 0.05, 0.05, start.motor_current_limit_a},
      {"closed.power_below", 10, 10, most_power_w},
      {"closed.delay", 1, std::min(settled_s, start.closed_delay_s), 2 * minute_s},
      {"long_run.limit", 5 * minute_s, 5 * minute_s, 2 * start.long_run_limit_s},
      {"fill.time", 10, start.fill_time_s / fill_reserve, 2 * start.fill_time_s},
  };
  std::vector<Knob> knobs;
  for (auto knob : all) {
    // What is off stays off, and what acts on nothing stays as it is.
    if (!contains(fixed, knob.key) && value_of(start, knob.key) > 0 && applies(options.logic, knob.key) &&
        can_move(knob, card)) {
      knobs.push_back(knob);
    }
  }
  return knobs;
}

/// What in settings contradicts itself, each by itself.
std::array<bool, 4> contradictions(Settings const& s) {
  auto const crossed = [](double dry, double closed) { return dry > 0 && closed > 0 && dry >= closed; };
  return {crossed(s.dry_run_amps_below_a, s.closed_amps_below_a),
          crossed(s.dry_run_power_below_w, s.closed_power_below_w), s.sleep_band_pa >= s.pressure_wake_drop_pa,
          s.sleep_speed_below_hz >= s.speed_ceiling_hz};
}

}  // namespace

Moves::Moves(Site const& site, std::vector<Plant> const& plants, Settings const& start, ProveOptions const& options,
             std::vector<std::string> const& fixed, std::optional<Card> const& card)
    : site_(site),
      plants_(plants),
      start_(start),
      options_(options),
      fixed_(fixed),
      card_(card),
      knobs_(knobs_of(plants, start, options, fixed, card)) {}

bool Moves::allows(Steps const& steps) {
  for (std::size_t i = 0; i < knobs_.size(); ++i) {
    double const value = value_of(start_, knobs_[i].key) + steps[i] * knobs_[i].step;
    if (steps[i] != 0 && (value < knobs_[i].least || value > knobs_[i].most)) {
      return false;
    }
  }
  auto const now = contradictions(at(steps).settings);
  auto const before = contradictions(start_);
  return std::equal(now.begin(), now.end(), before.begin(), [](bool is, bool was) { return !is || was; });
}

OnDrive Moves::at(Steps const& steps) {
  Settings settings = base(steps);
  each_setting(settings, [&](SettingField const& field, double& value) {
    for (std::size_t i = 0; i < knobs_.size(); ++i) {
      if (field.key == knobs_[i].key && steps[i] != 0 && field.key != ceiling_key) {
        value = std::clamp(value + steps[i] * knobs_[i].step, knobs_[i].least, knobs_[i].most);
      }
    }
  });
  if (!card_) {
    return {settings, options_.logic};
  }
  auto const on = on_card(settings, *card_);
  auto logic = on.logic;
  logic.two_contact_switch = options_.logic.two_contact_switch;
  return {on.settings, logic};
}

Derived const* Moves::anew(Steps const& steps) {
  int const down = ceiling_steps(steps);
  if (down == 0) {
    return nullptr;
  }
  auto const known = derived_.find(down);
  if (known != derived_.end()) {
    return &known->second;
  }
  auto bounds = bounds_of(start_);
  bounds.ceiling_hz += down * knobs_.front().step;
  auto derived = derive(site_, plants_, options_.units, card_ ? card_->logic : Logic{}, bounds);
  return &derived_.emplace(down, std::move(derived)).first->second;
}

/// Of the ceiling, which is the first of the knobs if it is one.
int Moves::ceiling_steps(Steps const& steps) const {
  return !knobs_.empty() && knobs_.front().key == ceiling_key ? steps.front() : 0;
}

Settings Moves::base(Steps const& steps) {
  auto const* const derived = anew(steps);
  if (derived == nullptr) {
    return start_;
  }
  Settings settings = derived->settings;
  each_setting(settings, [&](SettingField const& field, double& value) {
    double const before = value_of(start_, field.key);
    if (contains(fixed_, field.key) || before <= 0) {
      value = before;
    }
  });
  settings.permissive_sense = start_.permissive_sense;
  settings.fault_contact_sense = start_.fault_contact_sense;
  return settings;
}

}  // namespace wellproof
