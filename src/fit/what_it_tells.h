#pragma once
// What a fitted pumping test cannot tell, and why: said plainly, with the figures behind it.
#include "fit/fit_pumping_test.h"

namespace wellproof {

/// Fills in casing_share, tells_transmissivity, tells_storativity and the notes.
void say_what_it_tells(PumpingTest const& test, PumpingTestFit& fit);

}  // namespace wellproof
