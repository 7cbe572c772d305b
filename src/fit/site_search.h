#pragma once
// The likeliest truth behind readings: all unknowns of a site that the readings speak of, and where the plant stood at
// each reading.
#include <string>
#include <vector>

#include "fit/most_likely.h"
#include "fit/readings.h"
#include "fit/steady_reading.h"
#include "site/site.h"

namespace wellproof {

/// The share of a standard normal distribution below a deviate.
double share_below_score(double deviate);
/// The value of a range at a normal score: 0 its median, ±1.96 the ends of its middle 95 %.
double at_score(Range const& range, double score);
/// Standard deviations beyond which no unknown is sought.
inline constexpr double farthest_score = 3.6;

/// Unknowns are scores. Those of the site come first, in the order of unknown_keys, then one or two for each reading.
class SiteSearch {
 public:
  SiteSearch(Site const& site, SiteReadings const& readings, double trim_pa);

  /// Leaves out unknowns that no reading feels.
  void screen();
  /// From the point of the last search.
  void search(std::vector<bool> const& counted);

  MostLikely const& found() const { return found_; }
  /// Coordinates of the site that are sought: places in unknown_keys.
  std::vector<std::size_t> const& active() const { return active_; }
  std::vector<ReadValue const*> const& values() const { return values_; }
  std::vector<std::size_t> const& reading_of() const { return reading_of_; }
  double score(std::size_t coordinate) const { return scores_[coordinate]; }
  /// Where the plant stood at a reading.
  Standing standing(std::size_t reading) const;

  /// The cost that one quantity of the site at a value would leave, all else moved to suit, as far as a plane tells.
  double cost_with(std::string const& key, double value, std::vector<bool> const& counted) const;
  /// The same searched in full.
  MostLikely searched_with(std::string const& key, double value, std::vector<bool> const& counted) const;

 private:
  struct Free {
    std::size_t reading = 0;
    bool is_flow = false;
    double start = 0;  // Pa, or the logarithm of m³/s
    double sigma = 0;
  };
  void add_free(std::size_t reading);
  Plant built(DrawnSite site) const;
  /// The site with the quantity at the value, and the scores of its unknowns.
  struct Changed {
    Site site;
    std::vector<double> scores;
    std::size_t coordinate = 0;  // which score was dropped; past the end if none
  };
  Changed changed_by(std::string const& key, double value) const;
  Plant plant_at(std::vector<double> const& scores) const;
  std::vector<double> with_active(std::vector<double> const& at) const;
  Standing standing_at(std::size_t reading, double const* free_scores) const;
  std::vector<double> residuals(Plant const& plant, double const* free_scores) const;
  void free_columns(Plant const& plant, double const* free_scores, std::vector<double> const& there, std::size_t first,
                    std::vector<std::vector<double>>& rows) const;

  Site const& site_;
  SiteReadings const& readings_;
  double trim_pa_;
  std::vector<ReadValue const*> values_;
  std::vector<std::size_t> reading_of_;
  std::vector<std::size_t> first_value_;
  std::vector<Free> free_;
  std::vector<double> scores_;
  std::vector<double> free_scores_;
  std::vector<std::size_t> active_;
  std::vector<std::vector<double>> rough_;  // of the active ones at the start, by residual
  bool falls_ = false;                      // whether a wait with the pump off was read
  MostLikely found_;
};

}  // namespace wellproof
