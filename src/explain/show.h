#pragma once
// What instruments show on a plant, at the moments that a person on the phone can bring about: all taps shut, a tap
// half open for five minutes, all open for three, ten minutes of watching the gauge.
#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

#include "quantity/dimension.h"

namespace wellproof {

enum class Show {
  asleep_gauge,     // all taps shut, pump off: the gauge at the tank
  asleep_drive,     // what the drive makes of it
  half_gauge,       // a tap half open for five minutes
  half_drive,       //
  half_speed,       //
  half_current,     //
  half_volts,       // at the drive, under load
  half_sink,        //
  half_level,       // depth to water meanwhile
  full_gauge,       // all open for three minutes
  full_speed,       //
  full_current,     //
  full_flow,        // what comes out
  fall_all_shut,    // ten minutes, all taps shut: how far the gauge falls, or how far it fell before the pump woke
  fall_valve_shut,  // the same with the valve behind the tank shut
  rest_level,       // depth to water at rest
  precharge,        // air in the drained tank
  unbalance,        // furthest of the three currents from their mean, as a share
  shut_speed,       // holding the pressure with nothing drawn
  shut_current,     //
};
inline constexpr std::size_t show_count = 20;

std::string_view word(Show show);
/// "the current, a tap half open".
std::string_view says(Show show);
Dimension dimension_of(Show show);
/// 95 % half width of the instrument (common practice, no source).
double usual_error(Show show, double value);

/// What is shown, SI; nothing where it cannot be read (a pressure that no sensor tells).
using Shows = std::array<std::optional<double>, show_count>;

inline std::optional<double>& of(Shows& shows, Show show) {
  return shows[static_cast<std::size_t>(show)];
}
inline std::optional<double> const& of(Shows const& shows, Show show) {
  return shows[static_cast<std::size_t>(show)];
}

}  // namespace wellproof
