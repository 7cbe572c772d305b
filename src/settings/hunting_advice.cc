#include "settings/hunting_advice.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "contract/require.h"
#include "quantity/quantity.h"
#include "settings/study.h"

namespace wellproof {
namespace {

constexpr double slow_rule = 0.1;
constexpr double noise_sigmas = 6;  // from top to bottom
constexpr double quick_gain_part = 0.5;
constexpr double most_growth = 10;  // at one time: what asks for more is told to look again after it
constexpr double reset_step_s = 0.1;

/// Two digits, as a person enters them.
double two_digits(double value, Dimension dimension, UnitSystem units) {
  double const unit = customary_unit(dimension, units).factor;
  double const digit = unit * std::pow(10, std::floor(std::log10(value / unit)) - 1);
  return rounded(value, digit);
}

}  // namespace

HuntingAdvice hunting_advice(Settings const& settings, SwingSeen const& seen, double noise_pa, UnitSystem units) {
  require(seen.period_s > 0 && seen.swing_pa >= 0, "a swing has a period");
  HuntingAdvice advice{
      .gain_hz_pa = settings.regulator_gain_hz_pa, .reset_time_s = settings.regulator_reset_time_s, .says = {}};
  auto const pressure = [&](double pressure_pa) { return write_quantity(pressure_pa, Dimension::pressure, units); };
  auto const time = [&](double time_s) { return write_quantity(rounded(time_s, 0.1), Dimension::time, units); };
  if (seen.swing_pa <= noise_sigmas * noise_pa) {
    advice.says = fmt::format("{} from top to bottom is what the sensor itself shows: nothing to change.",
                              pressure(seen.swing_pa));
    return advice;
  }
  double const off_hz = std::max(settings.sleep_speed_below_hz - settings.speed_floor_hz, 0.0);
  double const ease_s = settings.sleep_ramp_hz_s > 0 ? off_hz / settings.sleep_ramp_hz_s : 0;
  if (seen.swing_pa >= settings.pressure_wake_drop_pa && seen.period_s > settings.sleep_hold_s + ease_s) {
    advice.kind = HuntingAdvice::Kind::cycling;
    advice.says = fmt::format(
        "A swing of {}, as far as the wake drop of {}, every {}: it sleeps and wakes. That is settled by sleep.* and "
        "the tank's precharge, not by the regulator.",
        pressure(seen.swing_pa), pressure(settings.pressure_wake_drop_pa), time(seen.period_s));
    return advice;
  }
  double const ratio = seen.period_s / settings.regulator_reset_time_s;
  double const growth = slow_rule * ratio * ratio;
  if (growth > 1) {
    double const taken = std::min(growth, most_growth);
    advice.kind = HuntingAdvice::Kind::slow;
    advice.reset_time_s = rounded_up(settings.regulator_reset_time_s * taken, reset_step_s);
    advice.says = fmt::format(
        "A swing every {} is slow against the reset time of {}: gain times reset time should grow {:.1f}-fold. Set "
        "regulator.reset_time to {} and leave the gain{}.",
        time(seen.period_s), time(settings.regulator_reset_time_s), growth, time(advice.reset_time_s),
        growth > taken ? "; look again after that" : "");
    return advice;
  }
  advice.kind = HuntingAdvice::Kind::quick;
  advice.gain_hz_pa = two_digits(quick_gain_part * settings.regulator_gain_hz_pa, Dimension::regulator_gain, units);
  advice.says = fmt::format(
      "A swing every {} is quick against the reset time of {}: the answer is too strong. Set regulator.gain to {}, "
      "half "
      "of what it is, and look again.",
      time(seen.period_s), time(settings.regulator_reset_time_s),
      write_quantity(advice.gain_hz_pa, Dimension::regulator_gain, units));
  return advice;
}

}  // namespace wellproof
