#include "plant/radial_flow.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

#include <boost/math/special_functions/bessel.hpp>
#include <boost/math/special_functions/expint.hpp>

#include "contract/require.h"

namespace wellproof {
namespace {

constexpr double pi = std::numbers::pi;

// Fourteen terms: twelve leave 1e-4 of the sharpest bend undone, with sixteen the digits of a double begin to show.
constexpr std::size_t terms = 14;

std::array<double, terms> stehfest_weights() {
  constexpr std::size_t half = terms / 2;
  std::array<double, 2 * half + 1> factorial{1};
  for (std::size_t i = 1; i < factorial.size(); ++i) {
    factorial[i] = factorial[i - 1] * static_cast<double>(i);
  }
  std::array<double, terms> weights{};
  for (std::size_t i = 1; i <= terms; ++i) {
    double sum = 0;
    for (std::size_t k = (i + 1) / 2; k <= std::min(i, half); ++k) {
      sum += std::pow(static_cast<double>(k), static_cast<double>(half)) * factorial[2 * k] /
             (factorial[half - k] * factorial[k] * factorial[k - 1] * factorial[i - k] * factorial[2 * k - i]);
    }
    weights[i - 1] = (half + i) % 2 == 0 ? sum : -sum;
  }
  return weights;
}

/// K0(ratio·q)/K1(q), where each by itself would be too small for a double as well.
double bessel_ratio(double q, double ratio) {
  constexpr double far = 300;
  constexpr double nothing = 700;
  if (q * (ratio - 1) > nothing) {
    return 0;
  }
  if (q * ratio > far) {
    // The asymptotic series of both, of which two terms are enough here.
    double const x = q * ratio;
    double const above = 1 - 1 / (8 * x) + 9 / (128 * x * x);
    double const below = q > far ? 1 + 3 / (8 * q) - 15 / (128 * q * q) : 0;
    if (below > 0) {
      return std::exp(-q * (ratio - 1)) / std::sqrt(ratio) * above / below;
    }
    return std::sqrt(pi / (2 * x)) * std::exp(-x) * above / boost::math::cyl_bessel_k(1, q);
  }
  return boost::math::cyl_bessel_k(0, q * ratio) / boost::math::cyl_bessel_k(1, q);
}

/// What one change of rate does, for each m³/s of it.
double response_s_m2(PumpedWell const& well, double linear_loss_s_m2, double distance_ratio, double time_s) {
  double const u = well.well_radius_m * well.well_radius_m * well.storativity / (4 * well.transmissivity_m2_s * time_s);
  double const skin = 2 * pi * well.transmissivity_m2_s * linear_loss_s_m2;
  double const unit_s_m2 = 1 / (4 * pi * well.transmissivity_m2_s);
  if (well.casing_radius_m > 0) {
    double const share = well.well_radius_m / well.casing_radius_m;
    return unit_s_m2 * large_well_function(u, share * share * well.storativity, skin, distance_ratio);
  }
  double const of_well = distance_ratio > 1 ? 0 : 2 * skin;
  return unit_s_m2 * (theis_well_function(u * distance_ratio * distance_ratio) + of_well);
}

template <class Response>
double superposed_m(std::span<RateStep const> rates, double time_s, Response const& response) {
  double drawdown_m = 0;
  double before_m3_s = 0;
  for (RateStep const& step : rates) {
    if (step.from_s < time_s && step.flow_m3_s != before_m3_s) {
      drawdown_m += (step.flow_m3_s - before_m3_s) * response(step.flow_m3_s + before_m3_s, time_s - step.from_s);
    }
    before_m3_s = step.flow_m3_s;
  }
  return drawdown_m;
}

}  // namespace

double theis_well_function(double u) {
  require(u > 0, "the well function needs u above 0");
  return boost::math::expint(1, u);
}

double theis_drawdown_m(double flow_m3_s, double transmissivity_m2_s, double storativity, double distance_m,
                        double time_s) {
  RateStep const constant{0, flow_m3_s};
  return theis_drawdown_m(std::span(&constant, 1), transmissivity_m2_s, storativity, distance_m, time_s);
}

double cooper_jacob_drawdown_m(double flow_m3_s, double transmissivity_m2_s, double storativity, double distance_m,
                               double time_s) {
  require(transmissivity_m2_s > 0 && storativity > 0 && distance_m > 0,
          "a formation needs T, S and a distance above 0");
  if (!(time_s > 0)) {
    return 0;
  }
  double const u = distance_m * distance_m * storativity / (4 * transmissivity_m2_s * time_s);
  return flow_m3_s / (4 * pi * transmissivity_m2_s) * (-std::numbers::egamma - std::log(u));
}

double theis_drawdown_m(std::span<RateStep const> rates, double transmissivity_m2_s, double storativity,
                        double distance_m, double time_s) {
  require(transmissivity_m2_s > 0 && storativity > 0 && distance_m > 0,
          "a formation needs T, S and a distance above 0");
  return superposed_m(rates, time_s, [&](double, double since_s) {
    double const u = distance_m * distance_m * storativity / (4 * transmissivity_m2_s * since_s);
    return theis_well_function(u) / (4 * pi * transmissivity_m2_s);
  });
}

double large_well_function(double u_well, double storage_ratio, double skin, double distance_ratio) {
  require(u_well > 0 && storage_ratio > 0 && skin >= 0 && distance_ratio >= 1,
          "the function of a large well needs u and α above 0, no negative skin and a distance from the bore on");
  static std::array<double, terms> const weights = stehfest_weights();
  // In the time Tt/(S·r_w²); p goes with it.
  double const step = std::numbers::ln2 * 4 * u_well;
  double sum = 0;
  for (std::size_t i = 0; i < terms; ++i) {
    double const p = step * static_cast<double>(i + 1);
    double const q = std::sqrt(p);
    double const at_bore = bessel_ratio(q, 1) + skin * q;
    double const seen = distance_ratio > 1 ? bessel_ratio(q, distance_ratio) : at_bore;
    sum += weights[i] * 2 * seen / (p * (q + p * at_bore / (2 * storage_ratio)));
  }
  return sum * step;
}

double pumped_well_drawdown_m(std::span<RateStep const> rates, PumpedWell const& well, double time_s) {
  require(well.transmissivity_m2_s > 0 && well.storativity > 0 && well.well_radius_m > 0,
          "a pumped well needs T, S and a radius above 0");
  return superposed_m(rates, time_s, [&](double both_flows_m3_s, double since_s) {
    // C·Q² from one rate to the next is C times the sum of both times their difference.
    return response_s_m2(well, well.linear_loss_s_m2 + well.quadratic_loss_s2_m5 * both_flows_m3_s, 1, since_s);
  });
}

double drawdown_beside_m(std::span<RateStep const> rates, PumpedWell const& well, double distance_m, double time_s) {
  require(well.transmissivity_m2_s > 0 && well.storativity > 0 && well.well_radius_m > 0,
          "a pumped well needs T, S and a radius above 0");
  require(distance_m >= well.well_radius_m, "an observed distance begins at the bore");
  return superposed_m(rates, time_s, [&](double both_flows_m3_s, double since_s) {
    return response_s_m2(well, well.linear_loss_s_m2 + well.quadratic_loss_s2_m5 * both_flows_m3_s,
                         std::max(distance_m / well.well_radius_m, 1 + 1e-9), since_s);
  });
}

}  // namespace wellproof
