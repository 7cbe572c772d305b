// Ramps and regulator: how quickly speed may change, and how strongly it answers missing pressure.
#include <algorithm>
#include <array>
#include <cmath>
#include <complex>
#include <cstddef>
#include <numbers>
#include <vector>

#include <fmt/format.h>

#include "settings/loops.h"
#include "settings/study.h"

namespace wellproof {
namespace {

// Speeding the water column up may take this share of the target's head, slowing it down this much (common practice, no
// source): it is pressure that the house feels and that the check valve slams with.
constexpr double column_share_up = 0.15;
constexpr double column_share_down = 0.3;
constexpr double slowest_ramp_hz_s = 1;
constexpr double longest_rise_s = 5;      // from the start speed to what the peak asks: a shower has to wait so long
constexpr double fastest_ramp_hz_s = 30;  // 0 to 30 Hz within a second is what thrust bearings ask of any drive

constexpr double sensitivity_wanted = 1.6;  // a little under most_sensitivity, for what linearising leaves out
constexpr double detuning = 0.9;
constexpr double shortest_reset_s = 1;

/// Time in which the column's flow may go from nothing to the peak, and the speeds between which it does.
double ramp_hz_s(Plant const& plant, Settings const& settings, double column_share) {
  double const target_pa = true_pressure_pa(plant, settings, settings.pressure_target_pa);
  double const level_m = plant.well.static_level_depth_m;
  double const peak_m3_s = served_peak_m3_s(plant);
  double const head_m = column_share * target_pa / plant.weight_n_m3;
  double const time_s = plant.up.inertance_s2_m2() * peak_m3_s / head_m;
  double const idle_hz = zero_flow_speed_hz(plant, target_pa, level_m);
  double const peak_hz =
      std::min(point_for_flow(plant, peak_m3_s, target_pa, level_m).speed_hz, settings.speed_ceiling_hz);
  return std::max(peak_hz - idle_hz, 1.0) / std::max(time_s, 1e-3);
}

// Frequencies at which all cases are looked at.
constexpr std::size_t frequencies = 160;
constexpr double lowest_1_s = 1e-2;

double angular_1_s(std::size_t i, double sample_rate_hz) {
  return lowest_1_s * std::pow(std::numbers::pi * sample_rate_hz / lowest_1_s,
                               static_cast<double>(i) / static_cast<double>(frequencies - 1));
}

/// A loop without its regulator, its response worked out once.
struct Case {
  RegulatorLoop loop;
  std::array<double, frequencies> angular_1_s{};
  std::array<std::complex<double>, frequencies> response_pa_hz{};
};

std::vector<Case> cases_of(Study const& study) {
  std::vector<Case> cases;
  for (auto const& loop : loops_of(study.plants, study.settings)) {
    auto& one = cases.emplace_back(Case{.loop = loop});
    for (std::size_t i = 0; i < frequencies; ++i) {
      one.angular_1_s[i] = angular_1_s(i, loop.sample_rate_hz);
      one.response_pa_hz[i] = loop.response_pa_hz(one.angular_1_s[i]);
    }
  }
  return cases;
}

constexpr double unstable = 100;  // what a loop that passes −1 on the wrong side counts for

double largest_sensitivity(Case const& one, PiRule const& rule) {
  double nearest = 1;  // to −1, squared
  std::complex<double> before;
  for (std::size_t i = 0; i < frequencies; ++i) {
    auto const loop = one.response_pa_hz[i] * response(rule, one.angular_1_s[i]);
    nearest = std::min(nearest, std::norm(1.0 + loop));
    bool const crosses = i > 0 && (before.imag() < 0) != (loop.imag() < 0);
    if (crosses && std::min(before.real(), loop.real()) < -1) {
      return unstable;
    }
    before = loop;
  }
  return 1 / std::sqrt(nearest);
}

double largest_sensitivity(std::vector<Case> const& cases, PiRule const& rule) {
  double largest = 1;
  for (auto const& one : cases) {
    largest = std::max(largest, largest_sensitivity(one, rule));
  }
  return largest;
}

/// One rule for all cases: the smallest gain that SIMC gives for any, and the longest reset time that goes with it.
/// @param slower how many times the delay the closed loop takes
PiRule common_rule(std::vector<DelayedLag> const& cases, double slower, double most_hz_pa) {
  PiRule rule{most_hz_pa, 0};
  for (auto const& one : cases) {
    rule.gain = std::min(rule.gain, simc(one, slower * one.delay_s).gain);
  }
  for (auto const& one : cases) {
    // The closed loop's time that this gain means for the case at hand.
    double const quickness_s = one.time_constant_s / (one.gain * rule.gain);
    rule.reset_time_s = std::max(rule.reset_time_s, simc(one, quickness_s - one.delay_s).reset_time_s);
  }
  return rule;
}

}  // namespace

void derive_ramps(Study& study) {
  auto& settings = study.settings;
  auto const up = extent(study.plants, [&](Plant const& plant) { return ramp_hz_s(plant, settings, column_share_up); });
  auto const down =
      extent(study.plants, [&](Plant const& plant) { return ramp_hz_s(plant, settings, column_share_down); });
  double const patient_hz_s = (settings.speed_ceiling_hz - study.logic.start_speed_hz) / longest_rise_s;
  double const up_hz_s = std::max(rounded_down(up.low, 0.5), rounded_up(patient_hz_s, 0.5));
  settings.speed_ramp_up_hz_s = std::clamp(up_hz_s, slowest_ramp_hz_s, fastest_ramp_hz_s);
  double const down_hz_s = std::max(rounded_down(down.low, 0.5), settings.speed_ramp_up_hz_s);
  settings.speed_ramp_down_hz_s = std::clamp(down_hz_s, slowest_ramp_hz_s, fastest_ramp_hz_s);
  auto const text = [&](Extent const& ramp, double share) {
    return fmt::format(
        "Taking {} of flow up or down in the {} of pipe from pump to tee at {} to {} over the draws costs "
        "{:.0f} % of the target's pressure; the lowest is taken, within {} and {}.",
        study.flow(served_peak_m3_s(study.plants.front())), study.length(study.plants.front().up.length_m()),
        write_quantity(rounded(ramp.low, 0.1), Dimension::ramp, study.units),
        write_quantity(rounded(ramp.high, 0.1), Dimension::ramp, study.units), 100 * share,
        write_quantity(slowest_ramp_hz_s, Dimension::ramp, study.units),
        write_quantity(fastest_ramp_hz_s, Dimension::ramp, study.units));
  };
  study.because("speed.ramp_up", text(up, column_share_up));
  study.because("speed.ramp_up", fmt::format("At least {}, to be at the ceiling {} after the start speed.",
                                             write_quantity(rounded(patient_hz_s, 0.1), Dimension::ramp, study.units),
                                             study.time(longest_rise_s)));
  study.because("speed.ramp_down", text(down, column_share_down));
  study.because("speed.ramp_down", "Not slower than up: what a closing tap leaves over goes into the tank.");
}

void derive_regulator(Study& study) {
  auto& settings = study.settings;
  auto const cases = cases_of(study);
  if (cases.empty()) {
    // Nothing can be held anywhere: a cautious answer that follows from the target alone.
    settings.regulator_gain_hz_pa = 1 / (0.1 * settings.pressure_target_pa);
    settings.regulator_reset_time_s = 2;
    for (auto const key : {"regulator.gain", "regulator.reset_time"}) {
      study.because(key, "In no draw can the pump hold the target at any draw of water: a weak answer is set.");
      study.conflict(key, "The target is out of reach.", "See pressure.target.");
    }
    return;
  }
  std::vector<DelayedLag> reduced;
  reduced.reserve(cases.size());
  double largest_gain_pa_hz = 0;
  double smallest_gain_pa_hz = 1e12;
  double slowest_s = 0;
  double longest_delay_s = 0;
  for (auto const& one : cases) {
    reduced.push_back(half_rule(one.loop.plant.steady_pa_hz(), one.loop.plant.time_constants_s(), one.loop.delay_s()));
    largest_gain_pa_hz = std::max(largest_gain_pa_hz, reduced.back().gain);
    smallest_gain_pa_hz = std::min(smallest_gain_pa_hz, reduced.back().gain);
    slowest_s = std::max(slowest_s, reduced.back().time_constant_s);
    longest_delay_s = std::max(longest_delay_s, reduced.back().delay_s);
  }
  double const most_hz_pa = most_gain_for_noise_hz_pa(study.plants);
  double const by_rule_hz_pa = common_rule(reduced, 1, 1e9).gain;
  double const after_noise_hz_pa = std::min(by_rule_hz_pa, most_hz_pa);
  // Where the tight choice is too sharp for one of the cases all are made slower, gain and reset time together:
  // lowering the gain alone would make a plant with a large tank swing slowly.
  double slower = 1;
  PiRule rule = common_rule(reduced, slower, most_hz_pa);
  double worst = largest_sensitivity(cases, rule);
  for (int round = 0; round < 40 && worst > sensitivity_wanted; ++round) {
    slower /= detuning;
    rule = common_rule(reduced, slower, most_hz_pa);
    worst = largest_sensitivity(cases, rule);
  }
  // That reset time suits the slowest case; shortened as far as all stay robust, a lasting error is gone sooner.
  double const by_rule_s = rule.reset_time_s;
  for (int round = 0; round < 40; ++round) {
    PiRule const quicker{rule.gain, rule.reset_time_s * detuning};
    double const then = largest_sensitivity(cases, quicker);
    if (then > sensitivity_wanted || quicker.reset_time_s < shortest_reset_s) {
      break;
    }
    rule = quicker;
  }
  // Two digits, as a person enters them.
  double const unit_hz_pa = customary_unit(Dimension::regulator_gain, study.units).factor;
  double const digit_hz_pa = unit_hz_pa * std::pow(10, std::floor(std::log10(rule.gain / unit_hz_pa)) - 1);
  rule = {rounded_down(rule.gain, digit_hz_pa), std::max(rounded(rule.reset_time_s, 0.1), 0.1)};
  worst = largest_sensitivity(cases, rule);
  // A second gain that is stronger is the one that has to be robust.
  double const stronger =
      study.logic.second_gain == SecondGain::none ? 1 : std::max(study.logic.second_gain_share, 1.0);
  rule = {rule.gain / stronger, rule.reset_time_s * stronger};
  settings.regulator_gain_hz_pa = rule.gain;
  settings.regulator_reset_time_s = rule.reset_time_s;
  constexpr double one_hz = 1;
  auto const gain_text = [&](double gain_hz_pa) {
    return write_quantity(gain_hz_pa, Dimension::regulator_gain, study.units);
  };
  study.because(
      "regulator.gain",
      fmt::format(
          "One Hz moves the pressure by {} to {} in the end, over draws, levels and flows. SIMC gives {}{}{}; the "
          "largest sensitivity is then {:.2f} ({} at most).",
          study.pressure(smallest_gain_pa_hz * one_hz), study.pressure(largest_gain_pa_hz * one_hz),
          gain_text(by_rule_hz_pa),
          after_noise_hz_pa < by_rule_hz_pa
              ? fmt::format(", held to {} so that the sensor's noise moves the speed by no more than {}",
                            gain_text(after_noise_hz_pa), study.speed(noise_may_move_speed_hz))
              : "",
          rule.gain < after_noise_hz_pa ? fmt::format(", made slower to {} for the worst draw", gain_text(rule.gain))
                                        : "",
          worst, most_sensitivity));
  if (study.logic.second_gain != SecondGain::none) {
    study.because(
        "regulator.gain",
        fmt::format("This drive's second gain is {:.3g} times as strong; the stronger of the two keeps to that.",
                    study.logic.second_gain_share));
  }
  study.because(
      "regulator.reset_time",
      fmt::format("The slowest draw follows in {} after a delay of up to {} (column, sensor, sampling); with this "
                  "gain SIMC gives {} for it, shortened as far as the largest sensitivity allows in every draw.",
                  study.time(slowest_s), study.time(longest_delay_s), study.time(by_rule_s)));
  if (worst > sensitivity_wanted) {
    study.conflict("regulator.gain", fmt::format("Even so weak an answer keeps a sensitivity of {:.2f}.", worst),
                   "A larger tank, a quicker sensor, or a drive that samples more often.");
  }
}

}  // namespace wellproof
