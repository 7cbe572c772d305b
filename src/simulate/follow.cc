#include "simulate/follow.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "regulator/moment.h"
#include "regulator/sleep.h"

namespace wellproof {
namespace {

using Noise = Stage::Noise;

constexpr double time_slack_s = 1e-9;

/// What the noise of the samples has made of the filtered error since a time. A filter is linear: this is added to what
/// it makes of the values without noise, and what was in it before is in there.
struct FilteredNoise {
  double error_pa = 0;
  std::uint64_t next_sample = 0;  // that is to come in
};
constexpr int halvings = 8;               // of a step that went too far, to see how far
constexpr double filters_remembered = 5;  // time constants after which a sample is forgotten

/// The instant at an end of a step, or between the two.
struct Instant {
  Measured measured;  // without noise
  double element_pa = 0;
  double speed_hz = 0;
};

/// As if all went straight.
Instant between(Instant const& from, Instant const& to, double share) {
  auto const at = [share](double one, double other) { return one + share * (other - one); };
  Instant found = from;
  auto& measured = found.measured;
  measured.time_s = at(from.measured.time_s, to.measured.time_s);
  measured.pressure_pa = at(from.measured.pressure_pa, to.measured.pressure_pa);
  measured.current_a = at(from.measured.current_a, to.measured.current_a);
  measured.power_w = at(from.measured.power_w, to.measured.power_w);
  measured.supply_share = at(from.measured.supply_share, to.measured.supply_share);
  measured.sink_c = at(from.measured.sink_c, to.measured.sink_c);
  found.element_pa = at(from.element_pa, to.element_pa);
  found.speed_hz = at(from.speed_hz, to.speed_hz);
  return found;
}

class Follower {
 public:
  Follower(Stage& stage, Settings const& settings, Logic const& logic, RegulatorState& state,
           FollowedStretch const& stretch)
      : stage_(stage),
        settings_(settings),
        logic_(logic),
        state_(state),
        stretch_(stretch),
        settled_before_(state.settled_since_s.has_value()),
        noise_{.error_pa = 0, .next_sample = stretch.next_sample} {}

  Carrier::Outcome go(AfterStep const& after_step) {
    auto& carrier = stage_.carrier();
    auto from = now();
    double limit_s = stretch_.end_s;
    double too_far_s = std::numeric_limits<double>::infinity();  // so far it did not go evenly
    while (stage_.time_s() < stretch_.end_s - time_slack_s) {
      auto const before = carrier.moment();
      double const from_s = stage_.time_s();
      carrier.count_flips_afresh();
      if (auto const outcome = carrier.step_towards(limit_s); outcome != Carrier::Outcome::stepped) {
        return outcome;
      }
      auto const to = now();
      auto after = state_;
      auto noise = noise_;
      bool const soundly = stage_.can_follow(stretch_.following.course) && stage_.sags_evenly();
      bool const evenly = soundly && goes_on(from, to, after);
      auto const other_s = evenly ? first_otherwise_s(from, to, after, noise) : std::nullopt;
      bool const within = other_s && *other_s < stage_.time_s() - time_slack_s;
      if (evenly && !within) {
        state_ = after;
        noise_ = noise;
        after_step(stage_.time_s() - from_s, to.measured);
        if (other_s || settles()) {
          break;
        }
        stage_.sag();
        from = now();
      } else {
        carrier.back_to(before);
      }
      // Too far: up to the sample that makes a difference, as far as it seems to go, or half the way.
      if (within) {
        limit_s = *other_s;
      } else if (soundly && !evenly) {
        auto const ends = end_of_evenness_s(from, to);
        limit_s = ends.least;
        too_far_s = ends.most;
      } else {
        too_far_s = soundly ? too_far_s : to.measured.time_s;
        limit_s = std::min(stretch_.end_s, 0.5 * (stage_.time_s() + too_far_s));
      }
      if (limit_s - stage_.time_s() < stretch_.period_s - time_slack_s) {
        break;
      }
    }
    return Carrier::Outcome::stepped;
  }

