#pragma once
// The hazards by kind. Times in a script are those of a plain day; a size that a script chooses (how worn, how leaky)
// is common practice, no source, unless it says otherwise; what a limit rests on stands in trial.cc.
#include "proof/hazard.h"
#include "proof/trial.h"
#include "quantity/customary.h"

namespace wellproof {

// Asleep within two minutes of the last tap; on and off for at least a minute each (common practice, no source).
inline constexpr double asleep_limit_s = 120;
inline constexpr double starts_per_hour = 30;

// Share of the wanted pressure below which a person notices, and the seconds that waking may take.
inline constexpr double felt_share = 0.8;
inline constexpr double waking_s = 12;

// Discharge coefficient of a hole with sharp edges (plant/outlet.h).
inline constexpr double hole_discharge = 0.61;

Trial ordinary_morning(Plant const& plant, Settings const& settings);
Trial peak_at_low_water(Plant const& plant, Settings const& settings);
Trial least_draw(Plant const& plant, Settings const& settings);
Trial quiet_house(Plant const& plant, Settings const& settings);
Trial quiet_house_with_leak(Plant const& plant, Settings const& settings);
Trial long_irrigation(Plant const& plant, Settings const& settings);
Trial overdrawn_well(Plant const& plant, Settings const& settings);
Trial water_lost(Plant const& plant, Settings const& settings);
Trial shut_while_running(Plant const& plant, Settings const& settings);
Trial shut_before_sensor(Plant const& plant, Settings const& settings);
Trial burst_line(Plant const& plant, Settings const& settings);
Trial first_start(Plant const& plant, Settings const& settings);
Trial supply_sag(Plant const& plant, Settings const& settings);
Trial sensor_failed_low(Plant const& plant, Settings const& settings);
Trial sensor_failed_high(Plant const& plant, Settings const& settings);
Trial two_showers_and_zone(Plant const& plant, Settings const& settings);
Trial household_fortnight(Plant const& plant, Settings const& settings);
Trial summer_fall(Plant const& plant, Settings const& settings);
Trial clogged_intake(Plant const& plant, Settings const& settings);
Trial valve_partly_closed(Plant const& plant, Settings const& settings);
Trial burst_far(Plant const& plant, Settings const& settings);
Trial burst_at_well(Plant const& plant, Settings const& settings);
Trial power_back_on_drained_line(Plant const& plant, Settings const& settings);
Trial worn_pump(Plant const& plant, Settings const& settings);
Trial check_valve_leaks(Plant const& plant, Settings const& settings);
Trial tank_lost_charge(Plant const& plant, Settings const& settings);
Trial drop_pipe_holed(Plant const& plant, Settings const& settings);
Trial uneven_volts(Plant const& plant, Settings const& settings);
Trial hot_day_at_drive(Plant const& plant, Settings const& settings);
Trial generator_feeds(Plant const& plant, Settings const& settings);
Trial sensor_drifts(Plant const& plant, Settings const& settings);
Trial sensor_port_plugged(Plant const& plant, Settings const& settings);
Trial sensor_noisy(Plant const& plant, Settings const& settings);
Trial contact_opens(Plant const& plant, Settings const& settings);

}  // namespace wellproof
