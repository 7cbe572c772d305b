#pragma once
// Which unknown the answer hangs on, and what measuring it would bring. Sobol's indices say what share of a result's
// variance an unknown explains alone (first order) and with all that it acts through together with others (total).
// They take many runs of their own; the shares from given data are read off the runs that a proof makes anyway.
#include <cstddef>
#include <cstdint>
#include <functional>
#include <span>
#include <vector>

namespace wellproof {

/// A result as a function of a point of the unit cube.
using UnitModel = std::function<double(std::span<double const>)>;

struct SobolIndices {
  std::vector<double> first;  // of each unknown, 0 … 1 but for sampling error
  std::vector<double> total;
  double variance = 0;
};

/// Both indices from base·(unknowns + 2) calls of the model. A result that does not vary gives zeros.
/// @param base rows of each of the two sampling matrices, > 0; both are halves of one scrambled Sobol sequence
/// Source:  saltelli_2010 for the first order, jansen_1999 for the total
/// Checked: tests/reference/sensitivity_reference_test.cc
SobolIndices sobol_indices(UnitModel const& model, std::size_t unknowns, std::uint32_t base, std::uint64_t seed);

/// A smooth curve of a result over one unknown: Legendre polynomials fitted by least squares.
struct Trend {
  std::vector<double> coefficients;  // of P0, P1, … on the unit interval
  double share = 0;                  // of the variance explained, less what chance alone explains; may be < 0

  double at(double coordinate) const;
  /// Mean over the part of [coordinate − width/2, coordinate + width/2] that lies in the unit interval.
  double near(double coordinate, double width) const;
};

/// First-order share of one unknown from runs at given points: the adjusted R² of the fitted curve. A polynomial of up
/// to degree four, fewer where there are few runs: of a hundred runs the estimate strays by 2 or 3 %, a rank
/// estimator by 10 %, which would hide what matters among dozens of unknowns.
/// Source:  sudret_2008 (indices from orthogonal polynomials)
/// Checked: tests/reference/sensitivity_reference_test.cc
Trend trend(std::vector<double> const& coordinates, std::vector<double> const& values);

/// An unknown that a result goes by, and how.
struct Leading {
  std::size_t unknown = 0;
  Trend trend;  // its share is of the whole variance
};

/// The unknowns that explain more of a result than chance would, the strongest first. Each next one is sought in what
/// those before it leave: a few hundred points in dozens of dimensions are not quite independent of each other, and
/// some unknown that does nothing would else get a tenth of what the strongest explains.
/// @param coordinates of each unknown over the runs
/// Checked: tests/law/sensitivity_law_test.cc (against Sobol's first order on a site)
std::vector<Leading> leading_unknowns(std::vector<std::vector<double>> const& coordinates,
                                      std::vector<double> const& values);

/// A share below this may well be chance, with so many runs and so many unknowns looked at.
double chance_share(std::size_t runs);

/// What is below so many of the values: the smallest value with at least this share of all at or below it.
double lower_quantile(std::vector<double> values, double share);

/// The lower bound on a result that remains, on average over what the measurement may say, once an unknown is known to
/// within a width: the spread that its curve explains beyond that width is gone, the rest stays.
/// @param width of the unit interval in which the instrument leaves the unknown, 0 … 1
double lower_bound_measured(Trend const& trend, std::vector<double> const& coordinates,
                            std::vector<double> const& values, double width, double share);

}  // namespace wellproof
