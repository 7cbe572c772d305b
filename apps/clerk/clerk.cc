#include "clerk/clerk.h"

#include "book/address.h"
#include "clerk/desk.h"
#include "contract/require.h"

#include <algorithm>

#include <fmt/format.h>

namespace wellproof {
namespace {

Answer carried_out(BookRequest const& request, Surroundings const& with) {
  auto const& command = request.command;
  if (command == "add") {
    return add_to_book(request, with);
  }
  if (command == "list") {
    return list_book(request);
  }
  if (command == "show") {
    return show_book(request);
  }
  if (command == "diff") {
    return diff_book(request);
  }
  if (command == "restore") {
    return restore_from_book(request, with);
  }
  if (command == "export") {
    return export_book(request, with);
  }
  if (command == "import") {
    return import_book(request, with);
  }
  if (command == "lock") {
    return lock_book(request, with);
  }
  if (command == "unlock") {
    return unlock_book(request, with);
  }
  require(command == "check", "a command of the book is one of those above");
  return check_book(request, with);
}

}  // namespace

Answer ask_book(BookRequest const& request, Surroundings const& with) {
  try {
    return carried_out(request, with);
  } catch (BookUnavailable const& error) {
    return {exit_code::machine, "", fmt::format("wellproof: {}\n", error.what()), {}};
  }
}

std::vector<std::string> site_names(std::vector<Entry> const& heads) {
  std::vector<std::string> names;
  for (auto const& head : heads) {
    auto const& site = head.record.site;
    if (!site.empty() && std::find(names.begin(), names.end(), site) == names.end()) {
      names.push_back(site);
    }
  }
  return names;
}

Result<std::vector<Entry>> entries_meant(Book const& book, BookRequest const& request) {
  auto heads = book.entries(Book::Part::head);
  if (!heads || request.address.empty()) {
    return heads;
  }
  auto const site = find_site(site_names(*heads), request.address);
  if (!site) {
    return tl::unexpected(site.error());
  }
  heads->erase(
      std::remove_if(heads->begin(), heads->end(), [&](Entry const& head) { return head.record.site != *site; }),
      heads->end());
  return heads;
}

Result<Entry> version_meant(std::vector<Entry> const& of_site, BookRequest const& request,
                            std::optional<std::uint64_t> version) {
  auto const has = [&](EntryKind kind) {
    return std::any_of(of_site.begin(), of_site.end(), [&](Entry const& head) { return head.record.kind == kind; });
  };
  auto const kind = request.kind.value_or(has(EntryKind::settings) ? EntryKind::settings : EntryKind::site);
  std::optional<Entry> meant;
  std::uint64_t newest = 0;
  for (auto const& head : of_site) {
    if (head.record.kind == kind) {
      newest = head.version;
      meant = !version || head.version == *version ? std::optional(head) : meant;
    }
  }
  if (meant) {
    return std::move(*meant);
  }
  Finding finding;
  finding.key = "SITE";
  finding.found = fmt::format("no {} of \"{}\" in the book", word(kind), of_site.front().record.site);
  finding.expected = "a kind that it has, as in: wellproof book list SITE";
  if (newest > 0) {
    finding.key = "version";
    finding.found = fmt::format("{}", *version);
    finding.expected = newest == 1 ? "1: there is one version" : fmt::format("1 to {}", newest);
  }
  return tl::unexpected(Findings{finding});
}

Result<std::optional<SealKey>> key_for(Book const& book, Surroundings const& with) {
  auto const lock = book.lock();
  if (!lock) {
    return tl::unexpected(lock.error());
  }
  if (!*lock) {
    return std::optional<SealKey>();
  }
  auto const phrase = with.pass_phrase(false);
  if (!phrase) {
    return tl::unexpected(phrase.error());
  }
  auto key = key_of(**lock, *phrase);
  if (!key) {
    return tl::unexpected(
        Findings{{{"", 0, 0}, "pass phrase", "another one", "the one that the book is locked with", ""}});
  }
  return key;
}

}  // namespace wellproof
