#pragma once
// The book's file as tables: what book.cc, check.cc and import.cc do with it.
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "book/book.h"
#include "book/database.h"

namespace wellproof {

/// The state of the chain while entries are added.
struct ChainEnd {
  std::uint64_t number = 0;
  std::string hash;
};

class Book::File {
 public:
  File(std::string path, Use use, int wait_ms);

  /// What is wrong with the file; findings that bar its use.
  Findings wrong(Use use);
  Database& database() { return database_; }

  /// Entries in order. Within a transaction of the caller's.
  std::vector<Entry> heads();
  std::optional<Entry> whole(std::uint64_t number);
  Result<std::optional<Lock>> lock();
  ChainEnd end();
  std::uint64_t newest_version(std::string const& site, EntryKind kind);
  std::optional<Entry> newest(std::string const& site, EntryKind kind);

  /// Makes the tables in a file that is still empty.
  void begin_if_empty();
  void append(Entry const& entry);
  /// Puts a record behind all others and tells its entry.
  Entry append(Record const& record, SealKey const* seal);

  Finding finding(std::string found, std::string expected) const;
  /// That the book is locked and the key is not its lock's; nothing if it may be written.
  Findings barred(std::optional<Lock> const& lock, SealKey const* key) const;

  /// Runs work that gives a Result. What SQLite refuses becomes a finding if the file is at fault, and else is thrown
  /// as BookUnavailable.
  template <class F>
  auto guarded(F&& work) const -> decltype(work()) {
    try {
      return work();
    } catch (Refused const& refused) {
      return tl::unexpected(Findings{at_fault(path_, refused)});
    }
  }
  /// The finding, or BookUnavailable thrown.
  static Finding at_fault(std::string const& path, Refused const& refused);

 private:
  bool is_empty();
  std::vector<Entry> read(std::string_view columns, std::string_view rest, std::uint64_t number);

  std::string path_;
  Database database_;
};

}  // namespace wellproof
