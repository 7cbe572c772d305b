#include "explain/evidence.h"

#include <algorithm>
#include <cmath>

namespace wellproof {
namespace {

constexpr double half_width_sigmas = 1.96;
constexpr double opening_share = 0.08;  // by which speed and current differ, the tap being half open or a bit more
constexpr double watch_s = 600;

ToldShow told(Show show, double value, double more_sigma = 0) {
  return {show, value, std::hypot(usual_error(show, value) / half_width_sigmas, more_sigma)};
}

double by_opening(double value) {
  return opening_share * std::abs(value);
}

void take_display(DisplayReading const& display, std::vector<ToldShow>& shows) {
  bool const turns = display.speed_hz.value_or(0) > 0;
  bool const drawing = display.drawing.value_or(turns);
  if (display.pressure_pa) {
    shows.push_back(told(drawing ? Show::half_drive : Show::asleep_drive, *display.pressure_pa));
  }
  if (display.speed_hz && drawing) {
    shows.push_back(told(Show::half_speed, *display.speed_hz, by_opening(*display.speed_hz)));
  }
  if (display.current_a && drawing) {
    shows.push_back(told(Show::half_current, *display.current_a, by_opening(*display.current_a)));
  }
  if (display.supply_v && drawing) {
    shows.push_back(told(Show::half_volts, *display.supply_v));
  }
  if (display.sink_c && drawing) {
    shows.push_back(told(Show::half_sink, *display.sink_c));
  }
}

void take_reading(SiteReading const& reading, std::vector<ToldShow>& shows) {
  bool const at_rest = reading.condition == Condition::rest;
  bool const off = at_rest || reading.condition == Condition::asleep;
  bool const shut = reading.condition == Condition::shut;
  bool const open = reading.condition == Condition::open;
  for (auto const& value : reading.values) {
    auto const take = [&](Show show, double more_sigma = 0) {
      shows.push_back({show, value.value, std::hypot(value.sigma, more_sigma)});
    };
    switch (value.instrument) {
      case Instrument::level:
        take(off ? Show::rest_level : Show::half_level);
        break;
      case Instrument::volts:
        if (!off) {
          take(Show::half_volts);
        }
        break;
      case Instrument::gauge:
        if (!at_rest && !shut) {
          take(off ? Show::asleep_gauge : open ? Show::full_gauge : Show::half_gauge);
        }
        break;
      case Instrument::drive_pressure:
        if (!at_rest && !shut && !open) {
          take(off ? Show::asleep_drive : Show::half_drive);
        }
        break;
      case Instrument::speed:
        take(shut ? Show::shut_speed : open ? Show::full_speed : Show::half_speed, shut ? 0 : by_opening(value.value));
        break;
      case Instrument::current:
        take(shut   ? Show::shut_current
             : open ? Show::full_current
                    : Show::half_current,
             shut ? 0 : by_opening(value.value));
        break;
      case Instrument::flow:
        if (open) {
          take(Show::full_flow);
        }
        break;
      case Instrument::gauge_later:
        if (auto const* const before = reading.read(Instrument::gauge); before != nullptr && reading.after_s > 0) {
          double const scale = watch_s / reading.after_s;
          shows.push_back({Show::fall_all_shut, std::max(0.0, before->value - value.value) * scale,
                           std::hypot(before->sigma, value.sigma) * scale});
        }
        break;
    }
  }
}

}  // namespace

std::vector<ToldShow> shows_of(History const& history) {
  std::vector<ToldShow> shows;
  for (auto const& display : history.display) {
    take_display(display, shows);
  }
  return shows;
}

std::vector<ToldShow> shows_of(SiteReadings const& readings) {
  std::vector<ToldShow> shows;
  for (auto const& reading : readings.readings) {
    take_reading(reading, shows);
  }
  return shows;
}

Evidence evidence_of(History const& history, SiteReadings const* readings, Settings const& settings) {
  Evidence evidence;
  evidence.has_history = true;
  evidence.pattern = pattern_of(history, retry_gap(settings));
  if (!history.stops.empty()) {
    evidence.since_newest_s = history.stops.back().age_s;
  }
  evidence.symptoms = history.symptoms;
  evidence.shows = shows_of(history);
  if (readings != nullptr) {
    auto const more = shows_of(*readings);
    evidence.shows.insert(evidence.shows.end(), more.begin(), more.end());
  }
  return evidence;
}

}  // namespace wellproof
