#pragma once
// What is asked of the book, from the command line or a page of this machine: contents are checked before they are
// written down, entries found by the names people use, answers written out. The clerk opens no file but the book; what
// else has to be read or written, and the pass phrase, comes through whoever carries the request.
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "book/entry.h"
#include "door/request.h"

namespace wellproof {

struct BookRequest {
  std::string command;  // add, list, show, diff, restore, export, import, lock, unlock, check
  std::string book;     // path of its file
  NamedText site;       // of add, with the files that it names
  std::vector<Beside> beside;
  std::vector<std::pair<EntryKind, NamedText>> files;  // of add, besides the site file
  std::string address;                                 // a site of the book, as find_site understands it; empty: all
  std::optional<EntryKind> kind;                       // settings where there are any, else the site file
  std::optional<std::uint64_t> version;                // none: the newest
  std::optional<std::uint64_t> other_version;          // of diff
  std::string who;
  std::string at;
  std::string why;
  std::string target;    // of restore, as findings name it
  std::string noted;     // of check: a hash
  bool seals = false;    // of check: hold them against the pass phrase
  bool content = false;  // of show: the bytes and nothing else
  bool json = false;
  bool colour = false;
  UnitSystem units = UnitSystem::us;
};

/// What the clerk asks back while it works.
struct Surroundings {
  /// A file of the folder that is imported; nothing if it cannot be read.
  std::function<std::optional<std::string>(std::string const& name)> read;
  /// Writes a file of an export or restore, and tells an exit code and text where that failed.
  std::function<std::optional<Answer>(std::string const& name, std::string const& bytes)> write;
  /// The pass phrase; `fresh`: one that is made up now. Findings where there is none to be had.
  std::function<Result<std::string>(bool fresh)> pass_phrase;
};

/// Exit code 2 with findings for what is wrong with the request or the book, 3 where the machine refuses.
Answer ask_book(BookRequest const& request, Surroundings const& with);

}  // namespace wellproof
