#include "clerk/book_text.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "book/address.h"
#include "sheet/layout.h"

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::array<EntryKind, 5> kinds{EntryKind::site, EntryKind::settings, EntryKind::sheet, EntryKind::readings,
                                         EntryKind::history};

std::string written(Json const& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

/// "2031-05-14 09:30".
std::string when(std::string const& at) {
  return at.substr(0, 10) + " " + at.substr(std::min<std::size_t>(11, at.size()), 5);
}

Json head_json(Entry const& head) {
  auto const& record = head.record;
  return {{"number", head.number},   {"site", record.site}, {"kind", word(record.kind)},
          {"version", head.version}, {"who", record.who},   {"at", record.at},
          {"why", record.why},       {"name", record.name}, {"hash", head.hash}};
}

Json value_json(KeptSetting const& setting) {
  Json json;
  if (auto const* const number = std::get_if<double>(&setting.value)) {
    json["value"] = *number;
  } else {
    json["value"] = std::get<std::string>(setting.value);
  }
  json["text"] = setting.text;
  return json;
}

/// A text of several lines with nothing in it that moves a terminal.
std::string visible_lines(std::string const& text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t const end = std::min(text.find('\n', at), text.size());
    out += visible(text.substr(at, end - at)) + "\n";
    at = end + 1;
  }
  return out;
}

/// What is too long or no text is named by its size.
std::string content_text(Record const& record) {
  constexpr std::size_t most_shown = 40'000;
  bool const page = record.kind == EntryKind::sheet && record.content.find('<') < 8;
  if (!is_utf8(record.content) || page || record.content.size() > most_shown) {
    return fmt::format("{} bytes; --content gives them as they are.\n", record.content.size());
  }
  return visible_lines(record.content);
}

}  // namespace

std::string title_of(Entry const& head) {
  auto const& record = head.record;
  return visible(of_a_site(record.kind)
                     ? fmt::format("{}: {}, version {}", record.site, word(record.kind), head.version)
                     : fmt::format("The book: {}", word(record.kind)));
}

std::string sites_text(std::vector<Entry> const& heads, bool colour) {
  struct Line {
    std::string site;
    std::array<std::uint64_t, kinds.size()> newest{};
    std::string at;
  };
  std::vector<Line> lines;
  bool locked = false;
  for (auto const& head : heads) {
    locked = head.record.kind == EntryKind::lock || (locked && head.record.kind != EntryKind::unlock);
    auto const kind = std::find(kinds.begin(), kinds.end(), head.record.kind);
    if (kind == kinds.end()) {
      continue;
    }
    auto line = std::find_if(lines.begin(), lines.end(), [&](Line const& one) { return one.site == head.record.site; });
    if (line == lines.end()) {
      line = lines.insert(lines.end(), {head.record.site, {}, ""});
    }
    line->newest[static_cast<std::size_t>(kind - kinds.begin())] = head.version;
    line->at = head.record.at;
  }
  if (lines.empty()) {
    return "The book has no site yet.\n";
  }
  Table table;
  table.head = {{"site", false}};
  for (auto const kind : kinds) {
    table.head.push_back({std::string(word(kind)), true});
  }
  table.head.push_back({"newest entry (UTC)", false});
  for (auto const& line : lines) {
    std::vector<std::string> row{visible(line.site)};
    for (auto const version : line.newest) {
      row.push_back(version == 0 ? "-" : fmt::format("{}", version));
    }
    row.push_back(when(line.at));
    table.rows.push_back(std::move(row));
  }
  return text(table, Paint(colour)) + "Figures: the newest version." + (locked ? " The book is locked.\n" : "\n");
}

std::string entries_text(std::string const& site, std::vector<Entry> const& heads, bool colour) {
  Table table;
  table.head = {{"kind", false}, {"version", true}, {"when (UTC)", false}, {"who", false}, {"why", false}};
  for (auto const& head : heads) {
    auto const& record = head.record;
    table.rows.push_back({std::string(word(record.kind)), fmt::format("{}", head.version), when(record.at),
                          visible(record.who), visible(record.why)});
  }
  Paint const paint(colour);
  return heading(visible(site), paint) + text(table, paint);
}

std::string list_json(std::vector<Entry> const& heads) {
  Json entries = Json::array();
  for (auto const& head : heads) {
    entries.push_back(head_json(head));
  }
  return written({{"entries", std::move(entries)}});
}

