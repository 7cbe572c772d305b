#include "quantity/inverse_normal.h"

#include <cmath>

#include "contract/require.h"

namespace wellproof {
namespace {

using Coefficients = double const (&)[8];

constexpr double middle_above[8] = {3.3871328727963666080e0,  1.3314166789178437745e+2, 1.9715909503065514427e+3,
                                    1.3731693765509461125e+4, 4.5921953931549871457e+4, 6.7265770927008700853e+4,
                                    3.3430575583588128105e+4, 2.5090809287301226727e+3};
constexpr double middle_below[8] = {1.0,
                                    4.2313330701600911252e+1,
                                    6.8718700749205790830e+2,
                                    5.3941960214247511077e+3,
                                    2.1213794301586595867e+4,
                                    3.9307895800092710610e+4,
                                    2.8729085735721942674e+4,
                                    5.2264952788528545610e+3};
constexpr double tail_above[8] = {1.42343711074968357734e0,  4.63033784615654529590e0, 5.76949722146069140550e0,
                                  3.64784832476320460504e0,  1.27045825245236838258e0, 2.41780725177450611770e-1,
                                  2.27238449892691845833e-2, 7.74545014278341407640e-4};
constexpr double tail_below[8] = {1.0,
                                  2.05319162663775882187e0,
                                  1.67638483018380384940e0,
                                  6.89767334985100004550e-1,
                                  1.48103976427480074590e-1,
                                  1.51986665636164571966e-2,
                                  5.47593808499534494600e-4,
                                  1.05075007164441684324e-9};

double polynomial(Coefficients c, double x) {
  double sum = c[7];
  for (int i = 6; i >= 0; --i) {
    sum = sum * x + c[i];
  }
  return sum;
}

// Where the middle's rational function ends and the tails' begins.
constexpr double middle_half_width = 0.425;
constexpr double tail_shift = 1.6;

}  // namespace

double inverse_normal(double from_half) {
  double const size = std::abs(from_half);
  require(size <= 0.4999, "a normal deviate is asked for within four sigma");
  if (size <= middle_half_width) {
    double const r = middle_half_width * middle_half_width - from_half * from_half;
    return from_half * polynomial(middle_above, r) / polynomial(middle_below, r);
  }
  double const r = std::sqrt(-std::log(0.5 - size)) - tail_shift;
  double const deviate = polynomial(tail_above, r) / polynomial(tail_below, r);
  return from_half < 0 ? -deviate : deviate;
}

}  // namespace wellproof
