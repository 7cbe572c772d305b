#include "fit/search.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <utility>

#include "fit/fit_pumping_test.h"

namespace wellproof {
namespace {

class Search {
 public:
  Search(PumpingTest const& test, PumpedWell fixed, std::vector<Unknown> unknowns, Scatter scatter)
      : test_(test), fixed_(fixed), unknowns_(std::move(unknowns)), scatter_(scatter) {}

  std::vector<Unknown> const& unknowns() const { return unknowns_; }

  PumpedWell well(std::vector<double> const& logs) const {
    PumpedWell well = fixed_;
    for (std::size_t i = 0; i < unknowns_.size(); ++i) {
      Ends const ends = ends_of(unknowns_[i]);
      part(well, unknowns_[i]) = std::clamp(std::exp(std::clamp(logs[i], -100.0, 100.0)), ends.low, ends.high);
    }
    return well;
  }

  std::vector<double> residuals(std::vector<double> const& logs) const {
    PumpedWell const at = well(logs);
    std::vector<double> all;
    for (auto const& record : test_.records) {
      for (auto const& reading : record.readings) {
        double const modelled = modelled_m(test_.rates, at, record, reading.time_s);
        double const missed_m = std::isfinite(modelled) ? std::clamp(modelled, -1e6, 1e6) - reading.drawdown_m : 1e6;
        all.push_back(missed_m / scatter_of(record, reading, scatter_));
      }
    }
    return all;
  }

  /// From a net of starts, since far from the answer the readings do not say where it lies.
  LeastSquares best(std::vector<std::vector<double>> const& starts) const {
    std::vector<std::pair<double, std::size_t>> order;
    for (std::size_t i = 0; i < starts.size(); ++i) {
      double sum = 0;
      for (double const each : residuals(starts[i])) {
        sum += each * each;
      }
      order.emplace_back(sum, i);
    }
    std::sort(order.begin(), order.end());
    constexpr std::size_t tries = 3;
    LeastSquares best;
    best.sum_of_squares = std::numeric_limits<double>::infinity();
    auto const law = [&](std::vector<double> const& logs) { return residuals(logs); };
    for (std::size_t i = 0; i < std::min(tries, order.size()); ++i) {
      auto const fit = least_squares(law, starts[order[i].second]);
      if (best.parameters.empty() || fit.sum_of_squares < best.sum_of_squares) {
        best = fit;
      }
    }
    return best;
  }

  /// Every combination of a few values of each unknown.
  std::vector<std::vector<double>> net() const {
    std::vector<std::vector<double>> starts{{}};
    for (Unknown const unknown : unknowns_) {
      std::vector<std::vector<double>> wider;
      for (auto const& start : starts) {
        for (double const value : values(unknown)) {
          wider.push_back(start);
          wider.back().push_back(std::log(value));
        }
      }
      starts = std::move(wider);
    }
    return starts;
  }

 private:
  std::vector<double> values(Unknown unknown) const {
    double most_m3_s = 0;
    for (auto const& step : test_.rates) {
      most_m3_s = std::max(most_m3_s, step.flow_m3_s);
    }
    double most_m = 1e-6;
    for (auto const& record : test_.records) {
      for (auto const& reading : record.readings) {
        most_m = std::max(most_m, reading.drawdown_m);
      }
    }
    double const resistance_s_m2 = most_m / most_m3_s;
    switch (unknown) {
      case Unknown::transmissivity:
        return {0.03 / resistance_s_m2, 0.1 / resistance_s_m2, 0.3 / resistance_s_m2, 1 / resistance_s_m2,
                3 / resistance_s_m2};
      case Unknown::storativity:
        return {1e-7, 1e-5, 1e-3, 1e-1};
      case Unknown::linear_loss:
        return {0.05 * resistance_s_m2, 0.5 * resistance_s_m2};
      case Unknown::quadratic_loss:
        return {0.1 * resistance_s_m2 / most_m3_s};
      case Unknown::storage_radius:
        return {0.05, 0.5};
      case Unknown::well_radius:
        return {fixed_.well_radius_m, 10 * fixed_.well_radius_m};
    }
    return {};
  }

  PumpingTest const& test_;
  PumpedWell fixed_;
  std::vector<Unknown> unknowns_;
  Scatter scatter_;
};

}  // namespace

Ends ends_of(Unknown unknown) {
  switch (unknown) {
    case Unknown::transmissivity:
      return {1e-9, 10};
    case Unknown::storativity:
      return {1e-10, 1};
    case Unknown::linear_loss:
      return {1e-3, 1e8};
    case Unknown::quadratic_loss:
      return {1e-3, 1e12};
    case Unknown::storage_radius:
      return {1e-3, 10};
    case Unknown::well_radius:
      return {1e-6, 1e3};
  }
  return {0, 0};
}

double& part(PumpedWell& well, Unknown unknown) {
  switch (unknown) {
    case Unknown::transmissivity:
      return well.transmissivity_m2_s;
    case Unknown::storativity:
      return well.storativity;
    case Unknown::linear_loss:
      return well.linear_loss_s_m2;
    case Unknown::quadratic_loss:
      return well.quadratic_loss_s2_m5;
    case Unknown::storage_radius:
      return well.casing_radius_m;
    case Unknown::well_radius:
      break;
  }
  return well.well_radius_m;
}

double scatter_of(LevelRecord const& record, LevelReading const& reading, Scatter scatter) {
  if (scatter == Scatter::alike) {
    return 1;
  }
  double most_m = 1e-9;
  for (auto const& each : record.readings) {
    most_m = std::max(most_m, std::abs(each.drawdown_m));
  }
  constexpr double least_share = 0.02;
  return std::max(std::abs(reading.drawdown_m), least_share * most_m);
}

Found found_for(PumpingTest const& test, PumpedWell const& fixed, std::vector<Unknown> const& unknowns,
                Scatter scatter) {
  Search const search(test, fixed, unknowns, scatter);
  Found found{unknowns, search.best(search.net()), {}, scatter};
  found.well = search.well(found.fit.parameters);
  return found;
}

}  // namespace wellproof
