#pragma once
// Small site files for the tests: the least that can be read, and the least with a line put in or left out.
#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "folders.h"
#include "site/draw.h"
#include "site/fields.h"
#include "site/read.h"

namespace wellproof::site_text {

inline std::vector<std::string> least_lines() {
  return {"[well]",
          "static_level = \"60 ft\"",
          "test_flow = \"8 gpm\"",
          "test_level = \"110 ft\"",
          "[pump]",
          "setting = \"140 ft\"",
          "rated_flow = \"10 gpm\"",
          "[motor]",
          "power = \"1 hp\"",
          "[demand]",
          "outlet_pressure = \"40 psi\""};
}

inline std::string joined(std::vector<std::string> const& lines) {
  std::string text;
  for (auto const& line : lines) {
    text += line + '\n';
  }
  return text;
}

inline std::string least() {
  return joined(least_lines());
}

/// The least site with lines added to a table that it has, or a table added at its end.
inline std::string with(std::string_view table, std::string const& added) {
  auto lines = least_lines();
  auto const head = std::find(lines.begin(), lines.end(), '[' + std::string(table) + ']');
  if (head == lines.end()) {
    return joined(lines) + '[' + std::string(table) + "]\n" + added + '\n';
  }
  lines.insert(head + 1, added);
  return joined(lines);
}

/// The least site without the lines that begin so.
inline std::string without(std::vector<std::string_view> const& begins) {
  auto lines = least_lines();
  for (auto const begin : begins) {
    lines.erase(std::remove_if(lines.begin(), lines.end(),
                               [&](std::string const& line) { return line.compare(0, begin.size(), begin) == 0; }),
                lines.end());
  }
  return joined(lines);
}

inline Findings findings(std::string const& text) {
  auto const read = read_site(text, "a.toml");
  return read ? Findings{} : read.error();
}

inline Finding const* about(Findings const& findings, std::string_view key) {
  auto const found = std::find_if(findings.begin(), findings.end(), [&](Finding const& one) { return one.key == key; });
  return found == findings.end() ? nullptr : &*found;
}

inline Range range_of(Site const& site, std::string_view key) {
  Range wanted = Fixed{-1e9};
  each_field(site, [&](Field const& field, Range const& range) { wanted = field.key == key ? range : wanted; });
  return wanted;
}

inline double width(Range const& range) {
  return highest(range) - lowest(range);
}

inline Result<SiteRead> read_example(std::string const& name) {
  auto const text = example_text(name);
  std::vector<Beside> beside;
  for (auto const& file : files_named(text)) {
    beside.push_back({file, example_text(file)});
  }
  return read_site(text, name, beside);
}

}  // namespace wellproof::site_text
