#pragma once
// The book on this machine: where it is, who writes in it, what time it is.
#include <string>

namespace wellproof {

/// Where the book is without --book; empty: no folder for data is known.
std::string book_of_the_user();
/// The folders above the book, readable by the user alone where they are made.
bool folders_made(std::string const& path);
std::string login_name();
std::string now_utc();

}  // namespace wellproof
