#pragma once
// A pass phrase from the terminal, without showing it, or from a file. Never from the command line, which others can
// see.
#include <string>

#include "contract/finding.h"

namespace wellproof {

/// The first line of the file; "-" is standard input.
Result<std::string> pass_phrase_of(std::string const& path);

/// Asks at the terminal; a fresh one twice.
Result<std::string> pass_phrase_asked(bool fresh);

}  // namespace wellproof
