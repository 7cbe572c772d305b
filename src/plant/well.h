#pragma once
// The well bore: what stands in its casing, what the water loses on its way in, and the formation around it.
#include <limits>

#include "plant/formation.h"
#include "site/site.h"

namespace wellproof {

/// Levels "for good" are those after a day of even pumping: in a formation without border they never quite settle.
inline constexpr double settled_time_s = 86400;

/// The well prepared.
struct Well {
  double static_level_depth_m = 0;  // with the season's drop
  double depth_m = 0;
  double bore_area_m2 = 0;  // of the annulus between casing and drop pipe
  Formation formation;
  double linear_loss_s_m2 = 0;      // B of the well's own loss B·q + C·q² (jacob_1947)
  double quadratic_loss_s2_m5 = 0;  // C
  double fracture_depth_m = std::numeric_limits<double>::infinity();  // a level below it draws no more

  /// Inflow as a line of the level over the next stretch. The quadratic loss is taken along its tangent.
  /// @param drawn          how far the formation is drawn down now
  /// @param level_depth_m  where the tangent touches: the level now
  /// @param static_shift_m added to the static level (a scenario's drought)
  /// @param share          of what the formation has, both transmissivity and storativity
  InflowLine inflow(Formation::Drawn const& drawn, double level_depth_m, double duration_s, double static_shift_m,
                    double share) const;

  /// Inflow that, held for a time from rest, brings the level to a depth [m³/s]; negative above the static level.
  double flow_for_level_m3_s(double level_depth_m, double time_s = settled_time_s, double static_shift_m = 0,
                             double share = 1) const;
  /// Level after an even inflow for a time from rest; the bottom of the well where it cannot be had [m].
  double level_for_flow_m(double flow_m3_s, double time_s = settled_time_s, double static_shift_m = 0,
                          double share = 1) const;
};

/// The well of a drawn site. The formation's figures hold from the ordinary static level, so a season's drop lowers
/// what is had at a given level.
Well prepare_well(DrawnSite const& site);

/// The formation through time: its state, and the line by which it answers for now. A line holds until the level has
/// moved far enough, or the planned end; then the formation is advanced by what really came in.
class InflowCourse {
 public:
  InflowCourse() = default;
  /// @param drawn how far the formation is drawn down at time 0
  InflowCourse(Well const& well, Formation::Drawn const& drawn, double level_depth_m, double static_shift_m,
               double share);

  InflowLine const& line() const { return line_; }
  double ends_s() const { return ends_s_; }
  /// Whether the line has served its time.
  bool due(double time_s, double level_depth_m) const;
  /// Advances the formation to a time, by the water that came in until then, and draws the line from there on.
  /// @param came_in_m3 since time 0
  void renew(Well const& well, double time_s, double came_in_m3, double level_depth_m, double static_shift_m,
             double share);
  Formation::Drawn const& drawn() const { return drawn_; }

 private:
  Formation::Drawn drawn_{};
  InflowLine line_;
  double share_ = 1;
  double began_s_ = 0;
  double ends_s_ = 0;
  double came_in_m3_ = 0;
  double level_depth_m_ = 0;  // at the beginning of the line
  double may_move_m_ = 0;
};

/// The bore by itself: a level, and a formation drawn down so far.
struct Bore {
  double level_depth_m = 0;
  InflowCourse course;
  double time_s = 0;
  double came_in_m3 = 0;
};

/// At rest, with the water at the static level.
Bore bore_at_rest(Well const& well, double static_shift_m = 0);
/// Carries a bore on with a flow pumped from it evenly. The level goes on below the intake and even the bottom: who
/// asks has to look. Casing balance A·dL/dt = pumped − inflow, exact along each line.
/// Source:  papadopulos_cooper_1967 (the balance)
/// Checked: tests/reference/formation_reference_test.cc
void pump_evenly(Well const& well, Bore& bore, double flow_m3_s, double duration_s, double static_shift_m = 0);
/// The same until the level passes a depth; the time that took, or the limit if it was not passed [s].
double time_to_level_s(Well const& well, Bore bore, double flow_m3_s, double level_depth_m, double limit_s,
                       double static_shift_m = 0);

}  // namespace wellproof
