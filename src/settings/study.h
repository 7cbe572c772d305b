#pragma once
// What the derivations of all subjects share: the draws looked at, the settings as far as they stand, and the reasons
// and cautions gathered on the way. Each subject has its own file and uses what stands before it in derive().
#include <string>
#include <string_view>
#include <vector>

#include "plant/operating.h"
#include "regulator/regulator.h"
#include "settings/derive.h"

namespace wellproof {

struct Study {
  Site const& site;
  std::vector<Plant> const& plants;  // the first is the middle one
  UnitSystem units = UnitSystem::us;
  Logic logic;
  Settings settings;
  std::vector<SettingReason> reasons;
  std::vector<Caution> cautions;
  std::vector<RestPoint> rest_curve;
  std::vector<std::string> not_on_drive{};
  double rest_run_wanted_s = 0;

  void because(std::string_view key, std::string const& text);
  /// Marks a setting that cannot be right in all draws.
  void conflict(std::string_view key, std::string const& in_the_way, std::string const& would_change_it);
  void caution(std::string_view key, std::string says);

  std::string pressure(double pressure_pa) const;
  std::string speed(double speed_hz) const;
  std::string current(double current_a) const;
  std::string flow(double flow_m3_s) const;
  std::string time(double time_s) const;
  std::string length(double length_m) const;
  std::string volume(double volume_m3) const;
};

/// A figure over the draws.
struct Extent {
  double low = 0;
  double middle = 0;  // of the middle draw
  double high = 0;
};

template <class F>
Extent extent(std::vector<Plant> const& plants, F&& f) {
  Extent e;
  for (std::size_t i = 0; i < plants.size(); ++i) {
    double const value = f(plants[i]);
    if (i == 0) {
      e = {value, value, value};
    }
    e.low = value < e.low ? value : e.low;
    e.high = value > e.high ? value : e.high;
  }
  return e;
}

/// Values as a person enters them: to whole steps.
double rounded_up(double value, double step);
double rounded_down(double value, double step);
double rounded(double value, double step);
/// The time to fill the line is set to so many times what the slowest fill takes.
inline constexpr double fill_reserve = 1.5;
/// The step of a pressure setting: 1 psi or 0.1 bar.
double pressure_step_pa(UnitSystem units);

/// What the tee's pressure truly is when the drive is shown one, and what is shown for a true one; noise left out.
double true_pressure_pa(Plant const& plant, Settings const& settings, double shown_pa);
double shown_pressure_pa(Plant const& plant, Settings const& settings, double true_pa);

/// Level after drawing a flow for a time from rest, from casing and formation. It ends where the pump would begin to
/// draw air. @return [m]
double drawn_level_depth_m(Plant const& plant, double flow_m3_s, double time_s);
/// The deepest level at which the pump takes no air.
double deepest_wet_level_m(Plant const& plant);

/// The peak draw, as far as the pump is built for it: more cannot be held at the target and need not be.
double served_peak_m3_s(Plant const& plant);
/// Speed that the served peak asks for at the target with the water at rest; beyond any drive if it cannot be had.
double peak_speed_hz(Plant const& plant, Settings const& settings);
/// What leaks away at a tee pressure [m³/s].
double leak_flow_m3_s(Plant const& plant, double tee_pressure_pa);
/// Pressure that a tee pressure leaves at the highest outlet at a flow [Pa].
double outlet_pressure_pa(Plant const& plant, double tee_pressure_pa, double flow_m3_s);
/// Water between two tee pressures [m³].
double tank_gives_m3(Plant const& plant, double from_pa, double to_pa);

/// The weakest part that the tee's pressure reaches, and the weakest pipe before a valve that may be shut ahead of the
/// tee, where no relief valve at the tee helps, told as the pressure at the pump that brings it there.
struct Rating {
  double pressure_pa = 0;
  std::string_view part;
};
Rating weakest_at_tee(Plant const& plant);
Rating weakest_before_tee(Plant const& plant);

/// How long the well is drawn at the peak when levels "drawn down" are asked for (common practice, no source).
inline constexpr double peak_time_s = 600;

// The subjects, in the order in which they need each other.
void derive_sensor(Study& study);
void derive_target(Study& study);
void derive_limits(Study& study);  // current limit, ceiling, floor
void check_target(Study& study);   // can the pump give it at the ceiling
void derive_ramps(Study& study);
void derive_regulator(Study& study);
void derive_sleep(Study& study);   // wake drop, speed, hold, band, ramp: one derivation
void derive_guards(Study& study);  // dry run and closed discharge
void derive_rest(Study& study);
void derive_fill_and_time(Study& study);
void derive_stop_above(Study& study);
void derive_choices(Study& study);
void note_what_does_not_apply(Study& study);
void add_cautions(Study& study);

}  // namespace wellproof
