#include "settings/safe_side.h"

#include <algorithm>

#include "contract/require.h"

namespace wellproof {

// Every line is common practice, no source, but for what its reason names.
std::vector<SafeSide> const& safe_sides() {
  static std::vector<SafeSide> const all{
      {"pressure.target", Side::nearest, "lower, the highest outlet misses it; higher, the ratings come nearer", ""},
      {"pressure.wake_drop", Side::nearest,
       "larger, the outlet and the tank's charge feel it; smaller, it starts oftener", ""},
      {"pressure.stop_above", Side::down, "it keeps the pressure from tank, pipe and fittings",
       "nothing but the relief valve keeps the pressure from tank, pipe and fittings"},
      {"sensor.full_scale", Side::nearest, "it has to be what is printed on the sensor", ""},
      {"sensor.trim", Side::nearest, "either way the pressure held is off by what is missing",
       "the sensor's own error stays in every pressure"},
      {"motor.current_limit", Side::down, "the winding's heat goes with the square of the current",
       "nothing limits what the motor takes but its overload protection"},
      {"speed.floor", Side::up, "below it a thrust bearing loses its film of water", ""},
      {"speed.ceiling", Side::down, "motor, drive and ratings set it", ""},
      {"speed.ramp_up", Side::nearest, "quicker, the column surges; slower, whoever draws waits", ""},
      {"speed.ramp_down", Side::nearest, "quicker, the check valve slams; slower, the pressure overshoots", ""},
      {"regulator.gain", Side::down, "a stronger answer is nearer to swinging", ""},
      {"regulator.reset_time", Side::up, "a quicker integral is nearer to swinging", ""},
      {"sleep.speed_below", Side::up, "below what the leak holds it at, the pump never sleeps",
       "the drive finds by itself when nobody draws"},
      {"sleep.hold", Side::up, "too short, a draw that began just now is taken for none", ""},
      {"sleep.band", Side::up, "a band within the sensor's noise ends every try", ""},
      {"sleep.ramp", Side::nearest, "quicker, a small draw goes unseen; slower, a leak keeps it awake",
       "the pump goes off without a ramp"},
      {"dry_run.amps_below", Side::up, "above it lies a shut line, which has to stop as well",
       "a pump that has lost its water runs on until its bearings fail"},
      {"dry_run.power_below", Side::up, "above it lies a shut line, which has to stop as well",
       "a pump that has lost its water runs on until its bearings fail"},
      {"dry_run.delay", Side::nearest, "longer, the bearing runs dry; shorter, a start or a slug of air stops it",
       "a pump that has lost its water runs on until its bearings fail"},
      {"dry_run.rest", Side::up, "a well that has come back further starts the motor less often",
       "after a stop it stays off until somebody comes"},
      {"closed.amps_below", Side::nearest, "higher, ordinary work stops; lower, a shut line boils the pump",
       "a pump against a shut line heats its water until something gives"},
      {"closed.power_below", Side::nearest, "higher, ordinary work stops; lower, a shut line boils the pump",
       "a pump against a shut line heats its water until something gives"},
      {"closed.delay", Side::nearest, "longer, the water in the pump heats; shorter, a start stops it",
       "a pump against a shut line heats its water until something gives"},
      {"long_run.limit", Side::up, "shorter than the longest legitimate run, it stops somebody's irrigation",
       "a broken pipe runs until somebody sees it"},
      {"fill.time", Side::up, "too short, the line is filled at full speed, and the water hits the far end",
       "an empty line is filled at whatever speed the regulator asks for"},
      {"fill.speed", Side::nearest, "higher, the guards look; lower, the line does not fill",
       "an empty line is filled at whatever speed the regulator asks for"},
      {permissive_key, Side::nearest, "it has to be what is wired", "no float or probe can stop the pump"},
      {fault_contact_key, Side::nearest, "it has to be what is wired", "nobody is told of a stop but at the drive"},
  };
  return all;
}

SafeSide safe_side(std::string_view key, Logic const& logic) {
  auto const& all = safe_sides();
  auto const at = std::find_if(all.begin(), all.end(), [&](SafeSide const& one) { return one.key == key; });
  require(at != all.end(), "each setting has its safe side");
  SafeSide found = *at;
  bool const threshold =
      key.find("amps_below") != std::string_view::npos || key.find("power_below") != std::string_view::npos;
  if (logic.guard_where == GuardWhere::any_speed && threshold) {
    found.side = Side::down;
    found.because = "above it lies ordinary work at low speed, which it would stop every day";
  } else if (logic.guard_where == GuardWhere::any_speed && (key == "dry_run.delay" || key == "closed.delay")) {
    found.side = Side::up;
    found.because = "before it is over a pump that is no longer needed has to be asleep";
  }
  return found;
}

}  // namespace wellproof
