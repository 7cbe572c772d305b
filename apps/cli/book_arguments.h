#pragma once
// The words after "wellproof book". The parser library stays in book_arguments.cc.
#include <string>
#include <utility>
#include <vector>

#include "clerk/clerk.h"

namespace wellproof {

struct BookArguments {
  BookRequest request;  // without texts, time and login name
  std::string site_path;
  std::vector<std::pair<EntryKind, std::string>> paths;  // of the files to add
  std::string folder;                                    // of an export
  std::string pass_path;                                 // file with the pass phrase; "-": standard input
  bool done = false;
  Answer answer;
};

BookArguments read_book_arguments(int count, char const* const* words);

}  // namespace wellproof
