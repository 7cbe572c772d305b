#include "simulate/run.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

#include "simulate/ahead.h"
#include "simulate/follow.h"
#include "simulate/pass.h"
#include "simulate/stage.h"
#include "simulate/tally.h"

namespace wellproof {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double time_slack_s = 1e-9;
constexpr double shortest_stretch_samples = 4;
// A stretch that came to nothing is not tried again at once, and where none was to be had again and again, less often.
constexpr std::uint64_t samples_after_none = 8;
constexpr std::uint64_t tries_at_every_sample = 4;

class Run {
 public:
  using Outcome = Carrier::Outcome;
  using Noise = Stage::Noise;

  Run(Plant const& plant, Settings const& settings, Scenario const& scenario, RunOptions const& options)
      : plant_(plant),
        settings_(settings),
        options_(options),
        end_s_(scenario.duration_s),
        period_s_(1 / plant.site.drive.sample_rate_hz),
        stage_(plant, settings, scenario, options),
        ahead_(stage_, settings, options.logic, period_s_),
        notes_(options.windows, scenario.duration_s, stage_.start()) {
    if (!scenario.start.after_power_up) {
      regulator_.mode = Mode::asleep;
      regulator_.powered_up = true;
      trace_.asleep_at_start = true;
    }
  }

  Trace go() {
    auto outcome = Outcome::stepped;
    while (outcome == Outcome::stepped && stage_.time_s() < end_s_ - time_slack_s) {
      if (auto const hand = stage_.change()) {
        regulator_.hand = hand;
      }
      if (stage_.time_s() >= next_sample_s() - time_slack_s) {
        sample_now();
        ++sample_;
      }
      outcome = stretch();
      if (outcome == Outcome::stepped) {
        outcome = carry_to(std::min({next_sample_s(), stage_.next_change_s(), end_s_}));
      }
    }
    finish(outcome);
    return std::move(trace_);
  }

 private:
  double next_sample_s() const { return static_cast<double>(sample_) * period_s_; }

  // Windows are tallied from step to step, so a stretch ends where one begins or ends.
  double next_window_edge_s() const {
    double next_s = infinity;
    for (auto const& window : options_.windows) {
      for (double const edge_s : {window.from_s, window.to_s}) {
        if (edge_s > stage_.time_s() + time_slack_s) {
          next_s = std::min(next_s, edge_s);
        }
      }
    }
    return next_s;
  }

  void sample_now() {
    stage_.carrier().count_flips_afresh();
    auto const measured = stage_.measure(Noise::with, sample_);
    sampled_ = measured;
    bool const was_off = regulator_.speed_hz <= 0;
    auto const command = sample(settings_, options_.logic, regulator_, measured);
    ++trace_.statistics.samples;
    if (command.event) {
      trace_.events.push_back({stage_.time_s(), *command.event});
      if (command.event->kind == RegulatorEvent::Kind::stopped) {
        trace_.at_stops.push_back(point(measured));
      }
    }
    if (was_off && command.speed_hz > 0) {
      notes_.started(stage_.time_s());
    }
    record(measured, command.event.has_value());
    stage_.turn(command.speed_hz);
  }

  TracePoint point(Measured const& measured) {
    return trace_point(stage_.time_s(), stage_.carrier().state(), stage_.carrier().read(), measured.pressure_pa,
                       regulator_.mode);
  }

  void record(Measured const& measured, bool even_if_recent) {
    if (options_.record && (even_if_recent || trace_.points.empty() ||
                            stage_.time_s() - trace_.points.back().time_s >= options_.record_every_s - time_slack_s)) {
      trace_.points.push_back(point(measured));
    }
  }

  void note(double duration_s, Measured const& measured) {
    notes_.after_step(duration_s, point(measured), stage_.carrier().state(), stage_.carrier().read());
  }

  Outcome carry_to(double limit_s) {
    while (stage_.time_s() < limit_s - time_slack_s) {
      double const from_s = stage_.time_s();
      if (auto const outcome = stage_.carrier().step_towards(limit_s); outcome != Outcome::stepped) {
        return outcome;
      }
      note(stage_.time_s() - from_s, stage_.measure(Noise::without, sample_));
    }
    return Outcome::stepped;
  }

  // ---- stretches: the controller is calm, the plant is carried over many samples at once

  Outcome stretch() {
    if (options_.sampling == Sampling::each) {
      return Outcome::stepped;
    }
    double const from_s = stage_.time_s();
    auto outcome = Outcome::stepped;
    if (options_.sampling == Sampling::calm && sample_ >= no_stretch_before_) {
      ++tries_in_vain_;  // unless samples are passed
      outcome = passed_or_followed();
      no_stretch_before_ =
          std::max(no_stretch_before_, sample_ + std::min(tries_in_vain_ / tries_at_every_sample, samples_after_none));
    }
    if (outcome == Outcome::stepped && stage_.time_s() <= from_s) {
      go_ahead();
    }
    return outcome;
  }

  bool has_just_sampled() const { return sampled_ && sampled_->time_s == stage_.time_s(); }

