#include "book/archive.h"

#include <algorithm>
#include <map>
#include <set>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "book/address.h"
#include "book/chain.h"

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;
constexpr std::uint64_t archive_format = 1;
constexpr char const* format_key = "wellproof_book";

/// Names that every file system keeps, and that stay below their folder.
bool is_plain(std::string_view name) {
  if (name.empty() || name.size() > 200 || name.front() == '/' || name.back() == '/') {
    return false;
  }
  std::string part;
  for (char const sign : std::string(name) + "/") {
    if (sign == '/') {
      if (part.empty() || part.front() == '.') {
        return false;
      }
      part.clear();
      continue;
    }
    bool const kept = (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z') || (sign >= '0' && sign <= '9') ||
                      sign == '-' || sign == '_' || sign == '.';
    if (!kept) {
      return false;
    }
    part += sign;
  }
  return true;
}

/// ".toml", of a file's name; nothing where it has none that is plain.
std::string ending(std::string const& name) {
  auto const dot = name.rfind('.');
  std::string const end = dot == std::string::npos ? "" : name.substr(dot + 1);
  return !end.empty() && end.size() <= 8 && is_plain(end) ? "." + end : "";
}

/// Tells each site its folder; the one of locks is "book".
class Folders {
 public:
  std::string of(std::string const& site) {
    auto const known = folders_.find(site);
    if (known != folders_.end()) {
      return known->second;
    }
    std::string const plain = site.empty() ? "book" : slug(site).substr(0, 60);
    std::string name = plain;
    for (int i = 2; !taken_.insert(name).second; ++i) {
      name = fmt::format("{}_{}", plain, i);
    }
    folders_[site] = name;
    return name;
  }

 private:
  std::map<std::string, std::string> folders_;
  std::set<std::string> taken_;
};

Finding fault(std::string place, std::string key, std::string found, std::string expected) {
  return {{std::move(place), 0, 0}, std::move(key), std::move(found), std::move(expected), ""};
}

/// Reads one entry of the index; what does not fit is noted.
class IndexReader {
 public:
  IndexReader(ArchiveReader const& file, Findings& findings) : file_(file), findings_(findings) {}

  std::optional<Entry> entry(Json const& json, std::size_t number) {
    where_ = fmt::format("entries[{}]", number);
    std::size_t const before = findings_.size();
    Entry entry;
    entry.number = figure(json, "number");
    entry.version = figure(json, "version");
    auto& record = entry.record;
    record.site = text(json, "site");
    auto const kind = entry_kind(text(json, "kind"));
    record.who = text(json, "who");
    record.at = text(json, "at");
    record.why = text(json, "why");
    record.name = text(json, "name");
    entry.before = text(json, "before");
    entry.hash = text(json, "hash");
    entry.seal = text(json, "seal");
    if (!kind) {
      wrong("kind", "an unknown kind", "a kind that this version of wellproof knows");
    }
    record.kind = kind.value_or(EntryKind::site);
    record.content = content(text(json, "file"));
    auto const beside = json.is_object() ? json.find("beside") : json.end();
    if (beside != json.end() && beside->is_array()) {
      for (auto const& one : *beside) {
        record.beside.push_back({text(one, "name"), content(text(one, "file"))});
      }
    }
    for (auto& finding : wrong_with(record)) {
      wrong(finding.key, finding.found, finding.expected);
    }
    if (findings_.size() == before && chain_hash(entry) != entry.hash) {
      findings_.push_back(fault(text(json, "file"), name_of(entry), "something else than was exported",
                                "the files of an export as they were written"));
    }
    return findings_.size() == before ? std::optional<Entry>(std::move(entry)) : std::nullopt;
  }

 private:
  void wrong(std::string const& key, std::string found, std::string expected) {
    findings_.push_back(
        fault(std::string(index_name), where_ + (key.empty() ? "" : "." + key), std::move(found), std::move(expected)));
  }

  std::string text(Json const& json, char const* key) {
    if (json.is_object() && json.contains(key) && json[key].is_string()) {
      return json[key].get<std::string>();
    }
    wrong(key, "no text", "a text");
    return "";
  }

  std::uint64_t figure(Json const& json, char const* key) {
    if (json.is_object() && json.contains(key) && json[key].is_number_unsigned()) {
      return json[key].get<std::uint64_t>();
    }
    wrong(key, "no number", "a whole number");
    return 0;
  }

  std::string content(std::string const& name) {
    if (!is_plain(name)) {
      wrong("file", "\"" + name + "\"", "the plain name of a file of the export");
      return "";
    }
    auto read = file_(name);
    if (!read) {
      wrong("file", "no file \"" + name + "\" that can be read", "the files of an export as they were written");
    }
    return read.value_or("");
  }

  ArchiveReader const& file_;
  Findings& findings_;
  std::string where_;
};

}  // namespace

