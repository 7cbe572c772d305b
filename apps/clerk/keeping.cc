// The book as a whole: out of it and into it as files, locked and unlocked, checked.
#include <fmt/format.h>

#include "book/archive.h"
#include "clerk/book_text.h"
#include "clerk/desk.h"
#include "door/commands.h"

namespace wellproof {
namespace {

constexpr std::size_t least_phrase = 8;

std::string counted(std::size_t count) {
  return count == 1 ? "1 entry" : fmt::format("{} entries", count);
}

Record about_the_book(BookRequest const& request, EntryKind kind, std::string content) {
  std::string const why = request.why.empty() ? std::string(word(kind)) + "ed" : request.why;
  return {"", kind, request.who, request.at, why, kind == EntryKind::lock ? "lock.json" : "", std::move(content), {}};
}

}  // namespace

Answer export_book(BookRequest const& request, Surroundings const& with) {
  auto const book = Book::open(request.book, Book::Use::read);
  if (!book) {
    return refused(book.error());
  }
  auto const check = book->check();
  auto const entries = check ? book->entries() : Result<std::vector<Entry>>(tl::unexpected(check.error()));
  if (!entries) {
    return refused(entries.error());
  }
  if (!check->faults.empty()) {
    return refused(check->faults);
  }
  for (auto const& file : exported(*entries)) {
    if (auto const failed = with.write(file.name, file.bytes)) {
      return *failed;
    }
  }
  return {exit_code::fine, fmt::format("{} written to {}\n", counted(entries->size()), request.target), "", {}};
}

Answer import_book(BookRequest const& request, Surroundings const& with) {
  auto const others = read_archive(with.read);
  if (!others) {
    auto findings = others.error();
    for (auto& finding : findings) {
      finding.place.file = request.target + "/" + finding.place.file;
    }
    return refused(findings);
  }
  auto book = Book::open(request.book, Book::Use::write);
  if (!book) {
    return refused(book.error());
  }
  auto const key = key_for(*book, with);
  if (!key) {
    return refused(key.error());
  }
  auto const done = book->import(*others, *key ? &**key : nullptr);
  if (!done) {
    return refused(done.error());
  }
  std::string out = fmt::format("{} added, {} in the book already.\n", counted(done->added), counted(done->known));
  if (done->renumbered) {
    out +=
        "This was another book, or one that has grown apart: what was added has\nversions of its own behind those "
        "of this book.\n";
  }
  if (done->left > 0) {
    out += fmt::format("Locks of the other book were left out: {}.\n", counted(done->left));
  }
  return {exit_code::fine, out, "", {}};
}

Answer lock_book(BookRequest const& request, Surroundings const& with) {
  auto book = Book::open(request.book, Book::Use::write);
  auto const lock = book ? book->lock() : Result<std::optional<Lock>>(tl::unexpected(book.error()));
  if (!lock) {
    return refused(lock.error());
  }
  if (*lock) {
    return refused({{{request.book, 0, 0}, "", "a locked book", "one that is not; wellproof book unlock first", ""}});
  }
  auto const phrase = with.pass_phrase(true);
  if (!phrase) {
    return refused(phrase.error());
  }
  if (phrase->size() < least_phrase) {
    return refused({{{"", 0, 0},
                     "pass phrase",
                     fmt::format("{} characters", phrase->size()),
                     fmt::format("at least {}; a few words are best", least_phrase),
                     ""}});
  }
  auto const fresh = new_lock(*phrase);
  auto const key = key_of(fresh, *phrase);
  auto const added = book->add({about_the_book(request, EntryKind::lock, written(fresh))}, key ? &*key : nullptr);
  return added ? Answer{exit_code::fine,
                        "The book is locked. It can still be read by anybody who has the file; entries are added\n"
                        "through this program with the pass phrase only. Nobody can tell you a forgotten one.\n",
                        "",
                        {}}
               : refused(added.error());
}

Answer unlock_book(BookRequest const& request, Surroundings const& with) {
  auto book = Book::open(request.book, Book::Use::write);
  auto const key = book ? key_for(*book, with) : Result<std::optional<SealKey>>(tl::unexpected(book.error()));
  if (!key) {
    return refused(key.error());
  }
  if (!*key) {
    return refused({{{request.book, 0, 0}, "", "a book that is not locked", "a locked one", ""}});
  }
  auto const added = book->add({about_the_book(request, EntryKind::unlock, "")}, &**key);
  return added ? Answer{exit_code::fine, "The book is unlocked.\n", "", {}} : refused(added.error());
}

Answer check_book(BookRequest const& request, Surroundings const& with) {
  auto const book = Book::open(request.book, Book::Use::read);
  if (!book) {
    return refused(book.error());
  }
  std::optional<std::string> phrase;
  if (request.seals) {
    auto told = with.pass_phrase(false);
    if (!told) {
      return refused(told.error());
    }
    phrase = std::move(*told);
  }
  auto const check = book->check(phrase ? std::optional<std::string_view>(*phrase) : std::nullopt, request.noted);
  if (!check) {
    return refused(check.error());
  }
  if (!check->faults.empty()) {
    return refused(check->faults);
  }
  std::string out = fmt::format("{}: {}, each as it was written.\n", request.book, counted(check->entries));
  if (phrase) {
    out += fmt::format("The seals of {} are those of the pass phrase.\n", counted(check->sealed));
  } else if (check->locked) {
    out += "The book is locked; --seals holds its seals against the pass phrase.\n";
  }
  out += "Newest hash: " + check->last_hash + "\n";
  return {exit_code::fine, out, "", {}};
}

}  // namespace wellproof
