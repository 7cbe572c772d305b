#include "book/archive.h"

#include <gtest/gtest.h>

#include <map>

#include "unit/book/book_files.h"

namespace wellproof {
namespace {

using book_files::Files;
using book_files::files_of;
using book_files::Folder;
using book_files::opened;
using book_files::read_back;
using book_files::record;
using book_files::records_of;

Record with_curve(std::string const& site) {
  Record made = record(site, EntryKind::site, "site \xC3\xA4\n");
  made.beside = {{"curve.csv", "1,2\r\n"}, {"../up.csv", "3"}, {"site.toml", "clash"}, {"a b.csv", ""}};
  return made;
}

TEST(Archive, ComesBackByteForByte) {
  Folder const folder;
  auto book = opened(folder / "b");
  ASSERT_TRUE(book.add({with_curve("Alder Hollow 4"), record("Alder Hollow 4", EntryKind::settings, "one")}));
  ASSERT_TRUE(
      book.add({with_curve("alder, hollow 4"), record("\xC3\x9C", EntryKind::sheet, std::string("\0\xFF", 2))}));
  auto const files = files_of(book);
  auto other = opened(folder / "other");
  EXPECT_EQ(other.import(read_back(files).value()).value().added, 4U);
  EXPECT_EQ(files_of(other), files);
  EXPECT_EQ(other.import(read_back(files).value()).value().added, 0U);
  EXPECT_EQ(records_of(other), records_of(book));
  EXPECT_TRUE(other.check().value().faults.empty());
}

TEST(Archive, KeepsItsFilesBelowItsFolder) {
  Folder const folder;
  auto book = opened(folder / "b");
  ASSERT_TRUE(book.add({with_curve("../../etc"), record("/", EntryKind::settings, "x")}));
  for (auto const& [name, bytes] : files_of(book)) {
    EXPECT_EQ(name.find(".."), std::string::npos) << name;
    EXPECT_NE(name.front(), '/') << name;
  }
}

TEST(Archive, RefusesWhatWasChangedOrPointsElsewhere) {
  Folder const folder;
  auto book = opened(folder / "b");
  ASSERT_TRUE(book.add({with_curve("Alder"), record("Alder", EntryKind::settings, "one")}));
  auto const sound = files_of(book);
  for (auto const& [name, bytes] : sound) {
    auto files = sound;
    files[name] += " ";
    EXPECT_EQ(read_back(files).has_value(), name == index_name) << name;
    files.erase(name);
    EXPECT_FALSE(read_back(files)) << name;
  }
  auto const with = [&](std::string const& was, std::string const& is) {
    auto files = sound;
    auto& index = files[std::string(index_name)];
    index.replace(index.find(was), was.size(), is);
    return files;
  };
  EXPECT_FALSE(read_back(with("alder/settings-1.toml", "../../etc/passwd")));
  EXPECT_FALSE(read_back(with("\"wellproof_book\": 1", "\"wellproof_book\": 2")));
  EXPECT_FALSE(read_back(with("R. Installer", "R. Another")));
  EXPECT_FALSE(read_back(with("\"number\": 2", "\"number\": 3")));
  EXPECT_FALSE(read_back({{"index.json", "[1, {\"entries\": []}]"}}));
}

TEST(Import, OfAnotherBookAddsBehindAndIsDoneOnce) {
  Folder const folder;
  auto mine = opened(folder / "mine");
  auto yours = opened(folder / "yours");
  ASSERT_TRUE(mine.add({record("Alder", EntryKind::settings, "mine")}));
  ASSERT_TRUE(yours.add({record("Alder", EntryKind::settings, "yours"), record("Birch", EntryKind::settings, "one")}));
  auto const done = mine.import(yours.entries().value()).value();
  EXPECT_EQ(done.added, 2U);
  EXPECT_TRUE(done.renumbered);
  auto const entries = mine.entries().value();
  ASSERT_EQ(entries.size(), 3U);
  EXPECT_EQ(entries[1].record.content, "yours");
  EXPECT_EQ(entries[1].version, 2U);
  EXPECT_EQ(mine.import(yours.entries().value()).value().added, 0U);
  EXPECT_TRUE(mine.check().value().faults.empty());
}

}  // namespace
}  // namespace wellproof
