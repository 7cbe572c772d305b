// When the pump may rest. Wake drop, sleep speed, hold, band and ramp are one derivation: without a leak nearly any
// sleep speed sleeps, since after the last tap has closed the pressure stands above the target and the speed falls to
// its floor. With a leak the pressure comes back to the target and the regulator settles just above the zero-flow
// speed: the sleep speed must not lie below that, and on the slow way down to sleep the tank alone has to feed the leak
// without losing more than the band. A real draw must lose it.
#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "regulator/sleep.h"
#include "settings/study.h"

namespace wellproof {
namespace {

constexpr double outlet_share_asleep = 0.9;   // of what is wanted at the highest outlet, while the pump sleeps …
constexpr double outlet_share_waking = 0.85;  // the same while the served peak flows
constexpr double least_off_time_s = 80;       // … and so long a pump should stay off under the leak (common practice)
constexpr double least_wake_drop_share = 0.06;  // of the target
constexpr double band_share_of_drop = 0.3;
constexpr double wake_over_precharge_share = 0.02;  // of the target, that the wake pressure stays above the precharge
constexpr double longest_ease_s = 56;     // the ramp to sleep has to leave room in the two minutes of a quiet house
constexpr double reserve = 1.3;           // on what the leak takes and on what a draw has to take
constexpr double shortest_spell_s = 120;  // from start to start, 30 an hour (common practice, no source)
constexpr double speed_step_hz = 0.1;
constexpr double ramp_step_hz_s = 0.05;
constexpr double least_speed_room_hz = 0.2;  // over the settled speed, besides what noise makes of it
constexpr double shortest_hold_s = 6;
constexpr double longest_hold_s = 50;
constexpr double share_passed = 0.7;  // of what a regulator without reset would pass the target by on waking

double target_pa(Plant const& plant, Settings const& settings) {
  return true_pressure_pa(plant, settings, settings.pressure_target_pa);
}

/// Speed at which the leak is held while the water still stands deep from a peak: a house has to come to rest then too.
double late_leak_speed_hz(Plant const& plant, Settings const& settings) {
  double const tee_pa = target_pa(plant, settings);
  double const level_m = drawn_level_depth_m(plant, served_peak_m3_s(plant), peak_time_s);
  return point_for_flow(plant, leak_flow_m3_s(plant, tee_pa), tee_pa, level_m).speed_hz;
}

/// Speed at which a flow is held at the target with the water at rest.
double held_speed_hz(Plant const& plant, Settings const& settings, double flow_m3_s) {
  return point_for_flow(plant, flow_m3_s, target_pa(plant, settings), plant.well.static_level_depth_m).speed_hz;
}

double leak_speed_hz(Plant const& plant, Settings const& settings) {
  return held_speed_hz(plant, settings, leak_flow_m3_s(plant, target_pa(plant, settings)));
}

double least_draw_speed_hz(Plant const& plant, Settings const& settings) {
  return held_speed_hz(plant, settings, plant.site.demand.least_draw_m3_s);
}

/// Where the ramp to sleep ends and the pump goes off.
double off_speed_hz(Study const& study) {
  return std::min(study.logic.start_speed_hz, study.settings.speed_floor_hz);
}

/// ∫ (drawn − pumped) over speed, from a speed down to where the pump goes off, at the target [m³/s·Hz]. Over a ramp it
/// is what the tank has to give, times the ramp.
double short_of_draw_m3_hz_s(Study const& study, Plant const& plant, double from_hz, double drawn_m3_s) {
  double const tee_pa = target_pa(plant, study.settings);
  double const off_hz = off_speed_hz(study);
  double const idle_hz = zero_flow_speed_hz(plant, tee_pa, plant.well.static_level_depth_m);
  double sum = drawn_m3_s * std::max(std::min(idle_hz, from_hz) - off_hz, 0.0);
  constexpr int steps = 6;
  if (from_hz > idle_hz) {
    double const step_hz = (from_hz - idle_hz) / steps;
    for (int i = 0; i < steps; ++i) {
      double const speed_hz = idle_hz + (i + 0.5) * step_hz;
      double const pumped_m3_s = point_at_speed(plant, speed_hz, tee_pa, plant.well.static_level_depth_m).flow_m3_s;
      sum += (drawn_m3_s - pumped_m3_s) * step_hz;
    }
  }
  return sum;
}

/// What noise makes of the filtered speed by which the drive decides whether it is slow.
double slow_jitter_hz(Plant const& plant, Settings const& settings) {
  auto const& sensor = plant.site.sensor;
  double const left_share = noise_left_share(settled_filter_s, 1 / plant.site.drive.sample_rate_hz);
  return settings.regulator_gain_hz_pa * (3 * left_share * sensor.noise_pa + sensor.resolution_pa);
}

double seen_noise_pa(Plant const& plant) {
  return 3 * plant.site.sensor.noise_pa + plant.site.sensor.resolution_pa;
}

void derive_wake_drop(Study& study) {
  auto& settings = study.settings;
  double const step_pa = pressure_step_pa(study.units);
  // What the highest outlet can spare while next to nothing flows.
  auto const allowed = extent(study.plants, [&](Plant const& plant) {
    double const outlet_pa = outlet_pressure_pa(plant, target_pa(plant, settings), plant.site.demand.least_draw_m3_s);
    return outlet_pa - outlet_share_asleep * plant.site.demand.outlet_pressure_pa;
  });
  // What it can spare while the most flows that is held at the target: so it is when a pump wakes late in the morning.
  auto const allowed_at_peak = extent(study.plants, [&](Plant const& plant) {
    double const outlet_pa = outlet_pressure_pa(plant, target_pa(plant, settings), served_peak_m3_s(plant));
    return outlet_pa - outlet_share_waking * plant.site.demand.outlet_pressure_pa;
  });
  auto const over_precharge = extent(study.plants, [&](Plant const& plant) {
    return target_pa(plant, settings) - plant.site.tank.precharge_pa -
           wake_over_precharge_share * settings.pressure_target_pa;
  });
  auto const needed = extent(study.plants, [&](Plant const& plant) {
    double const tee_pa = target_pa(plant, settings);
    double const drawn_m3_s = std::max(leak_flow_m3_s(plant, tee_pa), plant.site.demand.least_draw_m3_s);
    double const asked_m3 = least_off_time_s * drawn_m3_s;
    double drop_pa = 0;
    double high_pa = tee_pa;
    for (int round = 0; round < 40; ++round) {
      double const middle_pa = 0.5 * (drop_pa + high_pa);
      (tank_gives_m3(plant, tee_pa, tee_pa - middle_pa) < asked_m3 ? drop_pa : high_pa) = middle_pa;
    }
    return drop_pa;
  });
  double const least_pa = rounded_up(least_wake_drop_share * settings.pressure_target_pa, step_pa);
  double const most_pa = std::min({allowed.low, allowed_at_peak.low, over_precharge.low});
  double const drop_pa = std::max(least_pa, std::min(rounded_up(needed.high, step_pa), rounded_down(most_pa, step_pa)));
  settings.pressure_wake_drop_pa = std::min(drop_pa, 0.5 * settings.pressure_target_pa);
  auto const off = extent(study.plants, [&](Plant const& plant) {
    double const tee_pa = target_pa(plant, settings);
    return tank_gives_m3(plant, tee_pa, tee_pa - settings.pressure_wake_drop_pa) /
           std::max(plant.site.demand.least_draw_m3_s, 1e-9);
  });
  auto const water = extent(study.plants, [&](Plant const& plant) {
    double const tee_pa = target_pa(plant, settings);
    return tank_gives_m3(plant, tee_pa, tee_pa - settings.pressure_wake_drop_pa);
  });
  study.because(
      "pressure.wake_drop",
      fmt::format(
          "The tank gives {} to {} over this drop, {} to {} of the least draw; to feed it for {} takes "
          "{} at the most. The highest outlet can spare {} while little flows and {} under the served "
          "peak ({:.0f} and {:.0f} % of what is wanted there, common practice); the precharge is {} below the target.",
          study.volume(water.low), study.volume(water.high), study.time(off.low), study.time(off.high),
          study.time(least_off_time_s), study.pressure(needed.high), study.pressure(allowed.low),
          study.pressure(allowed_at_peak.low), 100 * outlet_share_asleep, 100 * outlet_share_waking,
          study.pressure(over_precharge.low + wake_over_precharge_share * settings.pressure_target_pa)));
  if (over_precharge.low < settings.pressure_wake_drop_pa) {
    study.conflict(
        "pressure.wake_drop",
        fmt::format("The tank's precharge may lie above the wake pressure of {}: it is then empty before the "
                    "pump starts.",
                    study.pressure(settings.pressure_target_pa - settings.pressure_wake_drop_pa)),
        fmt::format("Set the precharge to {} with the line open.",
                    study.pressure(
                        rounded_down(0.9 * (settings.pressure_target_pa - settings.pressure_wake_drop_pa), step_pa))));
  }
}

void derive_band(Study& study) {
  auto& settings = study.settings;
  auto const noise = extent(study.plants, seen_noise_pa);
  double const by_drop_pa = band_share_of_drop * settings.pressure_wake_drop_pa;
  double const step_pa = 0.1 * pressure_step_pa(study.units);
  settings.sleep_band_pa = rounded_up(std::max(by_drop_pa, 2 * noise.high), step_pa);
  study.because("sleep.band",
                fmt::format("{:.0f} % of the wake drop, and above what noise and resolution of the sensor can "
                            "feign, {}. It counts on the low side only: after a tap closes the pressure stays "
                            "above the target.",
                            100 * band_share_of_drop, study.pressure(noise.high)));
  if (settings.sleep_band_pa >= settings.pressure_wake_drop_pa) {
    study.conflict("sleep.band", "The sensor's noise is as large as the wake drop.", "A quieter sensor.");
  }
}

}  // namespace

void derive_sleep(Study& study) {
  if (!study.logic.two_contact_switch) {
    derive_wake_drop(study);  // a switch's stands already
  }
  derive_band(study);
  auto& settings = study.settings;
  double const off_hz = off_speed_hz(study);

  auto const idle = extent(study.plants, [&](Plant const& plant) {
    return zero_flow_speed_hz(plant, target_pa(plant, settings), plant.well.static_level_depth_m);
  });
  auto const settled = extent(study.plants, [&](Plant const& plant) { return leak_speed_hz(plant, settings); });
  auto const late = extent(study.plants, [&](Plant const& plant) { return late_leak_speed_hz(plant, settings); });
  auto const drawing = extent(study.plants, [&](Plant const& plant) { return least_draw_speed_hz(plant, settings); });
  auto const jitter = extent(study.plants, [&](Plant const& plant) { return slow_jitter_hz(plant, settings); });
  double const room_hz = least_speed_room_hz + jitter.high;
  double const lowest_hz = std::max(late.high + room_hz, settings.speed_floor_hz + room_hz);
  settings.sleep_speed_below_hz = std::min(rounded_up(lowest_hz, speed_step_hz), settings.speed_ceiling_hz);
  auto const served = std::count_if(study.plants.begin(), study.plants.end(), [&](Plant const& plant) {
    return least_draw_speed_hz(plant, settings) > settings.sleep_speed_below_hz;
  });
  auto const leak =
      extent(study.plants, [&](Plant const& plant) { return leak_flow_m3_s(plant, target_pa(plant, settings)); });
  bool const nudges = study.logic.sleep_test == SleepTest::nudge;
  if (nudges) {
    settings.sleep_speed_below_hz = settings.speed_floor_hz;
  }
  study.because(
      "sleep.speed_below",
      fmt::format("The pump holds the target without flow at {} to {} over the draws; fed a leak of up to {} it "
                  "settles at {} to {}. Soon after a peak the water stands deeper and that is up to "
                  "{}; the sleep speed lies {} above it. The least draw of "
                  "{} is held at {} to {}, above the sleep speed in {} of {} draws; in the others the ramp to "
                  "sleep tells it from a leak.",
                  study.speed(idle.low), study.speed(idle.high), study.flow(leak.high), study.speed(settled.low),
                  study.speed(settled.high), study.speed(late.high), study.speed(room_hz),
                  study.flow(study.plants.front().site.demand.least_draw_m3_s), study.speed(drawing.low),
                  study.speed(drawing.high), served, study.plants.size()));
  if (late.high + room_hz > settings.speed_ceiling_hz) {
    study.conflict("sleep.speed_below", "The pump cannot hold the target against the leak at its ceiling in all draws.",
                   "See pressure.target.");
  }

  // Hold: on waking the regulator starts at the sleep speed, which in the other draws lies above what is needed, and
  // the pressure passes the target until it has wound down. A draw must have brought it back before the ramp begins, or
  // the spare pressure is taken for a quiet house. Most of what a regulator without reset would pass it by is reckoned.
  auto const passes = extent(study.plants, [&](Plant const& plant) {
    double const tee_pa = target_pa(plant, settings);
    double const spare_hz = std::max(settings.sleep_speed_below_hz - least_draw_speed_hz(plant, settings), 0.0);
    double const over_pa = share_passed * spare_hz / settings.regulator_gain_hz_pa;
    return tank_gives_m3(plant, tee_pa + over_pa, tee_pa) / std::max(plant.site.demand.least_draw_m3_s, 1e-9);
  });
  auto const tank_feeds = extent(study.plants, [&](Plant const& plant) {
    double const tee_pa = target_pa(plant, settings);
    return tank_gives_m3(plant, tee_pa, tee_pa - settings.pressure_wake_drop_pa) /
           std::max(plant.site.demand.least_draw_m3_s, 1e-9);
  });
  double const wanted_s =
      std::max({passes.high, 2 * settings.regulator_reset_time_s, shortest_spell_s - tank_feeds.low});
  settings.sleep_hold_s = std::clamp(rounded_up(wanted_s, 1), shortest_hold_s, longest_hold_s);
  study.because(
      "sleep.hold",
      fmt::format("After waking the pressure may pass the target, which the least draw takes back in up to {}; "
                  "twice the regulator's reset time is {}; from start to start {} should pass, of which the tank feeds "
                  "the least draw for {}. The longest of these, within {} and {}, so that a quiet house comes to rest "
                  "within two minutes (common practice).",
                  study.time(passes.high), study.time(2 * settings.regulator_reset_time_s),
                  study.time(shortest_spell_s), study.time(tank_feeds.low), study.time(shortest_hold_s),
                  study.time(longest_hold_s)));

  if (nudges) {
    study.because("sleep.hold",
                  fmt::format("This drive nudges whenever that time has passed with the pressure held: while somebody "
                              "draws the pressure dips by {} each time.",
                              study.pressure(settings.sleep_band_pa)));
  }

  // The ramp: at least so quick that the tank can feed the leak, at most so quick that the least draw shows.
  auto const band_water_m3 = [&](Plant const& plant, double sign) {
    double const tee_pa = target_pa(plant, settings);
    double const seen_pa = settings.sleep_band_pa + sign * seen_noise_pa(plant);
    return std::max(tank_gives_m3(plant, tee_pa, tee_pa - seen_pa), 1e-9);
  };
  auto const leak_asks = extent(study.plants, [&](Plant const& plant) {
    double const idle_hz = zero_flow_speed_hz(plant, target_pa(plant, settings), plant.well.static_level_depth_m);
    double const falls_hz = std::max(idle_hz - off_hz, 0.0);
    return reserve * leak_flow_m3_s(plant, target_pa(plant, settings)) * falls_hz / band_water_m3(plant, -1);
  });
  auto const draw_allows = extent(study.plants, [&](Plant const& plant) {
    double const drawing_hz = least_draw_speed_hz(plant, settings);
    if (!nudges && drawing_hz > settings.sleep_speed_below_hz) {
      return std::numeric_limits<double>::max();  // it never comes to the ramp
    }
    double const short_m3_hz_s = short_of_draw_m3_hz_s(study, plant, drawing_hz, plant.site.demand.least_draw_m3_s);
    // The filtered error shows the band lost by a time constant late, while the tank goes on feeding the draw.
    double const lag_m3 = easing_filter_s * plant.site.demand.least_draw_m3_s;
    return std::max(short_m3_hz_s, 0.0) / (reserve * (band_water_m3(plant, 1) + lag_m3));
  });
  double const by_time_hz_s = (late.high - off_hz) / longest_ease_s;
  double const least_hz_s = std::max({leak_asks.high, by_time_hz_s, ramp_step_hz_s});
  double const most_hz_s = std::min(draw_allows.low, settings.speed_ramp_down_hz_s);
  bool const window = least_hz_s <= most_hz_s;
  double const chosen_hz_s =
      window ? std::sqrt(least_hz_s * most_hz_s) : std::min(least_hz_s, settings.speed_ramp_down_hz_s);
  settings.sleep_ramp_hz_s = std::max(rounded(chosen_hz_s, ramp_step_hz_s), ramp_step_hz_s);
  auto const ramp_text = [&](double ramp) {
    return write_quantity(ramp < 100 ? rounded(ramp, 0.01) : 100, Dimension::ramp, study.units);
  };
  study.because(
      "sleep.ramp",
      fmt::format("From the zero-flow speed down to {} the tank alone feeds the leak: within the band it can as "
                  "long as the ramp is {} or quicker, in every draw. To be told from a leak the least draw must "
                  "lose the band before the pump is off: {} or slower.",
                  study.speed(off_hz), ramp_text(least_hz_s), ramp_text(most_hz_s)));
  // Where the ramp cannot tell them apart a small draw is fed in spells, which is well as long as they are long.
  auto const spell = extent(study.plants, [&](Plant const& plant) {
    double const tee_pa = target_pa(plant, settings);
    double const water_m3 = tank_gives_m3(plant, tee_pa, tee_pa - settings.pressure_wake_drop_pa);
    double const off_s = water_m3 / std::max(plant.site.demand.least_draw_m3_s, 1e-9);
    double const eases_s = std::max(least_draw_speed_hz(plant, settings) - off_hz, 0.0) / settings.sleep_ramp_hz_s;
    return off_s + settings.sleep_hold_s + eases_s;
  });
  if (!window && spell.low >= shortest_spell_s) {
    study.because(
        "sleep.ramp",
        fmt::format("No ramp does both in every draw; asleep under the least draw the tank feeds it in spells of {} "
                    "or longer, which a motor bears.",
                    study.time(spell.low)));
  } else if (!window) {
    study.conflict(
        "sleep.ramp",
        fmt::format(
            "No ramp sleeps under the leak ({} or quicker) and keeps the least draw awake ({} or slower) in every "
            "draw; with this one the pump sleeps, and a small draw may be fed in spells from the tank of as little as "
            "{}.",
            ramp_text(least_hz_s), ramp_text(most_hz_s), study.time(spell.low)),
        "Mending the leak, a larger tank, or measuring on site at which speed the flow ends (taps shut, the speed at "
        "which "
        "the pressure just holds): that narrows the sleep speed.");
  }
}

}  // namespace wellproof
