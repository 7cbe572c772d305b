#include "simulate/pass.h"

#include <cmath>
#include <limits>

namespace wellproof {
namespace {

using Noise = Stage::Noise;

constexpr double time_slack_s = 1e-9;
constexpr double noise_sigmas = 5;  // so far from its limits stays a speed that noise moves
constexpr double settled_share = 0.05;

/// The controller says that its error has settled; the plant has when what is pumped is what is drawn. A noisy signal
/// keeps both moving a little.
bool settled(Stage& stage) {
  auto const modes = stage.carrier().modes();
  auto const& reading = stage.carrier().read();
  double const drawn_m3_s = reading.house_flow_m3_s + reading.tee_flow_m3_s;
  return modes.check_open && modes.line_full && drawn_m3_s > 0 && reading.wetness >= 1 &&
         std::abs(reading.flow_m3_s - drawn_m3_s) < settled_share * drawn_m3_s;
}

bool inside(Calm const& limits, Measured const& measured, Reading const& reading) {
  return measured.pressure_pa > limits.least_pressure_pa && measured.pressure_pa < limits.most_pressure_pa &&
         measured.current_a > limits.least_current_a && measured.current_a < limits.most_current_a &&
         measured.power_w > limits.least_power_w && measured.power_w < limits.most_power_w &&
         measured.supply_share > limits.least_supply_share && measured.supply_share < limits.most_supply_share &&
         measured.sink_c > limits.least_sink_c && measured.sink_c < limits.most_sink_c &&
         (limits.kind != Calm::Kind::holding || (reading.speed_hz > limits.least_speed_hz &&
                                                 reading.speed_hz < limits.most_speed_hz && reading.wetness >= 1));
}

/// Steps as long as they stay inside the limits. One that does not is taken back and halved; when the limit is less
/// than a sample away, samples take over. So they do at one whose noise goes beyond a limit.
Carrier::Outcome pass_inside(Stage& stage, CalmStretch const& stretch, AfterStep const& after_step) {
  auto& carrier = stage.carrier();
  auto const& limits = stretch.limits;
  bool const steady = limits.kind == Calm::Kind::steady;
  double limit_s = stretch.end_s;
  double too_far_s = std::numeric_limits<double>::infinity();
  while (stage.time_s() < stretch.end_s - time_slack_s) {
    auto const before = carrier.moment();
    double const time_s = stage.time_s();
    double const element_pa = stage.element_pressure_pa();
    carrier.count_flips_afresh();
    if (auto const outcome = carrier.step_towards(limit_s); outcome != Carrier::Outcome::stepped) {
      return outcome;
    }
    auto const measured = stage.measure(Noise::without, stretch.next_sample);
    auto const noticed_s = steady ? stage.first_outside_s(time_s, element_pa, limits.least_pressure_pa,
                                                          limits.most_pressure_pa, stretch.period_s)
                                  : std::nullopt;
    bool const within = noticed_s && *noticed_s < stage.time_s() - time_slack_s;
    if (!within && inside(limits, measured, carrier.read())) {
      after_step(stage.time_s() - time_s, measured);
      if (noticed_s) {
        break;
      }
    } else {
      too_far_s = within ? too_far_s : stage.time_s();
      carrier.back_to(before);
    }
    limit_s = within ? *noticed_s : std::min(stretch.end_s, 0.5 * (stage.time_s() + too_far_s));
    if (limit_s - stage.time_s() < 0.5 * stretch.period_s) {
      break;
    }
  }
  return Carrier::Outcome::stepped;
}

}  // namespace

Calm clear_of_noise(Calm limits, Stage const& stage, Settings const& settings) {
  double const noise_hz = settings.regulator_gain_hz_pa * (noise_sigmas * stage.noise_pa() + stage.resolution_pa());
  limits.least_speed_hz += noise_hz;
  limits.most_speed_hz -= noise_hz;
  return limits;
}

bool may_pass(Stage& stage, CalmStretch const& stretch, Measured const& measured) {
  auto const& limits = stretch.limits;
  return limits.kind != Calm::Kind::none && inside(limits, measured, stage.carrier().read()) &&
         (limits.kind != Calm::Kind::holding || settled(stage));
}

Carrier::Outcome pass(Stage& stage, CalmStretch const& stretch, AfterStep const& after_step) {
  bool const holding = stretch.limits.kind == Calm::Kind::holding;
  if (holding) {
    stage.hold_pressure();
  }
  auto outcome = Carrier::Outcome::stepped;
  if (inside(stretch.limits, stage.measure(Noise::without, stretch.next_sample), stage.carrier().read())) {
    outcome = pass_inside(stage, stretch, after_step);
  }
  if (holding) {
    stage.let_go();
  }
  return outcome;
}

}  // namespace wellproof
