#pragma once
// The charts of the report, each as a piece of SVG.
#include <string>
#include <vector>

#include "sheet/plan.h"
#include "sheet/words.h"

namespace wellproof {

/// Head against flow: the pump at several speeds, and what the site asks for.
std::string head_figure(Plan const& plan);

/// What the guards look at against speed, current or input power: dry, shut, least and most draw, the thresholds and
/// where the guards act.
std::string load_figure(Plan const& plan);

/// A run over time: pressure, speed, current and water level above each other, events marked with the numbers of
/// marked_events.
std::string run_figure(Plan const& plan, WorstRun const& worst, std::string const& id);

/// The events that the figure marks: all that are told (words.h), or the first of many.
std::vector<ToldEvent> marked_events(Trace const& trace);

/// The most that pump and well give for good at the target: where the pump's line at the ceiling meets the drawn-down
/// one, or where the water has come down to the intake. < 0 where the pump cannot hold the target at all.
double most_flow_at_target_m3_s(HeadCurves const& curves);

/// Points thinned to about so many stretches of time, of each the ends and the extremes, so that no peak is lost.
/// @param value what is drawn of a point
std::vector<TracePoint> thinned(std::vector<TracePoint> const& points, std::size_t stretches,
                                double TracePoint::*value);

}  // namespace wellproof
