#pragma once
// What a site file says, by key ("well.static_level", "pipe.2.size"), with the findings that come from looking: unknown
// tables and keys, values of the wrong kind, ranges that cannot be read or lie outside the limits.
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "contract/finding.h"
#include "site/document.h"
#include "site/fields.h"

namespace wellproof {

class Entered {
 public:
  Entered(Document const& document, std::string_view file);

  std::size_t pipes() const { return pipes_; }
  std::size_t zones() const { return zones_; }

  bool has(std::string_view key) const { return find(key) != nullptr; }
  /// Present, or on a line that could not be spelled out: not to be called missing.
  bool meant(std::string_view key) const;
  Node const* find(std::string_view key) const;
  /// Where a table's head stands ("pump", "pipe.2"); 1:1 if the file has no such table.
  Place place_of_table(std::string_view table) const;
  Place place_of(Node const& node) const;
  Place place_of(std::string_view key) const;

  /// The quantity, if it is given and right; a finding if it is given and wrong.
  std::optional<Range> range(Field const& field);
  std::optional<std::string> text(std::string_view key);
  /// One of these words, or nothing; a finding if another stands there.
  std::optional<std::string> word(std::string_view key, std::vector<std::string_view> const& words);
  /// A number inside a list of a curve.
  std::optional<double> number(Node const& node, std::string_view key, Dimension dimension);

  void find_fault(Place place, std::string key, std::string found, std::string expected, std::string nearest = "");
  Findings& findings() { return findings_; }
  std::string const& file() const { return file_; }

 private:
  void take_table(Node const& table, std::string const& at, std::string const& generic);
  void take_runs(Node const& list, std::string const& name, std::size_t& count);
  void unknown_key(Node const& node, std::string const& at, std::string const& generic);
  Place inside(Node const& node, std::size_t offset) const;

  std::string file_;
  Findings findings_;
  std::map<std::string, Node const*, std::less<>> nodes_;
  std::map<std::string, Node const*, std::less<>> tables_;
  std::set<std::string, std::less<>> skipped_;
  std::size_t pipes_ = 0;
  std::size_t zones_ = 0;
};

/// A key without its number: "pipe.2.size" is "pipe.size".
std::string without_number(std::string_view key);

}  // namespace wellproof
