#pragma once
// A folder of its own for each test, and records to write down.
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>
#include <vector>

#include "book/archive.h"
#include "book/book.h"

namespace wellproof::book_files {

class Folder {
 public:
  /// @param in_memory where the system has a folder that no disk stands behind: for many books quickly
  explicit Folder(bool in_memory = false) {
    std::filesystem::path const quick = "/dev/shm";
    bool const use_quick = in_memory && std::filesystem::is_directory(quick);
    std::string name =
        ((use_quick ? quick : std::filesystem::temp_directory_path()) / ("wellproof_book_" + std::string(6, 'X')))
            .string();
    EXPECT_NE(::mkdtemp(name.data()), nullptr);
    path_ = name;
  }
  Folder(Folder const&) = delete;
  Folder(Folder&&) = delete;
  Folder& operator=(Folder const&) = delete;
  Folder& operator=(Folder&&) = delete;
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  std::string operator/(std::string const& name) const { return (path_ / name).string(); }
  std::filesystem::path const& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

inline Record record(std::string const& site, EntryKind kind, std::string const& content) {
  return {site, kind, "R. Installer", "2031-05-14T09:30:00Z", "as measured", "file.toml", content, {}};
}

inline Book opened(std::string const& path, Book::Use use = Book::Use::write) {
  auto book = Book::open(path, use, 200);
  if (!book) {
    throw std::runtime_error(text(book.error().front()));
  }
  return std::move(*book);
}

inline std::string only(Findings const& findings) {
  return findings.size() == 1 ? text(findings.front()) : std::to_string(findings.size()) + " findings";
}

inline std::string bytes_of(std::string const& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

inline void put(std::string const& path, std::string const& bytes) {
  std::ofstream(path, std::ios::binary) << bytes;
}

inline std::vector<Record> records_of(Book const& book) {
  std::vector<Record> records;
  auto const entries = book.entries().value();
  for (auto const& entry : entries) {
    records.push_back(entry.record);
  }
  return records;
}

/// An export by name.
using Files = std::map<std::string, std::string>;

inline Files files_of(Book const& book) {
  Files files;
  for (auto const& file : exported(book.entries().value())) {
    EXPECT_EQ(files.count(file.name), 0U) << file.name << " is written twice";
    files[file.name] = file.bytes;
  }
  return files;
}

inline Result<std::vector<Entry>> read_back(Files const& files) {
  return read_archive([&](std::string const& name) {
    auto const at = files.find(name);
    return at == files.end() ? std::nullopt : std::optional(at->second);
  });
}

}  // namespace wellproof::book_files
