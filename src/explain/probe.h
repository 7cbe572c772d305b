#pragma once
// Looking at a faulty plant with instruments, by a short run of it.
#include "explain/fault.h"
#include "explain/show.h"
#include "regulator/regulator.h"

namespace wellproof {

struct Probe {
  Shows shows;
  double half_pressure_pa = 0;  // at the tee, as it is
  double full_pressure_pa = 0;
  double swing_pa = 0;  // top to bottom over the last two minutes of the even draw
};

/// Asleep; a tap half open for five minutes; all open for three; shut, and the gauge watched for ten minutes; then the
/// same with the valve behind the tank shut. What is not there at the moment (a night's frost) does not show.
Probe probed(Faulty const& faulty, Logic const& logic, std::uint64_t seed);

}  // namespace wellproof
