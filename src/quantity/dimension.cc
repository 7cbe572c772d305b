#include "quantity/dimension.h"

namespace wellproof {
namespace {

struct Words {
  std::string_view name;
  std::string_view example;
  std::string_view si_unit;
};

// A switch without default, so that the compiler asks for the words of a dimension added later.
Words words(Dimension dimension) {
  switch (dimension) {
    case Dimension::none:
      return {"a plain number", "0.65", ""};
    case Dimension::length:
      return {"a length", "240 ft", "m"};
    case Dimension::diameter:
      return {"a diameter", "1-1/4 in", "m"};
    case Dimension::area:
      return {"an area", "3.31 mm2", "m2"};
    case Dimension::volume:
      return {"a volume", "20 gal", "m3"};
    case Dimension::time:
      return {"a time", "30 s", "s"};
    case Dimension::flow:
      return {"a flow", "10 gpm", "m3/s"};
    case Dimension::specific_capacity:
      return {"a specific capacity", "0.5 gpm/ft", "m2/s"};
    case Dimension::transmissivity:
      return {"a transmissivity", "430 ft2/d", "m2/s"};
    case Dimension::linear_loss:
      return {"a linear well loss", "0.2 ft/gpm", "s/m2"};
    case Dimension::quadratic_loss:
      return {"a quadratic well loss", "0.01 ft/gpm2", "s2/m5"};
    case Dimension::frequency:
      return {"a frequency", "60 Hz", "Hz"};
    case Dimension::ramp:
      return {"a ramp", "5 Hz/s", "Hz/s"};
    case Dimension::rotation:
      return {"a rotational speed", "3450 rpm", "rad/s"};
    case Dimension::pressure:
      return {"a pressure", "50 psi", "Pa"};
    case Dimension::power:
      return {"a power", "1.5 hp", "W"};
    case Dimension::voltage:
      return {"a voltage", "230 V", "V"};
    case Dimension::current:
      return {"a current", "8 A", "A"};
    case Dimension::resistance:
      return {"a resistance", "1.2 ohm", "ohm"};
    case Dimension::temperature:
      return {"a temperature", "55 °F", "°C"};
    case Dimension::regulator_gain:
      return {"a regulator gain", "0.5 Hz/psi", "Hz/Pa"};
  }
  return {};
}

}  // namespace

std::string_view name(Dimension dimension) {
  return words(dimension).name;
}

std::string_view example(Dimension dimension) {
  return words(dimension).example;
}

std::string_view si_unit(Dimension dimension) {
  return words(dimension).si_unit;
}

}  // namespace wellproof
