#include "visit/one_visit.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string_view>

#include "plant/operating.h"
#include "quantity/customary.h"
#include "quantity/inverse_normal.h"
#include "settings/study.h"
#include "simulate/run.h"
#include "site/draw.h"
#include "visit/full_draw.h"

namespace wellproof {
namespace {

using Kind = RegulatorEvent::Kind;

constexpr double no_figure = std::numeric_limits<double>::quiet_NaN();
// The taps of the full draw stand at the tank, where a plant has the break that no visit has.
constexpr std::size_t taps = outlet::burst;
constexpr double tap_turns_s = 0.5;
constexpr double opens_s = 20;         // the tap, in every test that has one
constexpr double small_lasts_s = 300;  // the small draw, read over its last minute
constexpr double small_spells_last_s = 1800;
constexpr double valve_turns_s = 2;      // before the sensor, by hand
constexpr double stop_patience_s = 300;  // a guard that has not acted by then does not act
constexpr double asleep_s = 300;         // after the last tap, before it is opened again
constexpr double wake_patience_s = 1800;
constexpr double setting_error_hz = 0.3;      // taps are opened until a moving figure shows about what was asked
constexpr double setting_error_share = 0.03;  // the same on a gauge

/// The readings of one visit by their keys, as they are while nobody errs.
class OneVisit {
 public:
  OneVisit(VisitPlan const& plan, Plant plant, Settings const& settings, Logic const& logic, std::uint64_t noise)
      : plan_(plan), plant_(std::move(plant)), settings_(settings), logic_(logic), noise_(noise) {}

  /// @param setting what the person who opens the taps errs by, in standard deviations
  std::vector<double> read(double setting) {
    out_.assign(visit_slots(plan_.two_contacts).size(), no_figure);
    at_rest();
    if (plan_.two_contacts) {
      switch_round();
      taps_at_fixed_speed(setting);
    } else {
      rotation();
      shut_line(setting);
      small_draw(setting);
      taps_at_speed(setting);
    }
    leak();
    low_water();
    return out_;
  }

 private:
  void put(std::string_view key, double value) {
    auto const& slots = visit_slots(plan_.two_contacts);
    auto const at = std::find_if(slots.begin(), slots.end(), [&](VisitSlot const& slot) { return slot.key == key; });
    if (at != slots.end()) {
      out_[static_cast<std::size_t>(at - slots.begin())] = value;
    }
  }

  double shown_pa(double tee_pressure_pa) const { return shown_pressure_pa(plant_, settings_, tee_pressure_pa); }
  double held_pa() const { return true_pressure_pa(plant_, settings_, settings_.pressure_target_pa); }

  Trace ran(Settings const& settings, Scenario scenario, std::vector<Window> windows = {}) const {
    std::stable_sort(scenario.script.begin(), scenario.script.end(),
                     [](Change const& a, Change const& b) { return a.time_s < b.time_s; });
    RunOptions options;
    options.logic = logic_;
    options.windows = std::move(windows);
    options.record = true;
    options.noise_seed = noise_;
    return run(plant_, settings, scenario, options);
  }

  static void turn_tap(Scenario& scenario, std::size_t which, double at_s, double from, double to) {
    auto const steps = ramp(Act::outlet_opening, which, at_s, at_s + tap_turns_s, from, to);
    scenario.script.insert(scenario.script.end(), steps.begin(), steps.end());
  }

  /// Asleep at the target, as a house is found.
  Scenario at_target(double lasts_s) const {
    Scenario scenario;
    scenario.duration_s = lasts_s;
    scenario.start = {.tee_pressure_pa = held_pa(), .after_power_up = false};
    return scenario;
  }

  static std::optional<double> first(Trace const& trace, Kind kind, double after_s) {
    auto const found = std::find_if(trace.events.begin(), trace.events.end(), [&](TraceEvent const& event) {
      return event.what.kind == kind && event.time_s >= after_s;
    });
    return found == trace.events.end() ? std::nullopt : std::optional(found->time_s);
  }

  /// The last record up to a time.
  static TracePoint const* at(Trace const& trace, double time_s) {
    TracePoint const* last = nullptr;
    for (auto const& point : trace.points) {
      last = point.time_s <= time_s + 1e-9 ? &point : last;
    }
    return last;
  }

