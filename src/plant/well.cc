#include "plant/well.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "plant/driller_test.h"

namespace wellproof {
namespace {

constexpr double least_drawdown_m = 0.3;   // ranges of two levels may overlap: a drawn test never has less than this
constexpr double outside_by_inside = 1.2;  // of small schedule 40 pipe: 1.660/1.380 in at 1¼ in (asme_b36_10)

// A line of inflow serves until the level has moved by so much, or by so much of the drawdown: inflow counts as even
// over it, which leaves an error of the square of this. Each is planned for most of that, by how the level moved under
// the one before: up to twice as long, and to half an hour.
constexpr double line_move_m = 0.05;
constexpr double line_move_share = 0.04;
constexpr double line_aim = 0.5;
constexpr double shortest_line_s = 1;
constexpr double longest_line_s = 1800;

double circle_m2(double diameter_m) {
  return std::numbers::pi / 4 * diameter_m * diameter_m;
}

/// Cross-section of the drop pipe's outside, the mean over its runs.
double drop_pipe_m2(DrawnSite const& site) {
  double volume_m3 = 0;
  double length_m = 0;
  for (auto const& run : site.pipes) {
    if (run.place == PipePlace::drop) {
      volume_m3 += run.length_m * circle_m2(outside_by_inside * run.inside_diameter_m);
      length_m += run.length_m;
    }
  }
  return length_m > 0 ? volume_m3 / length_m : 0;
}

double transmissivity_m2_s(DrawnSite const& site, Well const& well) {
  auto const& bore = site.well;
  DrillerTest test{.flow_m3_s = 1,
                   .time_s = bore.test_time_s,
                   .drawdown_m = 1,
                   .storativity = bore.storativity,
                   .well_radius_m = bore.casing_diameter_m / 2,
                   .bore_area_m2 = well.bore_area_m2,
                   .linear_loss_s_m2 = bore.linear_loss_s_m2,
                   .quadratic_loss_s2_m5 = bore.quadratic_loss_s2_m5};
  switch (bore.inflow_known) {
    case InflowKnown::transmissivity:
      return bore.transmissivity_m2_s;
    case InflowKnown::specific_capacity:
      // A flow for each length says nothing of the flow: a metre of drawdown stands for it, and the casing is left out.
      test.flow_m3_s = bore.specific_capacity_m2_s * test.drawdown_m;
      test.bore_area_m2 = 0;
      return bore.specific_capacity_m2_s > 0 ? tested_transmissivity_m2_s(test) : 0;
    case InflowKnown::test:
      test.flow_m3_s = bore.test_flow_m3_s;
      test.drawdown_m = std::max(bore.test_level_depth_m - bore.static_level_depth_m, least_drawdown_m);
      break;
    case InflowKnown::yield:
      // What comes in at last with the level at the pump: none of it is the casing's.
      test.flow_m3_s = bore.yield_m3_s;
      test.bore_area_m2 = 0;
      test.drawdown_m = std::max(site.pump.setting_depth_m - bore.static_level_depth_m, least_drawdown_m);
      break;
  }
  return test.flow_m3_s > 0 ? tested_transmissivity_m2_s(test) : 0;
}

/// Flow at which down = linear·q + C·q·|q|, in a form that holds for C of 0 too.
double flow_for_drawdown_m3_s(double linear_s_m2, double quadratic_s2_m5, double down_m) {
  return 2 * down_m / (std::sqrt(linear_s_m2 * linear_s_m2 + 4 * quadratic_s2_m5 * std::abs(down_m)) + linear_s_m2);
}

/// Level held by a flow when the formation adds so much for each of it.
double drawdown_m(Well const& well, double per_flow_s_m2, double flow_m3_s) {
  return (per_flow_s_m2 + well.linear_loss_s_m2) * flow_m3_s +
         well.quadratic_loss_s2_m5 * flow_m3_s * std::abs(flow_m3_s);
}

}  // namespace

Well prepare_well(DrawnSite const& site) {
  auto const& bore = site.well;
  Well well;
  well.static_level_depth_m = bore.static_level_depth_m + bore.season_drop_m;
  well.depth_m = bore.depth_m;
  double const casing_m2 = circle_m2(bore.casing_diameter_m);
  well.bore_area_m2 = std::max(casing_m2 - drop_pipe_m2(site), 0.1 * casing_m2);
  well.linear_loss_s_m2 = bore.linear_loss_s_m2;
  well.quadratic_loss_s2_m5 = bore.quadratic_loss_s2_m5;
  if (bore.fracture_depth_m > 0) {
    well.fracture_depth_m = bore.fracture_depth_m;
  }
  well.formation = Formation(transmissivity_m2_s(site, well), bore.storativity, bore.casing_diameter_m / 2,
                             bore.boundary, bore.boundary_distance_m);
  return well;
}

InflowLine Well::inflow(Formation::Drawn const& drawn, double level_depth_m, double duration_s, double static_shift_m,
                        double share) const {
  if (!formation.gives() || !(share > 0)) {
    return {};
  }
  auto const response = formation.mean_response(drawn, duration_s);
  double const rest_m = static_level_depth_m + static_shift_m + response.left_m;
  double const linear_s_m2 = response.per_flow_s_m2 + linear_loss_s_m2;
  double const down_m = std::min(level_depth_m, fracture_depth_m) - rest_m;
  double const touched_m3_s = flow_for_drawdown_m3_s(linear_s_m2, quadratic_loss_s2_m5, down_m);
  double const per_depth_m2_s = 1 / (linear_s_m2 + 2 * quadratic_loss_s2_m5 * std::abs(touched_m3_s));
  return {share * (touched_m3_s - per_depth_m2_s * (rest_m + down_m)), share * per_depth_m2_s, fracture_depth_m};
}

double Well::flow_for_level_m3_s(double level_depth_m, double time_s, double static_shift_m, double share) const {
  if (!formation.gives() || !(share > 0)) {
    return 0;
  }
  double const down_m = std::min(level_depth_m, fracture_depth_m) - static_level_depth_m - static_shift_m;
  double const linear_s_m2 = formation.drawdown_per_flow_s_m2(time_s) + linear_loss_s_m2;
  return share * flow_for_drawdown_m3_s(linear_s_m2, quadratic_loss_s2_m5, down_m);
}

double Well::level_for_flow_m(double flow_m3_s, double time_s, double static_shift_m, double share) const {
  double const static_m = static_level_depth_m + static_shift_m;
  if (!formation.gives() || !(share > 0)) {
    return flow_m3_s > 0 ? depth_m : static_m;
  }
  double const level_m = static_m + drawdown_m(*this, formation.drawdown_per_flow_s_m2(time_s), flow_m3_s / share);
  return level_m <= fracture_depth_m ? level_m : depth_m;
}

InflowCourse::InflowCourse(Well const& well, Formation::Drawn const& drawn, double level_depth_m, double static_shift_m,
                           double share)
    : drawn_(drawn), share_(share) {
  renew(well, 0, 0, level_depth_m, static_shift_m, share);
}

bool InflowCourse::due(double time_s, double level_depth_m) const {
  return time_s >= ends_s_ || std::abs(level_depth_m - level_depth_m_) > may_move_m_;
}

void InflowCourse::renew(Well const& well, double time_s, double came_in_m3, double level_depth_m,
                         double static_shift_m, double share) {
  double const lasted_s = time_s - began_s_;
  if (lasted_s > 0 && share_ > 0) {
    well.formation.advance(drawn_, (came_in_m3 - came_in_m3_) / (lasted_s * share_), lasted_s);
  } else if (lasted_s > 0) {
    well.formation.advance(drawn_, 0, lasted_s);
  }
  // As long as the level, going on as it went, takes for most of what it may move.
  double const moved_m = std::abs(level_depth_m - level_depth_m_);
  double const longer = line_aim * may_move_m_ / std::max(moved_m, 0.5 * line_aim * may_move_m_);
  double const planned_s =
      lasted_s > 0 ? std::clamp(longer * lasted_s, shortest_line_s, longest_line_s) : shortest_line_s;
  line_ = well.inflow(drawn_, level_depth_m, planned_s, static_shift_m, share);
  share_ = share;
  began_s_ = time_s;
  ends_s_ = time_s + planned_s;
  came_in_m3_ = came_in_m3;
  level_depth_m_ = level_depth_m;
  may_move_m_ =
      std::max(line_move_m, line_move_share * std::abs(level_depth_m - well.static_level_depth_m - static_shift_m));
}

Bore bore_at_rest(Well const& well, double static_shift_m) {
  Bore bore;
  bore.level_depth_m = well.static_level_depth_m + static_shift_m;
  bore.course = InflowCourse(well, {}, bore.level_depth_m, static_shift_m, 1);
  return bore;
}

namespace {

/// One step along the line in force, not past its end. @return the time it took
double step_bore(Well const& well, Bore& bore, double flow_m3_s, double duration_s, double static_shift_m) {
  if (bore.course.due(bore.time_s, bore.level_depth_m)) {
    bore.course.renew(well, bore.time_s, bore.came_in_m3, bore.level_depth_m, static_shift_m, 1);
  }
  auto const& line = bore.course.line();
  double const inflow_m3_s = line.flow_m3_s(bore.level_depth_m);
  double const slope_m2_s = line.slope_m2_s(bore.level_depth_m);
  double const fall_m_s = (flow_m3_s - inflow_m3_s) / well.bore_area_m2;
  // No further than the level may move along one line.
  double const down_m = std::abs(bore.level_depth_m - well.static_level_depth_m - static_shift_m);
  double const may_s = 1.01 * std::max(line_move_m, line_move_share * down_m) / std::max(std::abs(fall_m_s), 1e-12);
  double const step_s =
      std::min({duration_s, std::max(bore.course.ends_s() - bore.time_s, 1e-6), std::max(may_s, 1e-3)});
  double const z = slope_m2_s / well.bore_area_m2 * step_s;
  double const mean = z > 1e-8 ? -std::expm1(-z) / z : 1;
  double const moved_m = fall_m_s * step_s * mean;
  bore.level_depth_m += moved_m;
  bore.came_in_m3 += flow_m3_s * step_s - well.bore_area_m2 * moved_m;
  bore.time_s += step_s;
  return step_s;
}

}  // namespace

void pump_evenly(Well const& well, Bore& bore, double flow_m3_s, double duration_s, double static_shift_m) {
  double left_s = duration_s;
  while (left_s > 1e-9 * duration_s) {
    left_s -= step_bore(well, bore, flow_m3_s, left_s, static_shift_m);
  }
}

double time_to_level_s(Well const& well, Bore bore, double flow_m3_s, double level_depth_m, double limit_s,
                       double static_shift_m) {
  double const sign = level_depth_m >= bore.level_depth_m ? 1 : -1;
  double gone_s = 0;
  while (gone_s < limit_s) {
    double const before_m = bore.level_depth_m;
    double const step_s = step_bore(well, bore, flow_m3_s, limit_s - gone_s, static_shift_m);
    if (sign * (bore.level_depth_m - level_depth_m) >= 0) {
      double const moved_m = bore.level_depth_m - before_m;
      return gone_s + (moved_m != 0 ? step_s * (level_depth_m - before_m) / moved_m : 0);
    }
    gone_s += step_s;
  }
  return limit_s;
}

}  // namespace wellproof
