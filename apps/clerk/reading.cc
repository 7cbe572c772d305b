// Looking into the book: nothing here changes it.
#include <algorithm>

#include <fmt/format.h>

#include "book/line_diff.h"
#include "clerk/book_text.h"
#include "clerk/desk.h"
#include "door/commands.h"
#include "sheet/layout.h"

namespace wellproof {
namespace {

Result<std::vector<Entry>> heads_of(BookRequest const& request, std::optional<Book>& book) {
  auto opened = Book::open(request.book, Book::Use::read);
  if (!opened) {
    return tl::unexpected(opened.error());
  }
  book.emplace(std::move(*opened));
  return entries_meant(*book, request);
}

Result<Entry> entry_of(Book const& book, std::vector<Entry> const& heads, BookRequest const& request,
                       std::optional<std::uint64_t> version) {
  auto const head = version_meant(heads, request, version);
  return head ? book.entry(head->number) : head;
}

/// Of settings their values; of anything else none.
Result<std::vector<KeptSetting>> values_of(Entry const& entry, UnitSystem units) {
  return entry.record.kind == EntryKind::settings ? kept_settings({title_of(entry), entry.record.content}, units)
                                                  : Result<std::vector<KeptSetting>>(std::vector<KeptSetting>{});
}

/// The content and each file beside it, by name; one that only one side has is all in or all out.
std::vector<FileDiff> files_diff(Record const& from, Record const& to) {
  std::vector<FileDiff> files{{from.name, line_diff(from.content, to.content)}};
  auto const text_of = [](Record const& record, std::string const& name) {
    auto const at =
        std::find_if(record.beside.begin(), record.beside.end(), [&](Beside const& one) { return one.name == name; });
    return at == record.beside.end() ? std::string() : at->text;
  };
  std::vector<std::string> names;
  for (auto const* const record : {&from, &to}) {
    for (auto const& file : record->beside) {
      if (std::find(names.begin(), names.end(), file.name) == names.end()) {
        names.push_back(file.name);
        files.push_back({file.name, line_diff(text_of(from, file.name), text_of(to, file.name))});
      }
    }
  }
  return files;
}

}  // namespace

Answer list_book(BookRequest const& request) {
  std::optional<Book> book;
  auto heads = heads_of(request, book);
  if (!heads) {
    return refused(heads.error());
  }
  if (request.json) {
    return {exit_code::fine, list_json(*heads), "", {}};
  }
  return {exit_code::fine,
          request.address.empty() ? sites_text(*heads, request.colour)
                                  : entries_text(heads->front().record.site, *heads, request.colour),
          "",
          {}};
}

Answer show_book(BookRequest const& request) {
  std::optional<Book> book;
  auto const heads = heads_of(request, book);
  if (!heads) {
    return refused(heads.error());
  }
  auto const entry = entry_of(*book, *heads, request, request.version);
  if (!entry) {
    return refused(entry.error());
  }
  if (request.content) {
    return {exit_code::fine, entry->record.content, "", {}};
  }
  auto const values = values_of(*entry, request.units);
  if (!values) {
    return refused(values.error());
  }
  return {
      exit_code::fine, request.json ? show_json(*entry, *values) : show_text(*entry, *values, request.colour), "", {}};
}

Answer diff_book(BookRequest const& request) {
  std::optional<Book> book;
  auto const heads = heads_of(request, book);
  if (!heads) {
    return refused(heads.error());
  }
  auto const from = entry_of(*book, *heads, request, request.version);
  auto const to = entry_of(*book, *heads, request, request.other_version);
  if (!from || !to) {
    return refused(from ? to.error() : from.error());
  }
  if (from->record.kind == EntryKind::settings) {
    auto const before = values_of(*from, request.units);
    auto const after = values_of(*to, request.units);
    if (!before || !after) {
      return refused(before ? after.error() : before.error());
    }
    auto const found = changes(*before, *after);
    auto const name = [](Entry const& entry) { return fmt::format("version {}", entry.version); };
    return {
        exit_code::fine,
        request.json ? diff_json(*from, *to, found, {}) : changes_text(found, name(*from), name(*to), request.colour),
        "",
        {}};
  }
  if (!is_utf8(from->record.content) || !is_utf8(to->record.content)) {
    bool const same = from->record.content == to->record.content;
    return {exit_code::fine,
            same ? "No difference.\n"
                 : fmt::format("Different, and no text: {} bytes and {} bytes.\n", from->record.content.size(),
                               to->record.content.size()),
            "",
            {}};
  }
  auto const files = files_diff(from->record, to->record);
  if (request.json) {
    return {exit_code::fine, diff_json(*from, *to, {}, files), "", {}};
  }
  std::string out;
  for (auto const& file : files) {
    if (&file != &files.front() && !file.lines.empty()) {
      out += "\n" + visible(file.file) + "\n";
    }
    if (!file.lines.empty()) {
      out += lines_text(file.lines, request.colour);
    }
  }
  return {exit_code::fine, out.empty() ? "No difference.\n" : out, "", {}};
}

}  // namespace wellproof
