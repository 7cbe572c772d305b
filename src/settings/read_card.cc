// A card file to a card: names, lines of entries, the controller's logic, with everything that is wrong found at once.
#include <algorithm>
#include <array>
#include <cctype>
#include <map>
#include <set>
#include <utility>

#include <fmt/format.h>

#include "contract/nearest.h"
#include "settings/card.h"
#include "settings/card_entry.h"
#include "settings/card_logic.h"
#include "settings/safe_side.h"
#include "site/document.h"

namespace wellproof {
namespace {

constexpr std::size_t most_entries = 200;
constexpr std::array<std::string_view, 4> tables{"card", "logic", "stops", "entry"};
constexpr std::array<std::string_view, 3> card_keys{"name", "note", "lacks"};

std::vector<std::string_view> known_keys() {
  std::vector<std::string_view> keys;
  for (auto const& one : safe_sides()) {
    keys.push_back(one.key);
  }
  keys.push_back(second_gain_key);
  return keys;
}

class CardReader {
 public:
  CardReader(Document const& document, std::string_view file) : findings_(document.findings), told_(file, findings_) {
    read(document.root);
    if (document.complete) {
      look_for_missing();
    }
  }

  Result<Card> card() {
    if (!findings_.empty()) {
      std::stable_sort(findings_.begin(), findings_.end(), [](Finding const& a, Finding const& b) {
        return std::pair(a.place.line, a.place.column) < std::pair(b.place.line, b.place.column);
      });
      return tl::unexpected(findings_);
    }
    return card_;
  }

 private:
  void read(Node const& root) {
    for (auto const& node : root.items) {
      if (node.key == "card" && node.kind == Node::Kind::table) {
        card_table(node);
      } else if (node.key == "logic" && node.kind == Node::Kind::table) {
        read_card_logic(node, card_, told_);
      } else if (node.key == "stops" && node.kind == Node::Kind::table) {
        stops(node);
      } else if (node.key == "entry" && node.kind == Node::Kind::array) {
        entries(node);
      } else if (std::find(tables.begin(), tables.end(), node.key) != tables.end()) {
        told_.fault(told_.at(node), node.key, in_words(node),
                    node.key == "entry" ? "[[entry]], one for each" : "a table");
      } else {
        told_.unknown(node, tables);
      }
    }
  }

  void card_table(Node const& table) {
    for (auto const& node : table.items) {
      if (node.key == "name") {
        told_.text(node, "card.name", card_.name);
      } else if (node.key == "note") {
        told_.text(node, "card.note", card_.note);
      } else if (node.key == "lacks") {
        lacks(node);
      } else {
        told_.unknown(node, card_keys);
      }
    }
  }

  void lacks(Node const& list) {
    if (list.kind != Node::Kind::array) {
      told_.fault(told_.at(list), "card.lacks", in_words(list), "a list of keys, as in [\"long_run.limit\"]");
      return;
    }
    auto const known = known_keys();
    for (auto const& node : list.items) {
      std::string key;
      if (!told_.text(node, "card.lacks", key)) {
        continue;
      }
      if (std::find(known.begin(), known.end(), key) == known.end() || key == second_gain_key) {
        told_.fault(told_.at(node), "card.lacks", "\"" + key + "\"", "a key of a setting", nearest_word(key, known));
      } else if (safe_side(key, {}).unguarded.empty()) {
        told_.fault(told_.at(node), "card.lacks", "\"" + key + "\"",
                    "an entry for it: every drive has one, if only as a value that cannot be changed (fixed)");
      } else if (key == "fill.time" || key == "fill.speed") {
        told_.fault(told_.at(node), "card.lacks", "\"" + key + "\"",
                    "line_fill = false in [logic], for a drive without line fill");
      } else if (card_.lacking(key)) {
        told_.fault(told_.at(node), "card.lacks", "\"" + key + "\" a second time", "each key once");
      } else {
        card_.logic.long_run_guard = card_.logic.long_run_guard && key != "long_run.limit";
        card_.lacks.push_back(key);
        lacks_at_.push_back(told_.at(node));
      }
    }
  }

  void stops(Node const& table) {
    std::vector<std::string_view> known;
    for (auto const kind : all_stop_kinds) {
      known.push_back(word(kind));
    }
    for (auto const& node : table.items) {
      auto const kind = std::find(known.begin(), known.end(), node.key);
      if (kind == known.end()) {
        told_.unknown(node, known, "stops.");
        continue;
      }
      if (node.kind != Node::Kind::array) {
        stop(node, "stops." + node.key, all_stop_kinds[kind - known.begin()]);
        continue;
      }
      for (auto const& each : node.items) {
        stop(each, "stops." + node.key, all_stop_kinds[kind - known.begin()]);
      }
    }
  }

