#include "proof/criterion.h"

#include <algorithm>

namespace wellproof {
namespace {

using Kind = RegulatorEvent::Kind;

bool counts(TraceEvent const& event, std::vector<StopCause> const& causes) {
  return event.what.kind == Kind::stopped && event.what.cause &&
         (causes.empty() || std::find(causes.begin(), causes.end(), *event.what.cause) != causes.end());
}

/// Time from since_s to the first event that fits; what never happened took the rest of the run.
template <class Fits>
double wait_s(Trace const& trace, double since_s, Fits const& fits) {
  for (auto const& event : trace.events) {
    if (event.time_s >= since_s && fits(event)) {
      return event.time_s - since_s;
    }
  }
  return trace.tallies.front().window.to_s - since_s;
}

/// Whether the pump lies asleep at a moment: the last that happened before was that it fell asleep.
bool asleep_at(Trace const& trace, double time_s) {
  bool asleep = trace.asleep_at_start;
  for (auto const& event : trace.events) {
    if (event.time_s >= time_s) {
      break;
    }
    asleep = event.what.kind == Kind::slept;
  }
  return asleep;
}

bool happened(Trace const& trace, Criterion const& c) {
  if (c.measure == Measure::asleep_within && asleep_at(trace, c.since_s)) {
    return true;
  }
  return std::any_of(trace.events.begin(), trace.events.end(), [&](TraceEvent const& event) {
    return event.time_s >= c.since_s &&
           (c.measure == Measure::asleep_within ? event.what.kind == Kind::slept : counts(event, c.causes));
  });
}

double value_of(Trace const& trace, Criterion const& c) {
  auto const& tally = trace.tallies[c.window];
  switch (c.measure) {
    case Measure::least_tee_pressure:
      return tally.least_tee_pressure_pa;
    case Measure::least_outlet_pressure:
      return tally.least_outlet_pressure_pa;
    case Measure::most_tee_pressure:
      return tally.most_tee_pressure_pa;
    case Measure::most_pump_pressure:
      return tally.most_pump_pressure_pa;
    case Measure::time_below_outlet_wanted:
      return tally.below_outlet_wanted_s;
    case Measure::no_stop:
      return static_cast<double>(std::count_if(trace.events.begin(), trace.events.end(), [&](TraceEvent const& event) {
        return event.time_s > tally.window.from_s && event.time_s <= tally.window.to_s && counts(event, c.causes);
      }));
    case Measure::stopped_within:
      return wait_s(trace, c.since_s, [&](TraceEvent const& event) { return counts(event, c.causes); });
    case Measure::asleep_within:
      return asleep_at(trace, c.since_s)
                 ? 0
                 : wait_s(trace, c.since_s, [](TraceEvent const& event) { return event.what.kind == Kind::slept; });
    case Measure::turning_shut:
      return tally.turning_shut_s;
    case Measure::running:
      return tally.running_s;
    case Measure::starts:
      return static_cast<double>(tally.starts);
    case Measure::winding:
      return tally.most_winding_c;
    case Measure::pump_water:
      return tally.most_pump_water_c;
    case Measure::water_lost:
      return tally.drawn_m3;
  }
  return 0;
}

bool at_least(Measure measure) {
  return measure == Measure::least_tee_pressure || measure == Measure::least_outlet_pressure;
}

}  // namespace

Verdict judge(Trace const& trace, Criterion const& criterion) {
  Verdict verdict;
  verdict.value = value_of(trace, criterion);
  double const inside = at_least(criterion.measure) ? verdict.value - criterion.limit : criterion.limit - verdict.value;
  verdict.margin = inside / criterion.scale;
  if (criterion.measure == Measure::no_stop && verdict.value == 0) {
    verdict.margin = 1;  // nothing is further from a stop than none; how near one was, the guards' margins say
  }
  bool const must_happen = criterion.measure == Measure::stopped_within || criterion.measure == Measure::asleep_within;
  if (must_happen && !happened(trace, criterion)) {
    verdict.margin = std::min(verdict.margin, -1.0);
  }
  verdict.passed = verdict.margin >= 0;
  return verdict;
}

Dimension dimension(Measure measure) {
  switch (measure) {
    case Measure::least_tee_pressure:
    case Measure::least_outlet_pressure:
    case Measure::most_tee_pressure:
    case Measure::most_pump_pressure:
      return Dimension::pressure;
    case Measure::time_below_outlet_wanted:
    case Measure::stopped_within:
    case Measure::asleep_within:
    case Measure::turning_shut:
    case Measure::running:
      return Dimension::time;
    case Measure::winding:
    case Measure::pump_water:
      return Dimension::temperature;
    case Measure::water_lost:
      return Dimension::volume;
    case Measure::no_stop:
    case Measure::starts:
      return Dimension::none;
  }
  return Dimension::none;
}

}  // namespace wellproof
