#include "explain/changed.h"

#include <algorithm>
#include <utility>

#include "explain/stop_words.h"

namespace wellproof {
namespace {

struct Word {
  std::string_view word;
  std::string_view fault;
  double factor;
};

constexpr Word words[] = {
    {"lawn", "more_demand", 4},        {"garden", "more_demand", 4},       {"pool", "more_demand", 4},
    {"irrigation", "more_demand", 4},  {"sprinkler", "more_demand", 4},    {"sprinklers", "more_demand", 4},
    {"guests", "more_demand", 3},      {"people", "more_demand", 3},       {"horses", "more_demand", 3},
    {"cattle", "more_demand", 3},      {"dry", "level_fallen", 3},         {"dry", "yield_fallen", 3},
    {"drought", "level_fallen", 4},    {"drought", "yield_fallen", 3},     {"frost", "line_frozen", 8},
    {"cold", "line_frozen", 6},        {"freeze", "line_frozen", 8},       {"freezing", "line_frozen", 8},
    {"storm", "power_outages", 4},     {"storm", "sensor_wire", 2},        {"lightning", "sensor_wire", 4},
    {"lightning", "power_outages", 3}, {"generator", "volts_low", 6},      {"settings", "thresholds_wrong", 4},
    {"settings", "rest_short", 4},     {"settings", "sleep_speed_low", 4}, {"settings", "current_limit_wrong", 4},
    {"settings", "regulator_hot", 4},  {"electrician", "volts_uneven", 2}, {"electrician", "current_limit_wrong", 2},
    {"plumber", "valve_shut", 4},      {"plumber", "sensor_plugged", 2},   {"valve", "valve_shut", 4},
    {"filter", "valve_shut", 3},       {"filter", "more_demand", 2},       {"digging", "line_burst", 4},
    {"digging", "sensor_wire", 2},     {"excavator", "line_burst", 5},     {"heat", "drive_heated", 4},
    {"hot", "drive_heated", 4},        {"splice", "volts_uneven", 5},      {"cable", "cable_thin", 5},
    {"summer", "line_frozen", 0.02},   {"heat", "line_frozen", 0.02},      {"hot", "line_frozen", 0.02},
    {"float", "outside_contact", 5},   {"blasting", "pump_dragging", 3},   {"blasting", "yield_fallen", 3},
};

}  // namespace

std::vector<ChangeSpeaks> changes_speak(std::vector<std::string> const& changed) {
  std::vector<ChangeSpeaks> speaking;
  for (auto const& said : changed) {
    std::string const plain = " " + plain_words(said) + " ";
    for (auto const& word : words) {
      bool const holds = plain.find(" " + std::string(word.word) + " ") != std::string::npos;
      bool const already = std::any_of(speaking.begin(), speaking.end(),
                                       [&](ChangeSpeaks const& other) { return other.fault == word.fault; });
      if (holds && !already) {
        speaking.push_back({said, word.fault, word.factor});
      }
    }
  }
  return speaking;
}

std::vector<PriorShare> shares_after(std::vector<ChangeSpeaks> const& speaking, std::vector<PriorShare> const& said) {
  double all = none_share;
  for (auto const& fault : faults()) {
    all += fault.share;
  }
  auto shares = said;
  for (auto const& one : speaking) {
    bool const is_said =
        std::any_of(said.begin(), said.end(), [&](PriorShare const& share) { return share.key == one.fault; });
    if (!is_said) {
      double const share = faults()[fault_place(one.fault)].share / all;
      double const odds = one.factor * share / (1 - share);
      shares.push_back({std::string(one.fault), odds / (1 + odds)});
    }
  }
  return shares;
}

}  // namespace wellproof
