#include "book/lock.h"

#include <gtest/gtest.h>
#include <sqlite3.h>

#include "book/archive.h"
#include "book/chain.h"
#include "unit/book/book_files.h"

namespace wellproof {
namespace {

using book_files::Folder;
using book_files::only;
using book_files::opened;
using book_files::record;

constexpr char const* phrase = "four words are best";
constexpr LockCost cheap{1, 8192};

SealKey lock_up(Book& book) {
  auto const lock = new_lock(phrase, cheap);
  auto key = key_of(lock, phrase);
  EXPECT_TRUE(key);
  Record locking = record("", EntryKind::lock, written(lock));
  EXPECT_TRUE(book.add({locking}, &*key));
  return std::move(*key);
}

void behind_its_back(std::string const& path, std::string const& sql) {
  sqlite3* file = nullptr;
  ASSERT_EQ(sqlite3_open(path.c_str(), &file), SQLITE_OK);
  EXPECT_EQ(sqlite3_exec(file, sql.c_str(), nullptr, nullptr, nullptr), SQLITE_OK) << sqlite3_errmsg(file);
  sqlite3_close(file);
}

/// Writes one content anew and makes all hashes fit again, as somebody could who knows how they are made.
void forge(std::string const& path) {
  auto entries = opened(path).entries().value();
  entries[1].record.content = "forged";
  std::string before = first_before();
  for (auto& entry : entries) {
    entry.before = before;
    entry.hash = before = chain_hash(entry);
    behind_its_back(path, "UPDATE entry SET content = x'" + hex(entry.record.content) + "', hash_before = '" +
                              entry.before + "', hash = '" + entry.hash +
                              "' WHERE number = " + std::to_string(entry.number));
  }
}

TEST(Lock, OpensForItsPhraseOnly) {
  auto const lock = new_lock(phrase, cheap);
  EXPECT_TRUE(key_of(lock, phrase));
  EXPECT_FALSE(key_of(lock, "four words are bests"));
  EXPECT_FALSE(key_of(lock, ""));
  EXPECT_NE(new_lock(phrase, cheap).salt, lock.salt);
  auto const read = read_lock(written(lock));
  ASSERT_TRUE(read);
  EXPECT_TRUE(key_of(*read, phrase));
}

// The verifier is written in the book for all to read.
TEST(Lock, TellsNothingOfTheKeyByItsVerifier) {
  auto const lock = new_lock(phrase, cheap);
  auto const key = key_of(lock, phrase);
  EXPECT_NE(key->seal("x"), lock.verifier);
  EXPECT_NE(key->seal("x"), key->seal("y"));
}

TEST(Lock, RefusesOneThatWouldTakeAllTheMemory) {
  auto lock = new_lock(phrase, cheap);
  lock.cost.memory_bytes = std::uint64_t{1} << 40U;
  EXPECT_FALSE(read_lock(written(lock)));
  EXPECT_FALSE(read_lock("{}"));
  EXPECT_FALSE(read_lock("lock"));
}

TEST(LockedBook, IsAddedToWithItsKeyOnly) {
  Folder const folder;
  auto book = opened(folder / "b");
  ASSERT_TRUE(book.add({record("Alder", EntryKind::settings, "one")}));
  auto const key = lock_up(book);
  EXPECT_NE(only(book.add({record("Alder", EntryKind::settings, "two")}).error()).find("found a locked book"),
            std::string::npos);
  auto const other = new_lock("another phrase", cheap);
  auto const other_key = key_of(other, "another phrase");
  EXPECT_FALSE(book.add({record("Alder", EntryKind::settings, "two")}, &*other_key));
  EXPECT_FALSE(book.add({record("", EntryKind::unlock, "")}));
  EXPECT_FALSE(book.import({}, nullptr));
  EXPECT_EQ(book.entries().value().size(), 2U);
  EXPECT_TRUE(book.add({record("Alder", EntryKind::settings, "two")}, &key));
  EXPECT_TRUE(book.add({record("", EntryKind::unlock, "")}, &key));
  EXPECT_TRUE(book.add({record("Alder", EntryKind::settings, "three")}));
  auto const check = book.check(phrase).value();
  EXPECT_TRUE(check.faults.empty());
  EXPECT_EQ(check.sealed, 3U);
  EXPECT_FALSE(check.locked);
}

TEST(LockedBook, ShowsAForgedChainToWhoeverKnowsThePhrase) {
  Folder const folder;
  {
    auto book = opened(folder / "b");
    ASSERT_TRUE(book.add({record("Alder", EntryKind::site, "x"), record("Alder", EntryKind::settings, "one")}));
    auto const key = lock_up(book);
    ASSERT_TRUE(book.add({record("Alder", EntryKind::settings, "two")}, &key));
  }
  forge(folder / "b");
  auto const book = opened(folder / "b");
  EXPECT_TRUE(book.check().value().faults.empty()) << "the hashes alone fit again";
  EXPECT_EQ(book.check(phrase).value().faults.size(), 2U) << "the lock and what came after it";
}

TEST(LockedBook, ShowsThatTheLockWasTakenOut) {
  Folder const folder;
  auto book = opened(folder / "b");
  ASSERT_TRUE(book.add({record("Alder", EntryKind::settings, "one")}));
  lock_up(book);
  behind_its_back(folder / "b", "DELETE FROM entry WHERE kind = 'lock'");
  EXPECT_TRUE(book.check().value().faults.empty());
  EXPECT_NE(only(book.check(phrase).value().faults).find("the lock was taken out"), std::string::npos);
}

TEST(LockedBook, SealsWhatItTakesFromAnother) {
  Folder const folder;
  auto other = opened(folder / "other");
  ASSERT_TRUE(other.add({record("Birch", EntryKind::settings, "one")}));
  auto book = opened(folder / "b");
  ASSERT_TRUE(book.add({record("Alder", EntryKind::settings, "one")}));
  auto const key = lock_up(book);
  EXPECT_EQ(book.import(other.entries().value(), &key).value().added, 1U);
  EXPECT_EQ(book.check(phrase).value().sealed, 2U);
  EXPECT_TRUE(book.check(phrase).value().faults.empty());
  // A longer state of the same book whose newest entry nobody with the phrase wrote.
  auto longer = book.entries().value();
  longer.push_back({4, 2, record("Alder", EntryKind::settings, "two"), longer.back().hash, "", ""});
  longer.back().hash = chain_hash(longer.back());
  EXPECT_FALSE(book.import(longer, &key));
}

}  // namespace
}  // namespace wellproof
