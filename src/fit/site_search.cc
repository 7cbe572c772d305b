#include "fit/site_search.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

#include "site/draw.h"
#include "site/fields.h"

namespace wellproof {
namespace {

constexpr double step = 0.02;  // of a score, for a slope

// What a person means by "about the peak" or "the smallest": within a factor, 1.96 standard deviations of the
// logarithm (common practice, no source).
constexpr double hand_sigma = 0.3;
constexpr double free_sigma = 1.0;

double finite(double value) {
  constexpr double far = 1e6;
  return std::isfinite(value) ? std::clamp(value, -far, far) : far;
}

}  // namespace

double share_below_score(double deviate) {
  return 0.5 * std::erfc(-deviate / std::sqrt(2.0));
}

double at_score(Range const& range, double score) {
  return quantile(range, share_below_score(score));
}

SiteSearch::SiteSearch(Site const& site, SiteReadings const& readings, double trim_pa)
    : site_(site), readings_(readings), trim_pa_(trim_pa), scores_(unknowns(site), 0.0) {
  for (std::size_t i = 0; i < readings.readings.size(); ++i) {
    first_value_.push_back(values_.size());
    falls_ = falls_ || readings.readings[i].read(Instrument::gauge_later) != nullptr;
    for (auto const& value : readings.readings[i].values) {
      values_.push_back(&value);
      reading_of_.push_back(i);
    }
    add_free(i);
  }
  first_value_.push_back(values_.size());
  free_scores_.assign(free_.size(), 0.0);
  for (std::size_t i = 0; i < scores_.size(); ++i) {
    active_.push_back(i);
  }
}

void SiteSearch::add_free(std::size_t reading) {
  auto const& one = readings_.readings[reading];
  auto const* gauge = one.read(Instrument::gauge);
  gauge = gauge != nullptr ? gauge : one.read(Instrument::drive_pressure);
  constexpr double usual_pa = 3.5e5;
  constexpr double pressure_sigma_pa = 2e5;  // wide against any gauge
  free_.push_back({reading, false, gauge != nullptr ? gauge->value : usual_pa, pressure_sigma_pa});
  double const least_m3_s = std::max(middle(site_.demand.least_draw_m3_s), 1e-6);
  double const peak_m3_s = std::max(middle(site_.demand.peak_draw_m3_s), least_m3_s);
  auto const* const flow = one.read(Instrument::flow);
  switch (one.condition) {
    case Condition::rest:
    case Condition::asleep:
    case Condition::shut:
      break;
    case Condition::least:
      free_.push_back({reading, true, std::log(least_m3_s), hand_sigma});
      break;
    case Condition::open:
      free_.push_back({reading, true, std::log(peak_m3_s), hand_sigma});
      break;
    case Condition::flow:
      free_.push_back({reading, true, 0.5 * std::log(least_m3_s * peak_m3_s), free_sigma});
      break;
  }
  if (flow != nullptr && free_.back().is_flow) {
    free_.back().start = std::log(flow->value);
    free_.back().sigma = free_sigma;
  }
}

/// Whatever is read at the tee does not ask what lies behind it, but for the water that its pipes take up.
Plant SiteSearch::built(DrawnSite site) const {
  if (!falls_) {
    site.pipes.erase(std::remove_if(site.pipes.begin(), site.pipes.end(),
                                    [](PipeRunOf<double> const& run) { return run.place == PipePlace::house; }),
                     site.pipes.end());
  }
  return build(site);
}

Plant SiteSearch::plant_at(std::vector<double> const& scores) const {
  std::vector<double> point;
  point.reserve(scores.size());
  for (double const score : scores) {
    point.push_back(share_below_score(score));
  }
  return built(draw(site_, point));
}

std::vector<double> SiteSearch::with_active(std::vector<double> const& at) const {
  auto scores = scores_;
  for (std::size_t i = 0; i < active_.size(); ++i) {
    scores[active_[i]] = at[i];
  }
  return scores;
}

Standing SiteSearch::standing_at(std::size_t reading, double const* free_scores) const {
  Standing standing;
  for (std::size_t i = 0; i < free_.size(); ++i) {
    if (free_[i].reading == reading) {
      double const value = free_[i].start + free_[i].sigma * free_scores[i];
      if (free_[i].is_flow) {
        standing.flow_m3_s = std::exp(value);
      } else {
        standing.tee_pressure_pa = std::max(value, 0.0);
      }
    }
  }
  return standing;
}

Standing SiteSearch::standing(std::size_t reading) const {
  return standing_at(reading, free_scores_.data());
}

std::vector<double> SiteSearch::residuals(Plant const& plant, double const* free_scores) const {
  std::vector<double> out;
  out.reserve(values_.size());
  for (std::size_t i = 0; i < readings_.readings.size(); ++i) {
    auto const& reading = readings_.readings[i];
    auto const said = shown(plant, reading, standing_at(i, free_scores), trim_pa_);
    for (std::size_t k = 0; k < said.size(); ++k) {
      out.push_back(finite((said[k] - reading.values[k].value) / reading.values[k].sigma));
    }
  }
  return out;
}

void SiteSearch::free_columns(Plant const& plant, double const* free_scores, std::vector<double> const& there,
                              std::size_t first, std::vector<std::vector<double>>& rows) const {
  std::vector<double> moved(free_scores, free_scores + free_.size());
  for (std::size_t i = 0; i < free_.size(); ++i) {
    // Wide priors: the step is to be small against an instrument.
    double const by = free_[i].is_flow ? 0.003 : 0.001;
    moved[i] += by;
    std::size_t const of = free_[i].reading;
    auto const& reading = readings_.readings[of];
    auto const said = shown(plant, reading, standing_at(of, moved.data()), trim_pa_);
    for (std::size_t k = 0; k < said.size(); ++k) {
      std::size_t const row = first_value_[of] + k;
      double const now = finite((said[k] - reading.values[k].value) / reading.values[k].sigma);
      rows[row][first + i] = (now - there[row]) / by;
    }
    moved[i] = free_scores[i];
  }
}

void SiteSearch::screen() {
  constexpr double felt = 0.03;  // a sigma of the unknown moves readings by so much of theirs
  auto const base = residuals(plant_at(scores_), free_scores_.data());
  std::vector<std::size_t> kept;
  rough_.assign(base.size(), {});
  for (auto const coordinate : active_) {
    auto scores = scores_;
    constexpr double probe = 0.5;
    scores[coordinate] += probe;
    auto const moved = residuals(plant_at(scores), free_scores_.data());
    double squares = 0;
    for (std::size_t i = 0; i < base.size(); ++i) {
      squares += (moved[i] - base[i]) * (moved[i] - base[i]);
    }
    if (std::sqrt(squares) > felt * probe) {
      kept.push_back(coordinate);
      for (std::size_t i = 0; i < base.size(); ++i) {
        rough_[i].push_back((moved[i] - base[i]) / probe);
      }
    }
  }
  active_ = kept;
}

void SiteSearch::search(std::vector<bool> const& counted) {
  std::vector<double> start;
  for (auto const coordinate : active_) {
    start.push_back(scores_[coordinate]);
  }
  start.insert(start.end(), free_scores_.begin(), free_scores_.end());
  std::size_t const own = active_.size();
  ReadingModel model;
  model.residuals = [&](std::vector<double> const& at) {
    return residuals(plant_at(with_active(at)), at.data() + own);
  };
  model.jacobian = [&](std::vector<double> const& at, std::vector<double> const& there) {
    std::vector<std::vector<double>> rows(there.size(), std::vector<double>(at.size(), 0.0));
    auto moved = at;
    for (std::size_t i = 0; i < own; ++i) {
      double const by = at[i] > 0 ? -step : step;  // towards the middle, where a range has no end
      moved[i] = at[i] + by;
      auto const now = model.residuals(moved);
      for (std::size_t k = 0; k < now.size(); ++k) {
        rows[k][i] = (now[k] - there[k]) / by;
      }
      moved[i] = at[i];
    }
    free_columns(plant_at(with_active(at)), at.data() + own, there, own, rows);
    return rows;
  };
  if (!rough_.empty()) {
    model.rough_jacobian = std::move(rough_);
    rough_.clear();
    for (auto& row : model.rough_jacobian) {
      row.resize(start.size(), 0.0);
    }
    free_columns(plant_at(scores_), free_scores_.data(), residuals(plant_at(scores_), free_scores_.data()), own,
                 model.rough_jacobian);
  } else if (!found_.jacobian.empty()) {
    model.rough_jacobian = found_.jacobian;
  }
  found_ = most_likely(model, start, counted, farthest_score);
  scores_ = with_active(found_.at);
  free_scores_.assign(found_.at.begin() + static_cast<std::ptrdiff_t>(own), found_.at.end());
}

SiteSearch::Changed SiteSearch::changed_by(std::string const& key, double value) const {
  Changed changed{site_, {}, scores_.size()};
  std::size_t coordinate = 0;
  each_field(changed.site, [&](Field const& field, Range& range) {
    bool const free = !is_fixed(range);
    if (field.key == key) {
      changed.coordinate = free ? coordinate : changed.coordinate;
      range = Fixed{value};
    } else if (free) {
      changed.scores.push_back(scores_[coordinate]);
    }
    coordinate += free ? 1 : 0;
  });
  return changed;
}

double SiteSearch::cost_with(std::string const& key, double value, std::vector<bool> const& counted) const {
  auto const changed = changed_by(key, value);
  std::vector<double> point;
  for (double const score : changed.scores) {
    point.push_back(share_below_score(score));
  }
  auto const there = residuals(built(draw(changed.site, point)), free_scores_.data());
  std::vector<bool> free_unknown(found_.at.size(), true);
  for (std::size_t i = 0; i < active_.size(); ++i) {
    free_unknown[i] = active_[i] != changed.coordinate;
  }
  return cost_within_reach(found_, there, counted, free_unknown);
}

MostLikely SiteSearch::searched_with(std::string const& key, double value, std::vector<bool> const& counted) const {
  auto const changed = changed_by(key, value);
  SiteSearch search(changed.site, readings_, trim_pa_);
  search.scores_ = changed.scores;
  search.free_scores_ = free_scores_;
  search.active_.clear();
  for (auto const coordinate : active_) {
    if (coordinate != changed.coordinate) {
      search.active_.push_back(coordinate > changed.coordinate ? coordinate - 1 : coordinate);
    }
  }
  search.search(counted);
  return search.found_;
}

}  // namespace wellproof
