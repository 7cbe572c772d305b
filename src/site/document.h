#pragma once
// The tables, keys and values of a site file with the place where each stands, and everything that is wrong with its
// spelling as TOML. What the keys mean is the reader's matter (read.cc). The parser library stays inside document.cc.
#include <string>
#include <string_view>
#include <vector>

#include "contract/finding.h"

namespace wellproof {

/// A table, an array or a value. The order of items is the order of the text.
struct Node {
  enum class Kind { table, array, text, number, boolean, date };
  Kind kind = Kind::table;
  std::string key;   // empty in an array
  int key_line = 0;  // where the key stands, or the value if there is no key
  int key_column = 0;
  int line = 0;  // where the value stands
  int column = 0;
  int text_column = 0;  // of the first character inside the quotes; 0 if the text spans lines
  std::string text;     // of a text; of anything else a few words for a finding
  double number = 0;
  std::vector<Node> items;

  Node const* item(std::string_view wanted) const;
};

/// What can be read of the text, and the mistakes of spelling. After a mistake the line is left out and the rest is
/// read on, so that one forgotten quote does not hide what else is wrong; `skipped` names the keys of such lines.
struct Document {
  Node root;
  Findings findings;
  std::vector<std::string> skipped;
  bool complete = true;  // false: too broken to tell what is missing
};

/// Any bytes at all may be given.
Document read_document(std::string_view text, std::string_view file);

/// A value in a few words, for "found …".
std::string in_words(Node const& node);

}  // namespace wellproof
