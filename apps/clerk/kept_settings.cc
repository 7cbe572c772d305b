#include "clerk/kept_settings.h"

#include <algorithm>

#include "door/imposed.h"
#include "quantity/quantity.h"

namespace wellproof {
namespace {

KeptSetting const* find(std::vector<KeptSetting> const& all, std::string const& key) {
  auto const at = std::find_if(all.begin(), all.end(), [&](KeptSetting const& one) { return one.key == key; });
  return at == all.end() ? nullptr : &*at;
}

}  // namespace

Result<std::vector<KeptSetting>> kept_settings(NamedText const& file, UnitSystem units) {
  Request request;
  request.settings = file;
  auto const imposed = read_imposed(request);
  if (!imposed) {
    return tl::unexpected(imposed.error());
  }
  std::vector<KeptSetting> kept;
  auto const value_of = [&](std::string_view key) {
    return std::find_if(imposed->begin(), imposed->end(), [&](Imposed const& one) { return one.key == key; });
  };
  Settings const none;
  each_setting(none, [&](SettingField const& field, double) {
    if (auto const at = value_of(field.key); at != imposed->end()) {
      double const value_si = std::get<double>(at->value);
      kept.push_back({at->key, std::string(field.meaning), value_si, write_quantity(value_si, field.dimension, units),
                      write_quantity_exactly(value_si, field.dimension, units)});
    }
  });
  for (auto const& [key, meaning] : {std::pair(permissive_key, "outside contact that lets the pump run"),
                                     std::pair(fault_contact_key, "contact that tells of a stop")}) {
    if (auto const at = value_of(key); at != imposed->end()) {
      auto const& choice = std::get<std::string>(at->value);
      kept.push_back({at->key, meaning, choice, choice, choice});
    }
  }
  if (kept.empty()) {
    return tl::unexpected(Findings{{{file.file, 0, 0}, "", "no setting", "at least one", ""}});
  }
  return kept;
}

std::vector<SettingDifference> changes(std::vector<KeptSetting> const& from, std::vector<KeptSetting> const& to) {
  std::vector<SettingDifference> found;
  for (auto const& was : from) {
    auto const* const is = find(to, was.key);
    if (is == nullptr || is->value != was.value) {
      found.push_back({was.key, was, is == nullptr ? std::nullopt : std::optional(*is)});
    }
  }
  for (auto const& is : to) {
    if (find(from, is.key) == nullptr) {
      found.push_back({is.key, std::nullopt, is});
    }
  }
  return found;
}

}  // namespace wellproof
