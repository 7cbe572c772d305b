#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <map>

#include "book/chain.h"
#include "unit/book/book_files.h"

namespace wellproof {
namespace {

using book_files::files_of;
using book_files::Folder;
using book_files::opened;
using book_files::read_back;
using book_files::record;
using book_files::records_of;

/// How often each record stands in the book, whatever its place.
std::map<std::string, int> tally(std::vector<Record> const& records) {
  std::map<std::string, int> count;
  for (auto const& one : records) {
    ++count[record_hash(one)];
  }
  return count;
}

// Whatever is written, exported and imported between three books, no book ever lacks what it once held, and a book that
// imported another holds all of that one.
RC_GTEST_PROP(ThreeBooks, LoseNothing, ()) {
  Folder const folder(true);
  std::vector<Book> books;
  for (auto const* const name : {"a", "b", "c"}) {
    books.push_back(opened(folder / name));
  }
  auto const steps = *rc::gen::inRange(1, 12);
  for (int i = 0; i < steps; ++i) {
    auto& book = books[*rc::gen::inRange<std::size_t>(0, 3)];
    auto const before = book.entries().value();
    std::vector<Record> wanted;
    if (*rc::gen::inRange(0, 3) > 0) {
      auto const site = *rc::gen::element<std::string>("Alder", "alder", "Birch 2");
      auto const kind = *rc::gen::element(EntryKind::site, EntryKind::settings, EntryKind::history);
      Record one = record(site, kind, *rc::gen::arbitrary<std::string>());
      wanted = {one};
      RC_ASSERT(book.add(wanted, nullptr, Book::Same::added).value().size() == 1U);
    } else {
      auto const& other = books[*rc::gen::inRange<std::size_t>(0, 3)];
      wanted = records_of(other);
      RC_ASSERT(book.import(read_back(files_of(other)).value()).has_value());
    }
    auto const after = book.entries().value();
    RC_ASSERT(after.size() >= before.size());
    for (std::size_t k = 0; k < before.size(); ++k) {
      RC_ASSERT(after[k].hash == before[k].hash);
    }
    auto const held = tally(records_of(book));
    for (auto const& [hash, times] : tally(wanted)) {
      RC_ASSERT(held.count(hash) == 1U);
      RC_ASSERT(held.at(hash) >= times);
    }
    RC_ASSERT(book.check().value().faults.empty());
  }
}

}  // namespace
}  // namespace wellproof
