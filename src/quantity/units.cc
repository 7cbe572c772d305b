// The table of units. Factors are exact by definition (international foot and pound, US gallon of 231 in³, standard
// gravity, conventional water and mercury), so that each line can be checked against UDUNITS-2.
#include <numbers>

#include "quantity/quantity.h"

namespace wellproof {
namespace {

constexpr double in = 0.0254;
constexpr double ft = 0.3048;
constexpr double gallon = 3.785411784e-3;
constexpr double liter = 1e-3;
constexpr double minute = 60;
constexpr double hour = 3600;
constexpr double day = 86400;
constexpr double psi = 4.4482216152605 / 6.4516e-4;
constexpr double m_water = 9806.65;
constexpr double m_mercury = 133322.387415;
constexpr double horsepower = 550 * 0.3048 * 4.4482216152605;
constexpr double circular_mil = std::numbers::pi / 4 * 2.54e-5 * 2.54e-5;
constexpr double fahrenheit = 5.0 / 9.0;

void add_lengths(std::vector<Unit>& all, Dimension dimension) {
  all.insert(all.end(), {
                            {{"m", "meter", "meters", "metre", "metres"}, dimension, 1, 0},
                            {{"ft", "foot", "feet", "'"}, dimension, ft, 0},
                            {{"in", "inch", "inches", "\""}, dimension, in, 0},
                            {{"yd", "yard", "yards"}, dimension, 0.9144, 0},
                            {{"mi", "mile", "miles"}, dimension, 1609.344, 0},
                            {{"km"}, dimension, 1000, 0},
                            {{"cm"}, dimension, 0.01, 0},
                            {{"mm"}, dimension, 0.001, 0},
                            {{"µm", "um"}, dimension, 1e-6, 0},
                        });
}

std::vector<Unit> make_units() {
  using enum Dimension;
  std::vector<Unit> all = {{{"%", "percent"}, none, 0.01, 0}};
  add_lengths(all, length);
  add_lengths(all, diameter);
  std::vector<Unit> const others = {
      {{"m2", "sq m"}, area, 1, 0},
      {{"cm2", "sq cm"}, area, 1e-4, 0},
      {{"mm2", "sq mm"}, area, 1e-6, 0},
      {{"in2", "sq in"}, area, in * in, 0},
      {{"ft2", "sq ft"}, area, ft * ft, 0},
      {{"cmil"}, area, circular_mil, 0},
      {{"kcmil", "MCM"}, area, 1000 * circular_mil, 0},

      {{"m3", "cu m"}, volume, 1, 0},
      {{"L", "liter", "liters", "litre", "litres"}, volume, liter, 0},
      {{"mL"}, volume, 1e-6, 0},
      {{"gal", "gallon", "gallons", "US gal"}, volume, gallon, 0},
      {{"qt", "quart", "quarts"}, volume, gallon / 4, 0},
      {{"ft3", "cu ft"}, volume, ft * ft * ft, 0},
      {{"in3", "cu in"}, volume, in * in * in, 0},

      {{"s", "sec", "second", "seconds"}, time, 1, 0},
      {{"ms"}, time, 1e-3, 0},
      {{"min", "minute", "minutes"}, time, minute, 0},
      {{"h", "hr", "hour", "hours"}, time, hour, 0},
      {{"d", "day", "days"}, time, day, 0},

      {{"m3/s"}, flow, 1, 0},
      {{"m3/min"}, flow, 1 / minute, 0},
      {{"m3/h", "m3/hr"}, flow, 1 / hour, 0},
      {{"m3/d", "m3/day"}, flow, 1 / day, 0},
      {{"L/s", "L/sec"}, flow, liter, 0},
      {{"L/min"}, flow, liter / minute, 0},
      {{"L/h", "L/hr"}, flow, liter / hour, 0},
      {{"L/d", "L/day"}, flow, liter / day, 0},
      {{"gpm", "gal/min", "US gpm"}, flow, gallon / minute, 0},
      {{"gph", "gal/h", "gal/hr"}, flow, gallon / hour, 0},
      {{"gpd", "gal/d", "gal/day"}, flow, gallon / day, 0},
      {{"ft3/s", "cfs"}, flow, ft * ft * ft, 0},
      {{"ft3/min", "cfm"}, flow, ft * ft * ft / minute, 0},

      {{"m2/s", "m3/s/m", "m3/(s·m)"}, specific_capacity, 1, 0},
      {{"m2/d", "m2/day", "m3/d/m", "m3/(d·m)"}, specific_capacity, 1 / day, 0},
      {{"m2/h", "m3/h/m", "m3/(h·m)"}, specific_capacity, 1 / hour, 0},
      {{"L/s/m", "L/(s·m)"}, specific_capacity, liter, 0},
      {{"L/min/m", "L/(min·m)"}, specific_capacity, liter / minute, 0},
      {{"gpm/ft", "gal/min/ft", "gal/(min·ft)"}, specific_capacity, gallon / minute / ft, 0},
      {{"ft2/d", "ft2/day"}, specific_capacity, ft * ft / day, 0},

      {{"m2/s"}, transmissivity, 1, 0},
      {{"m2/min"}, transmissivity, 1 / minute, 0},
      {{"m2/h", "m2/hr"}, transmissivity, 1 / hour, 0},
      {{"m2/d", "m2/day"}, transmissivity, 1 / day, 0},
      {{"cm2/s"}, transmissivity, 1e-4, 0},
      {{"ft2/s"}, transmissivity, ft * ft, 0},
      {{"ft2/min"}, transmissivity, ft * ft / minute, 0},
      {{"ft2/d", "ft2/day"}, transmissivity, ft * ft / day, 0},
      {{"gpd/ft", "gal/d/ft", "gal/day/ft"}, transmissivity, gallon / day / ft, 0},
      {{"gpm/ft", "gal/min/ft"}, transmissivity, gallon / minute / ft, 0},

      {{"s/m2"}, linear_loss, 1, 0},
      {{"min/m2"}, linear_loss, minute, 0},
      {{"h/m2", "hr/m2"}, linear_loss, hour, 0},
      {{"d/m2", "day/m2"}, linear_loss, day, 0},
      {{"ft/gpm"}, linear_loss, ft / (gallon / minute), 0},

      {{"s2/m5"}, quadratic_loss, 1, 0},
      {{"min2/m5"}, quadratic_loss, minute * minute, 0},
      {{"h2/m5", "hr2/m5"}, quadratic_loss, hour * hour, 0},
      {{"d2/m5", "day2/m5"}, quadratic_loss, day * day, 0},
      {{"ft/gpm2"}, quadratic_loss, ft / (gallon / minute) / (gallon / minute), 0},

      {{"Hz", "hertz"}, frequency, 1, 0},
      {{"kHz"}, frequency, 1000, 0},

      {{"Hz/s", "Hz/sec"}, ramp, 1, 0},
      {{"Hz/min"}, ramp, 1 / minute, 0},

      {{"rad/s"}, rotation, 1, 0},
      {{"rpm", "rev/min", "r/min"}, rotation, 2 * std::numbers::pi / minute, 0},
      {{"rev/s", "r/s"}, rotation, 2 * std::numbers::pi, 0},

      {{"Pa", "pascal"}, pressure, 1, 0},
      {{"kPa"}, pressure, 1000, 0},
      {{"MPa"}, pressure, 1e6, 0},
      {{"bar"}, pressure, 1e5, 0},
      {{"mbar"}, pressure, 100, 0},
      {{"psi", "lbf/in2"}, pressure, psi, 0},
      {{"ftH2O"}, pressure, ft * m_water, 0},
      {{"inH2O"}, pressure, in * m_water, 0},
      {{"mH2O"}, pressure, m_water, 0},
      {{"inHg"}, pressure, in * m_mercury, 0},
      {{"mmHg"}, pressure, 0.001 * m_mercury, 0},
      {{"atm"}, pressure, 101325, 0},

      {{"W", "watt", "watts"}, power, 1, 0},
      {{"kW"}, power, 1000, 0},
      {{"MW"}, power, 1e6, 0},
      {{"hp", "horsepower"}, power, horsepower, 0},

      {{"V", "volt", "volts"}, voltage, 1, 0},
      {{"mV"}, voltage, 1e-3, 0},
      {{"kV"}, voltage, 1000, 0},

      {{"A", "amp", "amps", "ampere", "amperes"}, current, 1, 0},
      {{"mA"}, current, 1e-3, 0},

      {{"ohm", "ohms", "Ω"}, resistance, 1, 0},
      {{"mohm", "mΩ"}, resistance, 1e-3, 0},
      {{"kohm", "kΩ"}, resistance, 1000, 0},
      {{"Mohm", "MΩ"}, resistance, 1e6, 0},

      {{"°C", "C", "Celsius"}, temperature, 1, 0},
      {{"°F", "F", "Fahrenheit"}, temperature, fahrenheit, -32 * fahrenheit},
      {{"K", "kelvin"}, temperature, 1, -273.15},

      {{"Hz/Pa"}, regulator_gain, 1, 0},
      {{"Hz/kPa"}, regulator_gain, 1e-3, 0},
      {{"Hz/bar"}, regulator_gain, 1e-5, 0},
      {{"Hz/psi"}, regulator_gain, 1 / psi, 0},
      {{"Hz/mH2O"}, regulator_gain, 1 / m_water, 0},
      {{"Hz/ftH2O"}, regulator_gain, 1 / (ft * m_water), 0},
  };
  all.insert(all.end(), others.begin(), others.end());
  return all;
}

std::string_view customary_spelling(Dimension dimension, UnitSystem system) {
  bool const us = system == UnitSystem::us;
  switch (dimension) {
    case Dimension::length:
      return us ? "ft" : "m";
    case Dimension::diameter:
      return us ? "in" : "mm";
    case Dimension::area:
      return us ? "in2" : "mm2";
    case Dimension::volume:
      return us ? "gal" : "L";
    case Dimension::flow:
      return us ? "gpm" : "L/min";
    case Dimension::specific_capacity:
      return us ? "gpm/ft" : "L/min/m";
    case Dimension::transmissivity:
      return us ? "ft2/d" : "m2/d";
    case Dimension::linear_loss:
      return us ? "ft/gpm" : "d/m2";
    case Dimension::quadratic_loss:
      return us ? "ft/gpm2" : "d2/m5";
    case Dimension::rotation:
      return "rpm";
    case Dimension::pressure:
      return us ? "psi" : "kPa";
    case Dimension::power:
      return us ? "hp" : "kW";
    case Dimension::temperature:
      return us ? "°F" : "°C";
    case Dimension::regulator_gain:
      return us ? "Hz/psi" : "Hz/kPa";
    case Dimension::none:
    case Dimension::time:
    case Dimension::frequency:
    case Dimension::ramp:
    case Dimension::voltage:
    case Dimension::current:
    case Dimension::resistance:
      break;
  }
  return si_unit(dimension);
}

}  // namespace

std::vector<Unit> const& units() {
  static std::vector<Unit> const all = make_units();
  return all;
}

CustomaryUnit customary_unit(Dimension dimension, UnitSystem system) {
  std::string_view const spelling = customary_spelling(dimension, system);
  for (Unit const& unit : units()) {
    if (unit.dimension == dimension && unit.spellings.front() == spelling) {
      return {spelling, unit.factor, unit.offset};
    }
  }
  return {spelling, 1, 0};  // a plain number
}

}  // namespace wellproof
