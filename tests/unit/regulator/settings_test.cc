#include "regulator/settings.h"

#include <gtest/gtest.h>

#include <set>
#include <string>

#include "regulator/regulator.h"

namespace wellproof {
namespace {

TEST(Settings, EachIsNamedOnceAndNamesADifferentNumber) {
  Settings settings;
  std::set<std::string> keys;
  std::set<double const*> numbers;
  int count = 0;
  each_setting(settings, [&](SettingField const& field, double& value) {
    keys.emplace(field.key);
    numbers.insert(&value);
    ++count;
  });
  EXPECT_EQ(count, 26);
  EXPECT_EQ(keys.size(), 26U);
  EXPECT_EQ(numbers.size(), 26U);
}

TEST(Settings, TheDimensionOfAKeyIsThatOfItsName) {
  Settings const settings;
  each_setting(settings, [](SettingField const& field, double) {
    std::string const key(field.key);
    bool const amps = key.find("amps") != std::string::npos || key == "motor.current_limit";
    EXPECT_EQ(field.dimension == Dimension::current, amps) << key;
    EXPECT_EQ(field.dimension == Dimension::power, key.find("power") != std::string::npos) << key;
    EXPECT_EQ(field.dimension == Dimension::ramp, key.find("ramp") != std::string::npos) << key;
  });
}

TEST(Settings, AWordReadBackIsTheSenseItWasWrittenFor) {
  for (auto sense : {ContactSense::unused, ContactSense::closed_runs, ContactSense::open_runs}) {
    EXPECT_EQ(contact_sense(word(sense)), sense);
  }
  for (auto sense : {FaultSense::closes_on_stop, FaultSense::opens_on_stop}) {
    EXPECT_EQ(fault_sense(word(sense)), sense);
  }
}

TEST(Settings, AWordOfTheOtherContactIsNone) {
  EXPECT_FALSE(contact_sense("closes_on_stop"));
  EXPECT_FALSE(fault_sense("closed_runs"));
  EXPECT_FALSE(contact_sense(""));
  EXPECT_FALSE(contact_sense("Unused"));
}

TEST(Words, NoTwoModesOrCausesShareOne) {
  std::set<std::string_view> words;
  for (auto mode : {Mode::waiting, Mode::asleep, Mode::filling, Mode::holding, Mode::easing, Mode::resting,
                    Mode::stopped, Mode::hand}) {
    words.insert(word(mode));
  }
  for (auto cause : {StopCause::dry_run, StopCause::closed_discharge, StopCause::long_run, StopCause::over_current,
                     StopCause::low_volts, StopCause::drive_hot, StopCause::sensor_lost, StopCause::outside_contact,
                     StopCause::high_pressure}) {
    words.insert(word(cause));
  }
  EXPECT_EQ(words.size(), 17U);
  EXPECT_EQ(words.count(""), 0U);
}

}  // namespace
}  // namespace wellproof