std::vector<ArchiveFile> exported(std::vector<Entry> const& entries) {
  std::vector<ArchiveFile> files;
  Folders folders;
  Json index = Json::array();
  for (auto const& entry : entries) {
    auto const& record = entry.record;
    std::string const place = fmt::format("{}/{}-{}", folders.of(record.site), word(record.kind), entry.version);
    // A site with the files that it names stands in a folder with them, so that it can be read as it stands there.
    std::string const file = record.kind == EntryKind::site ? place + "/site.toml" : place + ending(record.name);
    files.push_back({file, record.content});
    Json beside = Json::array();
    for (std::size_t i = 0; i < record.beside.size(); ++i) {
      auto const& one = record.beside[i];
      std::string name = fmt::format("{}/{}", place, one.name);
      auto const taken = [&](ArchiveFile const& each) { return each.name == name; };
      if (!is_plain(one.name) || std::any_of(files.begin(), files.end(), taken)) {
        name = fmt::format("{}/beside-{}", place, i + 1);
      }
      files.push_back({name, one.text});
      beside.push_back({{"name", one.name}, {"file", name}});
    }
    index.push_back({{"number", entry.number},
                     {"site", record.site},
                     {"kind", word(record.kind)},
                     {"version", entry.version},
                     {"who", record.who},
                     {"at", record.at},
                     {"why", record.why},
                     {"name", record.name},
                     {"file", file},
                     {"beside", std::move(beside)},
                     {"before", entry.before},
                     {"hash", entry.hash},
                     {"seal", entry.seal}});
  }
  Json const all{{format_key, archive_format}, {"entries", std::move(index)}};
  files.push_back({std::string(index_name), all.dump(2, ' ', false, Json::error_handler_t::replace) + "\n"});
  return files;
}

Result<std::vector<Entry>> read_archive(ArchiveReader const& file) {
  std::string const name(index_name);
  auto const refused = [&](std::string found, std::string expected) {
    return tl::unexpected(Findings{fault(name, "", std::move(found), std::move(expected))});
  };
  auto const text = file(name);
  if (!text) {
    return refused("no such file", "the folder of an export");
  }
  auto const json = Json::parse(*text, nullptr, false);
  bool const formed = json.is_object() && json.contains(format_key) && json[format_key].is_number_unsigned() &&
                      json.contains("entries") && json["entries"].is_array();
  if (!formed) {
    return refused("another text", "the index of an export");
  }
  if (auto const has = json[format_key].get<std::uint64_t>(); has != archive_format) {
    return refused(fmt::format("an export of format {}", has),
                   fmt::format("format {}; use the version of wellproof that wrote it", archive_format));
  }
  Findings findings;
  std::vector<Entry> entries;
  IndexReader reader(file, findings);
  for (auto const& one : json["entries"]) {
    if (auto entry = reader.entry(one, entries.size() + findings.size())) {
      entries.push_back(std::move(*entry));
    }
  }
  ChainCheck chain;
  for (auto const& entry : entries) {
    chain.take(entry);
  }
  if (findings.empty()) {
    for (auto const& each : chain.faults()) {
      findings.push_back(fault(name, each.key, each.found, each.expected));
    }
  }
  if (!findings.empty()) {
    return tl::unexpected(findings);
  }
  return entries;
}

}  // namespace wellproof
