#include "fit/fit_pumping_test.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

#include "fit/gather.h"
#include "fit/least_squares.h"
#include "fit/search.h"
#include "fit/what_it_tells.h"

namespace wellproof {
namespace {

// Storativity of a confined formation where nothing tells it: freeze_cherry_1979, the same as a site is given without a
// test.
constexpr double usual_storativity = 3e-4;
constexpr Ends usual_storativities{5e-5, 5e-3};
// Beyond these it is no formation's, confined or not, but a skin's (common practice, no source).
constexpr Ends likely_storativities{1e-5, 0.3};

bool rates_differ(std::vector<RateStep> const& rates) {
  double first_m3_s = 0;
  for (auto const& step : rates) {
    if (step.flow_m3_s > 0 && first_m3_s == 0) {
      first_m3_s = step.flow_m3_s;
    }
    if (step.flow_m3_s > 0 && step.flow_m3_s != first_m3_s) {
      return true;
    }
  }
  return false;
}

bool without(std::vector<Unknown>& unknowns, Unknown gone) {
  auto const at = std::find(unknowns.begin(), unknowns.end(), gone);
  bool const there = at != unknowns.end();
  if (there) {
    unknowns.erase(at);
  }
  return there;
}

/// The most drawdown that the part is answerable for, at the highest rate.
double loss_m(PumpedWell const& well, std::vector<RateStep> const& rates, Unknown unknown) {
  double most_m3_s = 0;
  for (auto const& step : rates) {
    most_m3_s = std::max(most_m3_s, step.flow_m3_s);
  }
  return unknown == Unknown::linear_loss ? well.linear_loss_s_m2 * most_m3_s
                                         : well.quadratic_loss_s2_m5 * most_m3_s * most_m3_s;
}

/// Which unknowns the readings may have a say in, and what stands for the others.
struct Choice {
  PumpedWell fixed;
  std::vector<Unknown> unknowns;
  bool storativity_assumed = false;
};

Choice first_choice(PumpingTest const& test) {
  bool const in_well = std::any_of(test.records.begin(), test.records.end(),
                                   [](LevelRecord const& record) { return record.distance_m == 0; });
  bool const beside = std::any_of(test.records.begin(), test.records.end(),
                                  [](LevelRecord const& record) { return record.distance_m > 0; });
  Choice choice;
  choice.unknowns = {Unknown::transmissivity};
  choice.fixed.storativity = test.storativity.value_or(usual_storativity);
  choice.fixed.casing_radius_m = test.casing_radius_m.value_or(0);
  choice.fixed.well_radius_m = test.well_radius_m.value_or(0);
  if (!test.storativity) {
    choice.unknowns.push_back(Unknown::storativity);
  }
  if (in_well) {
    // From the pumped well alone, storativity and linear loss do the same thing to the curve: one of them is asked.
    if (beside || test.storativity) {
      choice.unknowns.push_back(Unknown::linear_loss);
    }
    if (rates_differ(test.rates)) {
      choice.unknowns.push_back(Unknown::quadratic_loss);
    }
    if (!test.casing_radius_m) {
      choice.unknowns.push_back(Unknown::storage_radius);
    }
  }
  return choice;
}

/// Leaves out what the readings have no use for, one after the other, each by a fit of its own.
Found settled(PumpingTest const& test, Choice& choice, Scatter scatter) {
  auto const fitted = [&](Choice const& by) { return found_for(test, by.fixed, by.unknowns, scatter); };
  Found found = fitted(choice);
  bool const in_well_alone = std::all_of(test.records.begin(), test.records.end(),
                                         [](LevelRecord const& record) { return record.distance_m == 0; });
  auto const unlikely = [&] {
    return found.well.storativity < likely_storativities.low || found.well.storativity > likely_storativities.high;
  };
  if (in_well_alone && !test.storativity && unlikely()) {
    // A skin shows as a storativity that no formation has. Then the usual one is taken and the loss is asked.
    Choice other = choice;
    without(other.unknowns, Unknown::storativity);
    other.fixed.storativity = usual_storativity;
    bool const too_easy = found.well.storativity > likely_storativities.high;
    other.unknowns.push_back(too_easy ? Unknown::well_radius : Unknown::linear_loss);
    other.storativity_assumed = true;
    Found const tried = fitted(other);
    if (tried.fit.sum_of_squares < 1.05 * found.fit.sum_of_squares) {
      choice = other;
      found = tried;
    }
  }
  constexpr double of_no_weight_m = 1e-3;
  for (Unknown const loss : {Unknown::linear_loss, Unknown::quadratic_loss}) {
    auto const has = std::find(choice.unknowns.begin(), choice.unknowns.end(), loss) != choice.unknowns.end();
    double most_m = 0;
    for (auto const& record : test.records) {
      for (auto const& reading : record.readings) {
        most_m = std::max(most_m, record.distance_m > 0 ? 0 : reading.drawdown_m);
      }
    }
    if (has && loss_m(found.well, test.rates, loss) < of_no_weight_m * most_m) {
      without(choice.unknowns, loss);
      if (loss == Unknown::linear_loss && in_well_alone) {
        // No loss at this storativity: water comes in as if the bore were wider than it is.
        choice.unknowns.push_back(Unknown::well_radius);
      }
      found = fitted(choice);
    }
  }
  if (!test.casing_radius_m && without(choice.unknowns, Unknown::storage_radius)) {
    // Storage that was not asked for must earn its place (a fifth off the scatter) or is left out.
    Found const plain = fitted(choice);
    bool const earned = found.fit.freedom > 0 && found.fit.sum_of_squares < 0.8 * plain.fit.sum_of_squares;
    if (earned) {
      choice.unknowns.push_back(Unknown::storage_radius);
    } else {
      found = plain;
    }
  }
  return found;
}

struct Widening {
  double autocorrelation = 0;
  double factor = 1;
};

/// Neighbouring readings that err the same way are worth fewer than they are.
Widening widening(PumpingTest const& test, LeastSquares const& fit) {
  Widening wide;
  std::size_t at = 0;
  double weight = 0;
  for (auto const& record : test.records) {
    std::vector<double> const own(fit.residuals.begin() + static_cast<std::ptrdiff_t>(at),
                                  fit.residuals.begin() + static_cast<std::ptrdiff_t>(at + record.readings.size()));
    at += record.readings.size();
    wide.autocorrelation += autocorrelation(own) * static_cast<double>(own.size());
    weight += static_cast<double>(own.size());
  }
  wide.autocorrelation /= std::max(weight, 1.0);
  bool const beyond_chance = wide.autocorrelation > 2 / std::sqrt(std::max(weight, 1.0));
  if (beyond_chance) {
    double const held = std::min(wide.autocorrelation, 0.98);
    wide.factor = std::sqrt((1 + held) / (1 - held));
  }
  return wide;
}

/// How likely the readings are under a fit, as the logarithm, but for a constant.
double likelihood(PumpingTest const& test, Found const& found) {
  double logs = 0;
  double count = 0;
  for (auto const& record : test.records) {
    for (auto const& reading : record.readings) {
      logs += std::log(scatter_of(record, reading, found.scatter));
      count += 1;
    }
  }
  return -0.5 * count * std::log(std::max(found.fit.sum_of_squares / count, 1e-300)) - logs;
}

/// Each reading counts alike, unless what is left over is chance and plainly goes with the drawdown: a wrong law leaves
/// residuals that hang together, and then small drawdowns must not rule the fit.
Found best_found(PumpingTest const& test, Choice& choice) {
  choice = first_choice(test);
  Found alike = settled(test, choice, Scatter::alike);
  Choice other = first_choice(test);
  Found by_share = settled(test, other, Scatter::by_share);
  constexpr double plainly = 3;
  bool const better = likelihood(test, by_share) > likelihood(test, alike) + plainly;
  if (better && widening(test, by_share.fit).factor == 1) {
    choice = other;
    return by_share;
  }
  return alike;
}

Estimate estimate(Found const& found, Unknown unknown, double widened) {
  PumpedWell well = found.well;
  Estimate of{part(well, unknown), part(well, unknown), part(well, unknown), Estimate::Standing::none};
  auto const at = std::find(found.unknowns.begin(), found.unknowns.end(), unknown);
  if (at == found.unknowns.end()) {
    return of;
  }
  of.standing = Estimate::Standing::fitted;
  Ends const ends = ends_of(unknown);
  auto const i = static_cast<std::size_t>(at - found.unknowns.begin());
  double half = std::numeric_limits<double>::infinity();
  if (found.fit.freedom > 0) {
    half = widened * student_t_95(found.fit.freedom) * found.fit.standard_error[i];
  }
  bool const held = std::isfinite(half) && half < 100;
  of.low = held ? std::clamp(of.value * std::exp(-half), std::min(ends.low, of.value), of.value) : ends.low;
  of.high = held ? std::clamp(of.value * std::exp(half), of.value, std::max(ends.high, of.value)) : ends.high;
  return of;
}

}  // namespace

double modelled_m(std::vector<RateStep> const& rates, PumpedWell const& well, LevelRecord const& record,
                  double time_s) {
  auto const down_m = [&](double at_s) {
    if (record.distance_m <= 0) {
      return pumped_well_drawdown_m(rates, well, at_s);
    }
    if (well.casing_radius_m > 0 && well.well_radius_m > 0 && well.well_radius_m < record.distance_m) {
      return drawdown_beside_m(rates, well, record.distance_m, at_s);
    }
    return theis_drawdown_m(rates, well.transmissivity_m2_s, well.storativity, record.distance_m, at_s);
  };
  return record.recovered ? down_m(stop_s(rates).value_or(0)) - down_m(time_s) : down_m(time_s);
}

PumpingTestFit fit_pumping_test(PumpingTest const& whole) {
  PumpingTest test = whole;
  for (auto& record : test.records) {
    record = gathered(record, test.rates);
  }
  if (test.rates_from_their_rows.size() > 1) {
    // Which of the two it was, the levels know.
    PumpingTest one = test;
    one.rates_from_their_rows.clear();
    PumpingTest other = one;
    other.rates = test.rates_from_their_rows;
    auto const first = fit_pumping_test(one);
    auto const second = fit_pumping_test(other);
    return first.rmse_m.value <= second.rmse_m.value ? first : second;
  }
  Choice choice;
  Found const found = best_found(test, choice);
  Widening const wide = widening(test, found.fit);

  PumpingTestFit fit;
  fit.rates = test.rates;
  fit.well = found.well;
  fit.stated_radius_m = test.well_radius_m.value_or(0);
  fit.autocorrelation = wide.autocorrelation;
  fit.widened = wide.factor;
  fit.transmissivity_m2_s = estimate(found, Unknown::transmissivity, wide.factor);
  fit.storativity = estimate(found, Unknown::storativity, wide.factor);
  fit.linear_loss_s_m2 = estimate(found, Unknown::linear_loss, wide.factor);
  fit.quadratic_loss_s2_m5 = estimate(found, Unknown::quadratic_loss, wide.factor);
  fit.storage_radius_m = estimate(found, Unknown::storage_radius, wide.factor);
  if (test.storativity) {
    fit.storativity.standing = Estimate::Standing::given;
  } else if (choice.storativity_assumed) {
    fit.storativity = {usual_storativity, usual_storativities.low, usual_storativities.high,
                       Estimate::Standing::assumed};
  }
  if (test.casing_radius_m) {
    fit.storage_radius_m.standing = Estimate::Standing::given;
  }

  double all_squares = 0;
  for (auto const& record : test.records) {
    RecordFit of{record.file, record.distance_m, record.recovered, {}, 0, 0, std::nullopt, std::nullopt, 0};
    double squares = 0;
    for (auto const& reading : record.readings) {
      double const modelled = modelled_m(test.rates, fit.well, record, reading.time_s);
      of.readings.push_back({reading.time_s, reading.drawdown_m, modelled});
      squares += (modelled - reading.drawdown_m) * (modelled - reading.drawdown_m);
    }
    of.rmse_m = std::sqrt(squares / static_cast<double>(std::max<std::size_t>(record.readings.size(), 1)));
    if (test.records.size() > 1 && record.distance_m > 0) {
      PumpingTest single = test;
      single.records = {record};
      PumpingTestFit const alone = fit_pumping_test(single);
      of.alone_transmissivity_m2_s = alone.transmissivity_m2_s;
      of.alone_storativity = alone.storativity;
      of.alone_rmse_m = alone.rmse_m.value;
    }
    all_squares += squares;
    fit.records.push_back(std::move(of));
  }
  double const rmse_m =
      std::sqrt(all_squares / static_cast<double>(std::max<std::size_t>(found.fit.residuals.size(), 1)));
  Factors const scatter = found.fit.freedom > 0 ? scatter_factors_95(found.fit.freedom) : Factors{0, 1e3};
  fit.rmse_m = {rmse_m, rmse_m * scatter.low, rmse_m * scatter.high, Estimate::Standing::fitted};
  for (std::size_t i = 0; i < fit.records.size(); ++i) {
    fit.records[i].gathered_from = whole.records[i].readings.size();
  }
  say_what_it_tells(test, fit);
  return fit;
}

}  // namespace wellproof
