#pragma once
// Reading what a command names and writing what it answers. A file is written beside its place under another name and
// then moved there, so that nobody ever finds half of it.
#include <cstddef>
#include <string>

#include <tl/expected.hpp>

namespace wellproof {

/// Why a file could not be read.
struct NotRead {
  bool absent = false;  // there is none, or it is a folder: the command is wrong, not the machine
  std::string why;
};

/// The whole text; refused above so many bytes.
tl::expected<std::string, NotRead> read_file(std::string const& path, std::size_t most_bytes = std::size_t{4} << 20U);

/// Why a file was not written; nothing if it was.
struct NotWritten {
  bool exists = false;
  std::string why;
};
tl::expected<void, NotWritten> write_file(std::string const& path, std::string const& text, bool may_replace);

/// Takes away the file that is being written beside its place, if one is. For a signal's handler: calls nothing but
/// what such a one may.
void remove_half_written() noexcept;

/// The line of the first byte that is not UTF-8; 0 if all is.
int first_line_not_utf8(std::string const& text);

}  // namespace wellproof
