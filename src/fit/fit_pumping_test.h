#pragma once
// What a pumping test says of the formation and the well: transmissivity, storativity, the well's losses and what its
// casing stores, each with its 95 % interval, and in plain words what the readings cannot tell.
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "fit/pumping_test.h"

namespace wellproof {

/// A quantity with its 95 % interval. How it came about: fitted to the readings, given, assumed for want of anything
/// that tells it, or not asked of these readings at all.
struct Estimate {
  enum class Standing { fitted, given, assumed, none };
  double value = 0;
  double low = 0;
  double high = 0;
  Standing standing = Standing::none;
};

struct FittedReading {
  double time_s = 0;
  double measured_m = 0;
  double fitted_m = 0;
};

/// How one record is met by the fit of all, and what it says alone.
struct RecordFit {
  std::string file;
  double distance_m = 0;
  bool recovered = false;
  std::vector<FittedReading> readings;
  std::size_t gathered_from = 0;  // how many there were; more than above: they were gathered into means
  double rmse_m = 0;
  std::optional<Estimate> alone_transmissivity_m2_s;
  std::optional<Estimate> alone_storativity;
  double alone_rmse_m = 0;
};

/// Something the reader of the result must know. `key` is a word for programs ("storage_dominates").
struct TestNote {
  std::string key;
  std::string says;
};

struct PumpingTestFit {
  std::vector<RateStep> rates;
  PumpedWell well;             // the fitted formation and well; its radius 0 where the pumped well is not known
  double stated_radius_m = 0;  // of the bore, as given; the well above has another where it draws as if wider
  Estimate transmissivity_m2_s;
  Estimate storativity;
  Estimate linear_loss_s_m2;
  Estimate quadratic_loss_s2_m5;
  Estimate storage_radius_m;  // of the casing
  Estimate rmse_m;
  std::vector<RecordFit> records;
  double autocorrelation = 0;  // of neighbouring residuals
  double widened = 1;          // by what factor the intervals were widened for it
  double casing_share = 0;     // of the last rate, what the casing still gave at the last reading
  bool tells_transmissivity = true;
  bool tells_storativity = true;
  std::vector<TestNote> notes;
};

/// Least squares in the logarithms of the unknowns, each reading alike; nothing needs to be said of which part of the
/// curve the casing rules.
/// @param test as read_pumping_test gives it
/// Source:  theis_1935, papadopulos_cooper_1967, jacob_1947
/// Checked: tests/reference/pumping_test_reference_test.cc, tests/law/pumping_test_law_test.cc
PumpingTestFit fit_pumping_test(PumpingTest const& test);

/// What the fitted formation and well make of a place at a moment.
/// @param record whose place and way of reading it is
/// @return       [m]
double modelled_m(std::vector<RateStep> const& rates, PumpedWell const& well, LevelRecord const& record, double time_s);

}  // namespace wellproof
