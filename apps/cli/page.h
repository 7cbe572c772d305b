#pragma once
// The command page: serves the page to the browser of this machine until it is interrupted.

namespace wellproof {

/// Whether the command line asks for it.
bool asks_for_page(int count, char const* const* words);
/// Reads its words and serves; the exit code.
int page_carried_out(int count, char const* const* words);

}  // namespace wellproof
