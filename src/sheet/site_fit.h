#pragma once
// Readings held against a site, as a sheet shows it: what moved, what fits nothing, whether the settings still stand.
#include <string>
#include <vector>

#include "fit/fit_site.h"
#include "fit/into_site.h"
#include "proof/prove.h"
#include "quantity/dimension.h"

namespace wellproof {

/// A setting that would be derived otherwise from the narrower site.
struct SettingChange {
  std::string key;
  Dimension dimension = Dimension::none;
  double now = 0;
  double anew = 0;
};

/// keys     what the site file says anew, or would
/// into     the file that it was written to; empty: it was not
/// given    settings came with the question; else those derived from the site as it was are held against it
/// proof    of the settings as they are, on the narrower site
struct FittedSite {
  std::string name;
  SiteFit fit;
  UnitSystem units = UnitSystem::us;
  std::vector<SiteKey> keys;
  std::string into;
  bool given = false;
  Proof proof;
  std::vector<SettingChange> changes;

  /// Proven on the narrower site, and nothing on site is beyond what the site file says.
  bool settings_stand() const;
};

std::string fit_sheet(FittedSite const& fitted, bool colour);
std::string fit_json(FittedSite const& fitted);
/// A page with charts, in one file that needs nothing else (site_fit_report.cc).
std::string fit_report(FittedSite const& fitted);

/// "THE SETTINGS STAND" or "THE SETTINGS DO NOT STAND", and why.
std::string stand_words(FittedSite const& fitted);
std::string stand_says(FittedSite const& fitted);
/// The sensor in a sentence or two; empty where gauge and drive were not read together.
std::string sensor_says(FittedSite const& fitted);
/// A value that fits nothing, with what would explain it.
std::string misfit_says(FittedSite const& fitted, Misfit const& misfit);

}  // namespace wellproof
