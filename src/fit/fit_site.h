#pragma once
// A site narrowed by what was read on it: which of its unknowns the readings move and by how much, which reading fits
// nothing, and what beyond the site's ranges would explain it.
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "fit/into_site.h"
#include "fit/readings.h"
#include "quantity/range.h"
#include "site/site.h"

namespace wellproof {

/// One quantity of the site before and after.
/// value, low, high  the likeliest and its 95 % interval, SI
/// shift_sigmas      how far it moved, in standard deviations of what the site said of it
/// width_share       of its standard deviation, what is left of it
struct FittedUnknown {
  std::string key;
  Dimension dimension = Dimension::none;
  std::string meaning;
  Range before;
  Range after;
  double value = 0;
  double low = 0;
  double high = 0;
  double shift_sigmas = 0;
  double width_share = 1;

  /// Whether the site file should say it anew.
  bool tells() const;
};

/// One value of one reading against the fit.
/// off_sigmas   by the fit of all others, in standard deviations of the difference
/// left_out     it fits nothing: the fit is that of the others
struct FittedValue {
  std::size_t reading = 0;
  std::size_t value = 0;
  double fitted = 0;
  double off_sigmas = 0;
  bool left_out = false;
};

/// What would explain a value that fits nothing. key is empty where no quantity of the site does.
/// rivals  values of the same reading that could be the wrong one as well
struct Misfit {
  std::size_t reading = 0;
  std::size_t value = 0;
  std::vector<std::size_t> rivals;
  std::string key;
  double explained_by = 0;  // the key's value, SI
  Dimension dimension = Dimension::none;
  std::string says;
};

/// The sensor by gauge against drive; its readings speak of nothing else.
/// zero_pa, gain  what the drive's figure has too much at no pressure, and of each pressure
/// span_known     whether pairs at different pressures tell the gain too
/// trim_pa        what to set, in place of what is set now
struct SensorFit {
  std::size_t pairs = 0;
  double zero_pa = 0;
  double zero_half_95_pa = 0;
  double gain = 0;
  double gain_half_95 = 0;
  bool span_known = false;
  double at_pa = 0;  // at this pressure the trim is right
  double off_pa = 0;
  double off_half_95_pa = 0;
  double trim_now_pa = 0;
  double trim_pa = 0;
  bool matters = false;  // the drive is off by more than its own error
};

struct SiteFit {
  SiteReadings readings;
  std::vector<FittedUnknown> unknowns;  // that the readings speak of, those that moved most first
  std::vector<FittedValue> values;
  std::vector<Misfit> misfits;
  std::optional<SensorFit> sensor;
  double sum_of_squares = 0;  // of the readings that were fitted
  std::size_t fitted_values = 0;
  std::size_t untouched = 0;  // unknowns of which nothing was read
  bool converged = false;
};

/// Weighted least squares with the ranges as prior. A value off by more than three of its standard deviations by the
/// fit of all others is left out, the worst first, at most half of all.
/// @param readings with at least one value (require)
/// @param trim_pa  set in the drive when they were taken
/// Source:  marquardt_1963, tarantola_2005
/// Checked: tests/law/fit_law_test.cc (200 planted sites), tests/unit/fit/fit_site_test.cc
SiteFit fit_site(Site const& site, SiteReadings const& readings, double trim_pa);

/// What the site file should say anew, its pipe runs and zones by number.
std::vector<SiteKey> narrowed_keys(SiteFit const& fit, UnitSystem units);

}  // namespace wellproof
