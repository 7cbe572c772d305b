#include "contract/require.h"
#include "regulator/regulator.h"

namespace wellproof {

bool applies(Logic const& logic, std::string_view key) {
  bool const by_power = logic.guard_by == GuardBy::power;
  if (key == "dry_run.amps_below" || key == "closed.amps_below") {
    return !by_power;
  }
  if (key == "dry_run.power_below" || key == "closed.power_below") {
    return by_power;
  }
  if (key == "sleep.speed_below") {
    return logic.sleep_test == SleepTest::slow_speed;
  }
  if (key == "fill.time" || key == "fill.speed") {
    return logic.line_fill;
  }
  return key != "long_run.limit" || logic.long_run_guard;
}

std::string_view word(Mode mode) {
  switch (mode) {
    case Mode::waiting:
      return "waiting";
    case Mode::asleep:
      return "asleep";
    case Mode::filling:
      return "filling";
    case Mode::holding:
      return "holding";
    case Mode::easing:
      return "easing";
    case Mode::resting:
      return "resting";
    case Mode::stopped:
      return "stopped";
    case Mode::hand:
      return "hand";
  }
  require(false, "a mode has a word");
  return {};
}

std::string_view word(StopCause cause) {
  switch (cause) {
    case StopCause::dry_run:
      return "dry_run";
    case StopCause::closed_discharge:
      return "closed_discharge";
    case StopCause::long_run:
      return "long_run";
    case StopCause::over_current:
      return "over_current";
    case StopCause::low_volts:
      return "low_volts";
    case StopCause::drive_hot:
      return "drive_hot";
    case StopCause::sensor_lost:
      return "sensor_lost";
    case StopCause::outside_contact:
      return "outside_contact";
    case StopCause::high_pressure:
      return "high_pressure";
  }
  require(false, "a cause of a stop has a word");
  return {};
}

}  // namespace wellproof
