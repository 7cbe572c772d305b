#pragma once
// The water-bearing formation around the well: confined, radial flow on rings (radial_modes.h). It answers through one
// narrow door: over the next stretch of time its inflow is a straight line of the water level in the well.
//
// Over a stretch the inflow counts as even. Each mode is followed exactly under it, so that the mean level, the mean
// inflow and the volume agree to rounding, and a stretch may be as long as the inflow changes little.
#include <limits>

#include "plant/radial_modes.h"
#include "site/site.h"

namespace wellproof {

/// Inflow over a stretch: q = at_surface + per_depth · level depth, down to the depth below which no more comes.
struct InflowLine {
  double at_surface_m3_s = 0;
  double per_depth_m2_s = 0;  // ≥ 0: a deeper level draws more
  double deepest_m = std::numeric_limits<double>::infinity();

  double flow_m3_s(double level_depth_m) const {
    return at_surface_m3_s + per_depth_m2_s * (level_depth_m < deepest_m ? level_depth_m : deepest_m);
  }
  double slope_m2_s(double level_depth_m) const { return level_depth_m < deepest_m ? per_depth_m2_s : 0; }
};

/// The formation prepared for one well.
class Formation {
 public:
  /// How far it is drawn down: the size of each mode [m]. All 0: at rest.
  using Drawn = RadialModes::Values;

  /// Drawdown at the well's face over a stretch: what is left of the past, and what a unit of even inflow adds.
  struct Response {
    double left_m = 0;
    double per_flow_s_m2 = 0;
  };

  Formation() = default;
  /// @param transmissivity_m2_s [m²/s] ≥ 0; 0: it gives nothing
  /// @param storativity         > 0
  /// @param well_radius_m       [m] > 0, of the bore
  /// @param boundary_distance_m [m] > 0 where there is a boundary: an image well stands twice as far (ferris_1962)
  Formation(double transmissivity_m2_s, double storativity, double well_radius_m, Boundary boundary = Boundary::none,
            double boundary_distance_m = 0);

  bool gives() const { return transmissivity_m2_s_ > 0; }
  double transmissivity_m2_s() const { return transmissivity_m2_s_; }

  /// Mean drawdown at the face over the next stretch. @param duration_s [s] > 0
  Response mean_response(Drawn const& drawn, double duration_s) const;
  /// Drawdown at the face at the end of the next stretch.
  Response end_response(Drawn const& drawn, double duration_s) const;
  /// After a stretch of even inflow.
  void advance(Drawn& drawn, double flow_m3_s, double duration_s) const;

  /// Drawdown at the face for each unit of a flow that began that long ago [s/m²]; time 0: 0.
  /// Limits:  theis_1935 at the well's radius, cooper_jacob_1946 for long times
  /// Checked: tests/reference/formation_reference_test.cc
  double drawdown_per_flow_s_m2(double time_s) const;
  /// Drawdown at a distance, in the direction away from any boundary [m].
  double drawdown_m(Drawn const& drawn, double distance_m) const;
  /// Water given since it was at rest [m³].
  double given_m3(Drawn const& drawn) const;

 private:
  double transmissivity_m2_s_ = 0;
  double well_radius_m_ = 1;
  double per_second_ = 0;        // T/(S·r_w²): dimensionless time for each second
  double per_volume_1_m2_ = 0;   // 1/(2π·S·r_w²): what water taken at the well adds to a mode of shape 1
  RadialModes::Values heard_{};  // each mode as the well hears it, with its boundary's image
};

}  // namespace wellproof
