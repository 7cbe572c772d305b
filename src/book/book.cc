#include "book/book.h"

#include <utility>

#include <sqlite3.h>

#include "book/chain.h"
#include "book/file.h"

namespace wellproof {
namespace {

/// Whether a file stands there that is not empty. The library's own look, so that the room opens nothing itself.
bool stands(std::string const& path) {
  int there = 0;
  auto* const files = sqlite3_vfs_find(nullptr);
  return files != nullptr && files->xAccess(files, path.c_str(), SQLITE_ACCESS_EXISTS, &there) == SQLITE_OK &&
         there != 0;
}

bool same_content(Record const& a, Entry const& newest) {
  Record other = newest.record;
  other.who = a.who;
  other.at = a.at;
  other.why = a.why;
  other.name = a.name;
  return a == other;
}

}  // namespace

Book::Book(std::unique_ptr<File> file) : file_(std::move(file)) {}
Book::Book(Book&& other) noexcept = default;
Book::~Book() = default;

Result<Book> Book::open(std::string const& path, Use use, int wait_ms) {
  if (use == Use::read && !stands(path)) {
    return tl::unexpected(Findings{{{path, 0, 0}, "", "no book", "one; \"wellproof book add\" begins it", ""}});
  }
  try {
    auto file = std::make_unique<File>(path, use, wait_ms);
    auto const wrong = file->wrong(use);
    if (!wrong.empty()) {
      return tl::unexpected(wrong);
    }
    if (use == Use::write && !file->database().writable()) {
      throw Refused(Refused::Why::read_only, path);
    }
    return Book(std::move(file));
  } catch (Refused const& refused) {
    return tl::unexpected(Findings{File::at_fault(path, refused)});
  }
}

Result<std::vector<Entry>> Book::entries(Part part) const {
  return file_->guarded([&]() -> Result<std::vector<Entry>> {
    Transaction const one_state(file_->database(), false);
    auto entries = file_->heads();
    if (part == Part::whole) {
      for (auto& entry : entries) {
        entry = file_->whole(entry.number).value_or(entry);
      }
    }
    return entries;
  });
}

Result<Entry> Book::entry(std::uint64_t number) const {
  return file_->guarded([&]() -> Result<Entry> {
    Transaction const one_state(file_->database(), false);
    auto entry = file_->whole(number);
    if (!entry) {
      return tl::unexpected(Findings{file_->finding("no such entry", "an entry of the list")});
    }
    if (chain_hash(*entry) != entry->hash) {
      Finding fault = file_->finding("something else than was written", "what its hash was made of; use a backup");
      fault.key = name_of(*entry);
      return tl::unexpected(Findings{fault});
    }
    return std::move(*entry);
  });
}

Result<std::optional<Lock>> Book::lock() const {
  return file_->guarded([&] {
    Transaction const one_state(file_->database(), false);
    return file_->lock();
  });
}

Result<std::vector<Entry>> Book::add(std::vector<Record> const& records, SealKey const* key, Same same) {
  Findings findings;
  for (auto const& record : records) {
    auto const wrong = wrong_with(record);
    findings.insert(findings.end(), wrong.begin(), wrong.end());
  }
  if (!findings.empty()) {
    return tl::unexpected(findings);
  }
  return file_->guarded([&]() -> Result<std::vector<Entry>> {
    Transaction transaction(file_->database(), true);
    file_->begin_if_empty();
    std::vector<Entry> added;
    for (auto const& record : records) {
      auto const lock = file_->lock();
      if (!lock) {
        return tl::unexpected(lock.error());
      }
      if (auto const barred = file_->barred(*lock, key); !barred.empty()) {
        return tl::unexpected(barred);
      }
      auto const newest = of_a_site(record.kind) ? file_->newest(record.site, record.kind) : std::nullopt;
      if (same == Same::left_out && newest && same_content(record, *newest)) {
        continue;
      }
      bool const sealed = lock->has_value() || record.kind == EntryKind::lock;
      added.push_back(file_->append(record, sealed ? key : nullptr));
    }
    transaction.keep();
    return added;
  });
}

}  // namespace wellproof
