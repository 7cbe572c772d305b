#pragma once
// What the commands of the book share: the open book, finding an entry in it, the key of its lock.
#include <optional>
#include <string>
#include <vector>

#include "book/book.h"
#include "clerk/clerk.h"

namespace wellproof {

/// The names of the sites in the order in which they came.
std::vector<std::string> site_names(std::vector<Entry> const& heads);

/// The entries of the site that the request names; with an empty address all.
Result<std::vector<Entry>> entries_meant(Book const& book, BookRequest const& request);

/// The head of the version of the kind that is meant: the newest where none is named.
Result<Entry> version_meant(std::vector<Entry> const& of_site, BookRequest const& request,
                            std::optional<std::uint64_t> version);

/// The key, asked for if the book is locked.
Result<std::optional<SealKey>> key_for(Book const& book, Surroundings const& with);

Answer add_to_book(BookRequest const& request, Surroundings const& with);
Answer restore_from_book(BookRequest const& request, Surroundings const& with);
Answer list_book(BookRequest const& request);
Answer show_book(BookRequest const& request);
Answer diff_book(BookRequest const& request);
Answer export_book(BookRequest const& request, Surroundings const& with);
Answer import_book(BookRequest const& request, Surroundings const& with);
Answer lock_book(BookRequest const& request, Surroundings const& with);
Answer unlock_book(BookRequest const& request, Surroundings const& with);
Answer check_book(BookRequest const& request, Surroundings const& with);

}  // namespace wellproof
