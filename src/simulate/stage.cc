#include "simulate/stage.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "plant/sensor.h"

namespace wellproof {
namespace {

constexpr double time_slack_s = 1e-9;
// With less noise than this of the resolution the signal goes by steps, and its mean is not that of the pressure; with
// as much, it is to a four-hundredth of a step (Gaussian dither: 2/2π·exp(−2π²·0.5²)).
constexpr double dither_share = 0.5;
constexpr double even_sag_share = 1e-3;  // of the volts: so far they may lag behind the load over a step
constexpr double least_lag_s = 1e-3;     // as in plant/rates.cc: a shorter lag is none

Inputs idle_inputs(Plant const& plant) {
  Inputs inputs;
  inputs.openings.assign(plant.outlets.size(), 0);
  inputs.openings[outlet::leak] = 1;
  return inputs;
}

State start_state(Plant const& plant, Start const& start) {
  auto const& site = plant.site;
  State y{};
  y[at::level_depth] = plant.well.static_level_depth_m + start.level_drop_m;
  y[at::stored] = start.line_empty ? 0 : stored_m3(plant, start.tee_pressure_pa);
  y[at::empty] = start.line_empty ? plant.line_volume_m3 : 0;
  y[at::lagged_pressure] = start.line_empty ? 0 : start.tee_pressure_pa;
  y[at::winding] = site.well.water_temperature_c;
  y[at::shell] = site.well.water_temperature_c;
  y[at::pump_water] = site.well.water_temperature_c;
  y[at::sink] = site.drive.ambient_c;
  return y;
}

/// A level drawn down at the start has been held there by an even draw for a day.
Formation::Drawn start_drawn(Plant const& plant, Start const& start) {
  Formation::Drawn drawn{};
  if (start.level_drop_m > 0 && plant.well.formation.gives()) {
    double const level_m = plant.well.static_level_depth_m + start.level_drop_m;
    plant.well.formation.advance(drawn, plant.well.flow_for_level_m3_s(level_m), settled_time_s);
  }
  return drawn;
}

/// Shares of a way over which a value that goes evenly is not above nothing: none where from > to.
struct Part {
  double from = 1;
  double to = 0;
};
Part not_above_nothing(double at_start, double at_end) {
  if (at_start > 0 && at_end > 0) {
    return {};
  }
  if (at_start <= 0 && at_end <= 0) {
    return {0, 1};
  }
  double const share = at_start / (at_start - at_end);
  return at_start > 0 ? Part{share, 1} : Part{0, share};
}

}  // namespace

// A lag of first order behind what goes evenly.
double Foreseen::element_after_pa(double time_s) const {
  double const then_pa = tee_pa + slope_pa_s * time_s;
  if (lag_s <= least_lag_s) {
    return then_pa;
  }
  double const behind_pa = slope_pa_s * lag_s;
  return then_pa - behind_pa + (element_pa - tee_pa + behind_pa) * std::exp(-time_s / lag_s);
}

Stage::Stage(Plant const& plant, Settings const& settings, Scenario const& scenario, RunOptions const& options)
    : plant_(plant),
      settings_(settings),
      scenario_(scenario),
      noise_seed_(options.noise_seed),
      carrier_(plant, idle_inputs(plant), start_state(plant, scenario.start), {.line_full = !scenario.start.line_empty},
               start_drawn(plant, scenario.start), options.tolerance),
      start_(carrier_.state()),
      inputs_(carrier_.inputs()),
      noise_pa_(plant.site.sensor.noise_pa) {}

double Stage::next_change_s() const {
  return change_ < scenario_.script.size() ? scenario_.script[change_].time_s : std::numeric_limits<double>::infinity();
}

std::optional<HandRun> Stage::change() {
  std::optional<HandRun> hand;
  bool changed = false;
  while (next_change_s() <= time_s() + time_slack_s) {
    apply(scenario_.script[change_], hand);
    ++change_;
    changed = true;
  }
  if (changed) {
    carrier_.hold(inputs_);
  }
  return hand;
}

void Stage::apply(Change const& change, std::optional<HandRun>& hand) {
  switch (change.act) {
    case Act::outlet_opening:
      inputs_.openings[change.outlet] = change.value;
      break;
    case Act::house_valve:
      inputs_.house_valve = change.value;
      break;
    case Act::yard_valve:
      inputs_.yard_valve = change.value;
      break;
    case Act::supply_share:
      supply_share_ = change.value;
      inputs_.supply_share = supply_share_under_load();
      break;
    case Act::static_shift:
      inputs_.static_shift_m = change.value;
      break;
    case Act::inflow_share:
      inputs_.inflow_share = change.value;
      break;
    case Act::sensor_fault:
      sensor_fault_ = static_cast<SensorFault>(std::lround(change.value));
      stuck_pa_ = element_pressure_pa();
      break;
    case Act::permissive:
      permissive_closed_ = change.value > 0.5;
      break;
    case Act::hand_speed:
      hand = HandRun{.speed_hz = change.value, .until_time_s = time_s() + change.lasts_s};
      break;
    default:
      apply_trouble(change);
  }
}

void Stage::apply_trouble(Change const& change) {
  auto& trouble = inputs_.trouble;
  switch (change.act) {
    case Act::wear:
      trouble.wear = change.value;
      break;
    case Act::check_leak:
      trouble.check_leak_m2 = change.value;
      break;
    case Act::hole:
      trouble.hole_m2 = change.value;
      trouble.hole_depth_m = 0.5 * plant_.site.pump.setting_depth_m;
      break;
    case Act::burst_at_head:
      trouble.hole_m2 = change.value;
      trouble.hole_depth_m = 0;
      break;
    case Act::tank_charge:
      trouble.tank_charge_share = change.value;
      break;
    case Act::intake_loss:
      trouble.intake_loss = change.value;
      break;
    case Act::sensor_lag: {
      // A sensor that had no lag has not kept what its element has come to.
      auto y = carrier_.state();
      y[at::lagged_pressure] = element_pressure_pa();
      carrier_.put(y, carrier_.modes());
      trouble.added_lag_s = change.value;
      break;
    }
    case Act::sensor_zero:
      zero_pa_ = change.value;
      break;
    case Act::sensor_noise:
      noise_pa_ = change.value;
      break;
    case Act::volts_unbalance:
      trouble.volts_unbalance = change.value;
      break;
    case Act::supply_droop:
      supply_droop_ = change.value;
      inputs_.supply_share = supply_share_under_load();
      break;
    case Act::ambient_rise:
      trouble.ambient_rise_k = change.value;
      break;
    default:
      break;
  }
}

// A generator's regulator is slower than a sample: its volts follow what was taken at the sample before.
double Stage::supply_share_under_load() {
  if (supply_droop_ <= 0) {
    return supply_share_;
  }
  auto const& reading = carrier_.read();
  return supply_share_ *
         (1 - supply_droop_ * (reading.motor.input_power_w + reading.drive_loss_w) / plant_.site.motor.power_w);
}

double Stage::sensor_lag_s() const {
  return plant_.site.sensor.lag_s + inputs_.trouble.added_lag_s;
}

double Stage::element_pressure_pa() {
  return sensor_lag_s() > least_lag_s ? carrier_.state()[at::lagged_pressure] : carrier_.read().tee_pressure_pa;
}

Foreseen Stage::foreseen() {
  auto const tee = carrier_.tee_pressure_pa();
  return {.tee_pa = tee.value,
          .slope_pa_s = tee.slope * carrier_.rate()[at::stored],
          .element_pa = element_pressure_pa(),
          .lag_s = sensor_lag_s()};
}

double Stage::scaled_signal_pa(Noise noise, double element_pressure_pa, std::uint64_t sample) const {
  auto sensor = plant_.site.sensor;
  sensor.noise_pa = noise == Noise::with ? noise_pa_ : 0;
  sensor.resolution_pa = noise == Noise::with ? sensor.resolution_pa : 0;
  sensor.zero_error_pa += zero_pa_;
  double const signal_pa =
      sensor_reading_pa(sensor, element_pressure_pa, sensor_fault_, stuck_pa_, noise_seed_ + sample);
  return signal_pa * signal_scale();
}

double Stage::signal_scale() const {
  return settings_.sensor_full_scale_pa / plant_.site.sensor.full_scale_pa;
}

double Stage::sample_noise_pa(std::uint64_t sample) const {
  return signal_scale() * noise_pa_ * sensor_noise(noise_seed_ + sample);
}

double Stage::signal_reach_pa() const {
  return signal_scale() * (most_noise_sigmas * noise_pa_ + plant_.site.sensor.resolution_pa);
}

std::optional<double> Stage::first_outside_s(double from_s, double from_element_pa, double least_pa, double most_pa,
                                             double period_s) {
  double const reach_pa = signal_reach_pa();
  double const to_element_pa = element_pressure_pa();
  double const from_pa = scaled_signal_pa(Noise::without, from_element_pa, 0);
  double const to_pa = scaled_signal_pa(Noise::without, to_element_pa, 0);
  double const step_pa = signal_scale() * resolution_pa();
  bool const evenly = std::min(from_pa, to_pa) > 0 && std::max(from_pa, to_pa) < settings_.sensor_full_scale_pa;
  auto const low = not_above_nothing(from_pa - reach_pa - least_pa, to_pa - reach_pa - least_pa);
  auto const high = not_above_nothing(most_pa - from_pa - reach_pa, most_pa - to_pa - reach_pa);
  double const to_s = time_s();
  double const begins_s = evenly ? from_s + (to_s - from_s) * std::min(low.from, high.from) : from_s;
  double const ends_s = evenly ? from_s + (to_s - from_s) * std::max(low.to, high.to) : to_s;
  auto sample = static_cast<std::uint64_t>(std::floor((from_s + time_slack_s) / period_s)) + 1;
  sample = std::max(sample, static_cast<std::uint64_t>(std::floor(begins_s / period_s)));
  for (;; ++sample) {
    double const at_s = static_cast<double>(sample) * period_s;
    if (at_s > std::min(to_s, ends_s + period_s) + time_slack_s) {
      return std::nullopt;
    }
    double const share = (at_s - from_s) / (to_s - from_s);
    double const noisy_pa = from_pa + share * (to_pa - from_pa) + sample_noise_pa(sample);
    if (evenly && noisy_pa - step_pa > least_pa && noisy_pa + step_pa < most_pa) {
      continue;
    }
    double const element_pa = from_element_pa + share * (to_element_pa - from_element_pa);
    double const signal_pa = scaled_signal_pa(Noise::with, element_pa, sample);
    if (signal_pa <= least_pa || signal_pa >= most_pa) {
      return at_s;
    }
  }
}

Measured Stage::measure(Noise noise, std::uint64_t sample) {
  auto const& site = plant_.site;
  Measured m;
  m.time_s = time_s();
  m.pressure_pa = scaled_signal_pa(noise, element_pressure_pa(), sample);
  auto const& motor = carrier_.read().motor;
  m.current_a = motor.current_a;
  m.power_w = motor.input_power_w;
  m.supply_share = inputs_.supply_share * site.supply.voltage_v / site.motor.voltage_v;
  m.sink_c = carrier_.state()[at::sink];
  m.permissive_closed = permissive_closed_;
  return m;
}

bool Stage::sags_evenly() {
  return supply_droop_ <= 0 || std::abs(supply_share_under_load() - inputs_.supply_share) < even_sag_share;
}

void Stage::sag() {
  if (supply_droop_ > 0) {
    inputs_.supply_share = supply_share_under_load();
    carrier_.hold(inputs_);
  }
}

void Stage::turn(double speed_hz) {
  double const supply_share = supply_droop_ > 0 ? supply_share_under_load() : inputs_.supply_share;
  if (speed_hz != inputs_.speed_hz || supply_share != inputs_.supply_share) {
    inputs_.supply_share = supply_share;
    inputs_.speed_hz = speed_hz;
    carrier_.hold(inputs_);
  }
}

void Stage::hold_pressure() {
  auto y = carrier_.state();
  auto modes = carrier_.modes();
  auto const& reading = carrier_.read();
  y[at::flow] = reading.house_flow_m3_s + reading.tee_flow_m3_s;
  modes.held = true;
  carrier_.put(y, modes);
}

bool Stage::can_follow(Course course) const {
  auto const modes = carrier_.modes();
  bool const smooth = modes.line_full && noise_pa_ >= dither_share * plant_.site.sensor.resolution_pa;
  return sensor_fault_ == SensorFault::none && !modes.stalled && (smooth || course != Course::regulated);
}

// error = target − trim − scale·(pressure·(1 + gain error) + zero error)
void Stage::follow(Following const& following) {
  auto const& sensor = plant_.site.sensor;
  double const scale = signal_scale();
  double const wanted_pa = (settings_.pressure_target_pa - settings_.sensor_trim_pa) / scale;
  double const slope = 1 + sensor.gain_error;
  carrier_.follow({.gain_hz_pa = following.gain_hz_pa * scale * slope,
                   .reference_pa = (wanted_pa - sensor.zero_error_pa - zero_pa_) / slope,
                   .reset_1_s = following.reset_1_s,
                   .ramp_hz_s = following.ramp_hz_s});
  auto y = carrier_.state();
  y[at::integral] = following.integral_hz;
  auto modes = carrier_.modes();
  modes.followed = true;
  carrier_.put(y, modes);
}

void Stage::let_go() {
  inputs_.speed_hz = carrier_.read().speed_hz;
  auto modes = carrier_.modes();
  modes.held = false;
  modes.followed = false;
  carrier_.put(carrier_.state(), modes);
  carrier_.hold(inputs_);
}

Balance balance(Plant const& plant, State const& from, State const& to) {
  auto const change = [&](std::size_t i) { return to[i] - from[i]; };
  double const in_line_m3 = change(at::pumped_total) - change(at::drawn_total) - change(at::stored) + change(at::empty);
  double const in_well_m3 =
      change(at::inflow_total) - change(at::pumped_total) + plant.well.bore_area_m2 * change(at::level_depth);
  double const moved_m3 = std::max({change(at::pumped_total), change(at::drawn_total), 1e-3});
  double const spent_j = change(at::water_energy) + change(at::pump_loss) + change(at::motor_loss) +
                         change(at::cable_loss) + change(at::drive_loss);
  return {.water_share = std::max(std::abs(in_line_m3), std::abs(in_well_m3)) / moved_m3,
          .energy_share = std::abs(change(at::input_energy) - spent_j) / std::max(change(at::input_energy), 1.0)};
}

}  // namespace wellproof
