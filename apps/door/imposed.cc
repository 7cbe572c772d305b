#include "door/imposed.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "contract/nearest.h"
#include "quantity/quantity.h"
#include "site/document.h"

namespace wellproof {
namespace {

std::vector<std::string_view> setting_keys() {
  std::vector<std::string_view> keys;
  Settings const none;
  each_setting(none, [&](SettingField const& field, double) { keys.push_back(field.key); });
  keys.push_back(permissive_key);
  keys.push_back(fault_contact_key);
  return keys;
}

/// A finding about a piece of text, placed `offset` characters into it where the place has a column.
Finding finding_at(Place place, std::size_t offset, std::string_view key, TextError const& error) {
  if (place.column > 0) {
    place.column += static_cast<int>(offset);
  }
  return {std::move(place), std::string(key), error.found, error.expected, error.nearest};
}

class ImposedReader {
 public:
  std::vector<Imposed> imposed;
  Findings findings;

  void take(std::string const& key, std::string const& value, Place const& place) {
    if (key == permissive_key) {
      choice(key, value, place, contact_sense(value).has_value(), "unused, closed_runs or open_runs");
      return;
    }
    if (key == fault_contact_key) {
      choice(key, value, place, fault_sense(value).has_value(), "closes_on_stop or opens_on_stop");
      return;
    }
    auto const field = setting_field(key);
    if (!field) {
      findings.push_back(
          {place, key, "an unknown setting", "a key of the sheet's settings table", nearest_word(key, setting_keys())});
      return;
    }
    auto const value_si = read_quantity(value, field->dimension);
    if (!value_si) {
      findings.push_back(finding_at(place, value_si.error().offset, key, value_si.error()));
      return;
    }
    SettingEnds const ends = ends_of(*field);
    if (!(*value_si >= ends.least && *value_si <= ends.most)) {
      findings.push_back({place, key, "\"" + value + "\"",
                          fmt::format("{} to {}", write_quantity(ends.least, field->dimension, UnitSystem::us),
                                      write_quantity(ends.most, field->dimension, UnitSystem::us)),
                          ""});
      return;
    }
    put({key, *value_si});
  }

  void take_table(Node const& table, std::string const& at, std::string const& file) {
    for (auto const& node : table.items) {
      std::string const key = at.empty() ? node.key : at + "." + node.key;
      if (node.kind == Node::Kind::table) {
        take_table(node, key, file);
      } else if (node.kind == Node::Kind::text) {
        take(key, node.text, {file, node.line, node.text_column > 0 ? node.text_column : node.column});
      } else {
        auto const field = setting_field(key);
        std::string const wanted =
            field ? fmt::format("a text such as \"{}\"", example(field->dimension)) : std::string("a text");
        findings.push_back({{file, node.line, node.column}, key, in_words(node), wanted, ""});
      }
    }
  }

 private:
  void choice(std::string const& key, std::string const& value, Place const& place, bool known, char const* words) {
    if (known) {
      put({key, value});
    } else {
      findings.push_back({place, key, "\"" + value + "\"", words, ""});
    }
  }

  void put(Imposed one) {
    imposed.erase(
        std::remove_if(imposed.begin(), imposed.end(), [&](Imposed const& each) { return each.key == one.key; }),
        imposed.end());
    imposed.push_back(std::move(one));
  }
};

}  // namespace

Result<std::vector<Imposed>> read_imposed(Request const& request) {
  ImposedReader reader;
  if (request.settings) {
    auto const document = read_document(request.settings->text, request.settings->file);
    reader.findings = document.findings;
    reader.take_table(document.root, "", request.settings->file);
  }
  for (auto const& pair : request.set) {
    auto const equals = pair.find('=');
    Place const place{"--set " + pair, 0, 0};
    if (equals == std::string::npos) {
      reader.findings.push_back({place, "", "no =", "KEY=VALUE, as in pressure.target=\"50 psi\"", ""});
      continue;
    }
    reader.take(pair.substr(0, equals), pair.substr(equals + 1), place);
  }
  if (!reader.findings.empty()) {
    return tl::unexpected(reader.findings);
  }
  return reader.imposed;
}

}  // namespace wellproof
