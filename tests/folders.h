#pragma once

#include <string>

namespace wellproof {

// Where the tests find files. Only folders.cc is compiled with the paths, so that the compiler's cache serves another
// clone for all other tests.

// The project's root, without a slash at its end.
std::string source_folder();

// The published tables that are not part of the project; the folder may be absent, and what needs it is skipped then.
std::string reference_folder();

}  // namespace wellproof