std::string settings_text(std::vector<KeptSetting> const& settings, bool colour) {
  Table table;
  table.head = {{"setting", false}, {"value", true}, {"what it is", false}};
  for (auto const& setting : settings) {
    table.rows.push_back({setting.key, setting.text, setting.meaning});
  }
  return text(table, Paint(colour));
}

std::string show_text(Entry const& entry, std::vector<KeptSetting> const& settings, bool colour) {
  auto const& record = entry.record;
  std::string out = heading(title_of(entry), Paint(colour));
  out += block(fmt::format("{} UTC, {}{}", when(record.at), visible(record.who),
                           record.name.empty() ? "" : ", from " + visible(record.name)),
               "", "");
  out += block("Why: " + visible(record.why), "", "     ");
  out += "Hash: " + entry.hash + "\n\n";
  out += settings.empty() ? content_text(record) : settings_text(settings, colour);
  for (auto const& file : record.beside) {
    out += fmt::format("\nBeside it: {}\n", visible(file.name)) + visible_lines(file.text);
  }
  return out;
}

std::string show_json(Entry const& entry, std::vector<KeptSetting> const& settings) {
  Json json = head_json(entry);
  if (is_utf8(entry.record.content)) {
    json["content"] = entry.record.content;
  } else {
    json["content_bytes"] = entry.record.content.size();
  }
  Json beside = Json::array();
  for (auto const& file : entry.record.beside) {
    beside.push_back({{"name", file.name}, {"text", file.text}});
  }
  json["beside"] = std::move(beside);
  for (auto const& setting : settings) {
    json["settings"][setting.key] = value_json(setting);
  }
  return written(json);
}

std::string changes_text(std::vector<SettingDifference> const& changes, std::string const& from, std::string const& to,
                         bool colour) {
  if (changes.empty()) {
    return "No difference.\n";
  }
  Table table;
  table.head = {{"setting", false}, {from, true}, {"", false}, {to, false}};
  for (auto const& change : changes) {
    bool const alike = change.from && change.to && change.from->text == change.to->text;
    auto const side = [&](std::optional<KeptSetting> const& one) {
      return !one ? std::string("not given") : alike ? one->exact : one->text;
    };
    table.rows.push_back({change.key, side(change.from), "->", side(change.to)});
  }
  return text(table, Paint(colour));
}

std::string lines_text(std::vector<DiffLine> const& lines, bool colour) {
  if (lines.empty()) {
    return "No difference.\n";
  }
  Paint const paint(colour);
  std::string out;
  std::size_t last = 0;
  for (auto const& line : lines) {
    bool const kept = line.change == DiffLine::Change::none;
    if (kept && last > 0 && line.number > last + 1) {
      out += paint.quiet("   ...") + "\n";
    }
    last = line.change == DiffLine::Change::out ? last : line.number;
    std::string const sign = kept ? " " : line.change == DiffLine::Change::out ? "-" : "+";
    std::string const shown = fmt::format("{} {:>4}  {}", sign, line.number, visible(line.text));
    out += (kept ? shown : sign == "-" ? paint.bad(shown) : paint.good(shown)) + "\n";
  }
  return out;
}

std::string diff_json(Entry const& from, Entry const& to, std::vector<SettingDifference> const& changes,
                      std::vector<FileDiff> const& files) {
  Json json{{"from", head_json(from)}, {"to", head_json(to)}};
  if (from.record.kind == EntryKind::settings) {
    Json all = Json::array();
    for (auto const& change : changes) {
      all.push_back({{"key", change.key},
                     {"from", change.from ? value_json(*change.from) : Json(nullptr)},
                     {"to", change.to ? value_json(*change.to) : Json(nullptr)}});
    }
    json["changes"] = std::move(all);
    return written(json);
  }
  Json all = Json::array();
  for (auto const& file : files) {
    Json lines = Json::array();
    for (auto const& line : file.lines) {
      bool const kept = line.change == DiffLine::Change::none;
      lines.push_back({{"change", kept                                   ? "kept"
                                  : line.change == DiffLine::Change::out ? "out"
                                                                         : "in"},
                       {"line", line.number},
                       {"text", line.text}});
    }
    all.push_back({{"file", file.file}, {"lines", std::move(lines)}});
  }
  json["files"] = std::move(all);
  return written(json);
}

}  // namespace wellproof
