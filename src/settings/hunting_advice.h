#pragma once
// What to change when somebody reports that the pressure swings: from how far and how slowly it does.
#include <string>

#include "plant/plant.h"
#include "regulator/settings.h"

namespace wellproof {

/// What was seen on site while water was drawn evenly.
struct SwingSeen {
  double swing_pa = 0;  // from top to bottom
  double period_s = 0;  // from top to top, > 0
};

struct HuntingAdvice {
  enum class Kind {
    noise,    // within what the sensor itself shows: nothing to change
    cycling,  // on and off, not hunting: sleep and wake, not the regulator
    slow,     // the integral answers more than the gain does: more reset time
    quick,    // too strong an answer: less gain
  };
  Kind kind = Kind::noise;
  double gain_hz_pa = 0;    // to set
  double reset_time_s = 0;  // to set
  std::string says;
};

/// Slow swings come of too small a product of gain and reset time: it is to grow by 0.1·(period/reset time)². Where
/// that would be no growth the swings are quick, and the gain is halved (common practice, no source).
/// @param noise_pa standard deviation of one sample of the sensor
/// Source:  skogestad_2003, rule for slow oscillations
/// Checked: tests/unit/settings/hunting_advice_test.cc, tests/unit/proof/hunting_test.cc
HuntingAdvice hunting_advice(Settings const& settings, SwingSeen const& seen, double noise_pa, UnitSystem units);

}  // namespace wellproof
