#include "plant/formation.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace wellproof {
namespace {

// How a mode that decays by z over a stretch ends, and its means: with an even inflow from nothing it comes to mean(z)
// of what it would without decay, and its own mean over the stretch is half(z)·2 of half of that.
struct Decay {
  double left;  // e^{-z}
  double mean;  // (1 - e^{-z})/z
  double ramp;  // (1 - mean)/z
};

Decay decay(double z) {
  if (z > 40) {
    return {0, 1 / z, (1 - 1 / z) / z};
  }
  if (z < 0.01) {  // series, to 1e-13
    double const mean = 1 - z / 2 * (1 - z / 3 * (1 - z / 4 * (1 - z / 5 * (1 - z / 6))));
    return {1 - z * mean, mean, 0.5 - z / 6 * (1 - z / 4 * (1 - z / 5 * (1 - z / 6)))};
  }
  double const gone = -std::expm1(-z);
  double const mean = gone / z;
  return {1 - gone, mean, (1 - mean) / z};
}

}  // namespace

Formation::Formation(double transmissivity_m2_s, double storativity, double well_radius_m, Boundary boundary,
                     double boundary_distance_m)
    : transmissivity_m2_s_(transmissivity_m2_s),
      well_radius_m_(well_radius_m),
      per_second_(transmissivity_m2_s / (storativity * well_radius_m * well_radius_m)),
      per_volume_1_m2_(1 / (2 * std::numbers::pi * storativity * well_radius_m * well_radius_m)),
      heard_(radial_modes().at_well) {
  double const image = std::log(std::max(2 * boundary_distance_m / well_radius_m, 1.0));
  if (boundary != Boundary::none && image < RadialModes::log_span) {
    auto const there = radial_modes().at(image);
    for (std::size_t k = 0; k < heard_.size(); ++k) {
      heard_[k] += boundary == Boundary::no_flow ? there[k] : -there[k];
    }
  }
}

Formation::Response Formation::mean_response(Drawn const& drawn, double duration_s) const {
  auto const& modes = radial_modes();
  Response response;
  for (std::size_t k = 0; k < drawn.size(); ++k) {
    auto const part = decay(modes.decay[k] * per_second_ * duration_s);
    response.left_m += heard_[k] * part.mean * drawn[k];
    response.per_flow_s_m2 += heard_[k] * modes.at_well[k] * part.ramp;
  }
  response.per_flow_s_m2 *= per_volume_1_m2_ * duration_s;
  return response;
}

Formation::Response Formation::end_response(Drawn const& drawn, double duration_s) const {
  auto const& modes = radial_modes();
  Response response;
  for (std::size_t k = 0; k < drawn.size(); ++k) {
    auto const part = decay(modes.decay[k] * per_second_ * duration_s);
    response.left_m += heard_[k] * part.left * drawn[k];
    response.per_flow_s_m2 += heard_[k] * modes.at_well[k] * part.mean;
  }
  response.per_flow_s_m2 *= per_volume_1_m2_ * duration_s;
  return response;
}

void Formation::advance(Drawn& drawn, double flow_m3_s, double duration_s) const {
  auto const& modes = radial_modes();
  double const taken_m = flow_m3_s * duration_s * per_volume_1_m2_;
  for (std::size_t k = 0; k < drawn.size(); ++k) {
    auto const part = decay(modes.decay[k] * per_second_ * duration_s);
    drawn[k] = part.left * drawn[k] + modes.at_well[k] * part.mean * taken_m;
  }
}

double Formation::drawdown_per_flow_s_m2(double time_s) const {
  return end_response({}, time_s).per_flow_s_m2;
}

double Formation::drawdown_m(Drawn const& drawn, double distance_m) const {
  double const x = std::log(std::max(distance_m / well_radius_m_, 1.0));
  auto const there = radial_modes().at(std::min(x, RadialModes::log_span));
  double sum_m = 0;
  for (std::size_t k = 0; k < drawn.size(); ++k) {
    sum_m += there[k] * drawn[k];
  }
  return sum_m;
}

double Formation::given_m3(Drawn const& drawn) const {
  // The mode without decay holds the whole; the others only move water from place to place.
  return drawn[0] / (radial_modes().at_well[0] * per_volume_1_m2_);
}

}  // namespace wellproof
