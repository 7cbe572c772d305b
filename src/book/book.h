#pragma once
// The book itself: one SQLite file, written so that the program may be killed at any moment and at most the entry in
// hand is missing afterwards. Entries are added, never changed. It is the one room that opens a file: the book's own.
#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "book/entry.h"
#include "book/lock.h"

namespace wellproof {

/// The machine does not let the book be read or written: no leave, no room, another program at it. Caught in apps.
struct BookUnavailable : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// What a check found. Faults of an untouched book: none.
struct BookCheck {
  std::size_t entries = 0;
  std::string last_hash;   // of the newest entry; noted elsewhere, it shows later that nothing was cut off
  std::size_t sealed = 0;  // entries whose seal was held against the pass phrase
  bool locked = false;
  Findings faults;
};

/// What an import did.
struct Imported {
  std::size_t added = 0;
  std::size_t known = 0;    // stood in the book already
  std::size_t left = 0;     // locks of the other book, which mean nothing in this one
  bool renumbered = false;  // the books had grown apart: what was added follows in versions of this book
};

class Book {
 public:
  enum class Use { read, write };

  /// A file of another kind, of a newer version of the program, or a damaged one is a finding; when reading, an absent
  /// one too. All members throw BookUnavailable.
  /// @param wait_ms how long to wait for another program that writes
  static Result<Book> open(std::string const& path, Use use, int wait_ms = 5000);
  Book(Book&& other) noexcept;
  Book(Book const&) = delete;
  Book& operator=(Book const&) = delete;
  Book& operator=(Book&&) = delete;
  ~Book();

  /// All entries in order, or only their heads, without content and files.
  enum class Part { whole, head };
  Result<std::vector<Entry>> entries(Part part = Part::whole) const;

  /// One entry, held against its hash.
  Result<Entry> entry(std::uint64_t number) const;

  /// The lock in force.
  Result<std::optional<Lock>> lock() const;

  enum class Same { left_out, added };

  /// Adds all of the records or none. While the book is locked the key must be its lock's; a lock is added with the key
  /// that its phrase gives.
  /// @param same what becomes of a record whose content is that of the newest version already
  /// @return     the entries that were added
  Result<std::vector<Entry>> add(std::vector<Record> const& records, SealKey const* key = nullptr,
                                 Same same = Same::left_out);

  /// Adds what another book exported (archive.h). An older or newer state of this book is taken over entry by entry,
  /// hashes and seals alike; from another book what this one does not hold is added behind its own.
  Result<Imported> import(std::vector<Entry> const& others, SealKey const* key = nullptr);

  /// The file's soundness, the chain of hashes, versions without a gap, and the seals where a phrase is given.
  /// @param noted a hash that an entry must have: that of an earlier check; empty for none
  Result<BookCheck> check(std::optional<std::string_view> phrase = std::nullopt, std::string_view noted = {}) const;

 private:
  class File;
  explicit Book(std::unique_ptr<File> file);
  std::unique_ptr<File> file_;
};

}  // namespace wellproof
