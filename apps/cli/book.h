#pragma once
// The commands of the book on the command line: their words, and the files, clock, login name and terminal that the
// clerk does not have.

namespace wellproof {

/// Whether the first word that is no option is "book".
bool asks_for_book(int count, char const* const* words);

/// Reads the words, carries them out, and tells the exit code.
int book_carried_out(int count, char const* const* words, bool colour);

}  // namespace wellproof