  /// The taps opened for the full draw; left as they are they pass less at less pressure.
  void set_taps(double flow_m3_s, double at_pressure_pa) {
    plant_.outlets[taps] = {.nominal_flow_m3_s = std::max(flow_m3_s, 1e-9),
                            .nominal_pressure_pa = at_pressure_pa,
                            .place = OutletPlace::tee};
    taps_set_ = flow_m3_s > 0;
  }

  void at_rest() {
    put("at_rest.level", plant_.well.static_level_depth_m);
    put("at_rest.volts", plant_.site.supply.voltage_v);
    put("at_rest.drive_pressure", shown_pa(0));
  }

  void rotation() {
    if (plan_.hand_speed_hz <= 0) {
      return;
    }
    Scenario scenario;
    scenario.duration_s = 1 + plan_.hand_time_s;
    scenario.start = {.tee_pressure_pa = plan_.hand_start_pa, .after_power_up = false};
    scenario.script.push_back(
        {.time_s = 0.5, .act = Act::hand_speed, .value = plan_.hand_speed_hz, .lasts_s = plan_.hand_time_s + 60});
    auto const trace = ran(settings_, scenario);
    if (trace.last.mode == Mode::hand && trace.ending == Ending::finished) {
      put("rotation.gauge", trace.last.tee_pressure_pa);
      put("rotation.current", trace.last.current_a);
      put("rotation.power", trace.last.input_power_w);
    }
  }

  void leak() {
    auto scenario = at_target(plan_.leak_wait_s);
    scenario.script.push_back({.time_s = 0, .act = Act::supply_share, .value = 0});
    auto const trace = ran(settings_, scenario);
    put("leak.fall", std::max(held_pa() - trace.last.tee_pressure_pa, 0.0));
  }

  /// A valve before the sensor is shut under a draw.
  void shut_line(double setting) {
    if (!plan_.valve_test_safe) {
      return;
    }
    find_taps(setting);
    if (!taps_set_) {
      return;
    }
    double const shut_s = 120;
    auto scenario = at_target(shut_s + valve_turns_s + stop_patience_s);
    turn_tap(scenario, taps, opens_s, 0, 1);
    auto const steps = ramp(Act::yard_valve, 0, shut_s, shut_s + valve_turns_s, 1, 0);
    scenario.script.insert(scenario.script.end(), steps.begin(), steps.end());
    auto const trace = ran(settings_, scenario);
    auto const stops = first(trace, Kind::stopped, shut_s);
    if (stops && !trace.at_stops.empty()) {
      put("shut_line.stop_time", *stops - shut_s - valve_turns_s);
      put("shut_line.current", trace.at_stops.front().current_a);
    }
  }

  void small_draw(double setting) {
    if (plan_.small_draw_m3_s <= 0) {
      return;
    }
    auto const before = plant_.outlets[outlet::least];
    plant_.outlets[outlet::least].nominal_flow_m3_s = plan_.small_draw_m3_s * (1 + setting_error_share * setting);
    auto scenario = at_target(opens_s + small_lasts_s);
    turn_tap(scenario, outlet::least, opens_s, 0, 1);
    double const end_s = scenario.duration_s;
    auto trace = ran(settings_, scenario, {{.from_s = end_s - 60, .to_s = end_s}});
    auto const& minute = trace.tallies.back();
    if (trace.ending == Ending::finished && minute.running_s > 59.9) {
      put("small_draw.drive_pressure", shown_pa(trace.last.tee_pressure_pa));
      put("small_draw.swing", minute.most_tee_pressure_pa - minute.least_tee_pressure_pa);
      put("small_draw.speed", trace.last.speed_hz);
      put("small_draw.current", trace.last.current_a);
    } else if (trace.ending == Ending::finished) {
      // In spells there is nothing steady to read, but how long one takes.
      scenario.duration_s = opens_s + small_spells_last_s;
      trace = ran(settings_, scenario);
      auto const woke = first(trace, Kind::woke, opens_s);
      auto const again = woke ? first(trace, Kind::woke, *woke + 1) : std::nullopt;
      put("small_draw.spell", again ? *again - *woke : no_figure);
    }
    plant_.outlets[outlet::least] = before;
  }

