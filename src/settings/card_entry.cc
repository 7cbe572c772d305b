#include "settings/card_entry.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "contract/nearest.h"

namespace wellproof {
namespace {

constexpr std::array<std::string_view, 11> entry_keys{"key",  "label", "where", "unit",     "least",  "most",
                                                      "step", "fixed", "over",  "shown_as", "choices"};
constexpr std::array<std::string_view, 4> shown_words{"itself", "below_target", "above_target", "time_over"};

/// Which of our settings a drive may show as something else.
bool may_be_shown(std::string_view key, ShownAs shown) {
  switch (shown) {
    case ShownAs::itself:
      return true;
    case ShownAs::below_target:
      return key == "pressure.wake_drop" || key == "sleep.band";
    case ShownAs::above_target:
      return key == "pressure.stop_above";
    case ShownAs::time_over:
      return key == "speed.ramp_up" || key == "speed.ramp_down" || key == "sleep.ramp";
  }
  return false;
}

bool is_choice_key(std::string_view key) {
  return key == permissive_key || key == fault_contact_key;
}

std::vector<std::string_view> words_of_choice(std::string_view key) {
  if (key == permissive_key) {
    return {word(ContactSense::unused), word(ContactSense::closed_runs), word(ContactSense::open_runs)};
  }
  return {word(FaultSense::closes_on_stop), word(FaultSense::opens_on_stop)};
}

class EntryReader {
 public:
  explicit EntryReader(CardFindings& told) : told_(told) {}

  std::optional<CardEntry> entry(Node const& table, std::string const& key) {
    CardEntry one;
    one.key = key;
    std::size_t const faults = told_.count();
    for (auto const& node : table.items) {
      if (node.key == "label") {
        told_.text(node, one.key, one.label);
      } else if (node.key == "where") {
        told_.text(node, one.key, one.where);
      } else if (node.key == "unit") {
        told_.text(node, one.key, one.unit);
      } else if (node.key == "shown_as") {
        shown_as(node, one);
      } else if (std::find(entry_keys.begin(), entry_keys.end(), node.key) == entry_keys.end()) {
        told_.unknown(node, entry_keys);
      }
    }
    if (one.label.empty() && told_.count() == faults) {
      told_.fault(told_.at(table), one.key, "no label", "label = what the drive calls it");
    }
    if (told_.count() == faults) {
      is_choice_key(one.key) ? choice(table, one) : number(table, one);
    }
    return told_.count() == faults ? std::optional(one) : std::nullopt;
  }

 private:
  void shown_as(Node const& node, CardEntry& one) {
    std::string said;
    if (!told_.text(node, one.key, said)) {
      return;
    }
    auto const found = std::find(shown_words.begin(), shown_words.end(), said);
    if (found == shown_words.end()) {
      told_.fault(told_.at(node), one.key, "\"" + said + "\"", fmt::format("one of {}", fmt::join(shown_words, ", ")),
                  nearest_word(said, shown_words));
      return;
    }
    one.shown = static_cast<ShownAs>(found - shown_words.begin());
    if (!may_be_shown(one.key, one.shown)) {
      told_.fault(
          told_.at(node), one.key, "\"" + said + "\"",
          "itself; below_target is for pressure.wake_drop and sleep.band, above_target for pressure.stop_above, "
          "time_over for ramps");
    }
  }

  void choice(Node const& table, CardEntry& one) {
    auto const known = words_of_choice(one.key);
    for (auto const& node : table.items) {
      if (node.key == "choices") {
        if (node.kind != Node::Kind::table) {
          told_.fault(told_.at(node), one.key, in_words(node),
                      fmt::format("a table with some of {}", fmt::join(known, ", ")));
          continue;
        }
        for (auto const& each : node.items) {
          if (std::find(known.begin(), known.end(), each.key) == known.end()) {
            told_.unknown(each, known);
            continue;
          }
          CardChoice chosen{each.key, ""};
          if (told_.text(each, one.key, chosen.label)) {
            one.choices.push_back(chosen);
          }
        }
      } else if (node.key != "key" && node.key != "label" && node.key != "where") {
        told_.fault(told_.at_key(node), one.key, "\"" + node.key + "\" at a choice", "key, label, where and choices");
      }
    }
    if (one.choices.empty()) {
      told_.fault(told_.at(table), one.key, "no choices",
                  fmt::format("choices = {{ {} = \"…\" }}", fmt::join(known, " = \"…\", ")));
    }
  }

