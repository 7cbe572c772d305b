#pragma once
// Between a request and the files and screen of this machine: texts that a command names are read, an answer is written
// out.
#include <cstdio>
#include <string>
#include <vector>

#include "door/request.h"

namespace wellproof {

/// Reads a file that the command names. What cannot be read is noted in the answer.
std::string text_of(std::string const& path, char const* what, Answer& answer);

/// The files that a site file names stand beside it. One that cannot be read is left to the reader's findings.
std::vector<Beside> files_beside(std::string const& site_path, std::string const& site_text);

bool put(std::FILE* to, std::string const& text);

/// Writes the answer out and tells the exit code. A file that cannot be written does not take the rest of the answer
/// with it.
int given(Answer const& answer, bool may_replace);

}  // namespace wellproof
