#include "proof/trial.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace wellproof {
namespace {

constexpr char const* trade = "common practice, no source";

constexpr double tap_turns_s = 0.5;
// PVC loses a quarter of its strength by 38 °C and half by 49 °C (ASTM D1785 derating, from memory); a pump's bearings
// are lubricated by the water they stand in.
constexpr double pump_water_limit_c = 50;

}  // namespace

double weakest_rating_pa(Plant const& plant) {
  return std::min({plant.site.tank.rating_pa, plant.site.limits.fittings_rating_pa, plant.house.rating_pa()});
}

double pump_pressure_limit_pa(Plant const& plant) {
  // A column of the setting's height stands between the pump and the yard pipe.
  double const column_pa = plant.weight_n_m3 * plant.site.pump.setting_depth_m;
  double limit_pa = std::numeric_limits<double>::max();
  for (auto const& run : plant.site.pipes) {
    if (run.place != PipePlace::house) {
      limit_pa = std::min(limit_pa, run.rating_pa + (run.place == PipePlace::yard ? column_pa : 0));
    }
  }
  return limit_pa;
}

TrialDraft::TrialDraft(Plant const& plant, Settings const& settings, std::string name, double duration_s)
    : plant_(plant), settings_(settings) {
  trial_.scenario.name = std::move(name);
  trial_.scenario.duration_s = duration_s;
}

TrialDraft& TrialDraft::asleep_at_target() {
  trial_.scenario.start = {.tee_pressure_pa = settings_.pressure_target_pa, .after_power_up = false};
  return *this;
}

TrialDraft& TrialDraft::start(Start const& start) {
  trial_.scenario.start = start;
  return *this;
}

TrialDraft& TrialDraft::draw(std::size_t outlet, double opening, double from_s, double to_s) {
  auto& script = trial_.scenario.script;
  auto const opens = ramp(Act::outlet_opening, outlet, from_s, from_s + tap_turns_s, 0, opening);
  script.insert(script.end(), opens.begin(), opens.end());
  if (to_s < trial_.scenario.duration_s) {
    auto const shuts = ramp(Act::outlet_opening, outlet, to_s, to_s + tap_turns_s, opening, 0);
    script.insert(script.end(), shuts.begin(), shuts.end());
  }
  return *this;
}

TrialDraft& TrialDraft::change(double time_s, Act act, double value) {
  trial_.scenario.script.push_back({.time_s = time_s, .act = act, .value = value});
  return *this;
}

TrialDraft& TrialDraft::opens(double time_s, std::size_t outlet, double opening) {
  trial_.scenario.script.push_back({.time_s = time_s, .act = Act::outlet_opening, .outlet = outlet, .value = opening});
  return *this;
}

TrialDraft& TrialDraft::ramp_to(Act act, double from_s, double to_s, double from_value, double to_value) {
  auto const steps = ramp(act, 0, from_s, to_s, from_value, to_value);
  trial_.scenario.script.insert(trial_.scenario.script.end(), steps.begin(), steps.end());
  return *this;
}

std::size_t TrialDraft::window(Window const& window) {
  auto const same = std::find_if(trial_.windows.begin(), trial_.windows.end(), [&](Window const& other) {
    return other.from_s == window.from_s && other.to_s == window.to_s &&
           other.outlet_wanted_pa == window.outlet_wanted_pa;
  });
  auto const index = static_cast<std::size_t>(same - trial_.windows.begin());
  if (same == trial_.windows.end()) {
    trial_.windows.push_back(window);
  }
  return index + 1;  // the whole run is tallied first
}

TrialDraft& TrialDraft::keeps_outlet(double from_s, double to_s, double share, double spared_s) {
  double const wanted_pa = share * plant_.site.demand.outlet_pressure_pa;
  trial_.criteria.push_back({.measure = Measure::time_below_outlet_wanted,
                             .window = window({.from_s = from_s, .to_s = to_s, .outlet_wanted_pa = wanted_pa}),
                             .limit = spared_s,
                             .scale = spared_s,
                             .says = "pressure at the highest outlet kept, but for some seconds",
                             .source = trade});
  return *this;
}

TrialDraft& TrialDraft::no_stop() {
  trial_.criteria.push_back({.measure = Measure::no_stop, .says = "does not stop for nothing", .source = trade});
  return *this;
}

TrialDraft& TrialDraft::not_stopped_by(double to_s, std::vector<StopCause> causes) {
  trial_.criteria.push_back({.measure = Measure::no_stop,
                             .window = window({.from_s = 0, .to_s = to_s}),
                             .causes = std::move(causes),
                             .says = "does not stop for nothing",
                             .source = trade});
  return *this;
}

