#pragma once
// One step of the integrator: the modified Rosenbrock pair of orders 2 and 3 (shampine_reichelt_1997), linearly
// implicit and L-stable, so that a quiet hour is a few steps and a stiff pipe does not shorten them. It is a W-method:
// order 2 holds whatever the Jacobian leaves out.
//
// The error is estimated by a third stage and damped by the implicit matrix (hosea_1996), so that stiff states
// that settle within the step do not shorten it.
//
// Sums of states whose rates cancel (water) stay constant to rounding, because the Jacobian's rows cancel too.
#include "plant/plant.h"

namespace wellproof {

struct Step {
  State after{};
  double error = 0;  // largest estimated error over its scale; ≤ 1 is accepted
};

/// Advances y by duration_s. `scale` holds for each state the error that is just tolerated; states with scale 0 are not
/// looked at (totals follow from the others).
/// @param rate  dy/dt at y in these modes, from the Rates given
Step rosenbrock_step(Rates& rates, Modes modes, State const& y, State const& rate, Jacobian const& jacobian,
                     double duration_s, State const& scale);

/// The same state after the step, at two thirds of the work: no error is estimated.
State rosenbrock_after(Rates& rates, Modes modes, State const& y, State const& rate, Jacobian const& jacobian,
                       double duration_s);

/// Step length after one with this error: shorter or longer, at most fivefold.
double next_duration_s(double duration_s, double error);

}  // namespace wellproof
