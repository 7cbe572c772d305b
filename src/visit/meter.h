#pragma once
// What a person reads with on site, and by how much that errs.
#include <string_view>

#include "site/site.h"

namespace wellproof {

enum class Meter {
  drive_pressure,  // what the drive shows of its sensor
  drive_speed,
  drive_power,    // input power as the drive shows it
  clamp,          // clamp meter on one conductor to the motor
  gauge,          // at the tank's tee
  gauge_fall,     // the same gauge read twice: its own error falls out
  voltmeter,      // line to line
  sounder,        // tape or sounder in the well
  watch,          // by hand
  bucket_time,    // seconds in which a bucket fills
  bucket_volume,  // what was caught in it
};

/// As one says it: "clamp meter on one conductor to the motor".
std::string_view says(Meter meter);

/// 95 % half width of the error of a reading, in its SI unit (common practice, no source). Gauge, clamp meter,
/// voltmeter and sounder are those of the readings that are fitted (fit/readings.h).
/// @param value what is read, SI
/// Checked: tests/unit/visit/meter_test.cc
double meter_error(Meter meter, double value, Site const& site);

}  // namespace wellproof
