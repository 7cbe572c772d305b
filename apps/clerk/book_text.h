#pragma once
// Entries and differences of the book as text for a terminal and as JSON.
#include <string>
#include <vector>

#include "book/entry.h"
#include "book/line_diff.h"
#include "clerk/clerk.h"
#include "clerk/kept_settings.h"

namespace wellproof {

/// "Alder Hollow 4: settings, version 3".
std::string title_of(Entry const& head);

/// What each site has, one line a site.
std::string sites_text(std::vector<Entry> const& heads, bool colour);
/// The entries of one site, one line each.
std::string entries_text(std::string const& site, std::vector<Entry> const& heads, bool colour);
std::string list_json(std::vector<Entry> const& heads);

/// The values in the order of entry.
std::string settings_text(std::vector<KeptSetting> const& settings, bool colour);

/// @param settings of an entry of that kind; none else
std::string show_text(Entry const& entry, std::vector<KeptSetting> const& settings, bool colour);
std::string show_json(Entry const& entry, std::vector<KeptSetting> const& settings);

std::string changes_text(std::vector<SettingDifference> const& changes, std::string const& from, std::string const& to,
                         bool colour);
std::string lines_text(std::vector<DiffLine> const& lines, bool colour);

/// A difference as JSON: of settings by key, of anything else by lines of its files.
struct FileDiff {
  std::string file;
  std::vector<DiffLine> lines;
};
std::string diff_json(Entry const& from, Entry const& to, std::vector<SettingDifference> const& changes,
                      std::vector<FileDiff> const& files);

}  // namespace wellproof
