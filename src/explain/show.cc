#include "explain/show.h"

#include <algorithm>
#include <cmath>

#include "quantity/customary.h"

namespace wellproof {
namespace {

using D = Dimension;

struct ShowWords {
  std::string_view word;
  std::string_view says;
  Dimension dimension;
};

constexpr std::array<ShowWords, show_count> words{{
    {"asleep_gauge", "the gauge, all taps shut", D::pressure},
    {"asleep_drive", "the drive's pressure, all taps shut", D::pressure},
    {"half_gauge", "the gauge, a tap half open", D::pressure},
    {"half_drive", "the drive's pressure, a tap half open", D::pressure},
    {"half_speed", "the speed, a tap half open", D::frequency},
    {"half_current", "the current, a tap half open", D::current},
    {"half_volts", "the supply's volts under load", D::voltage},
    {"half_sink", "the heat sink, a tap half open", D::temperature},
    {"half_level", "the water level while it runs", D::length},
    {"full_gauge", "the gauge, all taps open", D::pressure},
    {"full_speed", "the speed, all taps open", D::frequency},
    {"full_current", "the current, all taps open", D::current},
    {"full_flow", "the flow, all taps open", D::flow},
    {"fall_all_shut", "the fall of the gauge in ten minutes, all taps shut", D::pressure},
    {"fall_valve_shut", "the same with the valve behind the tank shut", D::pressure},
    {"rest_level", "the water level at rest", D::length},
    {"precharge", "the air in the drained tank", D::pressure},
    {"unbalance", "the unbalance of the three currents", D::none},
    {"shut_speed", "the speed with nothing drawn", D::frequency},
    {"shut_current", "the current with nothing drawn", D::current},
}};

}  // namespace

std::string_view word(Show show) {
  return words[static_cast<std::size_t>(show)].word;
}

std::string_view says(Show show) {
  return words[static_cast<std::size_t>(show)].says;
}

Dimension dimension_of(Show show) {
  return words[static_cast<std::size_t>(show)].dimension;
}

double usual_error(Show show, double value) {
  switch (dimension_of(show)) {
    case D::pressure:
      return show == Show::asleep_drive || show == Show::half_drive ? 0.5 * psi_pa : 2 * psi_pa;
    case D::frequency:
      return 0.2;
    case D::current:
      return 0.02 * std::abs(value) + 0.1;
    case D::voltage:
      return 0.01 * std::abs(value);
    case D::temperature:
      return 3;
    case D::length:
      return 0.3;
    case D::flow:
      return 0.05 * std::abs(value);
    default:
      return 0.01;
  }
}

}  // namespace wellproof
