#include <fmt/format.h>

#include "book/book.h"
#include "book/chain.h"
#include "book/file.h"

namespace wellproof {
namespace {

/// The newest lock, and the key that the phrase gives for it.
struct Opened {
  std::uint64_t number = 0;
  std::optional<SealKey> key;
};

}  // namespace

Result<BookCheck> Book::check(std::optional<std::string_view> phrase, std::string_view noted) const {
  return file_->guarded([&]() -> Result<BookCheck> {
    auto& database = file_->database();
    Transaction const one_state(database, false);
    BookCheck check;
    Statement sound(database, "PRAGMA integrity_check(20)");
    while (sound.row()) {
      if (auto const says = sound.text(0); says != "ok") {
        check.faults.push_back(file_->finding(says, "a sound file; use a backup"));
      }
    }
    auto const heads = file_->heads();
    check.entries = heads.size();
    Opened opened;
    for (auto const& head : heads) {
      check.locked = head.record.kind == EntryKind::lock || (check.locked && head.record.kind != EntryKind::unlock);
      opened.number = head.record.kind == EntryKind::lock ? head.number : opened.number;
    }
    if (phrase && opened.number == 0) {
      check.faults.push_back(file_->finding("no lock", "one, since there is a pass phrase: the lock was taken out"));
    } else if (phrase) {
      auto const entry = file_->whole(opened.number);
      auto const lock = read_lock(entry ? entry->record.content : "");
      opened.key = lock ? key_of(*lock, *phrase) : std::nullopt;
      if (!opened.key) {
        check.faults.push_back(file_->finding("a lock that this pass phrase does not open", "the phrase of the lock"));
      }
    }
    ChainCheck chain;
    bool sealing = false;
    bool met = noted.empty();
    for (auto const& head : heads) {
      auto const entry = file_->whole(head.number).value_or(head);
      chain.take(entry);
      met = met || entry.hash == noted;
      sealing = sealing || entry.number == opened.number;
      if (opened.key && sealing) {
        if (entry.seal != opened.key->seal(entry.hash)) {
          check.faults.push_back({{"", 0, 0}, name_of(entry), "no seal of this pass phrase", "its seal", ""});
        }
        ++check.sealed;
      }
      sealing = sealing && entry.record.kind != EntryKind::unlock;
    }
    check.last_hash = chain.last_hash();
    check.faults.insert(check.faults.end(), chain.faults().begin(), chain.faults().end());
    if (!met) {
      check.faults.push_back(file_->finding("no entry with the hash " + std::string(noted),
                                            "one: the book was cut off or written anew since it was noted"));
    }
    return check;
  });
}

}  // namespace wellproof
