#pragma once
// Readings held against a site, as a sheet shows it: what moved, what fits nothing, whether the settings still stand.
#include <optional>
#include <string>
#include <vector>

#include "fit/fit_site.h"
#include "fit/into_site.h"
#include "proof/prove.h"
#include "quantity/dimension.h"
#include "settings/card.h"

namespace wellproof {

/// A setting that would be derived otherwise from the narrower site.
/// label      what the drive calls it; without a card the key
/// where      to find it; empty without a card
/// now, anew  SI of our key; the texts are as they are entered
struct SettingChange {
  std::string key;
  double now = 0;
  double anew = 0;
  std::string label;
  std::string where{};
  std::string now_text{};
  std::string anew_text{};
};

/// keys     what the site file says anew, or would
/// into     the file that it was written to; empty: it was not
/// given    settings came with the question; else those derived from the site as it was are held against it
/// card     of the drive that the readings were taken on, where given; the proof has its logic and steps
/// proof    of the settings as they are, on the narrower site
/// proof_before  where that fails: the same settings on the site as it was described
struct FittedSite {
  std::string name;
  SiteFit fit;
  UnitSystem units = UnitSystem::us;
  std::vector<SiteKey> keys;
  std::string into;
  bool given = false;
  std::optional<Card> card{};
  Proof proof;
  std::optional<Proof> proof_before{};
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