TrialDraft& TrialDraft::stops_within(double since_s, double limit_s, std::vector<StopCause> causes, std::string says) {
  trial_.criteria.push_back({.measure = Measure::stopped_within,
                             .limit = limit_s,
                             .scale = limit_s,
                             .since_s = since_s,
                             .causes = std::move(causes),
                             .says = std::move(says),
                             .source = trade});
  return *this;
}

TrialDraft& TrialDraft::sleeps_within(double since_s, double limit_s) {
  if (plant_.site.control == ControlWay::pressure_switch) {
    limit_s += plant_.tank.volume_m3 / plant_.pump.best_flow_m3_s();  // it is off when the tank is full
  }
  trial_.criteria.push_back({.measure = Measure::asleep_within,
                             .limit = limit_s,
                             .scale = limit_s,
                             .since_s = since_s,
                             .says = "asleep soon after the last tap has closed",
                             .source = trade});
  return *this;
}

TrialDraft& TrialDraft::turns_shut_at_most(double from_s, double to_s, double limit_s) {
  trial_.criteria.push_back({.measure = Measure::turning_shut,
                             .window = window({.from_s = from_s, .to_s = to_s}),
                             .limit = limit_s,
                             .scale = limit_s,
                             .says = "is not left turning against its check valve",
                             .source = trade});
  return *this;
}

TrialDraft& TrialDraft::runs_at_most(double from_s, double to_s, double share) {
  double const limit_s = share * (to_s - from_s);
  trial_.criteria.push_back({.measure = Measure::running,
                             .window = window({.from_s = from_s, .to_s = to_s}),
                             .limit = limit_s,
                             .scale = limit_s,
                             .says = "rests for most of a quiet time",
                             .source = trade});
  return *this;
}

TrialDraft& TrialDraft::starts_at_most(double from_s, double to_s, double per_hour) {
  double const limit = std::max(2.0, per_hour * (to_s - from_s) / 3600);
  trial_.criteria.push_back({.measure = Measure::starts,
                             .window = window({.from_s = from_s, .to_s = to_s}),
                             .limit = limit,
                             .scale = limit,
                             .says = "does not start too often",
                             .source = trade});
  return *this;
}

TrialDraft& TrialDraft::harms_nothing() {
  auto const& site = plant_.site;
  trial_.criteria.push_back({.measure = Measure::winding,
                             .limit = site.motor.winding_limit_c,
                             .scale = site.motor.winding_limit_c - site.well.water_temperature_c,
                             .says = "winding within its insulation class",
                             .source = "NEMA MG 1 insulation classes"});
  trial_.criteria.push_back({.measure = Measure::most_tee_pressure,
                             .limit = weakest_rating_pa(plant_),
                             .scale = weakest_rating_pa(plant_),
                             .says = "pressure never above the weakest rating",
                             .source = "the rating stated"});
  trial_.criteria.push_back({.measure = Measure::most_pump_pressure,
                             .limit = pump_pressure_limit_pa(plant_),
                             .scale = pump_pressure_limit_pa(plant_),
                             .says = "pressure at the pump within the classes of drop and yard pipe",
                             .source = "the rating stated"});
  trial_.criteria.push_back({.measure = Measure::pump_water,
                             .limit = pump_water_limit_c,
                             .scale = pump_water_limit_c - site.well.water_temperature_c,
                             .says = "water held in the pump not heated",
                             .source = "ASTM D1785 derating of PVC with temperature, from memory"});
  return *this;
}

TrialDraft& TrialDraft::loses_at_most(double from_s, double volume_m3) {
  trial_.criteria.push_back({.measure = Measure::water_lost,
                             .window = window({.from_s = from_s, .to_s = trial_.scenario.duration_s}),
                             .limit = volume_m3,
                             .scale = volume_m3,
                             .says = "not more water lost than the owner can bear",
                             .source = "stated for the site"});
  return *this;
}

TrialDraft& TrialDraft::tee_at_least(double from_s, double to_s, double pressure_pa, std::string says) {
  trial_.criteria.push_back({.measure = Measure::least_tee_pressure,
                             .window = window({.from_s = from_s, .to_s = to_s}),
                             .limit = pressure_pa,
                             .scale = pressure_pa,
                             .says = std::move(says),
                             .source = trade});
  return *this;
}

Trial TrialDraft::done() {
  auto& script = trial_.scenario.script;
  std::stable_sort(script.begin(), script.end(), [](Change const& a, Change const& b) { return a.time_s < b.time_s; });
  return std::move(trial_);
}

}  // namespace wellproof
