#include "site/entered.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

#include "contract/nearest.h"
#include "quantity/quantity.h"
#include "site/fixtures.h"
#include "site/read.h"

namespace wellproof {
namespace {

constexpr std::size_t most_runs = 40;  // pipe runs or zones in one file

bool is_list_name(std::string_view name) {
  return name == "pipe" || name == "zone";
}

/// The keys that may stand in a table, last part only.
std::vector<std::string> keys_in(std::string_view generic) {
  std::vector<std::string> keys;
  auto const head = std::string(generic) + '.';
  for (auto const& key : known_keys()) {
    if (key.compare(0, head.size(), head) == 0) {
      auto const rest = key.substr(head.size());
      auto const part = rest.substr(0, rest.find('.'));
      if (std::find(keys.begin(), keys.end(), part) == keys.end()) {
        keys.push_back(part);
      }
    }
  }
  return keys;
}

std::vector<std::string> table_names() {
  std::vector<std::string> names;
  for (auto const& key : known_keys()) {
    auto const name = key.substr(0, key.find('.'));
    if (std::find(names.begin(), names.end(), name) == names.end()) {
      names.push_back(name);
    }
  }
  return names;
}

std::string nearest_of(std::string_view word, std::vector<std::string> const& known) {
  std::vector<std::string_view> const words(known.begin(), known.end());
  return nearest_word(word, words);
}

std::string listed(std::vector<std::string> const& words) {
  return fmt::format("one of {}", fmt::join(words, ", "));
}

std::string example(double number, Dimension dimension) {
  return fmt::format("\"{} {}\"", number, customary_unit(dimension, UnitSystem::us).spelling);
}

}  // namespace

std::string without_number(std::string_view key) {
  auto const dot = key.find('.');
  if (dot == key.npos || dot + 1 >= key.size() || std::isdigit(static_cast<unsigned char>(key[dot + 1])) == 0) {
    return std::string(key);
  }
  auto const second = key.find('.', dot + 1);
  return std::string(key.substr(0, dot)) + (second == key.npos ? "" : std::string(key.substr(second)));
}

std::vector<std::string> known_keys() {
  std::vector<std::string> keys{"site.name", "site.control", "well.boundary"};
  Site site;
  site.pipes.resize(1);
  site.demand.zones.resize(1);
  each_field(site, [&](Field const& field, Range const&) {
    auto const key = without_number(field.key);
    if (key == "pump.rated_flow") {
      keys.insert(keys.end(), {"pump.curve", "pump.curve_file"});
    }
    if (key == "pipe.inside_diameter") {
      keys.insert(keys.end(), {"pipe.place", "pipe.kind", "pipe.size"});
    }
    if (key == "zone.flow") {
      for (auto const& kind : fixture_kinds()) {
        keys.push_back("demand.fixtures." + std::string(kind.key));
      }
      keys.emplace_back("zone.name");
    }
    keys.push_back(key);
  });
  return keys;
}

Entered::Entered(Document const& document, std::string_view file) : file_(file), findings_(document.findings) {
  skipped_.insert(document.skipped.begin(), document.skipped.end());
  auto const names = table_names();
  for (auto const& node : document.root.items) {
    if (std::find(names.begin(), names.end(), node.key) == names.end()) {
      unknown_key(node, "", "");
    } else if (is_list_name(node.key)) {
      take_runs(node, node.key, node.key == "pipe" ? pipes_ : zones_);
    } else if (node.kind != Node::Kind::table) {
      bool const list = node.kind == Node::Kind::array;
      find_fault(place_of(node), node.key, list ? fmt::format("a list [[{}]]", node.key) : in_words(node),
                 fmt::format("one table [{}]", node.key));
    } else {
      take_table(node, node.key, node.key);
    }
  }
}

void Entered::take_runs(Node const& list, std::string const& name, std::size_t& count) {
  if (list.kind != Node::Kind::array) {
    bool const table = list.kind == Node::Kind::table;
    find_fault(place_of(list), name, table ? fmt::format("[{}]", name) : in_words(list),
               fmt::format("[[{}]], one for each", name));
    return;
  }
  for (auto const& run : list.items) {
    if (run.kind != Node::Kind::table) {
      find_fault(place_of(run), name, in_words(run), fmt::format("[[{}]], one for each", name));
      continue;
    }
    if (count == most_runs) {
      find_fault(place_of(run), name, fmt::format("more than {} [[{}]]", most_runs, name), "fewer; join like ones");
      return;
    }
    ++count;
    take_table(run, fmt::format("{}.{}", name, count), name);
  }
}

void Entered::take_table(Node const& table, std::string const& at, std::string const& generic) {
  tables_.emplace(at, &table);
  auto const keys = keys_in(generic);
  for (auto const& node : table.items) {
    auto const key = at + '.' + node.key;
    if (std::find(keys.begin(), keys.end(), node.key) == keys.end()) {
      unknown_key(node, at, generic);
    } else if (key == "demand.fixtures") {
      if (node.kind == Node::Kind::table) {
        take_table(node, key, key);
      } else {
        find_fault(place_of(node), key, in_words(node), "a table [demand.fixtures] of counts");
      }
    } else {
      nodes_.emplace(key, &node);
    }
  }
}

void Entered::unknown_key(Node const& node, std::string const& at, std::string const& generic) {
  auto const keys = generic.empty() ? table_names() : keys_in(generic);
  auto nearest = nearest_of(node.key, keys);
  // A right key in a wrong table is told by its full name.
  for (auto const& key : known_keys()) {
    auto const last = key.substr(key.rfind('.') + 1);
    if (last == node.key && (nearest.empty() || generic.empty())) {
      nearest = key;
      break;
    }
  }
  bool const table = node.kind == Node::Kind::table || (node.kind == Node::Kind::array && generic.empty());
  find_fault(table ? place_of(node) : Place{file_, node.key_line, node.key_column},
             at.empty() ? node.key : at + '.' + node.key,
             table ? fmt::format("unknown table \"{}\"", node.key) : fmt::format("unknown key \"{}\"", node.key),
             listed(keys), nearest);
}

bool Entered::meant(std::string_view key) const {
  return has(key) || skipped_.count(without_number(key)) > 0;
}

Node const* Entered::find(std::string_view key) const {
  auto const found = nodes_.find(key);
  return found == nodes_.end() ? nullptr : found->second;
}

Place Entered::place_of_table(std::string_view table) const {
  auto const found = tables_.find(table);
  return found == tables_.end() ? Place{file_, 1, 1} : Place{file_, found->second->line, found->second->column};
}

Place Entered::place_of(Node const& node) const {
  return {file_, node.line, node.column};
}

Place Entered::place_of(std::string_view key) const {
  auto const* node = find(key);
  return node != nullptr ? place_of(*node) : place_of_table(key.substr(0, key.rfind('.')));
}

Place Entered::inside(Node const& node, std::size_t offset) const {
  if (node.text_column == 0) {
    return place_of(node);
  }
  return {file_, node.line, node.text_column + static_cast<int>(std::min<std::size_t>(offset, 100000))};
}

std::optional<Range> Entered::range(Field const& field) {
  auto const* node = find(field.key);
  if (node == nullptr) {
    return std::nullopt;
  }
  Range range;
  if (node->kind == Node::Kind::number && field.dimension == Dimension::none) {
    range = Fixed{node->number};
  } else if (node->kind == Node::Kind::number) {
    find_fault(place_of(*node), field.key, in_words(*node),
               fmt::format("{} with its unit, in quotes, such as {}", name(field.dimension),
                           example(node->number, field.dimension)));
    return std::nullopt;
  } else if (node->kind != Node::Kind::text) {
    find_fault(place_of(*node), field.key, in_words(*node), fmt::format("{} in quotes", name(field.dimension)));
    return std::nullopt;
  } else {
    auto read = read_range(node->text, field.dimension);
    if (!read) {
      auto const& error = read.error();
      find_fault(inside(*node, error.offset), field.key, error.found, error.expected, error.nearest);
      return std::nullopt;
    }
    range = *read;
  }
  auto const written = [&](double value) {
    return std::isfinite(value) ? write_quantity(value, field.dimension, UnitSystem::us) : std::string("no number");
  };
  double const low = lowest(range);
  double const high = highest(range);
  // Written so that a number which is none is outside too.
  if (!(low >= field.least && high <= field.most)) {
    constexpr double hair = 1e-9;
    bool const rounding = low >= field.least - hair * std::abs(field.least) && high <= field.most * (1 + hair);
    if (!rounding) {
      auto const found = is_fixed(range) ? written(low) : fmt::format("{} to {}", written(low), written(high));
      find_fault(place_of(*node), field.key, found,
                 fmt::format("between {} and {}: {}", written(field.least), written(field.most), field.meaning));
      return std::nullopt;
    }
  }
  return range;
}

std::optional<std::string> Entered::text(std::string_view key) {
  auto const* node = find(key);
  if (node == nullptr) {
    return std::nullopt;
  }
  if (node->kind != Node::Kind::text) {
    find_fault(place_of(*node), std::string(key), in_words(*node), "text in quotes");
    return std::nullopt;
  }
  return node->text;
}

std::optional<std::string> Entered::word(std::string_view key, std::vector<std::string_view> const& words) {
  auto said = text(key);
  if (!said || std::find(words.begin(), words.end(), *said) != words.end()) {
    return said;
  }
  std::vector<std::string> const known(words.begin(), words.end());
  find_fault(place_of(key), std::string(key), '"' + *said + '"', listed(known), nearest_word(*said, words));
  return std::nullopt;
}

std::optional<double> Entered::number(Node const& node, std::string_view key, Dimension dimension) {
  if (node.kind != Node::Kind::text) {
    find_fault(place_of(node), std::string(key), in_words(node),
               fmt::format("{} with its unit, in quotes, such as {}", name(dimension), example(10, dimension)));
    return std::nullopt;
  }
  auto const read = read_quantity(node.text, dimension);
  if (!read) {
    find_fault(inside(node, read.error().offset), std::string(key), read.error().found, read.error().expected,
               read.error().nearest);
    return std::nullopt;
  }
  return *read;
}

void Entered::find_fault(Place place, std::string key, std::string found, std::string expected, std::string nearest) {
  findings_.push_back({std::move(place), std::move(key), std::move(found), std::move(expected), std::move(nearest)});
}

}  // namespace wellproof
