// A request to the book, as the page sends it.
#include <algorithm>
#include <array>
#include <cstdint>
#include <string>

#include <nlohmann/json.hpp>

#include "serve/page_server.h"

namespace wellproof {
namespace {

using Json = nlohmann::ordered_json;

/// What a page may ask. The others write files or change the lock, which is for the terminal.
constexpr std::array<std::string_view, 5> commands{"add", "list", "show", "diff", "check"};

std::string text_of(Json const& of, char const* key) {
  return of.is_object() && of.contains(key) && of[key].is_string() ? of[key].get<std::string>() : "";
}

Findings wrong(std::string key, std::string found, std::string expected) {
  return {{{"request", 0, 0}, std::move(key), std::move(found), std::move(expected), ""}};
}

std::optional<std::uint64_t> version_of(Json const& of, char const* key) {
  return of.contains(key) && of[key].is_number_unsigned() ? std::optional(of[key].get<std::uint64_t>()) : std::nullopt;
}

}  // namespace

Result<BookRequest> read_book_request(std::string_view bytes) {
  Json const json = Json::parse(bytes.begin(), bytes.end(), nullptr, false);
  if (!json.is_object()) {
    return tl::unexpected(wrong("", "what is no JSON object", "a request to the book"));
  }
  BookRequest request;
  request.command = text_of(json, "command");
  if (std::find(commands.begin(), commands.end(), request.command) == commands.end()) {
    return tl::unexpected(wrong("command", "\"" + request.command + "\"", "add, list, show, diff or check"));
  }
  request.address = text_of(json, "address");
  request.why = text_of(json, "why");
  request.noted = text_of(json, "noted");
  request.version = version_of(json, "version");
  request.other_version = version_of(json, "other_version");
  request.content = json.contains("content") && json["content"] == true;
  request.json = json.contains("json") && json["json"] == true;
  request.units = text_of(json, "units") == "metric" ? UnitSystem::metric : UnitSystem::us;
  if (auto const kind = text_of(json, "kind"); !kind.empty()) {
    request.kind = entry_kind(kind);
    if (!request.kind) {
      return tl::unexpected(wrong("kind", "\"" + kind + "\"", "site, settings, sheet, readings or history"));
    }
  }
  if (json.contains("site") && json["site"].is_object()) {
    request.site = {text_of(json["site"], "file"), text_of(json["site"], "text")};
    if (json["site"].contains("beside") && json["site"]["beside"].is_array()) {
      for (auto const& each : json["site"]["beside"]) {
        request.beside.push_back({text_of(each, "name"), text_of(each, "text")});
      }
    }
  }
  if (json.contains("files") && json["files"].is_array()) {
    for (auto const& each : json["files"]) {
      auto const kind = entry_kind(text_of(each, "kind"));
      if (!kind || !of_a_site(*kind) || *kind == EntryKind::site) {
        return tl::unexpected(
            wrong("kind", "\"" + text_of(each, "kind") + "\"", "settings, sheet, readings or history"));
      }
      request.files.emplace_back(*kind, NamedText{text_of(each, "file"), text_of(each, "text")});
    }
  }
  return request;
}

std::string pass_of(std::string_view bytes) {
  return text_of(Json::parse(bytes.begin(), bytes.end(), nullptr, false), "pass");
}

}  // namespace wellproof