  /// Puts into the filters what the noise of the samples passed over has left there.
  void leave_noise() {
    double const period_s = stretch_.period_s;
    auto const next = static_cast<std::uint64_t>(std::ceil((stage_.time_s() - time_slack_s) / period_s));
    filter_noise_up_to(next, noise_);
    state_.filtered_error_pa += noise_.error_pa;
    state_.filtered_speed_hz += stretch_.following.gain_hz_pa * noise_.error_pa;
  }

 private:
  double filter_s() const { return error_filter_s(state_.mode); }

  /// Lets the samples in that come before this one; those that are forgotten by then are not asked.
  void filter_noise_up_to(std::uint64_t sample, FilteredNoise& noise) const {
    auto const remembered = static_cast<std::uint64_t>(filters_remembered * filter_s() / stretch_.period_s);
    if (sample > noise.next_sample + remembered) {
      noise = {.error_pa = 0, .next_sample = sample - remembered};
    }
    for (; noise.next_sample < sample; ++noise.next_sample) {
      noise.error_pa =
          filtered(noise.error_pa, -stage_.sample_noise_pa(noise.next_sample), stretch_.period_s, filter_s());
    }
  }

  Instant now() {
    return {.measured = stage_.measure(Noise::without, stretch_.next_sample),
            .element_pa = stage_.element_pressure_pa(),
            .speed_hz = stage_.carrier().read().speed_hz};
  }

  /// Where a pressure is regulated, the sensor reads within its span; and the controller goes on evenly.
  bool goes_on(Instant const& from, Instant const& to, RegulatorState& state) const {
    bool const reads = to.measured.pressure_pa > 0 && to.measured.pressure_pa < settings_.sensor_full_scale_pa;
    return (reads || stretch_.following.course != Course::regulated) &&
           follow_on(settings_, logic_, state, stretch_.following, from.measured, to.measured, from.speed_hz,
                     to.speed_hz, stretch_.period_s);
  }

  /// Between which times a step that did not go evenly to its end ceases to, if all goes straight.
  Span end_of_evenness_s(Instant const& from, Instant const& to) const {
    double even = 0;
    double uneven = 1;
    for (int i = 0; i < halvings; ++i) {
      double const share = 0.5 * (even + uneven);
      auto state = state_;
      (goes_on(from, between(from, to, share), state) ? even : uneven) = share;
    }
    double const duration_s = to.measured.time_s - from.measured.time_s;
    return {from.measured.time_s + even * duration_s, from.measured.time_s + uneven * duration_s};
  }

  /// Long enough that it may be held instead, which goes by longer steps. One that was settled from the start could
  /// not.
  bool settles() const {
    return !settled_before_ && timer_over(state_.settled_since_s, settled_for_s(settings_), stage_.time_s());
  }

  static Span span(double one, double other, double reach) {
    return {std::min(one, other) - reach, std::max(one, other) + reach};
  }

