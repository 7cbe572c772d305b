#include "book/book.h"

#include <gtest/gtest.h>
#include <sqlite3.h>
#include <sys/resource.h>
#include <sys/wait.h>

#include <csignal>

#include "book/chain.h"
#include "unit/book/book_files.h"

namespace wellproof {
namespace {

using book_files::bytes_of;
using book_files::Folder;
using book_files::only;
using book_files::opened;
using book_files::put;
using book_files::record;

/// Does to the file what another tool could do.
void behind_its_back(std::string const& path, char const* sql) {
  sqlite3* file = nullptr;
  ASSERT_EQ(sqlite3_open(path.c_str(), &file), SQLITE_OK);
  char* error = nullptr;
  EXPECT_EQ(sqlite3_exec(file, sql, nullptr, nullptr, &error), SQLITE_OK) << error;
  sqlite3_close(file);
}

void three_entries(std::string const& path) {
  auto book = opened(path);
  ASSERT_TRUE(book.add({record("Alder", EntryKind::site, "site"), record("Alder", EntryKind::settings, "one")}));
  ASSERT_TRUE(book.add({record("Alder", EntryKind::settings, "two")}));
}

std::string refusal(std::string const& path, Book::Use use) {
  auto const book = Book::open(path, use, 100);
  return book ? "opened" : only(book.error());
}

TEST(Book, CountsVersionsWithinSiteAndKind) {
  Folder const folder;
  three_entries(folder / "b");
  auto book = opened(folder / "b");
  ASSERT_TRUE(book.add({record("Birch", EntryKind::settings, "one")}));
  auto const entries = book.entries().value();
  ASSERT_EQ(entries.size(), 4U);
  EXPECT_EQ(entries[2].version, 2U);
  EXPECT_EQ(entries[2].record.content, "two");
  EXPECT_EQ(entries[3].version, 1U);
  EXPECT_EQ(book.entry(2).value().record.content, "one");
}

TEST(Book, KeepsAnyBytesAndTheFilesBeside) {
  Folder const folder;
  Record sheet = record("Alder", EntryKind::sheet, std::string("\0\xFF\r\n\x1A", 5));
  sheet.beside = {{"curve.csv", "1,2\n"}, {"empty.csv", ""}};
  ASSERT_TRUE(opened(folder / "b").add({sheet, record("Alder", EntryKind::readings, "")}));
  auto const entries = opened(folder / "b").entries().value();
  EXPECT_TRUE(entries[0].record == sheet);
  EXPECT_EQ(entries[1].record.content, "");
}

TEST(Book, LeavesOutWhatTheNewestVersionSaysAlready) {
  Folder const folder;
  three_entries(folder / "b");
  auto book = opened(folder / "b");
  EXPECT_TRUE(book.add({record("Alder", EntryKind::settings, "two")}).value().empty());
  EXPECT_EQ(book.add({record("Alder", EntryKind::settings, "one")}).value().size(), 1U);
  EXPECT_EQ(book.add({record("Alder", EntryKind::settings, "one")}, nullptr, Book::Same::added).value().size(), 1U);
}

TEST(Book, AddsAllOrNothing) {
  Folder const folder;
  auto book = opened(folder / "b");
  Record wrong = record("Alder", EntryKind::settings, "x");
  wrong.why = "two\nlines";
  wrong.at = "yesterday";
  auto const refused = book.add({record("Alder", EntryKind::site, "x"), wrong});
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().size(), 2U);
  EXPECT_EQ(opened(folder / "b").add({}).value().size(), 0U);
  EXPECT_EQ(book.entries().value().size(), 0U);
}

TEST(Book, RefusesANewerOneAndLeavesItAlone) {
  Folder const folder;
  three_entries(folder / "b");
  behind_its_back(folder / "b", "PRAGMA user_version = 2");
  auto const before = bytes_of(folder / "b");
  for (auto const use : {Book::Use::read, Book::Use::write}) {
    auto const says = refusal(folder / "b", use);
    EXPECT_NE(says.find("found a book of format 2, written by a newer version of wellproof"), std::string::npos)
        << says;
    EXPECT_NE(says.find("expected format 1"), std::string::npos) << says;
  }
  EXPECT_EQ(bytes_of(folder / "b"), before);
}

TEST(Book, RefusesWhatIsNoBook) {
  Folder const folder;
  EXPECT_NE(refusal(folder / "none", Book::Use::read).find("found no book"), std::string::npos);
  EXPECT_FALSE(std::filesystem::exists(folder / "none"));
  put(folder / "text", "pressure.target = \"50 psi\"\n" + std::string(2000, '#'));
  EXPECT_NE(refusal(folder / "text", Book::Use::write).find("a file of another kind"), std::string::npos);
  behind_its_back(folder / "other", "CREATE TABLE birds (name)");
  EXPECT_NE(refusal(folder / "other", Book::Use::write).find("another program"), std::string::npos);
  three_entries(folder / "more");
  behind_its_back(folder / "more", "CREATE TRIGGER t AFTER INSERT ON entry BEGIN DELETE FROM entry; END");
  EXPECT_NE(refusal(folder / "more", Book::Use::write).find("other tables"), std::string::npos);
  EXPECT_THROW(Book::open(folder.path().string(), Book::Use::write), BookUnavailable);
  EXPECT_THROW(Book::open(folder / "no/such/folder", Book::Use::write), BookUnavailable);
}

// A file of no length is what a kill leaves between opening and the first entry.
TEST(Book, BeginsInAFileOfNoLength) {
  Folder const folder;
  put(folder / "b", "");
  EXPECT_NE(refusal(folder / "b", Book::Use::read).find("found no book"), std::string::npos);
  three_entries(folder / "b");
  EXPECT_EQ(opened(folder / "b", Book::Use::read).entries().value().size(), 3U);
}

TEST(Book, SaysWhatIsDamagedAndNeverGivesItAsSound) {
  Folder const folder;
  {
    auto book = opened(folder / "sound");
    for (char i = 40; i < 80; ++i) {
      ASSERT_TRUE(book.add({record("Alder", EntryKind::sheet, std::string(3000, i))}));
    }
  }
  auto const sound = bytes_of(folder / "sound");
  std::size_t told = 0;
  std::size_t const step = sound.size() / 61;
  for (std::size_t at = 100; at + 64 < sound.size(); at += step) {
    auto bytes = sound;
    for (std::size_t i = at; i < at + 64; ++i) {
      bytes[i] = static_cast<char>(bytes[i] ^ 0x5A);
    }
    put(folder / "b", bytes);
    auto const book = Book::open(folder / "b", Book::Use::read);
    auto const check = book ? book->check() : Result<BookCheck>(tl::unexpected(book.error()));
    told += !check || !check->faults.empty() ? 1U : 0U;
    auto const entries = check ? book->entries(Book::Part::head) : Result<std::vector<Entry>>(std::vector<Entry>{});
    for (std::uint64_t number = 1; entries && number <= entries->size(); ++number) {
      if (auto const entry = book->entry(number)) {
        EXPECT_EQ(chain_hash(*entry), entry->hash);
      }
    }
  }
  // A few of the stretches are room that holds nothing.
  EXPECT_GT(told, 40U);
}

TEST(Book, ShowsWhatWasChangedBehindItsBack) {
  for (auto const* const sql :
       {"UPDATE entry SET content = x'61' WHERE number = 2", "UPDATE entry SET who = 'x' WHERE number = 1",
        "DELETE FROM entry WHERE number = 2", "UPDATE entry SET at = '2030' WHERE number = 3",
        "INSERT INTO beside VALUES (1, 1, 'a', x'61')"}) {
    Folder const folder;
    three_entries(folder / "b");
    EXPECT_TRUE(opened(folder / "b").check().value().faults.empty());
    behind_its_back(folder / "b", sql);
    EXPECT_FALSE(opened(folder / "b").check().value().faults.empty()) << sql;
  }
}

TEST(Book, ShowsByANotedHashThatItsEndWasCutOff) {
  Folder const folder;
  three_entries(folder / "b");
  auto const noted = opened(folder / "b").check().value().last_hash;
  ASSERT_TRUE(opened(folder / "b").add({record("Alder", EntryKind::history, "stops")}));
  EXPECT_TRUE(opened(folder / "b").check(std::nullopt, noted).value().faults.empty());
  behind_its_back(folder / "b", "DELETE FROM entry WHERE number >= 3");
  EXPECT_TRUE(opened(folder / "b").check().value().faults.empty());
  EXPECT_EQ(opened(folder / "b").check(std::nullopt, noted).value().faults.size(), 1U);
}

TEST(Book, SaysThatAnotherProgramWritesAndLosesNothing) {
  Folder const folder;
  three_entries(folder / "b");
  sqlite3* other = nullptr;
  ASSERT_EQ(sqlite3_open((folder / "b").c_str(), &other), SQLITE_OK);
  ASSERT_EQ(sqlite3_exec(other, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr), SQLITE_OK);
  try {
    auto const added = opened(folder / "b").add({record("Alder", EntryKind::settings, "three")});
    FAIL() << "it was written to";
  } catch (BookUnavailable const& error) {
    EXPECT_NE(std::string(error.what()).find("another program is writing"), std::string::npos) << error.what();
  }
  EXPECT_EQ(opened(folder / "b", Book::Use::read).entries().value().size(), 3U);
  sqlite3_close(other);
  EXPECT_TRUE(opened(folder / "b").add({record("Alder", EntryKind::settings, "three")}));
}

/// Runs work in a process of its own, which may give leave and room away, and tells whether it ended with 0.
template <class F>
bool apart(F&& work) {
  auto const child = ::fork();
  if (child == 0) {
    ::_exit(work() ? 0 : 1);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

// A limit on a file's length refuses to write as a full disk does.
TEST(Book, IsWholeAfterTheDiskWasFull) {
  Folder const folder;
  three_entries(folder / "b");
  auto const length = std::filesystem::file_size(folder / "b");
  EXPECT_TRUE(apart([&] {
    ::signal(SIGXFSZ, SIG_IGN);
    rlimit const limit{length + 8192, length + 8192};
    ::setrlimit(RLIMIT_FSIZE, &limit);
    try {
      auto const added = opened(folder / "b").add({record("Alder", EntryKind::sheet, std::string(400'000, 'x'))});
      return false;
    } catch (BookUnavailable const&) {
      return true;
    }
  }));
  EXPECT_EQ(opened(folder / "b").entries().value().size(), 3U);
  EXPECT_TRUE(opened(folder / "b").check().value().faults.empty());
}

TEST(Book, IsReadWhereItMayNotBeWritten) {
  Folder const folder;
  three_entries(folder / "b");
  ASSERT_EQ(::chmod((folder / "b").c_str(), 0444), 0);
  ASSERT_EQ(::chmod(folder.path().c_str(), 0555), 0);
  EXPECT_TRUE(apart([&] {
    // The superuser may write everywhere; nobody (65534) may not.
    if (::geteuid() == 0 && ::setuid(65534) != 0) {
      return false;
    }
    if (opened(folder / "b", Book::Use::read).entries().value().size() != 3) {
      return false;
    }
    try {
      auto const book = Book::open(folder / "b", Book::Use::write);
      return false;
    } catch (BookUnavailable const& error) {
      return std::string(error.what()).find("may only be read") != std::string::npos;
    }
  }));
  ::chmod(folder.path().c_str(), 0755);
}

}  // namespace
}  // namespace wellproof