  /// Opens the taps until the drive shows the speed asked for.
  void find_taps(double setting) {
    double const speed_hz = plan_.full_speed_hz + 0.5 * setting_error_hz * setting;
    set_taps(flow_at_m3_s(plant_, speed_hz, held_pa(), plan_.full_time_s), held_pa());
  }

  /// The full draw, then all shut until it sleeps, then a tap until it wakes.
  void taps_at_speed(double setting) {
    find_taps(setting);
    if (!taps_set_) {
      return;
    }
    double const shut_s = opens_s + plan_.full_time_s;
    double const again_s = shut_s + asleep_s;
    auto scenario = at_target(again_s + wake_patience_s);
    turn_tap(scenario, taps, opens_s, 0, 1);
    turn_tap(scenario, taps, shut_s, 1, 0);
    turn_tap(scenario, taps, again_s, 0, wake_opening);
    turn_tap(scenario, taps, again_s + wake_patience_s / 2, wake_opening, 0);
    auto const trace = ran(settings_, scenario);
    if (trace.ending != Ending::finished) {
      return;
    }
    auto const* const full = at(trace, shut_s);
    if (full != nullptr && full->speed_hz > 0 && full->wetness >= 1) {
      put("full_draw.drive_pressure", shown_pa(full->tee_pressure_pa));
      put("full_draw.gauge", full->tee_pressure_pa);
      put("full_draw.current", full->current_a);
      put("full_draw.power", full->input_power_w);
      put("full_draw.bucket_time", plan_.bucket_m3 / std::max(full->drawn_flow_m3_s, 1e-9));
      put("full_draw.level", full->level_depth_m);
      read_current_a_ = full->current_a;
      read_power_w_ = full->input_power_w;
    }
    auto const slept = first(trace, Kind::slept, shut_s);
    if (!slept || *slept > again_s) {
      return;
    }
    put("sleep_wake.sleep_time", *slept - shut_s);
    auto const* const quiet = at(trace, again_s);
    auto const woke = first(trace, Kind::woke, again_s);
    if (quiet == nullptr || quiet->mode != Mode::asleep || !woke) {
      return;
    }
    put("sleep_wake.wake_pressure", shown_pa(at(trace, *woke)->tee_pressure_pa));
    put("sleep_wake.drawn", drawn_m3(trace, again_s, *woke));
  }

  /// Water caught between two times, from the records.
  static double drawn_m3(Trace const& trace, double from_s, double to_s) {
    double sum_m3 = 0;
    for (std::size_t i = 1; i < trace.points.size(); ++i) {
      auto const& a = trace.points[i - 1];
      auto const& b = trace.points[i];
      if (a.time_s >= from_s - 1e-9 && b.time_s <= to_s + 1e-9) {
        sum_m3 += 0.5 * (a.drawn_flow_m3_s + b.drawn_flow_m3_s) * (b.time_s - a.time_s);
      }
    }
    return sum_m3;
  }

  /// Ceiling lowered and threshold raised for the time of the test, the taps as at full draw.
  void low_water() {
    if (!taps_set_ || !(read_current_a_ > 0) || (!plan_.two_contacts && plan_.lower_ceiling_hz <= 0)) {
      return;
    }
    Settings changed = settings_;
    changed.dry_run_amps_below_a = rounded_up(plan_.threshold_above * read_current_a_, 0.1);
    each_setting(changed, [&](SettingField const& field, double& value) {
      if (field.key == "dry_run.power_below") {
        value = rounded_up(plan_.threshold_above * read_power_w_, 10);  // for a drive that guards by power
      }
    });
    if (!plan_.two_contacts) {
      changed.speed_ceiling_hz = plan_.lower_ceiling_hz;
      changed.speed_floor_hz = std::min(changed.speed_floor_hz, changed.speed_ceiling_hz);
    }
    auto scenario = at_target(opens_s + 2 * stop_patience_s);
    turn_tap(scenario, taps, opens_s, 0, 1);
    auto const trace = ran(changed, scenario);
    auto const woke = first(trace, Kind::woke, opens_s);
    auto const stops = first(trace, Kind::stopped, opens_s);
    if (woke && stops && *stops > *woke) {
      put("low_water.stop_time", *stops - *woke);
    }
  }

