#include "book/database.h"

#include <limits>

#include <sqlite3.h>

namespace wellproof {
namespace {

Refused::Why why_of(int code) {
  switch (code & 0xFF) {
    case SQLITE_CORRUPT:
      return Refused::Why::damaged;
    case SQLITE_NOTADB:
      return Refused::Why::no_database;
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return Refused::Why::busy;
    case SQLITE_FULL:
      return Refused::Why::full;
    case SQLITE_READONLY:
    case SQLITE_PERM:
      return Refused::Why::read_only;
    case SQLITE_CANTOPEN:
      return Refused::Why::cannot_open;
    default:
      return Refused::Why::other;
  }
}

int length(std::string_view text) {
  if (text.size() > static_cast<std::size_t>(std::numeric_limits<int>::max())) {
    throw Refused(Refused::Why::other, "a text or statement is too long");
  }
  return static_cast<int>(text.size());
}

/// Never a null pointer, which would put in a null.
char const* begin_of(std::string_view text) {
  return text.empty() ? "" : text.data();
}

}  // namespace

Statement::Statement(Database& database, std::string_view sql) : database_(database) {
  int const code = sqlite3_prepare_v2(database.handle_, sql.data(), length(sql), &statement_, nullptr);
  if (code != SQLITE_OK) {
    database.refuse(code);
  }
}

Statement::~Statement() {
  sqlite3_finalize(statement_);
}

Statement& Statement::with(std::uint64_t value) {
  if (int const code = sqlite3_bind_int64(statement_, next_++, static_cast<sqlite3_int64>(value)); code != SQLITE_OK) {
    database_.refuse(code);
  }
  return *this;
}

Statement& Statement::with(std::string_view text) {
  int const code = sqlite3_bind_text(statement_, next_++, begin_of(text), length(text), SQLITE_TRANSIENT);  // NOLINT
  if (code != SQLITE_OK) {
    database_.refuse(code);
  }
  return *this;
}

Statement& Statement::with_bytes(std::string_view bytes) {
  int const code = sqlite3_bind_blob(statement_, next_++, begin_of(bytes), length(bytes), SQLITE_TRANSIENT);  // NOLINT
  if (code != SQLITE_OK) {
    database_.refuse(code);
  }
  return *this;
}

bool Statement::row() {
  int const code = sqlite3_step(statement_);
  if (code != SQLITE_ROW && code != SQLITE_DONE) {
    database_.refuse(code);
  }
  return code == SQLITE_ROW;
}

void Statement::run() {
  while (row()) {
  }
}

std::uint64_t Statement::number(int column) const {
  return static_cast<std::uint64_t>(sqlite3_column_int64(statement_, column));
}

std::string Statement::text(int column) const {
  auto const* const bytes = static_cast<char const*>(sqlite3_column_blob(statement_, column));
  auto const size = static_cast<std::size_t>(sqlite3_column_bytes(statement_, column));
  return bytes == nullptr ? std::string() : std::string(bytes, size);
}

Database::Database(std::string const& path, bool create, int wait_ms) {
  // A bare name goes in as ./NAME: SQLite takes an empty one and ":memory:" for a book that nobody keeps.
  std::string const place = path.rfind('/', 0) == 0 ? path : "./" + path;
  int const flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_EXRESCODE | (create ? SQLITE_OPEN_CREATE : 0);
  int const code = sqlite3_open_v2(place.c_str(), &handle_, flags, nullptr);
  try {
    if (code != SQLITE_OK) {
      refuse(code);
    }
    sqlite3_busy_timeout(handle_, wait_ms);
    // Tables that somebody else wrote into the file must not be able to run anything.
    sqlite3_db_config(handle_, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    sqlite3_db_config(handle_, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
    // The record is on the disk, and its journal gone from the folder, before a commit says so.
    run("PRAGMA synchronous = EXTRA");
    run("PRAGMA cell_size_check = ON");
  } catch (...) {
    sqlite3_close(handle_);
    throw;
  }
}

Database::~Database() {
  sqlite3_close(handle_);
}

void Database::run(std::string_view sql) {
  Statement(*this, sql).run();
}

std::uint64_t Database::number(std::string_view sql) {
  Statement statement(*this, sql);
  return statement.row() ? statement.number(0) : 0;
}

bool Database::writable() const {
  return sqlite3_db_readonly(handle_, "main") == 0;
}

void Database::refuse(int code) const {
  throw Refused(why_of(code), handle_ == nullptr ? sqlite3_errstr(code) : sqlite3_errmsg(handle_));
}

Transaction::Transaction(Database& database, bool writing) : database_(database) {
  database_.run(writing ? "BEGIN IMMEDIATE" : "BEGIN");
}

Transaction::~Transaction() {
  if (open_) {
    try {
      database_.run("ROLLBACK");
    } catch (Refused const&) {
      // After some refusals SQLite has rolled back by itself, and says so here.
    }
  }
}

void Transaction::keep() {
  database_.run("COMMIT");
  open_ = false;
}

}  // namespace wellproof
