#pragma once
// The search for the unknowns of a pumping test: which there are, how readings are weighed against each other, and the
// fit from a net of starts.
#include <vector>

#include "fit/least_squares.h"
#include "fit/pumping_test.h"

namespace wellproof {

enum class Unknown { transmissivity, storativity, linear_loss, quadratic_loss, storage_radius, well_radius };

/// Beyond these nothing is met in the ground or in a well (common practice, no source).
struct Ends {
  double low = 0;
  double high = 0;
};
Ends ends_of(Unknown unknown);

/// Where the unknown stands in the formation and well.
double& part(PumpedWell& well, Unknown unknown);

/// How the readings scatter: each alike, or each by its share of the drawdown.
enum class Scatter { alike, by_share };

/// What one reading scatters by, against the others.
double scatter_of(LevelRecord const& record, LevelReading const& reading, Scatter scatter);

/// A fit with the well it leads to.
struct Found {
  std::vector<Unknown> unknowns;
  LeastSquares fit;
  PumpedWell well;
  Scatter scatter = Scatter::alike;
};

/// The best of several searches, each from another start: far from the answer the readings do not say where it lies.
/// @param fixed what is not searched for
Found found_for(PumpingTest const& test, PumpedWell const& fixed, std::vector<Unknown> const& unknowns,
                Scatter scatter);

}  // namespace wellproof
