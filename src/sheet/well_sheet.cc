#include "sheet/well_sheet.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "quantity/customary.h"
#include "quantity/quantity.h"
#include "sheet/chart.h"

namespace wellproof {
namespace {

constexpr double wide = 720;

std::string amount(double value_si, Dimension dimension, UnitSystem units) {
  // Three digits: what is said here rests on ranges.
  double const unit = customary_unit(dimension, units).factor;
  double const shown = value_si / unit;
  double const step = shown != 0 ? std::pow(10, std::floor(std::log10(std::abs(shown))) - 2) : 1;
  return write_quantity(std::round(shown / step) * step * unit, dimension, units);
}

std::string from_to(Quantiles const& of, Dimension dimension, UnitSystem units) {
  auto const low = amount(of.low, dimension, units);
  auto const high = amount(of.high, dimension, units);
  return low == high ? low : low + " to " + high;
}

std::string per_day(Quantiles const& flow, UnitSystem units) {
  return from_to({flow.low * day_s, flow.middle * day_s, flow.high * day_s}, Dimension::volume, units);
}

std::string minutes(double time_s, UnitSystem units) {
  double const step_s = time_s < 600 ? 10 : 60;
  return write_quantity(std::round(time_s / step_s) * step_s, Dimension::time, units);
}

std::string for_good(WellOutlook const& o, UnitSystem units) {
  return fmt::format(
      "For good: {} in 90 % of draws, which is {} a day, when it does not rain for a hundred days. The site's own day "
      "uses {}.{}",
      from_to(o.safe_yield_m3_s, Dimension::flow, units), per_day(o.safe_yield_m3_s, units),
      from_to(o.day_use_m3, Dimension::volume, units),
      o.overdrawn > 0
          ? fmt::format(" In {} of {} draws that is more than the well gives for good, and no tank makes up for it.",
                        o.overdrawn, o.draws)
          : "");
}

std::string longest_run(WellOutlook const& o, UnitSystem units) {
  auto const wanted = minutes(o.long_run_wanted_s, units);
  auto const flow = amount(o.long_run_flow_m3_s, Dimension::flow, units);
  if (o.long_run_too_long == 0) {
    return fmt::format("The longest run: {} at {} leaves the pump its water in every draw.", wanted, flow);
  }
  return fmt::format(
      "The longest run: {} at {} is too long in {} of {} draws; the pump then loses its water, in 5 % of draws after "
      "{} "
      "already.",
      wanted, flow, o.long_run_too_long, o.draws, minutes(o.long_run_s.low, units));
}

std::string day(WellOutlook const& o, UnitSystem units) {
  auto const level = from_to(o.deepest_m, Dimension::length, units);
  if (o.day_runs_dry == 0) {
    return fmt::format("The site's own day: the level falls to {} at the lowest and the pump keeps its water.", level);
  }
  auto dry = fmt::format(
      "The site's own day: the level falls to {} at the lowest; in {} of {} draws the pump loses its water on it.",
      level, o.day_runs_dry, o.draws);
  if (o.storage_m3.high <= 0) {
    return dry;
  }
  return fmt::format("{} A tank that the well fills evenly day and night would have to hold {} to even that out.", dry,
                     from_to(o.storage_m3, Dimension::volume, units));
}

template <class List, class Depth>
std::vector<ChartPoint> over_time(List const& list, Depth const& depth) {
  std::vector<ChartPoint> points;
  points.reserve(list.size());
  for (auto const& one : list) {
    points.push_back(depth(one));
  }
  return points;
}

}  // namespace

std::vector<std::string> well_says(WellOutlook const& outlook, UnitSystem units) {
  return {for_good(outlook, units), longest_run(outlook, units), day(outlook, units)};
}

std::string day_figure(Plan const& plan) {
  auto const& levels = plan.outlook.day;
  if (levels.empty()) {
    return "";
  }
  double const intake_m = plan.outlook.intake_depth_m;
  double least_m = intake_m;
  double most_m = intake_m;
  for (auto const& level : levels) {
    least_m = std::min(least_m, level.depth_m.low);
    most_m = std::max(most_m, level.depth_m.high);
  }
  // Depth counts down the page.
  auto const line = [&](double Quantiles::*share) {
    return over_time(levels, [&](auto const& level) { return ChartPoint{level.time_s, -(level.depth_m.*share)}; });
  };
  Chart chart("day", tight_axis("time of day", 0, day_s, Dimension::time, plan.units, 12),
              round_axis("level from casing top", -most_m, -least_m, Dimension::length, plan.units, 7), wide, 300);
  chart.band(line(&Quantiles::low), line(&Quantiles::high), stroke::blue);
  chart.line(line(&Quantiles::middle), stroke::blue, "water level");
  chart.level(-intake_m, 0, day_s, stroke::ink_dashed, "intake");
  return chart.svg(
      "Level in the well over a day",
      "Depth of the water over the site's own day, the third in a row, with the band of nine in ten draws, "
      "and the depth of the intake.");
}

std::string rest_figure(Plan const& plan) {
  auto const& curve = plan.derived.rest_curve;
  if (curve.empty()) {
    return "";
  }
  auto const line = [&](double Quantiles::*share) {
    return over_time(curve, [&](RestPoint const& point) { return ChartPoint{point.rest_s, point.run_s.*share}; });
  };
  double most_s = 2 * plan.derived.rest_run_wanted_s;
  for (auto const& point : curve) {
    most_s = std::max(most_s, std::min(point.run_s.middle, 3 * plan.derived.rest_run_wanted_s));
  }
  double const until_s =
      std::clamp(2 * plan.derived.settings.dry_run_rest_s, 1800.0, std::max(curve.back().rest_s, 1800.0));
  Chart chart("rest", tight_axis("rest", 0, until_s, Dimension::time, plan.units, 10),
              round_axis("peak drawn again", 0, most_s, Dimension::time, plan.units, 7), wide, 300);
  auto const inside = [&](std::vector<ChartPoint> points) {
    points.erase(std::remove_if(points.begin(), points.end(), [&](ChartPoint const& p) { return p.x > until_s; }),
                 points.end());
    for (auto& point : points) {
      point.y = std::min(point.y, most_s);
    }
    return points;
  };
  chart.band(inside(line(&Quantiles::low)), inside(line(&Quantiles::high)), stroke::blue);
  chart.line(inside(line(&Quantiles::middle)), stroke::blue, "middle draw");
  chart.level(plan.derived.rest_run_wanted_s, 0, until_s, stroke::grey, "wanted");
  chart.upright(plan.derived.settings.dry_run_rest_s, stroke::ink_dashed, "rest set");
  return chart.svg(
      "Run time gained by resting",
      "How long the peak can be drawn again after each length of rest, with the band of nine in ten draws, "
      "the run wanted and the rest that is set.");
}

}  // namespace wellproof
