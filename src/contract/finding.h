#pragma once
// What is wrong with something a person wrote. A finding is made for the person who has to mend the file: where it is,
// what stands there, what would be right. Findings are values; a reader collects all of them before it gives up.
#include <string>
#include <vector>

#include <tl/expected.hpp>

namespace wellproof {

/// A place in a text. Lines and columns count from 1, columns in characters; 0 means that the whole text is meant.
struct Place {
  std::string file;
  int line = 0;
  int column = 0;
  bool operator==(Place const&) const = default;
};

/// One thing that is wrong.
/// key      what it is about, as the user names it ("well.static_level"); may be empty
/// found    what stands there, quoted where it is quoted ("\"240 gpm\", a flow")
/// expected what would be right, as a phrase that completes "expected …"
/// nearest  the known word closest to an unknown one; empty if there is none
struct Finding {
  Place place;
  std::string key;
  std::string found;
  std::string expected;
  std::string nearest;
  bool operator==(Finding const&) const = default;
};

using Findings = std::vector<Finding>;

/// A value, or everything that kept it from being made.
template <class T>
using Result = tl::expected<T, Findings>;

/// One finding as one line: "file:line:column: key: found …; expected …; did you mean …?"; what is empty is left out.
std::string text(Finding const& finding);

}  // namespace wellproof
