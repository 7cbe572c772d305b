#pragma once
// The words of the command line, made into a request. The parser library stays in arguments.cc.
#include <string>
#include <vector>

#include "door/request.h"

namespace wellproof {

/// What the command line says. Where `done` is set it has been answered already (help, version, a mistake).
struct Arguments {
  Request request;        // without the texts of the files
  bool has_site = false;  // whether the command reads a site file
  std::string site_path;
  std::string settings_path;           // empty: none
  std::string card_path;               // empty: none
  std::vector<std::string> set_paths;  // of compare: files, or words that stand for a set
  std::string readings_path;           // of fit and explain
  std::string history_path;            // of explain
  bool ask = false;                    // of explain
  std::string level_path;              // of welltest, with its place
  std::string distance;
  std::vector<std::string> observed;  // of welltest, FILE@DISTANCE
  bool done = false;
  Answer answer;
};

/// @param processors default number of threads
Arguments read_arguments(int count, char const* const* words, unsigned processors);

}  // namespace wellproof
