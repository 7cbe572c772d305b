#pragma once
// A book as plain files, for a backup that any program can read, and back. index.json holds the order, who, when, why
// and the hashes; each content is a file of its own in a folder of its site. An export that was not touched comes back
// byte for byte, and gives the same files when it is exported again.
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/entry.h"

namespace wellproof {

inline constexpr std::string_view index_name = "index.json";

/// A file of an export; the name goes down by '/', never up.
struct ArchiveFile {
  std::string name;
  std::string bytes;
};

/// The files of an export, the index last: where it stands, the others do too.
std::vector<ArchiveFile> exported(std::vector<Entry> const& entries);

/// The text of a file of the export; nothing if it cannot be read.
using ArchiveReader = std::function<std::optional<std::string>(std::string const& name)>;

/// The entries of an export, each held against its hash. Any bytes at all may be given.
Result<std::vector<Entry>> read_archive(ArchiveReader const& file);

}  // namespace wellproof
