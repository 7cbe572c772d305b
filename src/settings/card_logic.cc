#include "settings/card_logic.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <span>
#include <utility>

#include <fmt/format.h>

#include "contract/nearest.h"

namespace wellproof {
namespace {

constexpr std::array<std::string_view, 15> keys{
    "guards",      "guards_from",       "guard_filter",      "sleep",
    "rests",       "longest_rest",      "long_run_guard",    "line_fill",
    "gains",       "second_gain_below", "second_gain_error", "second_gain_share",
    "sample_rate", "start_speed",       "start_time"};
constexpr std::array<std::string_view, 4> guard_words{"amps_near_ceiling", "amps_any_speed", "power_near_ceiling",
                                                      "power_any_speed"};
constexpr std::array<std::string_view, 2> sleep_words{"speed_and_time", "pressure_nudge"};
constexpr std::array<std::string_view, 2> rest_words{"fixed", "doubling"};
constexpr std::array<std::string_view, 3> gain_words{"one", "two_by_speed", "two_by_error"};

constexpr double doubling = 2;

class LogicReader {
 public:
  explicit LogicReader(CardFindings& told) : told_(told) {}

  void fault(Node const& node, std::string found, std::string expected, std::string nearest = "") {
    told_.fault(told_.at(node), "logic." + node.key, std::move(found), std::move(expected), std::move(nearest));
  }

  /// Which of the words it is.
  std::optional<std::size_t> word(Node const& node, std::span<std::string_view const> words) {
    auto const found = std::find(words.begin(), words.end(), node.text);
    if (node.kind != Node::Kind::text || found == words.end()) {
      fault(node, node.kind == Node::Kind::text ? "\"" + node.text + "\"" : in_words(node),
            fmt::format("one of {}", fmt::join(words.begin(), words.end(), ", ")),
            node.kind == Node::Kind::text ? nearest_word(node.text, words) : "");
      return std::nullopt;
    }
    return static_cast<std::size_t>(found - words.begin());
  }

  void flag(Node const& node, bool& into) {
    if (node.kind != Node::Kind::boolean) {
      fault(node, in_words(node), "true or false");
    } else {
      into = node.text == "true";
    }
  }

  void quantity(Node const& node, Dimension dimension, double least, double most, double& into) {
    double value = node.number;
    if (dimension == Dimension::none ? node.kind != Node::Kind::number : node.kind != Node::Kind::text) {
      fault(node, in_words(node),
            dimension == Dimension::none ? "a number" : fmt::format("a text such as \"{}\"", example(dimension)));
      return;
    }
    if (dimension != Dimension::none) {
      auto const read = read_quantity(node.text, dimension);
      if (!read) {
        fault(node, read.error().found, read.error().expected, read.error().nearest);
        return;
      }
      value = *read;
    }
    if (!(value >= least && value <= most)) {
      fault(node, dimension == Dimension::none ? fmt::format("{:.6g}", value) : "\"" + node.text + "\"",
            dimension == Dimension::none ? fmt::format("{:.6g} to {:.6g}", least, most)
                                         : fmt::format("{} to {}", write_quantity(least, dimension, UnitSystem::us),
                                                       write_quantity(most, dimension, UnitSystem::us)));
      return;
    }
    into = value;
  }

 private:
  CardFindings& told_;
};

void words_of(Node const& node, LogicReader& reader, Logic& logic) {
  if (node.key == "guards") {
    if (auto const found = reader.word(node, guard_words)) {
      logic.guard_by = *found >= 2 ? GuardBy::power : GuardBy::current;
      logic.guard_where = *found % 2 == 1 ? GuardWhere::any_speed : GuardWhere::near_ceiling;
    }
  } else if (node.key == "sleep") {
    if (auto const found = reader.word(node, sleep_words)) {
      logic.sleep_test = *found == 1 ? SleepTest::nudge : SleepTest::slow_speed;
    }
  } else if (node.key == "rests") {
    if (auto const found = reader.word(node, rest_words)) {
      logic.rest_growth = *found == 1 ? doubling : 1;
    }
  } else if (auto const found = reader.word(node, gain_words)) {
    logic.second_gain = static_cast<SecondGain>(*found);
  }
}

void figures_of(Node const& node, LogicReader& reader, Card& card) {
  Logic& logic = card.logic;
  using D = Dimension;
  if (node.key == "guards_from") {
    reader.quantity(node, D::none, 0.5, 1, logic.guard_speed_share);
  } else if (node.key == "guard_filter") {
    reader.quantity(node, D::time, 0, 60, logic.current_filter_s);
  } else if (node.key == "longest_rest") {
    reader.quantity(node, D::time, 1, 30 * 86400.0, logic.longest_rest_s);
  } else if (node.key == "second_gain_below") {
    reader.quantity(node, D::frequency, 1, 120, logic.second_gain_below_hz);
  } else if (node.key == "second_gain_error") {
    reader.quantity(node, D::pressure, 1, 5e6, logic.second_gain_error_pa);
  } else if (node.key == "second_gain_share") {
    reader.quantity(node, D::none, 0.05, 20, logic.second_gain_share);
  } else if (node.key == "sample_rate") {
    double rate_hz = 0;
    reader.quantity(node, D::frequency, 2, 200, rate_hz);
    card.sample_rate_hz = rate_hz > 0 ? std::optional(rate_hz) : std::nullopt;
  } else if (node.key == "start_speed") {
    reader.quantity(node, D::frequency, 1, 60, logic.start_speed_hz);
  } else {
    reader.quantity(node, D::time, 0.1, 30, logic.start_time_s);
  }
}

/// What a word asks for, or another figure that nothing asks for.
void together(Node const& table, Logic const& logic, LogicReader& reader) {
  auto const needs = [&](char const* key, bool wanted, char const* word) {
    auto const* const node = table.item(key);
    if (node != nullptr && !wanted) {
      reader.fault(*node, "a value", fmt::format("none: it belongs to {}", word));
    } else if (node == nullptr && wanted) {
      Node missing = table;
      missing.key = key;
      reader.fault(missing, "nothing", fmt::format("a value, for {}", word));
    }
  };
  needs("second_gain_below", logic.second_gain == SecondGain::below_speed, "gains = \"two_by_speed\"");
  needs("second_gain_error", logic.second_gain == SecondGain::large_error, "gains = \"two_by_error\"");
  needs("longest_rest", logic.rest_growth > 1, "rests = \"doubling\"");
  auto const* const share = table.item("second_gain_share");
  if (share != nullptr && logic.second_gain == SecondGain::none) {
    reader.fault(*share, "a value", "none: it belongs to two gains");
  }
}

}  // namespace

void read_card_logic(Node const& table, Card& card, CardFindings& told) {
  LogicReader reader(told);
  std::size_t const faults = told.count();
  for (auto const& node : table.items) {
    if (std::find(keys.begin(), keys.end(), node.key) == keys.end()) {
      told.unknown(node, keys, "logic.");
    } else if (node.key == "long_run_guard") {
      reader.flag(node, card.logic.long_run_guard);
    } else if (node.key == "line_fill") {
      reader.flag(node, card.logic.line_fill);
    } else if (node.key == "guards" || node.key == "sleep" || node.key == "rests" || node.key == "gains") {
      words_of(node, reader, card.logic);
    } else {
      figures_of(node, reader, card);
    }
  }
  if (told.count() == faults) {
    together(table, card.logic, reader);
  }
}

}  // namespace wellproof
