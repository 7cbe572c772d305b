#include "fit/fit_site.h"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "contract/require.h"
#include "fit/misfit.h"
#include "fit/site_search.h"
#include "quantity/customary.h"
#include "site/draw.h"
#include "site/fields.h"

namespace wellproof {
namespace {

constexpr double off_too_far = 3;
constexpr double off_still = 2.5;  // once the search has been made without it: the model bends

// How far off a sensor's zero and span are taken to be possibly where gauge and drive were read together, as a part of
// full scale and of the reading: a failing transducer, not one in order (common practice, no source).
constexpr double wide_zero_share = 0.05;
constexpr double wide_gain = 0.03;
// Pairs that far apart, as a part of full scale, tell the span.
constexpr double far_apart_share = 0.15;

// What is read of the water today says how it stands today: somewhere between the ordinary season and the dry one. The
// search moves the drop, but learns nothing of the dry season.
constexpr std::string_view season_key = "well.season_drop";

double sigma_of(Range const& range) {
  return 0.5 * (at_score(range, 1) - at_score(range, -1));
}

struct Pairs {
  std::size_t count = 0;
  double least_pa = 0;
  double most_pa = 0;
  double mean_pa = 0;
};

Pairs pairs_of(SiteReadings const& readings) {
  Pairs pairs;
  for (auto const& reading : readings.readings) {
    auto const* const gauge = reading.read(Instrument::gauge);
    if (gauge == nullptr || reading.read(Instrument::drive_pressure) == nullptr) {
      continue;
    }
    pairs.least_pa = pairs.count == 0 ? gauge->value : std::min(pairs.least_pa, gauge->value);
    pairs.most_pa = pairs.count == 0 ? gauge->value : std::max(pairs.most_pa, gauge->value);
    pairs.mean_pa += gauge->value;
    ++pairs.count;
  }
  pairs.mean_pa /= pairs.count > 0 ? static_cast<double>(pairs.count) : 1;
  return pairs;
}

/// Whether the pairs of gauge and drive contradict what the site says of its sensor: each is foretold from the range
/// and the pairs before it, and their squared surprises are added up.
bool contradicts(Site const& site, SiteReadings const& readings, double trim_pa) {
  auto const& sensor = site.sensor;
  double zero_pa = middle(sensor.zero_error_pa);
  double gain = middle(sensor.gain_error);
  double zero_variance = std::pow(sigma_of(sensor.zero_error_pa), 2);
  double gain_variance = std::pow(sigma_of(sensor.gain_error), 2);
  double common = 0;
  double surprise = 0;
  double count = 0;
  for (auto const& reading : readings.readings) {
    auto const* const gauge = reading.read(Instrument::gauge);
    auto const* const drive = reading.read(Instrument::drive_pressure);
    if (gauge == nullptr || drive == nullptr) {
      continue;
    }
    double const at_pa = gauge->value;
    double const off_pa = drive->value - trim_pa - at_pa - zero_pa - gain * at_pa;
    double const zero_pull = zero_variance + at_pa * common;
    double const gain_pull = common + at_pa * gain_variance;
    double const variance = gauge->sigma * gauge->sigma + drive->sigma * drive->sigma + zero_pull + at_pa * gain_pull;
    surprise += off_pa * off_pa / variance;
    count += 1;
    zero_pa += zero_pull / variance * off_pa;
    gain += gain_pull / variance * off_pa;
    common -= zero_pull * gain_pull / variance;
    zero_variance -= zero_pull * zero_pull / variance;
    gain_variance -= gain_pull * gain_pull / variance;
  }
  constexpr double rare = 3.3;  // one in a hundred, about
  return surprise > count + rare * std::sqrt(2 * count);
}

/// The site as it is searched: where gauge and drive, read together, contradict its sensor, they alone say what the
/// sensor does, however far off that is.
Site searched(Site site, Pairs const& pairs, SiteReadings const& readings, double trim_pa) {
  constexpr double most_zero_pa = 2e5;  // the limit of the field
  double const full_pa = middle(site.sensor.full_scale_pa);
  if (pairs.count == 0 || !contradicts(site, readings, trim_pa)) {
    return site;
  }
  double const zero_pa = middle(site.sensor.zero_error_pa);
  double const sigma_pa = std::max(sigma_of(site.sensor.zero_error_pa), wide_zero_share * full_pa);
  site.sensor.zero_error_pa =
      Normal{zero_pa, sigmas_of_95 * std::min(sigma_pa, (most_zero_pa - std::abs(zero_pa)) / 3 + 1)};
  if (pairs.count > 1 && pairs.most_pa - pairs.least_pa > far_apart_share * full_pa) {
    double const gain = middle(site.sensor.gain_error);
    site.sensor.gain_error = Normal{gain, sigmas_of_95 * std::max(sigma_of(site.sensor.gain_error), wide_gain)};
  }
  return site;
}

/// The range after the readings: a normal where it is one nearly, else a triangle over the same stretch.
Range after_range(Range const& before, Field const& field, double score, double sigma) {
  double const low = at_score(before, score - sigmas_of_95 * sigma);
  double const high = at_score(before, score + sigmas_of_95 * sigma);
  double const value = at_score(before, score);
  double const half = 0.5 * (high - low);
  if (!(half > 1e-9 * std::abs(value))) {
    return Fixed{std::clamp(value, field.least, field.most)};
  }
  constexpr double cut = 3 / sigmas_of_95;
  double const least = std::max(field.least, std::holds_alternative<Normal>(before) ? field.least : lowest(before));
  double const most = std::min(field.most, std::holds_alternative<Normal>(before) ? field.most : highest(before));
  bool const even = std::abs(value - 0.5 * (low + high)) < 0.1 * half;
  if (even && value - cut * half >= least && value + cut * half <= most) {
    return Normal{value, half};
  }
  constexpr double foot_sigmas = 2.8;  // the middle 95 % of a triangle so wide are those of the normal, about
  double const left = std::clamp(at_score(before, score - foot_sigmas * sigma), least, most);
  double const right = std::clamp(at_score(before, score + foot_sigmas * sigma), least, most);
  return right > left ? Range(Triangular{left, std::clamp(value, left, right), right}) : Range(Fixed{left});
}

std::vector<FittedUnknown> unknowns_of(Site const& site, Site const& sought, SiteSearch const& search) {
  std::vector<FittedUnknown> out;
  auto const keys = unknown_keys(sought);
  auto const& found = search.found();
  std::vector<Range> before_all;
  each_field(site, [&](Field const&, Range const& range) { before_all.push_back(range); });
  std::size_t field_number = 0;
  each_field(sought, [&](Field const& field, Range const& range) {
    Range const& said = before_all[field_number++];
    for (std::size_t i = 0; i < search.active().size(); ++i) {
      if (keys[search.active()[i]] != field.key || field.key == season_key) {
        continue;
      }
      FittedUnknown unknown;
      double const score = found.at[i];
      double const sigma = std::sqrt(found.covariance[i][i]);
      unknown.key = field.key;
      unknown.dimension = field.dimension;
      unknown.meaning = field.meaning;
      unknown.before = said;
      unknown.after = after_range(range, field, score, sigma);
      unknown.value = at_score(range, score);
      unknown.low = at_score(range, score - sigmas_of_95 * sigma);
      unknown.high = at_score(range, score + sigmas_of_95 * sigma);
      double const said_sigma = sigma_of(said);
      bool const as_said = said == range;
      double const half_sigma = (unknown.high - unknown.low) / (2 * sigmas_of_95);
      double const unit = said_sigma > 0 ? said_sigma : std::max(half_sigma, 1e-300);
      unknown.shift_sigmas = as_said ? score : (unknown.value - middle(said)) / unit;
      unknown.width_share = as_said ? sigma : half_sigma / unit;
      out.push_back(unknown);
    }
  });
  std::stable_sort(out.begin(), out.end(), [](FittedUnknown const& a, FittedUnknown const& b) {
    return std::abs(a.shift_sigmas) + 1 - a.width_share > std::abs(b.shift_sigmas) + 1 - b.width_share;
  });
  return out;
}

SensorFit sensor_of(Site const& sought, SiteSearch const& search, Pairs const& pairs, double trim_pa) {
  SensorFit sensor;
  sensor.pairs = pairs.count;
  sensor.trim_now_pa = trim_pa;
  sensor.at_pa = pairs.mean_pa;
  sensor.span_known =
      pairs.count > 1 && pairs.most_pa - pairs.least_pa > far_apart_share * middle(sought.sensor.full_scale_pa);
  sensor.zero_pa = middle(sought.sensor.zero_error_pa);
  sensor.gain = middle(sought.sensor.gain_error);
  auto const keys = unknown_keys(sought);
  auto const& found = search.found();
  // Slopes of zero and gain by their scores, for the error of both together.
  std::vector<double> slope(found.at.size(), 0.0);
  for (std::size_t i = 0; i < search.active().size(); ++i) {
    auto const& name = keys[search.active()[i]];
    double const sigma = std::sqrt(found.covariance[i][i]);
    if (name == "sensor.zero_error") {
      auto const& range = sought.sensor.zero_error_pa;
      sensor.zero_pa = at_score(range, found.at[i]);
      slope[i] = sigma_of(range);
      sensor.zero_half_95_pa = sigmas_of_95 * sigma * slope[i];
    } else if (name == "sensor.gain_error") {
      auto const& range = sought.sensor.gain_error;
      sensor.gain = at_score(range, found.at[i]);
      slope[i] = sensor.at_pa * sigma_of(range);
      sensor.gain_half_95 = sigmas_of_95 * sigma * sigma_of(range);
    }
  }
  double variance = 0;
  for (std::size_t i = 0; i < slope.size(); ++i) {
    for (std::size_t k = 0; k < slope.size(); ++k) {
      variance += slope[i] * found.covariance[i][k] * slope[k];
    }
  }
  sensor.off_pa = sensor.zero_pa + sensor.gain * sensor.at_pa;
  sensor.off_half_95_pa = sigmas_of_95 * std::sqrt(std::max(variance, 0.0));
  sensor.trim_pa = -sensor.off_pa;
  sensor.matters = std::abs(sensor.off_pa + trim_pa) > sensor.off_half_95_pa;
  return sensor;
}

/// How far each value is off by the fit of all others.
std::vector<double> off_by_others(MostLikely const& found, std::vector<bool> const& counted) {
  std::vector<double> off;
  for (std::size_t i = 0; i < counted.size(); ++i) {
    // Leaving a value out lowers its own pull: exact where the model is a plane.
    double const own = counted[i] ? std::max(1 - found.leverage[i], 1e-9) : 1 + found.leverage[i];
    off.push_back(-found.residuals[i] / std::sqrt(own));
  }
  return off;
}

/// Leaves out the worst value, or another of its reading that is off alike if the rest then fits better.
/// @return false: searched without it, it is foretold after all, and nothing is left out
bool leave_out(SiteSearch& search, std::vector<bool>& counted, std::vector<double> const& off, std::size_t worst,
               std::vector<Misfit>& misfits) {
  constexpr double alike = 0.95;
  constexpr double as_good = 4;
  auto const& of = search.reading_of();
  auto const first = static_cast<std::size_t>(std::find(of.begin(), of.end(), of[worst]) - of.begin());
  struct Trial {
    std::size_t value = 0;
    SiteSearch search;
  };
  std::vector<Trial> trials;
  for (std::size_t i = first; i < of.size() && of[i] == of[worst]; ++i) {
    if (counted[i] && std::abs(off[i]) >= alike * std::abs(off[worst])) {
      auto without = counted;
      without[i] = false;
      trials.push_back({i, search});
      trials.back().search.search(without);
    }
  }
  auto const best = std::min_element(trials.begin(), trials.end(), [](Trial const& a, Trial const& b) {
    return a.search.found().cost < b.search.found().cost;
  });
  auto without = counted;
  without[best->value] = false;
  if (std::abs(off_by_others(best->search.found(), without)[best->value]) <= off_still) {
    return false;
  }
  Misfit misfit;
  misfit.reading = of[worst];
  misfit.value = best->value - first;
  for (auto const& trial : trials) {
    if (trial.value != best->value && trial.search.found().cost < best->search.found().cost + as_good) {
      misfit.rivals.push_back(trial.value - first);
    }
  }
  misfits.push_back(misfit);
  counted = without;
  search.search(counted);
  return true;
}

}  // namespace

bool FittedUnknown::tells() const {
  constexpr double narrower = 0.9;
  constexpr double moved = 0.5;
  return width_share < narrower || std::abs(shift_sigmas) > moved;
}

SiteFit fit_site(Site const& site, SiteReadings const& readings, double trim_pa) {
  auto const pairs = pairs_of(readings);
  Site const sought = searched(site, pairs, readings, trim_pa);
  SiteSearch search(sought, readings, trim_pa);
  std::size_t const count = search.values().size();
  require(count > 0, "a fit needs a reading");
  std::vector<bool> counted(count, true);
  search.screen();
  search.search(counted);
  SiteFit fit;
  fit.readings = readings;
  std::vector<bool> cleared(count, false);
  while (fit.misfits.size() < count / 2) {
    auto const off = off_by_others(search.found(), counted);
    std::size_t worst = count;
    for (std::size_t i = 0; i < count; ++i) {
      bool const worse = worst == count || std::abs(off[i]) > std::abs(off[worst]);
      worst = counted[i] && !cleared[i] && std::abs(off[i]) > off_too_far && worse ? i : worst;
    }
    if (worst == count) {
      break;
    }
    cleared[worst] = !leave_out(search, counted, off, worst, fit.misfits);
  }
  explain_misfits(sought, search, counted, fit.misfits);

  auto const off = off_by_others(search.found(), counted);
  for (std::size_t i = 0, within = 0; i < count; ++i) {
    within = i > 0 && search.reading_of()[i] == search.reading_of()[i - 1] ? within + 1 : 0;
    auto const& value = *search.values()[i];
    fit.values.push_back(
        {search.reading_of()[i], within, value.value + search.found().residuals[i] * value.sigma, off[i], !counted[i]});
    fit.sum_of_squares += counted[i] ? search.found().residuals[i] * search.found().residuals[i] : 0;
    fit.fitted_values += counted[i] ? 1U : 0U;
  }
  fit.unknowns = unknowns_of(site, sought, search);
  fit.untouched = unknowns(sought) - search.active().size();
  fit.converged = search.found().converged;
  if (pairs.count > 0) {
    fit.sensor = sensor_of(sought, search, pairs, trim_pa);
  }
  return fit;
}

std::vector<SiteKey> narrowed_keys(SiteFit const& fit, UnitSystem units) {
  std::vector<SiteKey> keys;
  for (auto const& unknown : fit.unknowns) {
    if (unknown.tells()) {
      keys.push_back({unknown.key, write_range(unknown.after, unknown.dimension, units)});
    }
  }
  return keys;
}

}  // namespace wellproof
