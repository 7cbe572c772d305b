#include "explain/check.h"

#include <algorithm>
#include <cmath>

#include "contract/require.h"

namespace wellproof {
namespace {

std::vector<CheckAnswer> const measured{
    {"low", "lower than a sound plant"}, {"usual", "as a sound plant"}, {"high", "higher than a sound plant"}};

Check of_instrument(std::string_view key, std::string_view title, std::string_view how, double minutes, Show show) {
  return {key, title, how, minutes, show, measured, {}};
}

// How often the eye sees without cause, or does not see what is there (common practice, no source).
constexpr double misled = 0.05;
constexpr double half_width_sigmas = 1.96;

double normal_share_below(double value, double middle, double sigma) {
  constexpr double root_two = 1.4142135623730951;
  return 0.5 * std::erfc(-(value - middle) / (sigma * root_two));
}

}  // namespace

std::vector<Check> const& checks() {
  static std::vector<Check> const all{
      of_instrument("read_half", "Open a tap half and read the drive's speed after five minutes",
                    "About half of what the house draws at most.", 6, Show::half_speed),
      of_instrument("read_amps", "Open a tap half and read the current after five minutes",
                    "On the drive's display or with a clamp around one conductor to the motor.", 6, Show::half_current),
      of_instrument("read_shut", "Read the speed while it holds the pressure with nothing drawn",
                    "Shut the valve behind the tank and read before it goes to sleep.", 4, Show::shut_speed),
      of_instrument("amps_shut", "Read the current with the line shut",
                    "Shut the valve behind the tank and read before it goes to sleep.", 4, Show::shut_current),
      of_instrument("watch_gauge", "Watch the gauge for ten minutes with all taps shut",
                    "Cisterns too. How far does it fall?", 12, Show::fall_all_shut),
      of_instrument("watch_gauge_shut", "Watch the gauge for ten minutes with the valve behind the tank shut",
                    "The gauge must sit before that valve. How far does it fall?", 13, Show::fall_valve_shut),
      of_instrument("compare_gauge", "Read a good gauge at the tank with all taps shut",
                    "Against what the drive shows at the same moment.", 3, Show::asleep_gauge),
      of_instrument("volts", "Read the supply's volts at the drive while it runs",
                    "Only who may open the drive; at its terminals, line to line.", 8, Show::half_volts),
      of_instrument("heat_sink", "Read the heat sink's temperature after some running", "On the drive's display.", 8,
                    Show::half_sink),
      of_instrument("level", "Measure the water level at rest",
                    "Sounder or tape, clean, after an hour without drawing.", 20, Show::rest_level),
      of_instrument("level_running", "Measure the water level while it runs",
                    "After five minutes with a tap half open.", 25, Show::half_level),
      of_instrument("bucket", "Open all taps and measure what comes", "Bucket and watch, after three minutes.", 10,
                    Show::full_flow),
      of_instrument("tank_air", "Measure the air in the drained tank",
                    "Power off, drain it with a tap open, then a tyre gauge on its valve.", 20, Show::precharge),
      of_instrument("three_currents", "Measure the currents of all three conductors",
                    "Only who may open the drive; the furthest from their mean, as a share.", 12, Show::unbalance),
      {"settings",
       "Compare the drive's settings with those of the plan",
       "wellproof plan prints them; which one is far off?",
       8,
       std::nullopt,
       {{"none", "none is far off"},
        {"current_limit", "the current limit is far off"},
        {"sleep", "the sleep speed is far off"},
        {"thresholds", "thresholds or ceiling are far off"},
        {"rest", "the rest is far off"},
        {"regulator", "gain or reset time is far off"}},
       {{"current_limit_wrong", 1, 0.93},
        {"sleep_speed_low", 2, 0.9},
        {"thresholds_wrong", 3, 0.9},
        {"rest_short", 4, 0.9},
        {"regulator_hot", 5, 0.9}}},
      {"walk",
       "Walk the line from well to house and look",
       "Every valve, and the ground above the pipe.",
       12,
       std::nullopt,
       {{"well", "all valves open, the ground dry"},
        {"valve", "a valve is shut"},
        {"wet", "the ground is wet"},
        {"ice", "pipe or nipple is cold enough for ice"}},
       {{"valve_shut", 1, 0.92}, {"line_burst", 2, 0.8}, {"leak_in_house", 2, 0.15}, {"line_frozen", 3, 0.9}}},
      {"wire",
       "Move the sensor's wire and plug while somebody watches the display",
       "",
       6,
       std::nullopt,
       {{"steady", "the pressure shown stays"}, {"jumps", "the pressure shown jumps"}},
       {{"sensor_wire", 1, 0.8}}},
      {"port",
       "Take the sensor out and look into its port",
       "Shut off and drain first.",
       20,
       std::nullopt,
       {{"clear", "it is clear"}, {"plugged", "it is plugged"}},
       {{"sensor_plugged", 1, 0.92}}},
      {"what_is_new",
       "Ask what is new in the use of water",
       "Lawn, pool, guests, animals, a filter that rinses itself.",
       2,
       std::nullopt,
       {{"nothing", "nothing is new"}, {"new_use", "there is a new use"}},
       {{"more_demand", 1, 0.85}}},
      {"outages",
       "Ask whether the power went away at these times",
       "Clocks that blink, neighbours, the utility.",
       3,
       std::nullopt,
       {{"no", "it did not"}, {"yes", "it did"}},
       {{"power_outages", 1, 0.85}, {"volts_low", 1, 0.2}}},
      {"contact",
       "Look what is wired to the outside contact, and what it says",
       "Float, flood or tank contact.",
       6,
       std::nullopt,
       {{"fine", "nothing, or it is closed and sound"}, {"opens", "it opens, or it is bad"}},
       {{"outside_contact", 1, 0.85}}},
      {"glass",
       "Let a glass of water stand",
       "After the pump has started.",
       4,
       std::nullopt,
       {{"clear", "it is clear"}, {"sand", "sand settles"}, {"air", "it is milky with air"}},
       {{"pump_worn", 1, 0.5},
        {"pump_dragging", 1, 0.5},
        {"intake_clogged", 1, 0.25},
        {"level_fallen", 2, 0.4},
        {"yield_fallen", 2, 0.5},
        {"drop_pipe_hole", 2, 0.5}}},
      {"drag",
       "Ask who knows the motor: does it start hard, or hum?",
       "Never start it again and again to hear it.",
       3,
       std::nullopt,
       {{"no", "it starts as ever"}, {"yes", "it starts hard or hums"}},
       {{"pump_dragging", 1, 0.7}, {"volts_uneven", 1, 0.4}}},
      {"fan",
       "Look at the drive's fins, fan and place",
       "Dust, a fan that stands, sun, a cabinet that is shut.",
       4,
       std::nullopt,
       {{"clean", "clean, cool and free"}, {"hot", "dirty, in the sun, or the fan stands"}},
       {{"drive_heated", 1, 0.9}}},
  };
  return all;
}

std::size_t check_place(std::string_view key) {
  std::size_t place = 0;
  while (place < checks().size() && checks()[place].key != key) {
    ++place;
  }
  return place;
}

UsualBand usual_band(Show show, Holding const& holding) {
  double const middle = holding.middle_of(show);
  constexpr double spreads = 1.3;
  double const width = std::hypot(usual_error(show, middle), spreads * holding.spread_of(show));
  return {middle - width, middle + width};
}

std::vector<double> answer_shares(Check const& check, Holding const& holding, World const* world) {
  std::size_t const count = check.answers.size();
  if (world == nullptr) {
    return std::vector<double>(count, 1.0 / static_cast<double>(count));
  }
  std::vector<double> shares(count, 0);
  if (check.show) {
    auto const& shown = of(world->shows, *check.show);
    if (!shown) {
      return std::vector<double>(count, 1.0 / static_cast<double>(count));
    }
    auto const band = usual_band(*check.show, holding);
    constexpr double site_share = 0.3;
    double const sigma = std::max(1e-9, std::hypot(usual_error(*check.show, *shown) / half_width_sigmas,
                                                   site_share * holding.spread_of(*check.show)));
    double const low = normal_share_below(band.low, *shown, sigma);
    double const up_to_high = normal_share_below(band.high, *shown, sigma);
    shares = {low, up_to_high - low, 1 - up_to_high};
  } else {
    shares[0] = 1;
    for (auto const& sign : check.signs) {
      if (world->fault < faults().size() && faults()[world->fault].key == sign.fault) {
        shares[sign.answer] += sign.share;
        shares[0] -= sign.share;
      }
    }
  }
  for (auto& share : shares) {
    share = (1 - misled) * share + misled / static_cast<double>(count);
  }
  return shares;
}

}  // namespace wellproof
