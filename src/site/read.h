#pragma once
// From the text of a site file to a Site. Everything that is wrong is found at once; everything that is left out
// becomes a declared assumption.
#include <string>
#include <string_view>
#include <vector>

#include "contract/finding.h"
#include "site/site.h"

namespace wellproof {

/// A quantity that the file left out: what was taken instead, and why.
struct Assumption {
  std::string key;
  Range range;
  Dimension dimension = Dimension::none;
  std::string because;
};

/// A site as read: what was given, what was assumed.
struct SiteRead {
  Site site;
  std::vector<Assumption> assumptions;
};

/// A file beside the site file that it names (the points of a curve): name and text. The caller opens files, we do not.
struct Beside {
  std::string name;
  std::string text;
};

/// Names of the files that this site file refers to, in order; empty if the text cannot be read as TOML at all.
std::vector<std::string> files_named(std::string_view text);

/// Reads and checks. Findings carry `file` as the place's file.
Result<SiteRead> read_site(std::string_view text, std::string_view file, std::vector<Beside> const& beside = {});

/// Every key that a site file may hold; a pipe run's or a zone's without its number ("pipe.size").
std::vector<std::string> known_keys();

/// A commented starter file in the customary units of the system: valid as it stands.
std::string starter_site(UnitSystem system);

}  // namespace wellproof
