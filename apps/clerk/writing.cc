// Adding to the book, and giving settings back out of it.
#include <algorithm>
#include <cstdlib>

#include <fmt/format.h>

#include "book/address.h"
#include "clerk/book_text.h"
#include "clerk/desk.h"
#include "door/commands.h"
#include "explain/history.h"
#include "fit/readings.h"
#include "sheet/layout.h"
#include "site/read.h"

namespace wellproof {
namespace {

void take(Findings& all, Findings const& more) {
  all.insert(all.end(), more.begin(), more.end());
}

std::string without_folder(std::string const& path) {
  auto const slash = path.rfind('/');
  return slash == std::string::npos ? path : path.substr(slash + 1);
}

/// The time of an entry, "2031-05-14T09:30:00Z", as the clock against which a history may have been told.
std::optional<WallClock> clock_of(std::string const& at) {
  constexpr std::size_t to_the_minute = 16;
  if (at.size() < to_the_minute) {
    return std::nullopt;
  }
  auto const number = [&](std::size_t from, std::size_t digits) { return std::atoi(at.substr(from, digits).c_str()); };
  Date const date{number(0, 4), number(5, 2), number(8, 2)};
  return exists(date) ? std::optional(wall_clock(date, 3600.0 * number(11, 2) + 60.0 * number(14, 2))) : std::nullopt;
}

/// What its reader finds wrong with a file that is to be kept. A sheet is kept as it is, whatever it is.
Findings wrong_with(EntryKind kind, NamedText const& file, SiteRead const* site, BookRequest const& request) {
  if (file.text.empty()) {
    return {{{file.file, 0, 0}, "", "an empty file", fmt::format("a file of {}", word(kind)), ""}};
  }
  if (kind == EntryKind::settings) {
    auto const settings = kept_settings(file, request.units);
    return settings ? Findings{} : settings.error();
  }
  if (kind == EntryKind::readings && site != nullptr) {
    auto const readings = read_readings(file.text, file.file, site->site);
    return readings ? Findings{} : readings.error();
  }
  if (kind == EntryKind::history) {
    auto const history = read_history(file.text, file.file, clock_of(request.at));
    return history ? Findings{} : history.error();
  }
  return {};
}

/// The records of an `add`, each content read by its reader first.
Result<std::vector<Record>> records_of(BookRequest const& request) {
  Findings findings;
  auto const site = read_site(request.site.text, request.site.file, request.beside);
  if (!site) {
    take(findings, site.error());
  } else if (site->site.name.empty()) {
    findings.push_back(
        {{request.site.file, 0, 0}, "site.name", "nothing", "a name, by which the book knows the site", ""});
  }
  std::string const name = site ? site->site.name : "";
  auto const record = [&](EntryKind kind, NamedText const& file) {
    return Record{name, kind, request.who, request.at, request.why, without_folder(file.file), file.text, {}};
  };
  std::vector<Record> records{record(EntryKind::site, request.site)};
  records.front().beside = request.beside;
  for (auto const& [kind, file] : request.files) {
    take(findings, wrong_with(kind, file, site ? &*site : nullptr, request));
    records.push_back(record(kind, file));
  }
  if (!findings.empty()) {
    return tl::unexpected(findings);
  }
  return records;
}

/// A second spelling of a name that the book has would split the history of one site in two.
Findings spelled_anew(Book const& book, BookRequest const& request, std::string const& name) {
  auto const heads = book.entries(Book::Part::head);
  if (!heads) {
    return heads.error();
  }
  auto const names = site_names(*heads);
  if (std::find(names.begin(), names.end(), name) != names.end()) {
    return {};
  }
  for (auto const& known : names) {
    if (slug(known) == slug(name)) {
      return {{{request.site.file, 0, 0},
               "site.name",
               "\"" + name + "\"",
               "the name as the book has it, or one that is not so like it",
               known}};
    }
  }
  return {};
}

std::string added_text(std::vector<Entry> const& added, std::vector<Record> const& asked) {
  std::string out;
  for (auto const& record : asked) {
    auto const at =
        std::find_if(added.begin(), added.end(), [&](Entry const& entry) { return entry.record.kind == record.kind; });
    out += at != added.end() ? title_of(*at) + ": added.\n"
                             : fmt::format("{}: {} as in the newest version; nothing added.\n", visible(record.site),
                                           word(record.kind));
  }
  return out;
}

}  // namespace

Answer add_to_book(BookRequest const& request, Surroundings const& with) {
  auto const records = records_of(request);
  if (!records) {
    return refused(records.error());
  }
  auto book = Book::open(request.book, Book::Use::write);
  if (!book) {
    return refused(book.error());
  }
  if (auto const wrong = spelled_anew(*book, request, records->front().site); !wrong.empty()) {
    return refused(wrong);
  }
  auto const key = key_for(*book, with);
  if (!key) {
    return refused(key.error());
  }
  auto const added = book->add(*records, *key ? &**key : nullptr);
  return added ? Answer{exit_code::fine, added_text(*added, *records), "", {}} : refused(added.error());
}

Answer restore_from_book(BookRequest const& request, Surroundings const& with) {
  BookRequest wanted = request;
  wanted.kind = EntryKind::settings;
  auto book = Book::open(request.book, Book::Use::write);
  if (!book) {
    return refused(book.error());
  }
  auto const heads = entries_meant(*book, wanted);
  auto const head =
      heads ? version_meant(*heads, wanted, request.version) : Result<Entry>(tl::unexpected(heads.error()));
  auto const entry = head ? book->entry(head->number) : head;
  if (!entry) {
    return refused(entry.error());
  }
  auto const settings = kept_settings({request.target, entry->record.content}, request.units);
  if (!settings) {
    return refused(settings.error());
  }
  auto const key = key_for(*book, with);
  if (!key) {
    return refused(key.error());
  }
  if (auto const failed = with.write(request.target, entry->record.content)) {
    return *failed;
  }
  Record record = entry->record;
  record.who = request.who;
  record.at = request.at;
  record.why = fmt::format("restored version {}{}", entry->version, request.why.empty() ? "" : ": " + request.why);
  auto const added = book->add({record}, *key ? &**key : nullptr, Book::Same::added);
  if (!added) {
    return refused(added.error());
  }
  std::string out = heading(title_of(*entry) + ", to enter in this order", Paint(request.colour));
  out += settings_text(*settings, request.colour);
  out += fmt::format("\nWritten to {}; in the book as version {}.\n", visible(request.target), added->front().version);
  out += block(
      "What is not in the list keeps the drive's own factory value. Read amps and pressure on site before "
      "anybody relies on it.",
      "", "");
  return {exit_code::fine, out, "", {}};
}

}  // namespace wellproof
