#include <map>

#include "book/book.h"
#include "book/chain.h"
#include "book/file.h"

namespace wellproof {
namespace {

/// The first of the entries, counted from 0, whose seal is not the key's, from `begin` on while they are sealed at all.
std::optional<std::size_t> unsealed(std::vector<Entry> const& entries, std::size_t begin, SealKey const& key) {
  for (std::size_t i = begin; i < entries.size(); ++i) {
    if (entries[i].seal != key.seal(entries[i].hash)) {
      return i;
    }
    if (entries[i].record.kind == EntryKind::unlock) {
      break;
    }
  }
  return std::nullopt;
}

}  // namespace

Result<Imported> Book::import(std::vector<Entry> const& others, SealKey const* key) {
  ChainCheck chain;
  for (auto const& entry : others) {
    chain.take(entry);
  }
  if (!chain.faults().empty()) {
    return tl::unexpected(chain.faults());
  }
  return file_->guarded([&]() -> Result<Imported> {
    Transaction transaction(file_->database(), true);
    file_->begin_if_empty();
    auto const lock = file_->lock();
    if (!lock) {
      return tl::unexpected(lock.error());
    }
    if (auto const barred = file_->barred(*lock, key); !barred.empty()) {
      return tl::unexpected(barred);
    }
    Imported done;
    auto const heads = file_->heads();
    std::size_t const here = heads.size();
    bool const newer = here == 0 || (here <= others.size() && others[here - 1].hash == heads.back().hash);
    bool const older = !others.empty() && others.size() <= here && others.back().hash == heads[others.size() - 1].hash;
    if (newer) {
      if (auto const wrong = *lock ? unsealed(others, here, *key) : std::nullopt) {
        Finding fault = file_->finding("no seal of this pass phrase", "its seal");
        fault.key = name_of(others[*wrong]);
        return tl::unexpected(Findings{fault});
      }
      for (std::size_t i = here; i < others.size(); ++i) {
        file_->append(others[i]);
      }
      done.known = here;
      done.added = others.size() - here;
    } else if (older) {
      done.known = others.size();
    } else {
      std::map<std::string, std::size_t> held;
      for (auto const& head : heads) {
        ++held[record_hash(file_->whole(head.number).value_or(head).record)];
      }
      for (auto const& entry : others) {
        auto& times = held[record_hash(entry.record)];
        if (times > 0) {
          --times;
          ++done.known;
        } else if (!of_a_site(entry.record.kind)) {
          ++done.left;
        } else {
          file_->append(entry.record, *lock ? key : nullptr);
          ++done.added;
        }
      }
      done.renumbered = done.added > 0;
    }
    transaction.keep();
    return done;
  });
}

}  // namespace wellproof
