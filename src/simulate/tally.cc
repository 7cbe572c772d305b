#include "simulate/tally.h"

#include <algorithm>

namespace wellproof {
namespace {

constexpr double time_slack_s = 1e-6;

bool within(Window const& window, double time_s) {
  return time_s > window.from_s + time_slack_s && time_s <= window.to_s + time_slack_s;
}

/// Part of a step that lies below a limit, straight from its start to its end: a stretch may last for minutes.
double share_below(double at_start, double at_end, double limit) {
  if ((at_start < limit) == (at_end < limit)) {
    return at_end < limit ? 1 : 0;
  }
  double const part = (limit - at_start) / (at_end - at_start);
  return at_end < limit ? 1 - part : part;
}

}  // namespace

TracePoint trace_point(double time_s, State const& y, Reading const& reading, double measured_pressure_pa, Mode mode) {
  TracePoint p;
  p.time_s = time_s;
  p.tee_pressure_pa = reading.tee_pressure_pa;
  p.outlet_pressure_pa = reading.outlet_pressure_pa;
  p.measured_pressure_pa = measured_pressure_pa;
  p.speed_hz = reading.speed_hz;
  p.current_a = reading.motor.current_a;
  p.input_power_w = reading.motor.input_power_w;
  p.pump_flow_m3_s = reading.flow_m3_s;
  p.drawn_flow_m3_s = reading.house_flow_m3_s + reading.tee_flow_m3_s;
  p.inflow_m3_s = reading.inflow_m3_s;
  p.level_depth_m = y[at::level_depth];
  p.wetness = reading.wetness;
  p.winding_c = y[at::winding];
  p.pump_water_c = y[at::pump_water];
  p.sink_c = y[at::sink];
  p.mode = mode;
  return p;
}

Notes::Notes(std::vector<Window> const& windows, double duration_s, State const& start) : last_(start) {
  tallies_.resize(1 + windows.size());
  tallies_[0].window = {.from_s = -1, .to_s = duration_s};
  for (std::size_t i = 0; i < windows.size(); ++i) {
    tallies_[i + 1].window = windows[i];
  }
  entered_.resize(tallies_.size());
  seen_.resize(tallies_.size(), 0);
}

void Notes::after_step(double duration_s, TracePoint const& now, State const& y, Reading const& reading) {
  for (std::size_t i = 0; i < tallies_.size(); ++i) {
    auto& t = tallies_[i];
    if (!within(t.window, now.time_s)) {
      continue;
    }
    if (seen_[i] == 0) {
      seen_[i] = 1;
      entered_[i] = last_;
      t.least_tee_pressure_pa = now.tee_pressure_pa;
      t.most_tee_pressure_pa = now.tee_pressure_pa;
      t.least_outlet_pressure_pa = now.outlet_pressure_pa;
      t.most_winding_c = now.winding_c;
      t.most_pump_water_c = now.pump_water_c;
    }
    t.least_tee_pressure_pa = std::min(t.least_tee_pressure_pa, now.tee_pressure_pa);
    t.most_tee_pressure_pa = std::max(t.most_tee_pressure_pa, now.tee_pressure_pa);
    t.least_outlet_pressure_pa = std::min(t.least_outlet_pressure_pa, now.outlet_pressure_pa);
    t.most_pump_pressure_pa = std::max(t.most_pump_pressure_pa, reading.pump_pressure_pa);
    t.most_current_a = std::max(t.most_current_a, now.current_a);
    t.most_winding_c = std::max(t.most_winding_c, now.winding_c);
    t.most_pump_water_c = std::max(t.most_pump_water_c, now.pump_water_c);
    t.most_sink_c = std::max(t.most_sink_c, now.sink_c);
    t.deepest_level_m = std::max(t.deepest_level_m, now.level_depth_m);
    t.least_wetness = std::min(t.least_wetness, now.wetness);
    t.pumped_m3 = y[at::pumped_total] - entered_[i][at::pumped_total];
    t.drawn_m3 = y[at::drawn_total] - entered_[i][at::drawn_total];
    t.inflow_m3 = y[at::inflow_total] - entered_[i][at::inflow_total];
    if (now.speed_hz > 0) {
      t.running_s += duration_s;
      t.turning_shut_s += now.pump_flow_m3_s > 0 ? 0 : duration_s;
    }
    t.below_outlet_wanted_s +=
        duration_s * share_below(last_outlet_pressure_pa_, now.outlet_pressure_pa, t.window.outlet_wanted_pa);
    t.below_tee_wanted_s +=
        duration_s * share_below(last_tee_pressure_pa_, now.tee_pressure_pa, t.window.tee_wanted_pa);
  }
  last_ = y;
  last_outlet_pressure_pa_ = now.outlet_pressure_pa;
  last_tee_pressure_pa_ = now.tee_pressure_pa;
}

void Notes::started(double time_s) {
  for (auto& t : tallies_) {
    t.starts += within(t.window, time_s) ? 1U : 0U;
  }
}

}  // namespace wellproof
