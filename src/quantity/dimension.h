#pragma once
// The kinds of quantity that a site, a setting or a reading can have. Inside the program every number is a plain double
// in SI (temperatures in °C); this names what kind it is where text becomes number or number becomes text.
#include <string_view>

namespace wellproof {

enum class Dimension {
  none,               // a ratio or a count
  length,             // m
  diameter,           // m; shown in in or mm, and an AWG size is accepted
  area,               // m²
  volume,             // m³
  time,               // s
  flow,               // m³/s
  specific_capacity,  // m²/s: flow for each length of drawdown
  transmissivity,     // m²/s: conductivity of the formation times its thickness
  linear_loss,        // s/m²: drawdown for each flow, of a well's linear loss
  quadratic_loss,     // s²/m⁵: drawdown for each flow squared, of a well's turbulent loss
  frequency,          // Hz
  ramp,               // Hz/s
  rotation,           // rad/s; shown in rpm
  pressure,           // Pa
  power,              // W
  voltage,            // V
  current,            // A
  resistance,         // Ω
  temperature,        // °C
  regulator_gain,     // Hz/Pa
};

/// All of them, in this order: for the docs and the checks.
inline constexpr Dimension all_dimensions[] = {
    Dimension::none,           Dimension::length,      Dimension::diameter,       Dimension::area,
    Dimension::volume,         Dimension::time,        Dimension::flow,           Dimension::specific_capacity,
    Dimension::transmissivity, Dimension::linear_loss, Dimension::quadratic_loss, Dimension::frequency,
    Dimension::ramp,           Dimension::rotation,    Dimension::pressure,       Dimension::power,
    Dimension::voltage,        Dimension::current,     Dimension::resistance,     Dimension::temperature,
    Dimension::regulator_gain};

/// Which units a number is shown in. What is read may be in any unit of the dimension.
enum class UnitSystem { us, metric };

/// The dimension in words: "a length", "a flow". For findings.
std::string_view name(Dimension dimension);

/// A quantity of the dimension as a person would write it: "240 ft". For findings.
std::string_view example(Dimension dimension);

/// The SI unit of the dimension as text: "m3/s"; "°C" for temperatures, nothing for a plain number.
std::string_view si_unit(Dimension dimension);

}  // namespace wellproof
