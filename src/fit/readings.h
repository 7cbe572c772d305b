#pragma once
// What was read on site, to be held against the model: gauge and drive, hertz, amps, volts, bucket and watch, tape;
// each under a condition that one person at the well head can bring about.
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "contract/finding.h"
#include "quantity/dimension.h"
#include "site/site.h"

namespace wellproof {

/// What the plant was doing.
enum class Condition {
  rest,    // pump off, water at rest
  asleep,  // pump off, line under pressure, all taps shut
  shut,    // pump turning against a closed line
  least,   // the smallest draw running, for so long
  open,    // taps opened to about the peak, for so long
  flow     // some draw, for so long
};
std::string_view word(Condition condition);
bool is_running(Condition condition);

enum class Instrument {
  gauge,           // at the tank's tee
  drive_pressure,  // what the drive shows of its sensor
  speed,           // the drive's output
  current,         // of one conductor to the motor
  volts,           // at the drive's supply, line to line
  flow,            // bucket and watch, or a meter
  level,           // depth to water from the top of the casing
  gauge_later      // asleep: the gauge again when `after` has passed
};
inline constexpr std::size_t instruments = 8;
std::string_view key(Instrument instrument);
/// As one says it: "the gauge".
std::string_view says(Instrument instrument);
Dimension dimension_of(Instrument instrument);

/// One value with its error, SI.
/// sigma standard deviation; from "47 ± 1 psi", or that of the instrument where nothing is stated
struct ReadValue {
  Instrument instrument = Instrument::gauge;
  double value = 0;
  double sigma = 0;
  bool sigma_stated = false;
  Place place;
};

/// All that was read at one moment.
struct SiteReading {
  Condition condition = Condition::rest;
  double after_s = 0;  // how long it had lasted
  std::string note;
  Place place;
  std::vector<ReadValue> values;

  ReadValue const* read(Instrument instrument) const;
};

struct SiteReadings {
  std::string file;
  std::vector<SiteReading> readings;
};

/// 95 % half width of an instrument at a value where the reading states none (common practice, no source).
double usual_error(Instrument instrument, double value, Site const& site);

/// Reads TOML (`[[reading]]`) or, by the name's end, CSV with the same keys as its head. All that is wrong is found at
/// once: unknown keys and conditions, what cannot be read, what no such site can show.
Result<SiteReadings> read_readings(std::string_view text, std::string const& file, Site const& site);

}  // namespace wellproof