  /// The first sample of a step on which the controller would do otherwise. The timer on a slow speed is kept in the
  /// state after the step, up to that sample.
  std::optional<double> first_otherwise_s(Instant const& from, Instant const& to, RegulatorState& after,
                                          FilteredNoise& noise) const {
    double const period_s = stretch_.period_s;
    double const from_s = from.measured.time_s;
    double const to_s = to.measured.time_s;
    double const reach_pa = stage_.signal_reach_pa();
    double const gain_hz_pa = stretch_.following.gain_hz_pa;
    double const from_error_pa = state_.filtered_error_pa;
    double const to_error_pa = after.filtered_error_pa;
    double const filtered_reach_pa = noise_left_share(filter_s(), period_s) * reach_pa;
    auto const outlook =
        wellproof::outlook(settings_, logic_, state_, stretch_.following,
                           span(from.measured.pressure_pa, to.measured.pressure_pa, reach_pa),
                           span(from.speed_hz, to.speed_hz, gain_hz_pa * reach_pa),
                           span(state_.filtered_speed_hz, after.filtered_speed_hz, gain_hz_pa * filtered_reach_pa),
                           span(from_error_pa, to_error_pa, filtered_reach_pa));
    auto sample = static_cast<std::uint64_t>(std::floor((from_s + time_slack_s) / period_s)) + 1;
    if (outlook.passes && outlook.slow && state_.mode == Mode::holding) {
      // Nothing to look at but when the timer ends.
      double const first_s = static_cast<double>(sample) * period_s;
      if (first_s <= to_s + time_slack_s) {
        keep_timer(after.slow_since_s, *outlook.slow, first_s);
      }
      double const ends_s = after.slow_since_s.value_or(to_s) + settings_.sleep_hold_s;
      double const over_s = std::max(first_s, std::ceil((ends_s - time_slack_s) / period_s) * period_s);
      return after.slow_since_s && over_s <= to_s + time_slack_s ? std::optional(over_s) : std::nullopt;
    }
    if (outlook.passes && state_.mode != Mode::holding) {
      return std::nullopt;
    }
    filter_noise_up_to(sample, noise);
    for (;; ++sample) {
      double const at_s = static_cast<double>(sample) * period_s;
      if (at_s > to_s + time_slack_s) {
        return std::nullopt;
      }
      double const share = (at_s - from_s) / (to_s - from_s);
      auto const even = between(from, to, share);
      auto seen = even.measured;
      seen.time_s = at_s;
      seen.pressure_pa = stage_.scaled_signal_pa(Noise::with, even.element_pa, sample);
      double const off_pa = even.measured.pressure_pa - seen.pressure_pa;
      auto const then =
          FilteredNoise{.error_pa = filtered(noise.error_pa, off_pa, period_s, filter_s()), .next_sample = sample + 1};
      double const speed_hz = even.speed_hz + gain_hz_pa * off_pa;
      double const error_pa = from_error_pa + share * (to_error_pa - from_error_pa) + then.error_pa;
      double const filtered_speed_hz = state_.filtered_speed_hz +
                                       share * (after.filtered_speed_hz - state_.filtered_speed_hz) +
                                       gain_hz_pa * then.error_pa;
      if (!passes_over(settings_, logic_, state_, stretch_.following, seen, speed_hz, error_pa) ||
          !keep_slow(settings_, logic_, after, seen, filtered_speed_hz, error_pa)) {
        return at_s;
      }
      noise = then;
    }
  }

  Stage& stage_;
  Settings const& settings_;
  Logic const& logic_;
  RegulatorState& state_;
  FollowedStretch const& stretch_;
  bool settled_before_;
  FilteredNoise noise_;
};

}  // namespace

Carrier::Outcome follow(Stage& stage, Settings const& settings, Logic const& logic, RegulatorState& state,
                        FollowedStretch const& stretch, AfterStep const& after_step) {
  double const began_s = stage.time_s();
  bool const moves = stretch.following.course != Course::limit;
  if (moves) {
    stage.follow(stretch.following);
  }
  Follower follower(stage, settings, logic, state, stretch);
  auto const outcome = follower.go(after_step);
  double const integral_hz = stage.carrier().state()[at::integral];
  if (moves) {
    stage.let_go();
  }
  if (stage.time_s() > began_s + time_slack_s) {
    follower.leave_noise();
    double const next_sample_s = std::ceil((stage.time_s() - time_slack_s) / stretch.period_s) * stretch.period_s;
    resume_following(settings, logic, state, stretch.following, stage.measure(Noise::without, stretch.next_sample),
                     stage.speed_hz(), integral_hz, next_sample_s, stretch.period_s);
  }
  return outcome;
}

}  // namespace wellproof
