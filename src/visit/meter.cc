#include "visit/meter.h"

#include <cmath>

#include "fit/readings.h"
#include "quantity/customary.h"

namespace wellproof {
namespace {

// Common practice, no source.
constexpr double fall_error_pa = 0.5 * psi_pa;  // two looks at one needle
constexpr double power_error_share = 0.1;       // drives reckon it from output volts and amperes
constexpr double watch_error_s = 1;             // two presses of a thumb
constexpr double watch_error_share = 0.02;
constexpr double bucket_time_error_share = 0.05;
constexpr double bucket_volume_error_share = 0.07;

}  // namespace

std::string_view says(Meter meter) {
  switch (meter) {
    case Meter::drive_pressure:
    case Meter::drive_speed:
    case Meter::drive_power:
      return "drive's display";
    case Meter::clamp:
      return "clamp meter, one motor lead";
    case Meter::gauge:
      return "gauge at the tank";
    case Meter::gauge_fall:
      return "gauge at the tank, twice";
    case Meter::voltmeter:
      return "voltmeter, line to line";
    case Meter::sounder:
      return "tape or sounder";
    case Meter::watch:
      return "watch";
    case Meter::bucket_time:
      return "bucket and watch";
    case Meter::bucket_volume:
      return "marked bucket";
  }
  return "";
}

double meter_error(Meter meter, double value, Site const& site) {
  double const size = std::abs(value);
  switch (meter) {
    case Meter::drive_pressure:
      return usual_error(Instrument::drive_pressure, size, site);
    case Meter::drive_speed:
      return usual_error(Instrument::speed, size, site);
    case Meter::drive_power:
      return power_error_share * size;
    case Meter::clamp:
      return usual_error(Instrument::current, size, site);
    case Meter::gauge:
      return usual_error(Instrument::gauge, size, site);
    case Meter::gauge_fall:
      return fall_error_pa;
    case Meter::voltmeter:
      return usual_error(Instrument::volts, size, site);
    case Meter::sounder:
      return usual_error(Instrument::level, size, site);
    case Meter::watch:
      return std::hypot(watch_error_s, watch_error_share * size);
    case Meter::bucket_time:
      return bucket_time_error_share * size;
    case Meter::bucket_volume:
      return bucket_volume_error_share * size;
  }
  return size;
}

}  // namespace wellproof