  /// From cut-out by a tap down to cut-in, and with all shut up again.
  void switch_round() {
    double const flow_m3_s = plant_.pump.best_flow_m3_s();
    auto scenario = at_target(opens_s + 60 + 2 * plant_.tank.volume_m3 / flow_m3_s);
    set_taps(flow_m3_s, held_pa());
    turn_tap(scenario, taps, opens_s, 0, 1);
    auto const down = ran(settings_, scenario);
    auto const woke = first(down, Kind::woke, opens_s);
    taps_set_ = false;
    if (!woke) {
      return;
    }
    double const in_pa = at(down, *woke)->tee_pressure_pa;
    put("switch_round.cut_in", in_pa);
    put("switch_round.drawn", drawn_m3(down, opens_s, *woke));
    Scenario up;
    up.duration_s = wake_patience_s;
    up.start = {.tee_pressure_pa = in_pa, .after_power_up = false};
    auto const filled = ran(settings_, up);
    auto const began = first(filled, Kind::woke, 0);
    auto const out = first(filled, Kind::slept, 0);
    if (!began || !out) {
      return;
    }
    put("switch_round.fill_time", *out - *began);
    put("switch_round.cut_out", at(filled, *out)->tee_pressure_pa);
    if (auto const* const before = at(filled, *out - 1)) {
      put("switch_round.current", before->current_a);
    }
  }

  /// Taps opened until the gauge shows the pressure asked for.
  void taps_at_fixed_speed(double setting) {
    double const at_pa = plan_.full_pressure_pa * (1 + 0.5 * setting_error_share * setting);
    set_taps(flow_at_m3_s(plant_, settings_.speed_ceiling_hz, at_pa, plan_.full_time_s), at_pa);
    if (!taps_set_) {
      return;
    }
    auto scenario = at_target(opens_s + plan_.full_time_s + 300);
    turn_tap(scenario, taps, opens_s, 0, 1);
    auto const trace = ran(settings_, scenario);
    if (trace.ending == Ending::finished && trace.last.speed_hz > 0 && trace.last.wetness >= 1) {
      put("full_draw.current", trace.last.current_a);
      put("full_draw.bucket_time", plan_.bucket_m3 / std::max(trace.last.drawn_flow_m3_s, 1e-9));
      put("full_draw.level", trace.last.level_depth_m);
      read_current_a_ = trace.last.current_a;
    }
  }

  static constexpr double wake_opening = 0.5;

  VisitPlan const& plan_;
  Plant plant_;
  Settings const& settings_;
  Logic const& logic_;
  std::uint64_t noise_;
  bool taps_set_ = false;
  double read_current_a_ = 0;
  double read_power_w_ = 0;
  std::vector<double> out_;
};

}  // namespace

Plant visited_plant(Site const& site, std::uint64_t seed, std::uint32_t draw, double season_share) {
  auto drawn = wellproof::draw(site, seed, draw);
  drawn.well.season_drop_m *= season_share;
  return build(drawn);
}

std::vector<double> visit_point(std::uint64_t seed, std::uint32_t draw, std::size_t readings) {
  // Another sequence than the one that draws the site: what a person misreads has nothing to do with the well.
  constexpr std::uint64_t of_its_own = 0x56495349;
  return sequence_point(seed ^ of_its_own, draw, readings + 2);
}

std::vector<double> visit_readings(VisitPlan const& plan, Site const& site, Settings const& settings,
                                   Logic const& logic, std::uint64_t seed, std::uint32_t draw) {
  auto const& slots = visit_slots(plan.two_contacts);
  auto const point = visit_point(seed, draw, slots.size());
  constexpr double tail = 0.4999;
  auto const sigmas = [&](std::size_t i) { return inverse_normal(std::clamp(point[i] - 0.5, -tail, tail)); };
  OneVisit visit(plan, visited_plant(site, seed, draw, point[0]), settings, logic, seed * 1000003 + draw);
  auto values = visit.read(sigmas(1));
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (std::isfinite(values[i])) {
      values[i] += meter_error(slots[i].meter, values[i], site) / sigmas_of_95 * sigmas(i + 2);
    }
    if (slots[i].no_least && std::isfinite(values[i])) {
      values[i] = std::max(values[i], 0.0);
    }
  }
  return values;
}

}  // namespace wellproof
