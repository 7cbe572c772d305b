#include "proof/measuring.h"

#include <algorithm>
#include <array>
#include <string>

namespace wellproof {
namespace {

constexpr std::array table{
    Measuring{"well.static_level", "Sound the well with a level tape after a night without pumping", 20, 0.03},
    Measuring{"well.season_drop",
              "Sound the well again at the end of the dry season, or ask neighbours and the state's "
              "nearest observation well",
              30, 0.3},
    Measuring{"well.depth", "Read the driller's log, or lower a weighted tape with the pump out", 30, 0.3},
    Measuring{"well.casing", "Measure across the casing with the cap off", 5, 0.003},
    Measuring{"well.transmissivity", "Pump at one rate for some hours, log the level, and fit it (wellproof welltest)",
              300, 0.2, true},
    Measuring{"well.specific_capacity", "Pump at one rate for an hour and sound the level before and at the end", 90,
              0.1, true},
    Measuring{"well.test_flow", "Time a bucket or read a meter while the well is pumped", 15, 0.03, true},
    Measuring{"well.test_level", "Sound the level at the end of an hour's pumping at one rate", 75, 0.05},
    Measuring{"well.yield", "Draw the level down to the pump, throttle until it stands, and time a bucket", 180, 0.1,
              true},
    Measuring{"well.water_temperature", "Hold a thermometer under a tap that has run for ten minutes", 15, 0.5},
    Measuring{"pump.rated_flow", "Read the pump's plate or invoice", 10, 0.02, true},
    Measuring{"pump.rated_head", "Read the pump's curve, or at full speed against a shut valve the pressure and level",
              20, 0.02, true},
    Measuring{"pump.rated_power", "Read the pump's plate or curve", 10, 0.03, true},
    Measuring{"pump.setting", "Count the pipe at the pump's last pull, or read the log", 15, 0.5},
    Measuring{"pump.flow_factor", "At full speed with a tap wide open time a bucket and read pressure and level", 30,
              0.02},
    Measuring{"pump.head_factor", "At full speed against a shut valve, for some seconds, read pressure and level", 20,
              0.01},
    Measuring{"pump.power_factor", "At full speed with a tap wide open read the motor's power at the drive", 15, 0.03},
    Measuring{"pump.wear", "At full speed compare flow and pressure with the curve at two openings", 40, 0.02},
    Measuring{"motor.power", "Read the plate on the motor's lead or the control box", 5, 0.02, true},
    Measuring{"motor.service_factor_current", "Read the motor's plate", 5, 0.01, true},
    Measuring{"motor.full_load_current", "Read the motor's plate", 5, 0.01, true},
    Measuring{"motor.no_load_current", "Read the current at full speed against a shut valve, for some seconds", 15,
              0.05, true},
    Measuring{"motor.efficiency", "Ask for the motor's data sheet", 15, 0.01},
    Measuring{"motor.power_factor", "Ask for the motor's data sheet, or read it at the drive's input", 15, 0.01},
    Measuring{"motor.speed", "Read the motor's plate", 5, 0.01, true},
    Measuring{"cable.length", "Measure the run and add the setting of the pump", 15, 1},
    Measuring{"supply.voltage", "Read the volts at the drive with the pump running, morning and evening", 10, 1},
    Measuring{"pipe.*.inside_diameter", "Read the print on the pipe and look its size up", 10, 0.01, true},
    Measuring{"pipe.*.length", "Measure the run with a wheel or a tape", 15, 0.02, true},
    Measuring{"pipe.*.rise", "Level it with a water hose or a phone's level along the run", 20, 0.1},
    Measuring{"pipe.*.minor_loss", "Count the fittings", 15, 0.2, true},
    Measuring{"pipe.*.roughness", "Read pressure at both ends of the run at a known flow", 40, 0.3, true},
    Measuring{"pipe.*.rating", "Read the print on the pipe", 10, 0.01, true},
    Measuring{"tank.volume", "Read the tank's plate", 5, 0.03, true},
    Measuring{"tank.precharge", "Drain the tank and read its gas valve with a tyre gauge", 20, 7e3},
    Measuring{"tank.rating", "Read the tank's plate", 5, 0.01, true},
    Measuring{"tank.elevation", "Level from the casing to the tank's tee", 15, 0.1},
    Measuring{"sensor.gain_error", "Compare the reading with a good gauge near the target", 15, 0.005},
    Measuring{"sensor.zero_error", "Read the sensor with the line open to the air", 10, 1e3},
    Measuring{"sensor.noise", "Watch the reading with the pump off", 10, 0.2, true},
    Measuring{"sensor.lag", "Read the sensor's data sheet", 10, 0.3, true},
    Measuring{"demand.outlet_rise", "Level from the tank's tee to the highest outlet", 15, 0.15},
    Measuring{"demand.least_draw", "Time a litre at the smallest tap that matters", 10, 0.05, true},
    Measuring{"demand.peak_draw", "Open what is used at once and time a bucket at each, or read a meter", 30, 0.1,
              true},
    Measuring{"demand.leak",
              "With all taps shut and the pump off, time the fall of pressure, and reckon with the tank's volume", 30,
              0.1, true},
    Measuring{"zone.*.flow", "Read a meter, or count the heads and their nozzles", 20, 0.05, true},
    Measuring{"limits.fittings_rating", "Read the marks on fittings and valves from casing to house", 20, 0.01, true},
    Measuring{"limits.relief", "Read the relief valve's tag", 5, 0.03, true},
};

/// The key with its number, if it has one in the middle, as '*'.
std::string pattern(std::string_view key) {
  auto const first = key.find('.');
  auto const last = key.rfind('.');
  if (first == std::string_view::npos || first == last) {
    return std::string(key);
  }
  return std::string(key.substr(0, first + 1)) + "*" + std::string(key.substr(last));
}

}  // namespace

std::optional<Measuring> measuring(std::string_view key) {
  auto const wanted = pattern(key);
  auto const* const found =
      std::find_if(table.begin(), table.end(), [&](Measuring const& each) { return each.key == wanted; });
  return found == table.end() ? std::nullopt : std::optional(*found);
}

}  // namespace wellproof