  void number(Node const& table, CardEntry& one) {
    auto const field = setting_field(one.key == second_gain_key ? "regulator.gain" : one.key);
    if (!field) {
      return;
    }
    one.dimension = one.shown == ShownAs::time_over ? Dimension::time : field->dimension;
    auto const* const unit = table.item("unit");
    auto const read = read_quantity("1 " + one.unit, one.dimension);
    bool const digits = one.unit.find_first_of("0123456789") == 0;
    if (!read || digits) {
      told_.fault(unit == nullptr ? told_.at(table) : told_.at(*unit), one.key,
                  unit == nullptr ? "no unit" : "\"" + one.unit + "\"",
                  fmt::format("a unit of {}, as in \"{}\"", name(one.dimension), example(one.dimension)),
                  read ? "" : read.error().nearest);
      return;
    }
    one.unit_factor = *read;
    auto const value = [&](char const* key, Dimension dimension) -> std::optional<double> {
      auto const* const node = table.item(key);
      return node == nullptr ? std::nullopt : quantity(*node, one, dimension);
    };
    std::size_t const faults = told_.count();
    one.least = value("least", one.dimension);
    one.most = value("most", one.dimension);
    one.step = value("step", one.dimension);
    one.fixed = value("fixed", one.dimension);
    auto const over = value("over", Dimension::frequency);
    if (auto const* const choices = table.item("choices")) {
      told_.fault(told_.at_key(*choices), one.key, "choices at a number", "unit, least, most, step or fixed");
    }
    if (one.shown == ShownAs::time_over) {
      one.over_hz = over.value_or(0);
      if (!(one.over_hz > 0) && told_.count() == faults) {
        told_.fault(told_.at(table), one.key, "no span",
                    "over = the span of speed that the time is for, as in \"60 Hz\"");
      }
    } else if (over) {
      told_.fault(told_.at_key(*table.item("over")), one.key, "over", "none: it belongs to shown_as = \"time_over\"");
    }
    if (told_.count() == faults) {
      together(table, one, *field);
    }
  }

  /// A number in the entry's unit, or a text with its own.
  std::optional<double> quantity(Node const& node, CardEntry const& one, Dimension dimension) {
    double value = 0;
    if (node.kind == Node::Kind::number && dimension == one.dimension) {
      value = node.number * one.unit_factor;
    } else if (node.kind == Node::Kind::text) {
      auto const read = read_quantity(node.text, dimension);
      if (!read) {
        Place place = told_.at(node);
        if (node.text_column > 0) {
          place.column = node.text_column + static_cast<int>(std::min<std::size_t>(read.error().offset, 100000));
        }
        told_.fault(place, one.key, read.error().found, read.error().expected, read.error().nearest);
        return std::nullopt;
      }
      value = *read;
    } else {
      told_.fault(told_.at(node), one.key, in_words(node),
                  fmt::format("a number in {}, or a text such as \"{}\"", one.unit, example(dimension)));
      return std::nullopt;
    }
    if (!std::isfinite(value)) {
      told_.fault(told_.at(node), one.key, "no finite number", "a number");
      return std::nullopt;
    }
    return value;
  }

  std::string shown(CardEntry const& one, double value) const {
    return fmt::format("{:.6g} {}", value / one.unit_factor, one.unit);
  }

  /// What cannot stand together, and what would be no setting at all.
  void together(Node const& table, CardEntry const& one, SettingField const& field) {
    if (one.step && !(*one.step > 0)) {
      told_.fault(told_.at(*table.item("step")), one.key, "a step of " + shown(one, *one.step), "more than nothing");
    }
    if (one.least && one.most && *one.least > *one.most) {
      told_.fault(told_.at(*table.item("least")), one.key, "least " + shown(one, *one.least),
                  "at most the most, " + shown(one, *one.most));
    }
    if (one.fixed && (one.least || one.most || one.step)) {
      told_.fault(told_.at(*table.item("fixed")), one.key, "fixed beside least, most or step", "one or the other");
    }
    if (one.shown == ShownAs::time_over) {
      auto const* const node = one.fixed ? table.item("fixed") : table.item("least");
      double const shortest_s = one.over_hz / ends_of(field).most;
      if (node == nullptr || (one.fixed ? *one.fixed : *one.least) < shortest_s) {
        told_.fault(node == nullptr ? told_.at(table) : told_.at(*node), one.key, "no shortest time",
                    fmt::format("least or fixed, {:.3g} s or longer", shortest_s));
      }
      return;
    }
    if (one.shown != ShownAs::itself) {
      return;  // what it comes to hangs on the target
    }
    auto const ends = ends_of(field);
    for (auto const& [key, value] : {std::pair("fixed", one.fixed), std::pair("least", one.least)}) {
      if (value && (*value < ends.least || *value > ends.most) && (key[0] == 'f' || *value > ends.most)) {
        told_.fault(told_.at(*table.item(key)), one.key, fmt::format("{} {}", key, shown(one, *value)),
                    fmt::format("{} to {}", shown(one, ends.least), shown(one, ends.most)));
      }
    }
    if (one.most && *one.most < ends.least) {
      told_.fault(told_.at(*table.item("most")), one.key, "most " + shown(one, *one.most),
                  shown(one, ends.least) + " or more");
    }
  }

  CardFindings& told_;
};

}  // namespace

std::optional<CardEntry> read_card_entry(Node const& table, std::string const& key, CardFindings& told) {
  return EntryReader(told).entry(table, key);
}

}  // namespace wellproof
