#include "regulator/settings.h"

#include "contract/require.h"

namespace wellproof {

SettingEnds ends_of(SettingField const& field) {
  switch (field.dimension) {
    case Dimension::pressure:
      return field.key == "sensor.trim"         ? SettingEnds{-2e5, 2e5}
             : field.key == "sensor.full_scale" ? SettingEnds{1e5, 1e7}
                                                : SettingEnds{0, 5e6};
    case Dimension::current:
      return {0, 500};
    case Dimension::power:
      return {0, 1e5};
    case Dimension::frequency:
      return {0, 120};
    case Dimension::ramp:
      return {0.01, 200};
    case Dimension::regulator_gain:
      return {1e-9, 0.01};
    case Dimension::time:
      return field.key == "regulator.reset_time" ? SettingEnds{0.01, 1e4} : SettingEnds{0, 1e7};
    default:
      return {0, 1e9};
  }
}

std::optional<SettingField> setting_field(std::string_view key) {
  std::optional<SettingField> found;
  Settings const none;
  each_setting(none, [&](SettingField const& field, double) {
    if (field.key == key) {
      found = field;
    }
  });
  return found;
}

std::string_view word(ContactSense sense) {
  switch (sense) {
    case ContactSense::unused:
      return "unused";
    case ContactSense::closed_runs:
      return "closed_runs";
    case ContactSense::open_runs:
      return "open_runs";
  }
  require(false, "a sense of the permissive has a word");
  return {};
}

std::string_view word(FaultSense sense) {
  switch (sense) {
    case FaultSense::closes_on_stop:
      return "closes_on_stop";
    case FaultSense::opens_on_stop:
      return "opens_on_stop";
  }
  require(false, "a sense of the fault contact has a word");
  return {};
}

std::optional<ContactSense> contact_sense(std::string_view text) {
  for (auto sense : {ContactSense::unused, ContactSense::closed_runs, ContactSense::open_runs}) {
    if (word(sense) == text) {
      return sense;
    }
  }
  return std::nullopt;
}

std::optional<FaultSense> fault_sense(std::string_view text) {
  for (auto sense : {FaultSense::closes_on_stop, FaultSense::opens_on_stop}) {
    if (word(sense) == text) {
      return sense;
    }
  }
  return std::nullopt;
}

}  // namespace wellproof
