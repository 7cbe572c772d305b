#include "simulate/ahead.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "regulator/guards.h"

namespace wellproof {
namespace {

using Noise = Stage::Noise;

constexpr double time_slack_s = 1e-9;
constexpr double longest_s = 1.6;
// So much may the pressure be off from what was foreseen, by itself and by what it makes of the speed.
constexpr double same_pressure_pa = 500;
constexpr double same_speed_hz = 0.02;
constexpr double same_load_share = 0.03;  // of the current limit
constexpr std::uint64_t least_at_once = 3;
constexpr std::uint64_t samples_after_none = 8;

/// The speeds of samples in a row, each of which stands for a sample's time, and the line through them.
class SpeedsPutOut {
 public:
  explicit SpeedsPutOut(double first_hz) { add(first_hz); }

  void add(double speed_hz) {
    auto const place = static_cast<double>(count_);
    sum_hz_ += speed_hz;
    sum_by_place_hz_ += place * speed_hz;
    least_hz_ = std::min(least_hz_, speed_hz);
    most_hz_ = std::max(most_hz_, speed_hz);
    ++count_;
  }

  /// By least squares; no part of it lies outside the speeds.
  Following line(double period_s) const {
    auto const n = static_cast<double>(count_);
    double const mean_hz = sum_hz_ / n;
    double const slope_hz = (sum_by_place_hz_ - 0.5 * (n - 1) * sum_hz_) * 12 / (n * (n * n - 1));
    double const reach_hz = std::min(mean_hz - least_hz_, most_hz_ - mean_hz);
    double const half_hz = std::clamp(0.5 * n * slope_hz, -reach_hz, reach_hz);
    return {.course = Course::ramp, .ramp_hz_s = 2 * half_hz / (n * period_s), .integral_hz = mean_hz - half_hz};
  }

 private:
  std::uint64_t count_ = 0;
  double sum_hz_ = 0;
  double sum_by_place_hz_ = 0;
  double least_hz_ = std::numeric_limits<double>::infinity();
  double most_hz_ = 0;
};

}  // namespace

std::uint64_t SamplesAhead::most_at_once() const {
  return std::max(least_at_once, static_cast<std::uint64_t>(longest_s / period_s_));
}

std::uint64_t SamplesAhead::go(RegulatorState& state, Measured const& sampled, std::uint64_t next_sample, double end_s,
                               AfterStep const& after_step) {
  bool const runs_up = state.speed_hz <= 0 || state.speed_hz < logic_.start_speed_hz;
  if (next_sample < not_before_ || runs_up || stage_.droops() ||
      !load_clear(moment(settings_, logic_, sampled, sampled.time_s), state)) {
    return 0;
  }
  auto const gone = go_at_once(state, sampled, next_sample, end_s, after_step);
  if (gone > 0) {
    at_once_ = std::min(most_at_once(), at_once_ + at_once_ / 2);
  } else if (at_once_ /= 2; at_once_ < least_at_once) {
    at_once_ = least_at_once;
    not_before_ = next_sample + samples_after_none;
  }
  return gone;
}

std::uint64_t SamplesAhead::go_at_once(RegulatorState& state, Measured const& sampled, std::uint64_t next_sample,
                                       double end_s, AfterStep const& after_step) {
  double const began_s = stage_.time_s();
  double const began_hz = stage_.speed_hz();
  auto const foreseen = stage_.foreseen();
  auto const at_s = [&](std::uint64_t sample) { return static_cast<double>(sample) * period_s_; };
  auto seen = sampled;
  auto ahead = state;
  SpeedsPutOut speeds(began_hz);
  std::uint64_t next = next_sample;
  for (; next - next_sample + 1 < at_once_ && at_s(next + 1) < end_s + time_slack_s; ++next) {
    seen.time_s = at_s(next);
    seen.pressure_pa = stage_.scaled_signal_pa(Noise::with, foreseen.element_after_pa(seen.time_s - began_s), next);
    auto then = ahead;
    auto const command = sample(settings_, logic_, then, seen);
    if (command.event || then.speed_hz < logic_.start_speed_hz) {
      break;
    }
    ahead = then;
    speeds.add(command.speed_hz);
  }
  if (next - next_sample + 1 < least_at_once) {
    return 0;
  }
  auto& carrier = stage_.carrier();
  auto const before = carrier.moment();
  stage_.follow(speeds.line(period_s_));
  carrier.count_flips_afresh();
  auto const modes = carrier.modes();
  while (carrier.modes() == modes && stage_.time_s() < at_s(next) - time_slack_s) {
    if (carrier.step_towards(at_s(next)) != Carrier::Outcome::stepped) {
      break;
    }
  }
  bool const there = carrier.modes() == modes && stage_.time_s() >= at_s(next) - time_slack_s;
  stage_.let_go();
  auto const measured = stage_.measure(Noise::without, next);
  if (!there || !as_foreseen(foreseen, ahead, sampled, measured)) {
    stage_.turn(began_hz);
    carrier.back_to(before);
    return 0;
  }
  after_step(stage_.time_s() - began_s, measured);
  state = ahead;
  stage_.turn(state.speed_hz);
  return next - next_sample;
}

bool SamplesAhead::as_foreseen(Foreseen const& foreseen, RegulatorState const& ahead, Measured const& sampled,
                               Measured const& measured) const {
  double const off_pa = stage_.element_pressure_pa() - foreseen.element_after_pa(measured.time_s - sampled.time_s);
  double const load_moved_a = std::abs(measured.current_a - sampled.current_a);
  return std::abs(off_pa) < same_pressure_pa && settings_.regulator_gain_hz_pa * std::abs(off_pa) < same_speed_hz &&
         load_moved_a < same_load_share * settings_.motor_current_limit_a &&
         load_clear(moment(settings_, logic_, measured, measured.time_s), ahead);
}

}  // namespace wellproof
