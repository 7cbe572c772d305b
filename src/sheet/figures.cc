#include "sheet/figures.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include <fmt/format.h>

#include "sheet/chart.h"

namespace wellproof {
namespace {

constexpr double wide = 760;
constexpr std::size_t most_marked = 20;

std::string hertz(double speed_hz) {
  return write_quantity(speed_hz, Dimension::frequency, UnitSystem::metric);
}

std::vector<ChartPoint> chart_points(std::vector<FlowHead> const& points) {
  std::vector<ChartPoint> out;
  out.reserve(points.size());
  for (auto const& point : points) {
    out.push_back({point.flow_m3_s, point.head_m});
  }
  return out;
}

std::vector<ChartPoint> over_speed(OperatingMap const& map, Spread MapRow::*of, double Spread::*end) {
  std::vector<ChartPoint> out;
  out.reserve(map.rows.size());
  for (auto const& row : map.rows) {
    out.push_back({row.speed_hz, row.*of.*end});
  }
  return out;
}

double head_on(std::vector<FlowHead> const& points, double flow_m3_s) {
  for (std::size_t i = 1; i < points.size(); ++i) {
    auto const& a = points[i - 1];
    auto const& b = points[i];
    if (flow_m3_s >= a.flow_m3_s && flow_m3_s <= b.flow_m3_s && b.flow_m3_s > a.flow_m3_s) {
      double const share = (flow_m3_s - a.flow_m3_s) / (b.flow_m3_s - a.flow_m3_s);
      return a.head_m + share * (b.head_m - a.head_m);
    }
  }
  return std::numeric_limits<double>::quiet_NaN();
}

/// Where an event stands in the charts, with its number; events too near to be told apart share a mark.
struct EventMark {
  double time_s = 0;
  std::string numbers;
};

std::vector<EventMark> event_marks(Trace const& trace) {
  constexpr double near_share = 0.03;
  auto const events = marked_events(trace);
  double const near_s =
      trace.points.empty() ? 0 : near_share * (trace.points.back().time_s - trace.points.front().time_s);
  std::vector<EventMark> marks;
  for (std::size_t first = 0; first < events.size();) {
    std::size_t last = first;
    while (last + 1 < events.size() && events[last + 1].time_s - events[first].time_s < near_s) {
      ++last;
    }
    marks.push_back({events[first].time_s,
                     first == last ? fmt::format("{}", first + 1) : fmt::format("{}–{}", first + 1, last + 1)});
    first = last + 1;
  }
  return marks;
}

/// Where the guards look at the load at all.
double gate_hz(Plan const& plan) {
  return plan.logic.guard_where == GuardWhere::any_speed
             ? plan.derived.settings.speed_floor_hz
             : plan.logic.guard_speed_share * plan.derived.settings.speed_ceiling_hz;
}

/// What the drive guards by, and how it is drawn.
struct GuardedLoad {
  Dimension dimension;
  std::string axis;
  Spread MapRow::*dry;
  Spread MapRow::*shut;
  Spread MapRow::*least_draw;
  Spread MapRow::*most_draw;
  double dry_below;
  double closed_below;
};

GuardedLoad guarded_load(Plan const& plan) {
  auto const& settings = plan.derived.settings;
  if (plan.logic.guard_by == GuardBy::power) {
    return {Dimension::power,
            "motor's input power",
            &MapRow::dry_w,
            &MapRow::shut_w,
            &MapRow::least_draw_w,
            &MapRow::most_draw_w,
            settings.dry_run_power_below_w,
            settings.closed_power_below_w};
  }
  return {Dimension::current,
          "motor current",
          &MapRow::dry_a,
          &MapRow::shut_a,
          &MapRow::least_draw_a,
          &MapRow::most_draw_a,
          settings.dry_run_amps_below_a,
          settings.closed_amps_below_a};
}

}  // namespace

double most_flow_at_target_m3_s(HeadCurves const& curves) {
  if (curves.pump.empty() || curves.drawn_down.empty()) {
    return -1;
  }
  auto const& ceiling = curves.pump.back().points;
  std::vector<double> flows;
  for (auto const* const points : {&ceiling, &curves.drawn_down}) {
    for (auto const& point : *points) {
      flows.push_back(point.flow_m3_s);
    }
  }
  std::sort(flows.begin(), flows.end());
  double last_m3_s = -1;
  double last_spare_m = 0;
  for (double const flow_m3_s : flows) {
    double const spare_m = head_on(ceiling, flow_m3_s) - head_on(curves.drawn_down, flow_m3_s);
    if (!std::isfinite(spare_m)) {
      break;
    }
    if (spare_m < 0) {
      return last_m3_s < 0 ? -1 : last_m3_s + (flow_m3_s - last_m3_s) * last_spare_m / (last_spare_m - spare_m);
    }
    last_m3_s = flow_m3_s;
    last_spare_m = spare_m;
  }
  return last_m3_s;
}

std::string head_figure(Plan const& plan) {
  auto const& curves = plan.curves;
  double most_flow_m3_s = std::max(curves.peak_draw_m3_s, 1e-6);
  double most_head_m = 1;
  for (auto const& line : curves.pump) {
    for (auto const& point : line.points) {
      most_flow_m3_s = std::max(most_flow_m3_s, point.flow_m3_s);
      most_head_m = std::max(most_head_m, point.head_m);
    }
  }
  if (!curves.water_at_rest.empty()) {
    most_head_m = std::max(most_head_m, 1.1 * curves.water_at_rest.front().head_m);
  }
  Chart chart(
      "head", round_axis("flow", 0, most_flow_m3_s, Dimension::flow, plan.units, 8),
      round_axis("head from the water to the tank's tee", 0, 1.04 * most_head_m, Dimension::length, plan.units, 8),
      wide, 370);
  for (auto const& line : curves.pump) {
    bool const end = &line == &curves.pump.front() || &line == &curves.pump.back();
    chart.named_at_start(chart_points(line.points), end ? stroke::blue : stroke::grey, hertz(line.speed_hz));
  }
  chart.line(chart_points(curves.water_at_rest), stroke::rust, "water at rest");
  chart.line(chart_points(curves.drawn_down), stroke::plum, "drawn down");
  chart.upright(curves.least_draw_m3_s, stroke::mark, "least draw");
  chart.upright(curves.peak_draw_m3_s, stroke::mark, "peak draw");
  double const most_m3_s = most_flow_at_target_m3_s(curves);
  if (most_m3_s >= 0) {
    chart.dot(most_m3_s, head_on(curves.drawn_down, most_m3_s));
  }
  return chart.svg("Pump and site: head against flow",
                   "Pump curves from the speed floor to the ceiling, and the head the site asks for at the target "
                   "pressure with the water at rest and drawn down.");
}

std::string load_figure(Plan const& plan) {
  auto const& rows = plan.map.rows;
  auto const& settings = plan.derived.settings;
  if (rows.empty()) {
    return "";
  }
  constexpr double beyond_ceiling_hz = 6;
  double const first_hz = rows.front().speed_hz;
  double const last_hz = std::clamp(settings.speed_ceiling_hz + beyond_ceiling_hz, first_hz + 1,
                                    std::max(rows.back().speed_hz, first_hz + 1));
  auto const load = guarded_load(plan);
  bool const by_current = load.dimension == Dimension::current;
  double most = by_current ? settings.motor_current_limit_a : load.closed_below;
  for (auto const& row : rows) {
    if (row.speed_hz <= settings.speed_ceiling_hz && std::isfinite((row.*load.most_draw).high)) {
      most = std::max(most, (row.*load.most_draw).high);
    }
  }
  Chart chart("current",
              tight_axis("drive's output frequency", first_hz, last_hz, Dimension::frequency, plan.units, 12),
              round_axis(load.axis, 0, 1.1 * std::max(most, 1.0), load.dimension, UnitSystem::metric, 8), wide, 370);
  chart.upright(settings.speed_floor_hz, stroke::mark, "floor");
  if (applies(plan.logic, "sleep.speed_below")) {
    chart.upright(settings.sleep_speed_below_hz, stroke::ink_dashed, "sleep below");
  }
  chart.upright(settings.speed_ceiling_hz, stroke::mark, "ceiling");
  // Zones come last: their names go above those of the lines, which rise no higher than their own.
  if (plan.map.zero_flow_speed_hz.high > plan.map.zero_flow_speed_hz.low) {
    chart.zone(plan.map.zero_flow_speed_hz.low, plan.map.zero_flow_speed_hz.high, "target held, no flow");
  } else {
    chart.upright(plan.map.zero_flow_speed_hz.middle, stroke::mark, "target held, no flow");
  }
  chart.zone(gate_hz(plan), settings.speed_ceiling_hz, "guards act here");
  auto const curve = [&](Spread MapRow::*of, Stroke stroke, char const* name) {
    chart.band(over_speed(plan.map, of, &Spread::low), over_speed(plan.map, of, &Spread::high), stroke);
    chart.line(over_speed(plan.map, of, &Spread::middle), stroke, name);
  };
  curve(load.most_draw, stroke::blue, "most draw");
  curve(load.least_draw, stroke::plum, "least draw");
  curve(load.shut, stroke::rust, "shut");
  curve(load.dry, stroke::green, "dry");
  double const from_hz = std::max(first_hz, gate_hz(plan));
  double const to_hz = std::min(last_hz, settings.speed_ceiling_hz);
  if (by_current) {
    chart.level(settings.motor_current_limit_a, first_hz, last_hz, stroke::grey, "current limit");
  }
  if (load.closed_below > 0) {
    chart.threshold(load.closed_below, from_hz, to_hz, "closed below");
  }
  if (load.dry_below > 0) {
    chart.threshold(load.dry_below, from_hz, to_hz, "dry run below");
  }
  return chart.svg(by_current ? "Motor current against speed" : "Motor's input power against speed",
                   fmt::format("The {} dry, shut, at the least draw and at the most, over the output frequency, with "
                               "the band of all draws; the two thresholds where they act.",
                               load.axis));
}

std::vector<ToldEvent> marked_events(Trace const& trace) {
  auto events = told_events(trace.events);
  events.resize(std::min(events.size(), most_marked));
  return events;
}

std::vector<TracePoint> thinned(std::vector<TracePoint> const& points, std::size_t stretches,
                                double TracePoint::*value) {
  if (points.size() <= 4 * stretches || stretches == 0) {
    return points;
  }
  double const from_s = points.front().time_s;
  double const stretch_s = (points.back().time_s - from_s) / static_cast<double>(stretches);
  std::vector<TracePoint> kept;
  for (std::size_t begin = 0; begin < points.size();) {
    double const end_s = from_s + stretch_s * (std::floor((points[begin].time_s - from_s) / stretch_s) + 1);
    std::size_t end = begin + 1;
    std::size_t least = begin;
    std::size_t most = begin;
    for (; end < points.size() && points[end].time_s < end_s; ++end) {
      least = points[end].*value < points[least].*value ? end : least;
      most = points[end].*value > points[most].*value ? end : most;
    }
    std::vector<std::size_t> of_stretch{begin, least, most, end - 1};
    std::sort(of_stretch.begin(), of_stretch.end());
    of_stretch.erase(std::unique(of_stretch.begin(), of_stretch.end()), of_stretch.end());
    for (std::size_t const i : of_stretch) {
      kept.push_back(points[i]);
    }
    begin = end;
  }
  return kept;
}

std::string run_figure(Plan const& plan, WorstRun const& worst, std::string const& id) {
  auto const& points = worst.trace.points;
  if (points.size() < 2) {
    return "";
  }
  constexpr std::size_t stretches = 350;
  constexpr double names_room = 92;
  Axis const time = tight_axis("time", points.front().time_s, points.back().time_s, Dimension::time, plan.units, 10);
  using Ends = std::pair<double, double>;
  auto const ends = [&](double TracePoint::*value, Ends so_far) {
    for (auto const& point : points) {
      if (std::isfinite(point.*value)) {
        so_far.first = std::min(so_far.first, point.*value);
        so_far.second = std::max(so_far.second, point.*value);
      }
    }
    return so_far;
  };
  auto const curve = [&](double TracePoint::*value) {
    std::vector<ChartPoint> out;
    for (auto const& point : thinned(points, stretches, value)) {
      out.push_back({point.time_s, point.*value});
    }
    return out;
  };
  auto const marks = event_marks(worst.trace);
  auto const panel = [&](char const* name, char const* title, Ends const& range, Dimension dimension, double height) {
    Chart chart(id + "-" + name, time, round_axis(title, range.first, range.second, dimension, plan.units, 4), wide,
                height);
    chart.keep_right(names_room);
    for (auto const& mark : marks) {
      chart.upright(mark.time_s, stroke::mark, dimension == Dimension::pressure ? mark.numbers : "");
    }
    return chart;
  };

  double const target_pa = plan.derived.settings.pressure_target_pa;
  constexpr double hardly_below_pa = 3000;
  Ends pressures = ends(&TracePoint::tee_pressure_pa, ends(&TracePoint::outlet_pressure_pa, {0, target_pa}));
  if (pressures.first > -hardly_below_pa) {
    pressures.first = 0;
  }
  Chart pressure = panel("pressure", "pressure", pressures, Dimension::pressure, 150);
  pressure.level(target_pa, points.front().time_s, points.back().time_s, stroke::grey, "target");
  pressure.line(curve(&TracePoint::outlet_pressure_pa), stroke::rust, "outlet");
  pressure.line(curve(&TracePoint::tee_pressure_pa), stroke::blue, "tank's tee");
  pressure.without_x_figures();

  Chart speed = panel("speed", "speed", ends(&TracePoint::speed_hz, {0, 10}), Dimension::frequency, 84);
  speed.line(curve(&TracePoint::speed_hz), stroke::blue, "");
  speed.without_x_figures();

  Chart current = panel("amps", "current", ends(&TracePoint::current_a, {0, 1}), Dimension::current, 84);
  current.line(curve(&TracePoint::current_a), stroke::blue, "");
  current.without_x_figures();

  constexpr double infinity = std::numeric_limits<double>::infinity();
  constexpr double near_m = 20;
  Ends levels = ends(&TracePoint::level_depth_m, {infinity, -infinity});
  if (!(levels.first <= levels.second)) {
    levels = {0, 1};
  }
  double const intake_m = middle(plan.site.site.pump.setting_depth_m);
  bool const intake_near = intake_m < levels.second + near_m;
  if (intake_near) {
    levels = {std::min(levels.first, intake_m), std::max(levels.second, intake_m)};
  }
  Axis depth = round_axis("water", levels.first, levels.second, Dimension::length, plan.units, 4);
  std::swap(depth.low, depth.high);  // deeper is lower
  Chart level(id + "-level", time, depth, wide, 122);
  level.keep_right(names_room);
  for (auto const& mark : marks) {
    level.upright(mark.time_s, stroke::mark, "");
  }
  if (intake_near) {
    level.level(intake_m, points.front().time_s, points.back().time_s, stroke::grey, "intake");
  }
  level.line(curve(&TracePoint::level_depth_m), stroke::blue, "water");

  return pressure.svg("Pressure over time", "At the tank's tee and at the highest outlet.") +
         speed.svg("Speed over time", "The drive's output frequency.") +
         current.svg("Current over time", "The motor's current.") +
         level.svg("Water level over time", "Depth of the water in the well below the top of the casing.");
}

}  // namespace wellproof
