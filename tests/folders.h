#pragma once
// Where the tests find files. Only folders.cc is compiled with the paths, so that the compiler's cache serves another
// clone for all other tests.
#include <string>

namespace wellproof {

/// The project's root, without a slash at its end.
std::string source_folder();

/// The published tables that are not part of the project; the folder may be absent, and what needs it is skipped then.
std::string reference_folder();

/// The text of a file of the project; empty if there is none.
/// @param path from the root
std::string source_text(std::string const& path);

/// The text of a file of examples.
std::string example_text(std::string const& name);

}  // namespace wellproof
