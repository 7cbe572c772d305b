#pragma once
// The page that tells every key of a site file: docs/site.md is this text, so that it cannot fall behind.
#include <string>

namespace wellproof {

/// Markdown.
std::string site_reference();

}  // namespace wellproof
