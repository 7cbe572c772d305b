#include "book/file.h"

#include <fmt/format.h>

#include "book/chain.h"

namespace wellproof {
namespace {

/// "WPbk": marks the file as a book in the place that SQLite keeps for it.
constexpr std::uint64_t application = 0x5750626B;
/// Counted up when the tables change; a program refuses a book of a later format than its own.
constexpr std::uint64_t format = 1;

constexpr std::string_view entry_table =
    "CREATE TABLE entry (number INTEGER PRIMARY KEY, site TEXT NOT NULL, kind TEXT NOT NULL, version INTEGER NOT NULL, "
    "who TEXT NOT NULL, at TEXT NOT NULL, why TEXT NOT NULL, name TEXT NOT NULL, content BLOB NOT NULL, "
    "hash_before TEXT NOT NULL, hash TEXT NOT NULL, seal TEXT NOT NULL, UNIQUE (site, kind, version)) STRICT";
constexpr std::string_view beside_table =
    "CREATE TABLE beside (entry INTEGER NOT NULL REFERENCES entry (number), place INTEGER NOT NULL, "
    "name TEXT NOT NULL, content BLOB NOT NULL, PRIMARY KEY (entry, place)) STRICT, WITHOUT ROWID";

constexpr std::string_view head_columns =
    "number, version, site, kind, who, at, why, name, hash_before, hash, seal, x''";
constexpr std::string_view whole_columns =
    "number, version, site, kind, who, at, why, name, hash_before, hash, seal, content";

}  // namespace

Book::File::File(std::string path, Use use, int wait_ms)
    : path_(std::move(path)), database_(path_, use == Use::write, wait_ms) {}

Finding Book::File::at_fault(std::string const& path, Refused const& refused) {
  switch (refused.why) {
    case Refused::Why::damaged:
      return {{path, 0, 0}, "", fmt::format("a damaged file ({})", refused.what()), "a sound book; use a backup", ""};
    case Refused::Why::no_database:
      return {{path, 0, 0}, "", "a file of another kind, or one damaged at its head", "a book of wellproof", ""};
    case Refused::Why::busy:
      throw BookUnavailable(fmt::format("{}: another program is writing to the book; try again", path));
    case Refused::Why::full:
      throw BookUnavailable(fmt::format("{}: no room left on the disk; nothing was added", path));
    case Refused::Why::read_only:
      throw BookUnavailable(fmt::format("{}: the book or its folder may only be read", path));
    case Refused::Why::cannot_open:
      throw BookUnavailable(fmt::format("{}: cannot open the book; is its folder there, and may it be written?", path));
    case Refused::Why::other:
      break;
  }
  throw BookUnavailable(fmt::format("{}: {}", path, refused.what()));
}

Finding Book::File::finding(std::string found, std::string expected) const {
  return {{path_, 0, 0}, "", std::move(found), std::move(expected), ""};
}

bool Book::File::is_empty() {
  return database_.number("PRAGMA application_id") == 0 && database_.number("PRAGMA user_version") == 0 &&
         database_.number("SELECT count(*) FROM sqlite_schema") == 0;
}

Findings Book::File::wrong(Use use) {
  Transaction const one_state(database_, false);
  if (is_empty()) {
    return use == Use::write ? Findings{} : Findings{finding("an empty file", "a book of wellproof")};
  }
  if (database_.number("PRAGMA application_id") != application) {
    return {finding("a database of another program", "a book of wellproof")};
  }
  auto const has = database_.number("PRAGMA user_version");
  if (has > format) {
    return {finding(fmt::format("a book of format {}, written by a newer version of wellproof", has),
                    fmt::format("format {}; use the newer version", format))};
  }
  Statement tables(database_, "SELECT coalesce(sql, '') FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name");
  bool const ours = has == format && tables.row() && tables.text(0) == beside_table && tables.row() &&
                    tables.text(0) == entry_table && !tables.row();
  return ours ? Findings{} : Findings{finding("other tables than a book has", "a book that only wellproof wrote")};
}

std::vector<Entry> Book::File::read(std::string_view columns, std::string_view rest, std::uint64_t number) {
  std::vector<Entry> entries;
  if (is_empty()) {
    return entries;
  }
  Statement rows(database_, fmt::format("SELECT {} FROM entry {}", columns, rest));
  if (rest.find('?') != std::string_view::npos) {
    rows.with(number);
  }
  while (rows.row()) {
    Entry entry;
    entry.number = rows.number(0);
    entry.version = rows.number(1);
    auto const kind = entry_kind(rows.text(3));
    if (!kind) {
      throw Refused(Refused::Why::damaged, fmt::format("entry {} is of no known kind", entry.number));
    }
    entry.record = {rows.text(2), *kind, rows.text(4), rows.text(5), rows.text(6), rows.text(7), rows.text(11), {}};
    entry.before = rows.text(8);
    entry.hash = rows.text(9);
    entry.seal = rows.text(10);
    entries.push_back(std::move(entry));
  }
  return entries;
}

std::vector<Entry> Book::File::heads() {
  return read(head_columns, "ORDER BY number", 0);
}

std::optional<Entry> Book::File::whole(std::uint64_t number) {
  auto entries = read(whole_columns, "WHERE number = ?", number);
  if (entries.empty()) {
    return std::nullopt;
  }
  Statement files(database_, "SELECT name, content FROM beside WHERE entry = ? ORDER BY place");
  files.with(number);
  while (files.row()) {
    entries.front().record.beside.push_back({files.text(0), files.text(1)});
  }
  return std::move(entries.front());
}

Result<std::optional<Lock>> Book::File::lock() {
  auto const entries = read(whole_columns, "WHERE kind IN ('lock', 'unlock') ORDER BY number DESC LIMIT 1", 0);
  if (entries.empty() || entries.front().record.kind == EntryKind::unlock) {
    return std::optional<Lock>();
  }
  auto lock = read_lock(entries.front().record.content);
  if (!lock) {
    return tl::unexpected(Findings{finding("a lock that cannot be read", "a lock that wellproof wrote")});
  }
  return std::optional<Lock>(std::move(*lock));
}

ChainEnd Book::File::end() {
  Statement last(database_, "SELECT number, hash FROM entry ORDER BY number DESC LIMIT 1");
  return last.row() ? ChainEnd{last.number(0), last.text(1)} : ChainEnd{0, first_before()};
}

std::uint64_t Book::File::newest_version(std::string const& site, EntryKind kind) {
  Statement newest(database_, "SELECT max(version) FROM entry WHERE site = ? AND kind = ?");
  newest.with(site).with(word(kind));
  return newest.row() ? newest.number(0) : 0;
}

std::optional<Entry> Book::File::newest(std::string const& site, EntryKind kind) {
  Statement newest(database_, "SELECT max(number) FROM entry WHERE site = ? AND kind = ?");
  newest.with(site).with(word(kind));
  return newest.row() ? whole(newest.number(0)) : std::nullopt;
}

void Book::File::begin_if_empty() {
  if (is_empty()) {
    database_.run(fmt::format("PRAGMA application_id = {}", application));
    database_.run(fmt::format("PRAGMA user_version = {}", format));
    database_.run(entry_table);
    database_.run(beside_table);
  }
}

void Book::File::append(Entry const& entry) {
  auto const& record = entry.record;
  Statement row(database_, "INSERT INTO entry VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
  row.with(entry.number).with(record.site).with(word(record.kind)).with(entry.version);
  row.with(record.who).with(record.at).with(record.why).with(record.name).with_bytes(record.content);
  row.with(entry.before).with(entry.hash).with(entry.seal);
  row.run();
  std::uint64_t place = 0;
  for (auto const& file : record.beside) {
    Statement beside(database_, "INSERT INTO beside VALUES (?, ?, ?, ?)");
    beside.with(entry.number).with(++place).with(file.name).with_bytes(file.text);
    beside.run();
  }
}

Entry Book::File::append(Record const& record, SealKey const* seal) {
  ChainEnd const last = end();
  Entry entry{last.number + 1, newest_version(record.site, record.kind) + 1, record, last.hash, "", ""};
  entry.hash = chain_hash(entry);
  entry.seal = seal == nullptr ? "" : seal->seal(entry.hash);
  append(entry);
  return entry;
}

Findings Book::File::barred(std::optional<Lock> const& lock, SealKey const* key) const {
  if (!lock) {
    return {};
  }
  if (key == nullptr) {
    return {finding("a locked book", "its pass phrase")};
  }
  return key->fits(*lock) ? Findings{}
                          : Findings{finding("another pass phrase", "the one that the book is locked with")};
}

}  // namespace wellproof