  void stop(Node const& node, std::string const& key, StopCause kind) {
    StopLabel one{"", kind};
    if (!told_.text(node, key, one.label)) {
      return;
    }
    if (std::none_of(one.label.begin(), one.label.end(), [](unsigned char sign) { return std::isalnum(sign) != 0; })) {
      told_.fault(told_.at(node), key, "\"" + one.label + "\"", "what the drive's list of stops shows for it");
      return;
    }
    auto const same = [&](StopLabel const& other) { return other.label == one.label; };
    if (std::any_of(card_.stops.begin(), card_.stops.end(), same)) {
      told_.fault(told_.at(node), key, "\"" + one.label + "\" a second time", "each label for one kind of stop");
      return;
    }
    card_.stops.push_back(std::move(one));
  }

  void entries(Node const& list) {
    if (list.items.size() > most_entries) {
      told_.fault(told_.at(list.items[most_entries]), "entry", fmt::format("{} entries", list.items.size()),
                  fmt::format("at most {}", most_entries));
      return;
    }
    for (auto const& node : list.items) {
      if (node.kind != Node::Kind::table) {
        told_.fault(told_.at(node), "entry", in_words(node), "[[entry]], one for each");
      } else {
        entry(node);
      }
    }
  }

  // Whatever was meant, the key counts as entered, so that one mistake is not told twice.
  void entry(Node const& table) {
    std::string one_key;
    auto const* const key = table.item("key");
    if (key == nullptr) {
      told_.fault(told_.at(table), "entry", "no key", "key = one of ours, as in \"pressure.target\"");
      return;
    }
    if (!told_.text(*key, "key", one_key)) {
      return;
    }
    auto const known = known_keys();
    if (std::find(known.begin(), known.end(), one_key) == known.end()) {
      told_.fault(told_.at(*key), "key", "\"" + one_key + "\"", "a key of a setting", nearest_word(one_key, known));
      return;
    }
    if (!entered_.insert(one_key).second) {
      told_.fault(told_.at(*key), one_key, "entered a second time", "each key once");
      return;
    }
    places_[one_key] = told_.at(*key);
    if (auto one_read = read_card_entry(table, one_key, told_)) {
      card_.entries.push_back(std::move(*one_read));
    }
  }

  /// Each of our keys is entered or said to be lacking, as far as the logic has a use for it.
  void look_for_missing() {
    if (card_.name.empty()) {
      told_.fault(told_.top(), "card.name", "nothing", "[card] with a name");
    }
    for (std::size_t i = 0; i < card_.lacks.size(); ++i) {
      if (entered_.count(card_.lacks[i]) != 0) {
        told_.fault(lacks_at_[i], "card.lacks", "\"" + card_.lacks[i] + "\", which is entered below",
                    "one or the other");
      }
    }
    for (std::string const guard : {"dry_run", "closed"}) {
      auto const entered = [&](char const* part) { return entered_.count(guard + part) != 0; };
      if ((entered(".amps_below") || entered(".power_below")) && card_.lacking(guard + ".delay")) {
        told_.fault(told_.top(), guard + ".delay", "a guard without its delay",
                    "an [[entry]] for it; fixed, where it cannot be set");
      }
    }
    std::string missing;
    for (auto const& one : safe_sides()) {
      std::string const key(one.key);
      bool const entered = entered_.count(key) != 0;
      if (entered && !applies(card_.logic, key)) {
        told_.fault(places_[key], key, "an entry",
                    "none: a drive of this logic has no such setting ([logic], docs/card.md)");
      } else if (!entered && !card_.lacking(key) && applies(card_.logic, key)) {
        missing += (missing.empty() ? "" : ", ") + key;
      }
    }
    if (!missing.empty()) {
      told_.fault(told_.top(), "entry", "nothing for " + missing,
                  "an [[entry]] for each, or its key in the list lacks of [card]");
    }
    bool const second = entered_.count(second_gain_key) != 0;
    if (second && card_.logic.second_gain == SecondGain::none) {
      told_.fault(places_[std::string(second_gain_key)], second_gain_key, "an entry", "none: [logic] has one gain");
    }
    // In our order, with what the logic has no use for.
    std::vector<std::string> lacks;
    for (auto const& one : safe_sides()) {
      if (card_.lacking(one.key) || !applies(card_.logic, one.key)) {
        lacks.emplace_back(one.key);
      }
    }
    card_.lacks = std::move(lacks);
  }

  Findings findings_;
  CardFindings told_;
  Card card_;
  std::set<std::string, std::less<>> entered_;
  std::map<std::string, Place> places_;
  std::vector<Place> lacks_at_;
};

}  // namespace

Result<Card> read_card(std::string_view text, std::string_view file) {
  return CardReader(read_document(text, file), file).card();
}

}  // namespace wellproof
