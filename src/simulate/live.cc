#include "simulate/live.h"

#include <algorithm>
#include <utility>

#include "simulate/tally.h"

namespace wellproof {
namespace {

constexpr double time_slack_s = 1e-9;
constexpr double least_water_m = 0.05;  // that stays in the well when its level is dragged

double left_s(std::optional<double> const& since_s, double delay_s, double time_s) {
  return since_s ? std::max(0.0, *since_s + delay_s - time_s) : 0;
}

RunOptions options_of(Logic const& logic, std::uint64_t noise_seed) {
  RunOptions options;
  options.logic = logic;
  options.noise_seed = noise_seed;
  return options;
}

}  // namespace

LiveRun::LiveRun(Plant plant, Settings const& settings, Logic const& logic, Scenario start, std::uint64_t noise_seed)
    : plant_(std::move(plant)),
      settings_(settings),
      logic_(logic),
      scenario_(std::move(start)),
      options_(options_of(logic, noise_seed)),
      period_s_(1 / plant_.site.drive.sample_rate_hz),
      stage_(plant_, settings_, scenario_, options_) {
  if (!scenario_.start.after_power_up) {
    regulator_.mode = Mode::asleep;
    regulator_.powered_up = true;
  }
}

void LiveRun::act(Act act, std::size_t outlet, double value, double lasts_s) {
  // Behind all that is due by now, before what is scripted for later: the stage has passed none of the latter.
  auto const later = std::upper_bound(scenario_.script.begin(), scenario_.script.end(), time_s() + time_slack_s,
                                      [](double time_s, Change const& change) { return time_s < change.time_s; });
  scenario_.script.insert(later,
                          {.time_s = time_s(), .act = act, .outlet = outlet, .value = value, .lasts_s = lasts_s});
}

void LiveRun::sink(double static_shift_m) {
  double const least_m = -plant_.well.static_level_depth_m;
  double const most_m = plant_.site.well.depth_m - least_water_m - plant_.well.static_level_depth_m;
  Touch const sunk{.time_s = time_s(),
                   .static_shift_m = std::clamp(static_shift_m, least_m, std::max(least_m, most_m))};
  touches_.push_back(sunk);
  touch(sunk);
}

void LiveRun::reset() {
  Touch const back{.time_s = time_s(), .reset = true};
  touches_.push_back(back);
  touch(back);
}

void LiveRun::touch(Touch const& touch) {
  if (touch.reset) {
    regulator_ = {};
    stage_.turn(0);
    return;
  }
  auto& carrier = stage_.carrier();
  auto y = carrier.state();
  double const deepest_m = plant_.site.well.depth_m - least_water_m;
  y[at::level_depth] =
      std::clamp(y[at::level_depth] + touch.static_shift_m - static_shift_m(), 0.0, std::max(0.0, deepest_m));
  carrier.put(y, carrier.modes());
  act(Act::static_shift, 0, touch.static_shift_m);
  if (auto const hand = stage_.change()) {
    regulator_.hand = hand;
  }
}

void LiveRun::sample_now(double record_every_s) {
  stage_.carrier().count_flips_afresh();
  auto const measured = stage_.measure(Stage::Noise::with, sample_);
  auto const command = sample(settings_, logic_, regulator_, measured);
  if (command.event) {
    events_.push_back({stage_.time_s(), *command.event});
  }
  if (recorded_s_ < 0 || stage_.time_s() - recorded_s_ >= record_every_s - time_slack_s) {
    points_.push_back(point(measured.pressure_pa));
    recorded_s_ = stage_.time_s();
  }
  stage_.turn(command.speed_hz);
}

void LiveRun::advance(double duration_s, double record_every_s) {
  double const end_s = time_s() + duration_s;
  while (ending_ == Ending::finished && time_s() < end_s - time_slack_s) {
    if (auto const hand = stage_.change()) {
      regulator_.hand = hand;
    }
    if (time_s() >= static_cast<double>(sample_) * period_s_ - time_slack_s) {
      sample_now(record_every_s);
      ++sample_;
    }
    double const limit_s = std::min({static_cast<double>(sample_) * period_s_, stage_.next_change_s(), end_s});
    while (time_s() < limit_s - time_slack_s && ending_ == Ending::finished) {
      auto const outcome = stage_.carrier().step_towards(limit_s);
      ending_ = outcome == Carrier::Outcome::chatter          ? Ending::chatter
                : outcome == Carrier::Outcome::no_convergence ? Ending::no_convergence
                                                              : Ending::finished;
    }
  }
}

std::vector<TracePoint> LiveRun::take_points() {
  return std::exchange(points_, {});
}

std::vector<TraceEvent> LiveRun::take_events() {
  return std::exchange(events_, {});
}

TracePoint LiveRun::point(double measured_pressure_pa) {
  return trace_point(time_s(), stage_.carrier().state(), stage_.carrier().read(), measured_pressure_pa,
                     regulator_.mode);
}

TracePoint LiveRun::now() {
  return point(stage_.measure(Stage::Noise::without, sample_).pressure_pa);
}

LiveWords LiveRun::words() const {
  double const now_s = time_s();
  auto const& state = regulator_;
  bool const turns = state.speed_hz > 0;
  LiveWords words{.mode = state.mode, .cause = state.cause};
  words.mode_for_s = now_s - state.mode_since_s;
  words.filtered_current_a = turns ? state.filtered_current_a : 0;
  words.tries = state.tries;
  if (state.mode == Mode::resting && state.cause != StopCause::high_pressure) {
    words.rest_left_s = std::max(0.0, settings_.dry_run_rest_s - words.mode_for_s);
  }
  words.sleep_left_s = left_s(state.slow_since_s, settings_.sleep_hold_s, now_s);
  words.dry_left_s = left_s(state.dry_since_s, settings_.dry_run_delay_s, now_s);
  words.closed_left_s = left_s(state.closed_since_s, settings_.closed_delay_s, now_s);
  if (turns && settings_.long_run_limit_s > 0) {
    words.long_run_left_s = std::max(0.0, state.running_since_s + settings_.long_run_limit_s - now_s);
  }
  return words;
}

double LiveRun::empty_share() const {
  return plant_.line_volume_m3 > 0 ? std::clamp(stage_.carrier().state()[at::empty] / plant_.line_volume_m3, 0.0, 1.0)
                                   : 0;
}

std::vector<TracePoint> LiveRun::again(Settings const& settings, double record_every_s) const {
  if (touches_.empty()) {
    auto scenario = scenario_;
    scenario.duration_s = time_s();
    auto options = options_;
    options.record = true;
    options.record_every_s = record_every_s;
    return run(plant_, settings, scenario, options).points;
  }
  LiveRun other(plant_, settings, logic_, scenario_, options_.noise_seed);
  // What a touch put into the script stands there already.
  for (auto const& each : touches_) {
    other.advance(each.time_s - other.time_s(), record_every_s);
    if (other.ending() != Ending::finished) {
      break;
    }
    other.touch(each);
  }
  other.advance(time_s() - other.time_s(), record_every_s);
  return other.take_points();
}

}  // namespace wellproof
