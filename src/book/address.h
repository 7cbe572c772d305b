#pragma once
// How a person names a site of the book: by its name or enough of it to be the only one.
#include <string>
#include <string_view>
#include <vector>

#include "contract/finding.h"

namespace wellproof {

/// The name in small letters of ASCII, digits and hyphens: for a command line and a folder.
std::string slug(std::string_view site_name);

/// The one name that is meant: written out, as a slug, or by the beginning of either, capital or small.
Result<std::string> find_site(std::vector<std::string> const& names, std::string_view wanted);

}  // namespace wellproof
