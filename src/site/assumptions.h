#pragma once
// What is taken for each quantity that a site file leaves out, and why. Each is declared: an honest range that a
// measurement would narrow, never a silent default.
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "site/read.h"

namespace wellproof {

/// An assumption that hangs on nothing else of the site.
struct PlainAssumption {
  std::string_view key;    // a pipe run's without its number
  std::string_view range;  // as it would stand in the file
  std::string_view because;
};
std::vector<PlainAssumption> const& plain_assumptions();

/// An assumption that follows from what is known of the site: here only in words.
struct FollowingAssumption {
  std::string_view key;
  std::string_view follows;
};
std::vector<FollowingAssumption> const& following_assumptions();

/// Fills in all that is not among the given keys. Adds pipe runs where a place has none.
void assume_rest(SiteRead& read, std::set<std::string, std::less<>> given);

}  // namespace wellproof
