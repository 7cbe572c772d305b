#pragma once
// The SQLite file that a book is, as far as the book needs it: statements with values put in and taken out, and what
// the library refuses as an exception. The library's header stays in database.cc.
#include <cstdint>
#include <stdexcept>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

namespace wellproof {

/// What SQLite refused.
struct Refused : std::runtime_error {
  enum class Why { damaged, no_database, busy, full, read_only, cannot_open, other };
  Refused(Why why_is, std::string const& says) : std::runtime_error(says), why(why_is) {}
  Why why;
};

class Database;

/// One statement, run from its first row on. Values are put in with `with` before the first row.
class Statement {
 public:
  Statement(Database& database, std::string_view sql);
  Statement(Statement const&) = delete;
  Statement(Statement&&) = delete;
  Statement& operator=(Statement const&) = delete;
  Statement& operator=(Statement&&) = delete;
  ~Statement();

  Statement& with(std::uint64_t value);
  Statement& with(std::string_view text);
  Statement& with_bytes(std::string_view bytes);

  /// To the next row; false after the last.
  bool row();
  /// To the end.
  void run();
  std::uint64_t number(int column) const;
  std::string text(int column) const;  // bytes too; nothing for a null

 private:
  Database& database_;
  sqlite3_stmt* statement_ = nullptr;
  int next_ = 1;
};

class Database {
 public:
  /// @param create  whether a file that is not there is made
  /// @param wait_ms how long another program that writes is waited for
  Database(std::string const& path, bool create, int wait_ms);
  Database(Database const&) = delete;
  Database(Database&&) = delete;
  Database& operator=(Database const&) = delete;
  Database& operator=(Database&&) = delete;
  ~Database();

  void run(std::string_view sql);
  std::uint64_t number(std::string_view sql);
  bool writable() const;

 private:
  friend class Statement;
  [[noreturn]] void refuse(int code) const;
  sqlite3* handle_ = nullptr;
};

/// All or nothing: what was written goes away again unless `keep` was called.
class Transaction {
 public:
  /// @param writing takes the one place of a writer at once, so that what is read first is still so when it is written
  Transaction(Database& database, bool writing);
  Transaction(Transaction const&) = delete;
  Transaction(Transaction&&) = delete;
  Transaction& operator=(Transaction const&) = delete;
  Transaction& operator=(Transaction&&) = delete;
  ~Transaction();
  void keep();

 private:
  Database& database_;
  bool open_ = true;
};

}  // namespace wellproof
