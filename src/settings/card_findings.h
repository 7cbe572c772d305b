#pragma once
// What is wrong with a card, and where: shared by the readers of its parts.
#include <string>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "contract/finding.h"
#include "contract/nearest.h"
#include "site/document.h"

namespace wellproof {

class CardFindings {
 public:
  CardFindings(std::string_view file, Findings& findings) : file_(file), findings_(findings) {}

  Place at(Node const& node) const { return {file_, node.line, node.column}; }
  Place at_key(Node const& node) const { return {file_, node.key_line, node.key_column}; }
  Place top() const { return {file_, 1, 1}; }
  std::size_t count() const { return findings_.size(); }

  void fault(Place place, std::string_view key, std::string found, std::string expected, std::string nearest = "") {
    findings_.push_back(
        {std::move(place), std::string(key), std::move(found), std::move(expected), std::move(nearest)});
  }

  /// @param within names the table before the key, "logic." or nothing
  template <class Words>
  void unknown(Node const& node, Words const& known, std::string_view within = "") {
    fault(at_key(node), std::string(within) + node.key, fmt::format("unknown key \"{}\"", node.key),
          fmt::format("one of {}", fmt::join(known, ", ")), nearest_word(node.key, known));
  }

  /// False, and a finding, where the node is no text.
  bool text(Node const& node, std::string_view key, std::string& into) {
    if (node.kind != Node::Kind::text) {
      fault(at(node), key, in_words(node), "a text in quotes");
      return false;
    }
    into = node.text;
    return true;
  }

 private:
  std::string file_;
  Findings& findings_;
};

}  // namespace wellproof
