#pragma once
// What the book of an installer keeps: for each site the versions of its file and of its drive's settings, the sheets
// that were handed over, readings and histories of stops, each with who wrote it, when and why. Nothing in the book is
// ever changed or taken out; what was wrong is followed by what is right.
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "contract/finding.h"
#include "site/read.h"

namespace wellproof {

/// lock and unlock are entries about the book itself; they belong to no site.
enum class EntryKind { site, settings, sheet, readings, history, lock, unlock };

std::string_view word(EntryKind kind);
std::optional<EntryKind> entry_kind(std::string_view word);
/// Whether the kind belongs to a site.
bool of_a_site(EntryKind kind);

/// What is written down.
struct Record {
  std::string site;  // its name as in the site file
  EntryKind kind = EntryKind::site;
  std::string who;
  std::string at;  // "2031-05-14T09:30:00Z"; given by the caller, for the book reads no clock
  std::string why;
  std::string name;     // of the file that it came from, without its folder
  std::string content;  // bytes as they were
  std::vector<Beside> beside;
  bool operator==(Record const& other) const;
};

/// A record in its place in the book.
/// number   counts all entries from 1
/// version  counts the entries of one site and kind from 1
/// before   hash of the entry before, of zeros for the first; so a change anywhere shows in all that follow
/// hash     of everything above, 64 hexadecimal digits
/// seal     hash under the pass phrase, made while the book is locked; empty else
struct Entry {
  std::uint64_t number = 0;
  std::uint64_t version = 0;
  Record record;
  std::string before;
  std::string hash;
  std::string seal;
};

/// Whether the text is UTF-8 throughout.
bool is_utf8(std::string_view text);

/// What bars a record from being written down: names that cannot be read, a time in another form. What the content of a
/// site file or of settings must be is their readers' matter; the caller asks them first.
Findings wrong_with(Record const& record);

}  // namespace wellproof
