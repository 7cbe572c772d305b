#include "plant/driller_test.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "plant/radial_flow.h"
#include "plant/root.h"

namespace wellproof {
namespace {

double loss_m(DrillerTest const& test) {
  return test.linear_loss_s_m2 * test.flow_m3_s + test.quadratic_loss_s2_m5 * test.flow_m3_s * test.flow_m3_s;
}

double with_storage_m(DrillerTest const& test, double transmissivity_m2_s) {
  RateStep const rate{0, test.flow_m3_s};
  PumpedWell const well{.transmissivity_m2_s = transmissivity_m2_s,
                        .storativity = test.storativity,
                        .well_radius_m = test.well_radius_m,
                        .casing_radius_m = std::sqrt(test.bore_area_m2 / std::numbers::pi),
                        .linear_loss_s_m2 = test.linear_loss_s_m2,
                        .quadratic_loss_s2_m5 = test.quadratic_loss_s2_m5};
  return pumped_well_drawdown_m(std::span(&rate, 1), well, test.time_s);
}

}  // namespace

double repeated_transmissivity_m2_s(DrillerTest const& test) {
  double const formation_m = test.drawdown_m - loss_m(test);
  if (!(formation_m > 0)) {
    return 0;
  }
  double const unit_m2_s = test.flow_m3_s / (4 * std::numbers::pi * formation_m);
  double const times_1_m2_s = 2.25 * test.time_s / (test.well_radius_m * test.well_radius_m * test.storativity);
  double transmissivity_m2_s = 10 * unit_m2_s;
  for (int round = 0; round < 100; ++round) {
    // The logarithm of a time too short for the straight line is held at what Theis' law gives at u of about 1.
    double const next_m2_s = unit_m2_s * std::max(std::log(times_1_m2_s * transmissivity_m2_s), 0.2);
    double const moved = std::abs(next_m2_s - transmissivity_m2_s);
    transmissivity_m2_s = next_m2_s;
    if (moved < 1e-12 * transmissivity_m2_s) {
      break;
    }
  }
  return transmissivity_m2_s;
}

double tested_transmissivity_m2_s(DrillerTest const& test) {
  double const high_m2_s = repeated_transmissivity_m2_s(test);
  if (!(test.bore_area_m2 > 0) || high_m2_s <= 0) {
    return high_m2_s;
  }
  if (test.flow_m3_s * test.time_s <= test.drawdown_m * test.bore_area_m2) {
    return 0;
  }
  // On the logarithm: the drawdown falls as T rises, and is the casing's alone as T comes to nothing.
  auto const too_much_m = [&](double log_m2_s) { return with_storage_m(test, std::exp(log_m2_s)) - test.drawdown_m; };
  Bracket bracket{.low = std::log(1e-6 * high_m2_s), .high = std::log(high_m2_s)};
  bracket.high_value = too_much_m(bracket.high);
  if (bracket.high_value >= 0) {
    return high_m2_s;
  }
  bracket.low_value = too_much_m(bracket.low);
  if (bracket.low_value <= 0) {
    return std::exp(bracket.low);
  }
  return std::exp(narrow(bracket, too_much_m, {.width = 1e-9, .value_width = 1e-9 * test.drawdown_m}));
}

}  // namespace wellproof
