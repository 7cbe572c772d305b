#pragma once
// Settings of the book as values: read by the reader of settings files, in the order in which a drive is set.
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "contract/finding.h"
#include "door/request.h"

namespace wellproof {

/// value  a number in SI, or the word of a choice
/// text   the same in the units wanted
/// exact  with every digit, for two values that look alike
struct KeptSetting {
  std::string key;
  std::string meaning;
  std::variant<double, std::string> value;
  std::string text;
  std::string exact;
};

Result<std::vector<KeptSetting>> kept_settings(NamedText const& file, UnitSystem units);

/// A setting that two versions do not share; nothing on the side that does not have it.
struct SettingDifference {
  std::string key;
  std::optional<KeptSetting> from;
  std::optional<KeptSetting> to;
};
std::vector<SettingDifference> changes(std::vector<KeptSetting> const& from, std::vector<KeptSetting> const& to);

}  // namespace wellproof