  // Where the controller can be neither passed over nor followed.
  void go_ahead() {
    if (has_just_sampled()) {
      auto const samples = ahead_.go(regulator_, *sampled_, sample_, last_sample_before_s(infinity), after_step());
      sample_ += samples;
      trace_.statistics.samples += samples;
    }
  }

  Outcome passed_or_followed() {
    auto const measured = stage_.measure(Noise::without, sample_);
    auto const limits = clear_of_noise(calm(settings_, options_.logic, regulator_, measured), stage_, settings_);
    CalmStretch const ahead{.limits = limits,
                            .next_sample = sample_,
                            .period_s = period_s_,
                            .end_s = last_sample_before_s(limits.until_time_s)};
    bool const long_enough = ahead.end_s - stage_.time_s() >= shortest_stretch_samples * period_s_;
    if (!long_enough || !may_pass(stage_, ahead, measured)) {
      return followed();
    }
    double const from_s = stage_.time_s();
    auto const before = stage_.carrier().moment();
    double const before_hz = stage_.speed_hz();
    auto const outcome = pass(stage_, ahead, after_step());
    if (passed_from(from_s)) {
      resume(settings_, options_.logic, regulator_, stage_.measure(Noise::without, sample_), stage_.speed_hz());
    } else {
      // What it would take to hold may be more than the plant bears, so nothing of the attempt may stay.
      stage_.turn(before_hz);
      stage_.carrier().back_to(before);
    }
    return outcome;
  }

  AfterStep after_step() {
    return [this](double duration_s, Measured const& measured) {
      note(duration_s, measured);
      record(measured, false);
    };
  }

  /// The last sample that a stretch can go to which ends by a time.
  double last_sample_before_s(double until_s) const {
    double const end_s = std::min({until_s, stage_.next_change_s(), next_window_edge_s(), end_s_});
    return std::floor((end_s + time_slack_s) / period_s_) * period_s_;
  }

  // Where it is not calm, its speed may still move evenly from the sample just computed on.
  Outcome followed() {
    if (!has_just_sampled()) {
      return Outcome::stepped;
    }
    auto const evenly = following(settings_, options_.logic, regulator_, *sampled_, stage_.noise_pa(), period_s_);
    if (!evenly || !stage_.can_follow(evenly->course)) {
      return Outcome::stepped;
    }
    double const end_s = last_sample_before_s(evenly->until_time_s);
    if (end_s - stage_.time_s() < shortest_stretch_samples * period_s_) {
      return Outcome::stepped;
    }
    double const from_s = stage_.time_s();
    auto const before = stage_.carrier().moment();
    double const before_hz = stage_.speed_hz();
    auto const outcome =
        follow(stage_, settings_, options_.logic, regulator_,
               {.following = *evenly, .next_sample = sample_, .period_s = period_s_, .end_s = end_s}, after_step());
    if (!passed_from(from_s)) {
      stage_.turn(before_hz);
      stage_.carrier().back_to(before);
    }
    return outcome;
  }

  /// Counts the samples passed over since a time; where there are none it is not tried again soon.
  bool passed_from(double from_s) {
    bool const passed = stage_.time_s() > from_s + time_slack_s;
    if (passed) {
      tries_in_vain_ = 0;
      sample_ = static_cast<std::uint64_t>(std::ceil((stage_.time_s() - time_slack_s) / period_s_));
      trace_.statistics.stretched_s += stage_.time_s() - from_s;
    } else {
      no_stretch_before_ = sample_ + samples_after_none;
    }
    return passed;
  }

  void finish(Outcome outcome) {
    trace_.ending = outcome == Outcome::chatter          ? Ending::chatter
                    : outcome == Outcome::no_convergence ? Ending::no_convergence
                                                         : Ending::finished;
    auto const measured = stage_.measure(Noise::without, sample_);
    record(measured, true);
    auto const& carrier = stage_.carrier();
    trace_.last = point(measured);
    trace_.tallies = notes_.tallies();
    trace_.statistics.steps = carrier.steps();
    trace_.statistics.refused_steps = carrier.refused();
    trace_.statistics.flips = carrier.flips();
    trace_.balance = balance(plant_, stage_.start(), carrier.state());
  }

  Plant const& plant_;
  Settings const& settings_;
  RunOptions const& options_;
  double end_s_;
  double period_s_;
  Stage stage_;
  SamplesAhead ahead_;
  Notes notes_;
  RegulatorState regulator_;
  std::optional<Measured> sampled_;  // what the last sample computed was given
  std::uint64_t sample_ = 0;
  std::uint64_t no_stretch_before_ = 0;
  std::uint64_t tries_in_vain_ = 0;  // in a row
  Trace trace_;
};

}  // namespace

Trace run(Plant const& plant, Settings const& settings, Scenario const& scenario, RunOptions const& options) {
  return Run(plant, settings, scenario, options).go();
}

std::string_view word(Ending ending) {
  switch (ending) {
    case Ending::finished:
      return "finished";
    case Ending::chatter:
      return "chatter";
    case Ending::no_convergence:
      return "no convergence";
  }
  return "";
}

}  // namespace wellproof
