#pragma once
// The derivative of drawdown to the logarithm of time: flat where flow is radial, one with the drawdown on a slope of
// one where the casing gives the water. It shows what the drawdown alone hides.
#include <vector>

#include "fit/fit_pumping_test.h"

namespace wellproof {

/// A point of the diagnostic plot: what one change of rate did, scaled to the first rate of the test.
/// time_s       since that change
/// response_m   measured, less what the fit makes of the earlier changes
/// fitted_m     the fit's
struct ResponsePoint {
  double time_s = 0;
  double response_m = 0;
  double fitted_m = 0;
};

/// A stage is a stretch between changes of rate; each lies on the same curve if the fit is right.
struct ResponseStage {
  double from_s = 0;
  std::vector<ResponsePoint> points;
};

/// The record's stages, as far as they have readings.
std::vector<ResponseStage> responses(PumpingTestFit const& fit, RecordFit const& record);

/// A point of a derivative to the natural logarithm of time.
struct Slope {
  double time_s = 0;
  double slope_m = 0;
};

/// From pairs on both sides that lie at least so far off in the logarithm; the ends have none.
/// @param times_s, values_m of one length, in the order of time, times > 0
/// @param window            [-] ≥ 0, 0.2 is usual
/// Source:  bourdet_1989
/// Checked: tests/unit/fit/derivative_test.cc
std::vector<Slope> log_derivative(std::vector<double> const& times_s, std::vector<double> const& values_m,
                                  double window);

}  // namespace wellproof
