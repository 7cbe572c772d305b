#include "fit/readings.h"

#include <algorithm>
#include <array>

#include "quantity/customary.h"

namespace wellproof {
namespace {

struct InstrumentWords {
  std::string_view key;
  std::string_view says;
  Dimension dimension;
};

constexpr std::array<InstrumentWords, instruments> words{{
    {"gauge", "the gauge", Dimension::pressure},
    {"drive_pressure", "the drive's pressure", Dimension::pressure},
    {"speed", "the speed", Dimension::frequency},
    {"current", "the current", Dimension::current},
    {"volts", "the supply's volts", Dimension::voltage},
    {"flow", "the flow", Dimension::flow},
    {"level", "the water level", Dimension::length},
    {"gauge_later", "the gauge after the wait", Dimension::pressure},
}};

InstrumentWords const& words_of(Instrument instrument) {
  return words[static_cast<std::size_t>(instrument)];
}

}  // namespace

std::string_view word(Condition condition) {
  static constexpr std::array<std::string_view, 6> names{"rest", "asleep", "shut", "least", "open", "flow"};
  return names[static_cast<std::size_t>(condition)];
}

bool is_running(Condition condition) {
  return condition != Condition::rest && condition != Condition::asleep;
}

std::string_view key(Instrument instrument) {
  return words_of(instrument).key;
}

std::string_view says(Instrument instrument) {
  return words_of(instrument).says;
}

Dimension dimension_of(Instrument instrument) {
  return words_of(instrument).dimension;
}

ReadValue const* SiteReading::read(Instrument instrument) const {
  auto const found = std::find_if(values.begin(), values.end(),
                                  [&](ReadValue const& value) { return value.instrument == instrument; });
  return found == values.end() ? nullptr : &*found;
}

double usual_error(Instrument instrument, double value, Site const& site) {
  switch (instrument) {
    case Instrument::gauge:
    case Instrument::gauge_later:
      // A dial: 2 % of its span, which is about the sensor's, but no better than a psi.
      return std::max(psi_pa, 0.02 * middle(site.sensor.full_scale_pa));
    case Instrument::drive_pressure:
      return 0.5 * psi_pa;  // the last digit, and the eye on a figure that moves
    case Instrument::speed:
      return 0.1;
    case Instrument::current:
      return 0.02 * value + 0.1;  // clamp meter
    case Instrument::volts:
      return 0.01 * value;
    case Instrument::flow:
      return 0.05 * value;  // bucket and watch
    case Instrument::level:
      return 0.15;  // tape or sounder, half a foot
  }
  return value;
}

}  // namespace wellproof
